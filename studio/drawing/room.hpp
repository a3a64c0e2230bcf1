// Whether rectangles on a page get into each other's way.
#pragma once

#include <algorithm>
#include <span>
#include <variant>
#include <vector>

#include "studio/paint/display_list.hpp"

namespace quadrille {

/// True where they share more than an edge.
inline bool overlap(const Rect& a, const Rect& b) {
  return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

inline bool meets_any(const Rect& rect, std::span<const Rect> taken) {
  return std::ranges::any_of(taken, [&](const Rect& other) { return overlap(rect, other); });
}

/// The boxes of all text among the marks.
inline std::vector<Rect> text_boxes(const Marks& marks) {
  std::vector<Rect> boxes;
  for (const Mark& mark : marks)
    if (const auto* text = std::get_if<TextMark>(&mark.shape)) boxes.push_back(text->box);
  return boxes;
}

}  // namespace quadrille
