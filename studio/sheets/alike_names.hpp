// Names that are told together: "Column 1 to 6".
#pragma once

#include <string>
#include <vector>

namespace quadrille {

/// Whether the names differ in the number at their end alone, so that print_names tells both by one word.
bool differ_in_number(const std::string& one, const std::string& other);

/// "Column, left; Column, right; Aisle 1 to 8": neighbours that differ in their number alone are drawn together. Names
/// may have commas.
std::string print_list(const std::vector<std::string>& names);

}  // namespace quadrille
