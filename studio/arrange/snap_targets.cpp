#include "studio/arrange/snap_targets.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include "sdk/units.hpp"
#include "studio/model/lengths.hpp"

namespace quadrille {
namespace {

constexpr double least_gap_m = 0.02;  // what stands closer touches: no gap that anybody would repeat

std::string name_of(const PlacedPiece& piece) { return piece.name.empty() ? "a piece" : piece.name; }
std::string name_of(const Structure& structure) { return structure.name.empty() ? "a structure" : structure.name; }

/// Collects the targets along x.
class Along {
 public:
  Along(const Neighbourhood& around, const PieceBox& body) : around_(around), body_(body) {}

  std::vector<SnapTarget> all() {
    for (std::size_t i = 0; i < around_.boxes.size(); ++i) piece(*around_.pieces[i], around_.boxes[i]);
    for (const Structure& structure : around_.area.structures) stands(structure);
    if (around_.area.wall_width_m)
      wall(*around_.area.wall_width_m);
    else if (const auto others = box_around(around_.boxes); others && around_.boxes.size() > 1)
      add(GuideKind::middle, others->middle_x(), body_.middle_x(), "middle of the pieces");
    gaps();
    return std::move(targets_);
  }

 private:
  void add(GuideKind kind, double at, double of_body, std::string words) {
    targets_.push_back({at - of_body, {kind, false, at, {}, std::move(words)}});
  }
  void piece(const PlacedPiece& placed, const PieceBox& box) {
    const std::string name = name_of(placed);
    add(GuideKind::centre, box.middle_x(), body_.middle_x(), "middle of " + name);
    for (const double at : {box.left, box.right})
      for (const double edge : {body_.left, body_.right}) add(GuideKind::edge, at, edge, "edge of " + name);
  }
  void stands(const Structure& structure) {
    const std::string name = name_of(structure);
    add(GuideKind::structure, structure.x_m, body_.middle_x(), "middle of " + name);
    if (!structure.width_m || !(*structure.width_m > 0)) return;
    const double half = *structure.width_m / 2;
    for (const double at : {structure.x_m - half, structure.x_m + half})
      for (const double edge : {body_.left, body_.right}) add(GuideKind::structure, at, edge, "edge of " + name);
  }
  void wall(double width) {
    add(GuideKind::wall, 0, body_.left, "left end of the wall");
    add(GuideKind::wall, width, body_.right, "right end of the wall");
    add(GuideKind::wall, width / 2, body_.middle_x(), "middle of the wall");
  }

  /// A gap on each side, the left one first where both are there.
  void add_gap(double shift, double gap, std::vector<Guide::Gap> gaps) {
    if (gap < least_gap_m) return;
    Guide guide{GuideKind::gap, false, gaps.front().from_m, std::move(gaps), {}};
    guide.words = "same gap " + print_length(gap, lengths_in(around_.units));
    targets_.push_back({shift, std::move(guide)});
  }

  /// The boxes that stand wholly to one side of the body's middle, the nearest first.
  std::vector<PieceBox> beside(bool right) const {
    std::vector<PieceBox> boxes;
    for (const PieceBox& box : around_.boxes)
      if (right ? box.left > body_.middle_x() : box.right < body_.middle_x()) boxes.push_back(box);
    std::ranges::sort(
        boxes, [&](const PieceBox& a, const PieceBox& b) { return right ? a.left < b.left : a.right > b.right; });
    return boxes;
  }

  void gaps() {
    const std::vector<PieceBox> left = beside(false), right = beside(true);
    if (!left.empty() && !right.empty()) {
      const double from = left.front().right, to = right.front().left, gap = (to - from - body_.width()) / 2;
      add_gap(from + gap - body_.left, gap, {{from, from + gap}, {to - gap, to}});
    }
    if (left.size() > 1) {
      const PieceBox &near = left[0], &next = left[1];
      const double gap = near.left - next.right;
      add_gap(near.right + gap - body_.left, gap, {{near.right, near.right + gap}, {next.right, near.left}});
    }
    if (right.size() > 1) {
      const PieceBox &near = right[0], &next = right[1];
      const double gap = next.left - near.right;
      add_gap(near.left - gap - body_.right, gap, {{near.left - gap, near.left}, {near.right, next.left}});
    }
  }

  const Neighbourhood& around_;
  const PieceBox& body_;
  std::vector<SnapTarget> targets_;
};

}  // namespace

std::vector<SnapTarget> targets_along(const Neighbourhood& around, const PieceBox& body) {
  return Along(around, body).all();
}

std::vector<SnapTarget> targets_in_depth(const Neighbourhood& around, double place_m) {
  std::vector<SnapTarget> targets;
  const auto add = [&](GuideKind kind, double at, std::string words) {
    targets.push_back({at - place_m, {kind, true, at, {}, std::move(words)}});
  };
  add(GuideKind::depth, 0, "front line");
  for (const PlacedPiece* piece : around.pieces) add(GuideKind::depth, piece->y_m, "in line with " + name_of(*piece));
  for (const Structure& structure : around.area.structures)
    add(GuideKind::structure, structure.y_m, "in line with " + name_of(structure));
  return targets;
}

}  // namespace quadrille
