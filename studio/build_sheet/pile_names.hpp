// Where the names of balloons stand that lie over each other.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "studio/paint/display_list.hpp"

namespace quadrille {

struct PileDisc {
  Point2 centre;
  double radius = 0;
};

/// The largest patch of `own` that no `nearer` disc hides. Its radius is below 0 where there is none.
PileDisc free_patch(const PileDisc& own, std::span<const PileDisc> nearer);

/// Whether the box comes nearer to the disc than `air`.
bool touches(const Rect& box, const PileDisc& disc, double air);

/// Whether the way from `a` to `b` leads through the box.
bool crosses(Point2 a, Point2 b, const Rect& box);

/// Of a name in this ink, in the middle of its box.
TextStyle name_style(const Ink& ink);

/// A name on its balloon, or beside the pile with a leader to it.
struct PileName {
  Rect box;
  std::string text;  ///< "#5 B", "f3 A", "#6 D*" for an accent
  Ink ink;
  std::size_t balloon = 0;  ///< which of the discs it names
  bool beside = false;
  Point2 from, to;  ///< of the leader: on the balloon, at the box
};

/// Finds places for the names of one pile, in millimetres: on what is seen of a balloon, otherwise beside the pile. No
/// name stands on another, and none on a leader where there is a way round.
class NamePlacer {
 public:
  /// `discs`: the balloons, farthest first. `line` is that of the garland: no name beside the pile stands on it. `width` is
  /// the room from x = 0.
  NamePlacer(std::vector<PileDisc> discs, const Rect& line, double width)
      : discs_(std::move(discs)), line_(line), width_(width), top_(line.y), bottom_(line.bottom()) {
    for (const PileDisc& disc : discs_) {
      top_ = std::min(top_, disc.centre.y - disc.radius), bottom_ = std::max(bottom_, disc.centre.y + disc.radius);
    }
  }

  /// A box on the free part of a disc, or nothing where a text so wide does not go there.
  std::optional<Rect> on_balloon(std::size_t index, double text_wide);
  /// These get names beside the pile later on: until then no leader runs over where theirs end.
  void keep_free(std::span<const std::size_t> indices);
  /// A box clear of all discs, with the leader to the free part of this one.
  PileName beside(std::size_t index, double text_wide);
  const std::vector<Rect>& taken() const { return taken_; }

 private:
  std::span<const PileDisc> nearer(std::size_t index) const { return std::span(discs_).subspan(index + 1); }
  bool leader_is_free(Point2 from, Point2 to) const;

  std::vector<PileDisc> discs_;
  Rect line_;
  double width_, top_, bottom_;
  std::vector<Rect> taken_;
  std::vector<std::pair<Point2, Point2>> leaders_;
  std::vector<Point2> dots_;  ///< where leaders end, or will
};

}  // namespace quadrille
