// Dimension lines as architects draw them: extension lines, slanted ticks, the figure above the line.
#pragma once

#include <string>

#include "studio/drawing/display_list.hpp"

namespace quadrille {

/// Height of a dimension's figure above its line, and the distance of one row of dimensions to the next [mm].
inline constexpr double dimension_text_height = 4.3, dimension_row = 7.6;

/// What stands above the line: the figure, after a number in a ring where the piece bears one.
struct DimensionLabel {
  std::string text;
  std::string ring;  ///< "1", or empty
};

/// Room that the label needs along the line [mm].
double label_width(const DimensionLabel& label);

/// Where a label of this width stands on a line from `from` to `to`: above its middle where it fits between the ticks,
/// otherwise beside the left tick (`leftwards`) or the right one, or beside the other where there is no room. Kept
/// within `least` and `most`.
struct Span {
  double from = 0, to = 0;
};
Span label_span(double from, double to, double width, double least, double most, bool leftwards);

/// From `from` to `to` at height `y`; extension lines come down from `y_object`.
void add_width_dimension(Marks& marks, double from, double to, double y, double y_object, const DimensionLabel& label,
                         const Span& span);

/// From `top` down to `bottom` at `x`; extension lines come from `x_object`, to the right of it.
void add_height_dimension(Marks& marks, double top, double bottom, double x, double x_object, const std::string& text);

/// The number of a piece in a ring of 2.1 mm about `centre`.
void add_ring(Marks& marks, Part part, Point2 centre, const std::string& number);

}  // namespace quadrille
