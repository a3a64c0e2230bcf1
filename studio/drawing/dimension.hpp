// Dimension lines as architects draw them: extension lines, slanted ticks, the figure above the line.
#pragma once

#include <string>
#include <vector>

#include "studio/paint/display_list.hpp"

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

/// A height from `top` down to `bottom` at `x`, its figure to the left of the line.
struct HeightLine {
  double top = 0, bottom = 0, x = 0;
  std::string text;
  std::vector<double> from_x;  ///< where the extension line at the top begins; none: there is no such line
  std::string ring = {};       ///< the number of the piece it belongs to, before the figure; or empty
};

/// What the line takes of the page with its figure; extension lines are not counted.
Rect room_of(const HeightLine& line);

/// Draws the line on a `ground` of this colour, which keeps what is behind off its figure.
void add_height_dimension(Marks& marks, const HeightLine& line, const Ink& ground);

/// The extension line alone, where the line is drawn later.
void add_height_extension(Marks& marks, const HeightLine& line);

/// The number of a piece about `centre`, in a ring of 2.1 mm or, where it has three digits, a longer one.
/// `turned`: to be read from the right side of the page.
void add_ring(Marks& marks, Part part, Point2 centre, const std::string& number, bool turned = false);

/// Half of how far the ring of this number reaches along the line [mm].
double ring_half_width(const std::string& number);

}  // namespace quadrille
