// Comma-separated tables: RFC 4180, UTF-8, safe to open in a spreadsheet.
#pragma once

#include <string>
#include <vector>

namespace quadrille {

/// A cell of text that came from a person: what a spreadsheet would run as a formula (beginning with = + - @, a tab or
/// a carriage return) gets an apostrophe in front.
std::string harmless_cell(std::string text);

/// The rows with CRLF line ends; cells with a comma, a quote or a line end stand between quotes, quotes doubled.
/// Source: RFC 4180, section 2.
std::string print_csv(const std::vector<std::vector<std::string>>& rows);

}  // namespace quadrille
