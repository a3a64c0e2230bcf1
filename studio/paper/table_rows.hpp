// The rows that a sheet's tables are made of: paragraphs, rules, headings, swatches.
#pragma once

#include <string>

#include "studio/model/palette.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/paint/style.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// Height of one line of a table [mm], and the room that a swatch takes at its left.
inline constexpr double line_height = 4.4, swatch_room = 6;

inline const TextStyle table_body = type(pt_body, ink_text);
inline const TextStyle table_bold = type(pt_body, ink_text, Face::bold);
inline const TextStyle table_quiet = type(pt_body, ink_quiet);
inline const TextStyle table_figures = type(pt_body, ink_text, Face::regular, Across::right);

/// What a heading says after its name where its rows go on.
inline constexpr const char* continued = ", continued";

/// Height [mm] of `text` in a row of this width: one line, or up to three where it is long.
double wrapped(const std::string& text, const TextStyle& style, double width);

/// Air below a row of this height [mm]: more where it has several lines, so that they hold together.
double below(double height);

/// Up to four lines, with `air` below [mm].
Row paragraph(Part part, const std::string& text, const TextStyle& style, double width, double air);

/// A hairline across the column, with air above and below [mm].
Row rule(Part part, double above, double air);

Row heading_row(Part part, const std::string& text, double width);

/// A balloon of the colour, or a light grey one for null, beside the line of text that begins at `y`.
void add_swatch(Marks& marks, Part part, double x, double y, const Colour* colour);

}  // namespace quadrille
