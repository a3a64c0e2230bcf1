// Reads an area with its site, structures, walkways and pieces.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "studio/files/element_reader.hpp"

namespace quadrille {

/// The ids of one file. An element without id gets one that no other bears.
class Ids {
 public:
  /// Throws Unreadable where an id is borne twice.
  explicit Ids(const XmlNode& event);
  /// The element's id, or a new one that begins with `stem`.
  std::string of(ElementReader& element, std::string_view stem);

 private:
  void add(const XmlNode& element);
  std::map<std::string, int, std::less<>> lines_;  // id → where it stands
  std::map<std::string, int, std::less<>> next_;   // stem → number to try next
};

/// Throws Unreadable where a number or an id cannot be meant.
Area read_area(const XmlNode& element, Reading& reading, Ids& ids);

}  // namespace quadrille
