// Which lines would make a piece stand: the best two, three and four out of those the site allows.
#pragma once

#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

struct LineAdvice {
  std::vector<SecuringLine> lines;  ///< instead of those the piece has
  double limit_gust_m_s = 0;        ///< what it bears with them
  std::string words;                ///< "2 lines from the crown to stakes 1.9 m in front and behind"
};

/// For two, three and four lines the set with the highest limit gust; fewer entries where the site allows none of that
/// number. Lines go from the piece's front and back tie points (and its sides', for four) to stakes in soft ground, to dead
/// weights on hard ground (as heavy as it takes for `gust_m_s`, in steps of 5 kg, up to 100 kg), or to structures the site
/// owner has allowed; none ends in a walkway or crosses one below headroom.
std::vector<LineAdvice> best_lines(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                                   double gust_m_s);

/// The walkway of the area that a line from `from` to `to` (in the piece's frame) crosses lower than `headroom_m`, or that
/// its anchor stands in; null where there is none.
const Walkway* walkway_under(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                             double headroom_m);

}  // namespace quadrille
