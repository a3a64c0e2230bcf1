// Reads what a piece's parameters stand at, <set>, <path> and <mix>, and its colours.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "studio/files/element_reader.hpp"

namespace quadrille {

/// True for the elements that hold a value.
bool holds_value(const XmlNode& element);

/// Puts the value that `child` of the piece's element `piece` holds into `values`; returns its address, or "" where its
/// kind is not known. Throws Unreadable where a number cannot be meant or the key stands twice.
std::string read_value(ElementReader& piece, const XmlNode& child, ValueMap& values);

/// The colours of a piece's slots, gathered from its <colour> elements in any order.
class SlotColours {
 public:
  /// Returns the address of `child`, a <colour>, or "" where it has no slot. Throws Unreadable where a slot has two.
  std::string read(ElementReader& piece, const XmlNode& child);
  /// By slot, A first; a slot before the last that has none gets an empty reference.
  std::vector<ColourReference> take() const;

 private:
  std::vector<std::optional<ColourReference>> colours_;
};

}  // namespace quadrille
