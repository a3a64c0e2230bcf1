// Reads what a piece's parameters stand at: <set>, <path> and <mix>.
#pragma once

#include <string>

#include "studio/files/element_reader.hpp"

namespace quadrille {

/// True for the elements that hold a value.
bool holds_value(const XmlNode& element);

/// Puts the value that `child` of the piece's element `piece` holds into `values`; returns its address, or "" where its
/// kind is not known. Throws Unreadable where a number cannot be meant or the key stands twice.
std::string read_value(ElementReader& piece, const XmlNode& child, ValueMap& values);

}  // namespace quadrille
