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

/// `text` in lines of at most `width` characters, broken at blanks; a longer word has a line of its own. Never
/// empty.
std::vector<std::string> folded(const std::string& text, std::size_t width);

/// `rows` with the cells of one column folded: what does not fit goes on in rows that are otherwise empty, set in by two
/// blanks in the first column.
std::vector<std::vector<std::string>> with_folded(const std::vector<std::vector<std::string>>& rows, std::size_t column,
                                                  std::size_t width);

}  // namespace quadrille
