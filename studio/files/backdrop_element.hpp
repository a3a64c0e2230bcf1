// The photo behind an area, in the event's file.
#pragma once

#include <string>

#include "sdk/result.hpp"
#include "studio/files/element_reader.hpp"

namespace quadrille {

/// Reads `<backdrop>`. An error, as a clause that ends in ";", where its picture is missing or damaged, so that the
/// element can be kept as it is. Throws Unreadable where a number cannot be meant.
Result<Backdrop> read_backdrop(const XmlNode& element, Reading& reading);

/// The lines of `<backdrop>`, which stands `depth` deep.
std::string backdrop_lines(const Backdrop& backdrop, int depth);

}  // namespace quadrille
