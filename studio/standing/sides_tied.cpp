#include "studio/standing/sides_tied.hpp"

#include <algorithm>

#include "studio/model/securing.hpp"
#include "studio/standing/checks.hpp"

namespace quadrille {

SidesTied sides_tied(const std::vector<SecuringLine>& lines, const PlacedPiece& placed, const Piece& piece,
                     const Area& area, double level_share) {
  SidesTied sides;
  for (const SecuringLine& line : lines) {
    const auto run = run_of(line, placed, piece, area);
    if (!run || holds_nothing(line, area)) continue;
    sides.any = true;
    if (is_steep(*run, level_share)) continue;
    const Vec3 way = run->to - run->from;
    const double level = way.head<2>().norm();
    sides.front = sides.front || way.y() < -0.5 * level;
    sides.back = sides.back || way.y() > 0.5 * level;
  }
  return sides;
}

bool asks_front_and_back(const Piece& piece) {
  return std::ranges::any_of(piece.anchoring, [](const AnchoringRule& rule) {
    return rule.requirement == Requirement::front_and_back && rule.when == When::outdoors;
  });
}

}  // namespace quadrille
