// One look for all sheets: type sizes [pt], line widths [mm], inks.
#pragma once

#include "studio/paint/display_list.hpp"

namespace quadrille {

inline constexpr Ink ink_text{0.13, 0.14, 0.17, 1};
inline constexpr Ink ink_quiet{0.42, 0.43, 0.47, 1};
inline constexpr Ink ink_rule{0.74, 0.75, 0.77, 1};
inline constexpr Ink ink_paper{1, 1, 1, 1};

inline constexpr double pt_title = 18, pt_heading = 11, pt_body = 9, pt_caption = 7.5;
inline constexpr double mm_hair = 0.13, mm_line = 0.18, mm_strong = 0.35;

constexpr TextStyle type(double size_pt, Ink ink, Face face = Face::regular, Across across = Across::left,
                         Down down = Down::top) {
  return {size_pt, face, ink, across, down, false};
}

/// A straight line as a mark.
inline Mark line_mark(Part part, Point2 from, Point2 to, double width = mm_line, Ink ink = ink_text) {
  return stroked_mark(part, line_path(from, to), {ink, width, {}, false});
}
inline Mark text_mark(Part part, const Rect& box, std::string text, const TextStyle& style) {
  return {part, TextMark{box, std::move(text), style}};
}

}  // namespace quadrille
