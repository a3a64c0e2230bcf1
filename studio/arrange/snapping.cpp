#include "studio/arrange/snapping.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "studio/arrange/snap_targets.hpp"

namespace quadrille {
namespace {

constexpr double same_m = 1e-7;  // shifts that differ by less lead to the same place

int rank_of(GuideKind kind) {
  switch (kind) {
    case GuideKind::wall:
    case GuideKind::middle:
    case GuideKind::centre:
      return 0;
    case GuideKind::structure:
    case GuideKind::depth:
      return 1;
    case GuideKind::edge:
      return 2;
    case GuideKind::gap:
      return 3;
  }
  return 3;
}

/// True where both say the same of the same place.
bool same_guide(const Guide& a, const Guide& b) {
  return a.kind == b.kind && a.words == b.words && std::abs(a.at_m - b.at_m) < same_m;
}

/// The shift of the nearest target within the tolerance, and the guides of all that it leads to; 0 without one.
double draw(std::vector<SnapTarget> targets, double tolerance_m, std::vector<Guide>& guides) {
  const auto nearer = [](const SnapTarget& a, const SnapTarget& b) {
    const double far = std::abs(a.shift_m) - std::abs(b.shift_m);
    return std::abs(far) > same_m ? far < 0 : rank_of(a.guide.kind) < rank_of(b.guide.kind);
  };
  std::erase_if(targets, [&](const SnapTarget& target) { return !(std::abs(target.shift_m) <= tolerance_m); });
  if (targets.empty()) return 0;
  const double shift = std::ranges::min_element(targets, nearer)->shift_m;
  std::erase_if(targets, [&](const SnapTarget& target) { return std::abs(target.shift_m - shift) > same_m; });
  std::ranges::stable_sort(targets, {}, [](const SnapTarget& target) { return rank_of(target.guide.kind); });
  for (SnapTarget& target : targets)
    if (std::ranges::none_of(guides, [&](const Guide& guide) { return same_guide(guide, target.guide); }))
      guides.push_back(std::move(target.guide));
  return shift;
}

PieceBox shifted(PieceBox box, const Way& way) {
  box.left += way.right_m, box.right += way.right_m;
  box.front += way.back_m, box.back += way.back_m;
  return box;
}

}  // namespace

Snapped snap(const Area& area, const BuiltEvent& built, const PieceIds& pieces, const Way& way, const SnapRules& rules,
             Units units) {
  Snapped snapped{way, {}};
  if (!rules.on) return snapped;
  std::vector<PieceBox> body;
  std::optional<double> place;
  Neighbourhood around{area, {}, {}, units};
  for (const auto& piece : area.pieces) {
    if (piece->hidden) continue;
    if (std::ranges::find(pieces, piece->id) != pieces.end()) {
      body.push_back(box_of(*piece, built));
      if (!place || piece->id == pieces.front()) place = piece->y_m;
    } else {
      around.pieces.push_back(&*piece);
      around.boxes.push_back(box_of(*piece, built));
    }
  }
  const auto box = box_around(body);
  if (!box) return snapped;
  snapped.way.right_m += draw(targets_along(around, shifted(*box, way)), rules.tolerance_m, snapped.guides);
  if (rules.depth)
    snapped.way.back_m += draw(targets_in_depth(around, *place + way.back_m), rules.tolerance_m, snapped.guides);
  return snapped;
}

}  // namespace quadrille
