// Names that are told together: "Columns 1 to 6".
#pragma once

#include <string>
#include <vector>

#include "studio/model/finding_words.hpp"

namespace quadrille {

/// "Column, left; Column, right; Aisle 1 to 8": neighbours that differ in their number alone are drawn together. Names
/// may have commas.
std::string print_list(const std::vector<std::string>& names);

}  // namespace quadrille
