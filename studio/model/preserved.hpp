// What a file held that this version does not know.
#pragma once

#include <string>
#include <vector>

namespace quadrille {

/// What a file held that this version does not know, kept so that saving gives it back: attributes, child elements and
/// comments of one element, and of those of its children that keep nothing of their own.
struct Preserved {
  struct Attribute {
    std::string name, value;
    std::string inside;  ///< the known child that bears it, as in `before`, joined by '/'; empty = the element itself
    bool operator==(const Attribute&) const = default;
  };
  struct Node {
    std::string before;           ///< the known child it preceded, as "element" or "element:id"; empty = it came last
    std::string xml;              ///< one element or comment, as written
    std::string inside;           ///< as for attributes; "/" = outside the root element
    std::string stands_for = {};  ///< the known child that it would be read as if no other stood for it, as in `before`
                                  ///< (a value: "value:key"); empty = none
    bool operator==(const Node&) const = default;
  };
  std::vector<Attribute> attributes;
  std::vector<Node> nodes;
  bool operator==(const Preserved&) const = default;
};

}  // namespace quadrille
