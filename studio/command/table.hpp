// Text in columns, for people at a terminal.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace quadrille {

enum class Align { left, right };

/// `rows` under `heads`, columns aligned and two blanks apart, each line indented by two blanks and ending in '\n'.
/// Every row has as many cells as there are heads; columns without an entry in `aligns` are left-aligned. A character
/// counts as one column wide, which holds for Latin text. Control characters are shown as blanks.
std::string print_table(const std::vector<std::string>& heads, const std::vector<std::vector<std::string>>& rows,
                        const std::vector<Align>& aligns = {});

}  // namespace quadrille
