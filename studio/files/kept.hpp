// What was kept of an element, sorted by the place where it goes back.
#pragma once

#include <map>
#include <string_view>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

/// What was kept inside one element, in the order of the file.
struct KeptInside {
  std::vector<const Preserved::Attribute*> attributes;
  std::vector<const Preserved::Node*> nodes;
  std::map<std::string_view, std::vector<std::size_t>> before;  ///< known sibling → places in `nodes`
};

/// Borrows from the Preserved that it is made from.
class Kept {
 public:
  explicit Kept(const Preserved& preserved) {
    for (const auto& attribute : preserved.attributes) by_element_[attribute.inside].attributes.push_back(&attribute);
    for (const auto& node : preserved.nodes) {
      KeptInside& inside = by_element_[node.inside];
      inside.before[node.before].push_back(inside.nodes.size());
      inside.nodes.push_back(&node);
    }
  }
  /// See Preserved::Node::inside.
  const KeptInside& inside(std::string_view element) const {
    static const KeptInside nothing;
    const auto found = by_element_.find(element);
    return found == by_element_.end() ? nothing : found->second;
  }

 private:
  std::map<std::string_view, KeptInside> by_element_;
};

}  // namespace quadrille
