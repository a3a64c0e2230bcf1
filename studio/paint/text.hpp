// Text set by Pango: one way of setting for measuring and for painting, so that what was measured is what is drawn.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "studio/paint/display_list.hpp"

typedef struct _cairo cairo_t;

namespace quadrille {

inline constexpr double millimetres_per_point = 25.4 / 72;

/// `text` as it is set: valid UTF-8, control characters as blanks.
std::string printable(const std::string& text);

/// Byte places of the blanks in `text` at which no line may break: those inside a measure ("8 mm", "6' 7 1/2\"",
/// "25 x 1.5 mm").
std::vector<std::size_t> blanks_in_measures(const std::string& text);

/// How far the middle of a capital letter lies below the top of its line [mm]: where a mark beside the line belongs.
double capital_middle(const TextStyle& style);

/// Width of `text` on one line [mm].
double text_width(const std::string& text, const TextStyle& style);

/// Height [mm] that a box `width` wide needs for the whole of `text`, at most `most_lines` lines.
double text_height(const std::string& text, const TextStyle& style, double width, int most_lines = 1000);

/// Where a text mark's ink and lines really fall on the page [mm].
struct SetText {
  Rect ink;      ///< of the glyphs
  Rect logical;  ///< of the lines
  int lines = 0;
  bool shortened = false;  ///< it ends in an ellipsis
};
SetText set_text(const TextMark& mark);

/// Paints the mark on a context whose unit is the millimetre.
void paint_text(cairo_t* cairo, const TextMark& mark);

/// Adds the outline of one bold letter, centred about the origin and `height` high, to the context's path.
void letter_path(cairo_t* cairo, char letter, double height);

}  // namespace quadrille
