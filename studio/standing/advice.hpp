// Which lines would make a piece stand: the best two, three and four out of those the site allows.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/piece_standing.hpp"

namespace quadrille {

/// What becomes of a piece in its gust: short of it, it is taken down; otherwise it stays up, watched or fine.
enum class Reaching { less, watched, fine };

struct LineAdvice {
  std::vector<SecuringLine> lines;  ///< instead of those the piece has
  double limit_gust_m_s = 0;        ///< what it bears with them
  std::string words;                ///< "2 lines: one to the front, one to the back left"; for where, see advice_in_words()
  std::optional<double> ballast_kg = std::nullopt;  ///< to be on each foot as well [kg]; empty: what is there will do
  Reaching reaches = Reaching::less;
};

/// For two, three and four lines the set with the highest limit gust; fewer entries where the site allows none of that
/// number, or none that bears more than `above_m_s`. Lines go from the piece's front and back tie points (and its sides',
/// for four) to stakes in soft ground, to dead weights on hard ground (as heavy as it takes for `gust_m_s`, in steps of
/// 5 kg, up to 100 kg), or to structures the site owner has allowed; none ends in a walkway or crosses one below headroom.
/// Found by best_lines_of() among the choices of AnchorSpots; where they do not make the piece fine, also with as much more
/// ballast as helps and its plates have room for. On the calling thread.
std::vector<LineAdvice> best_lines(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                                   double gust_m_s, double above_m_s = 0);

/// For each of `answers`, which are of stand_all(): the best lines that bear more than the piece bears as it is, where it
/// stands outdoors and is not found fine; otherwise none. None on hard ground without a forecast: nobody can say how heavy
/// the dead weights must be. On all hardware threads.
std::vector<std::vector<LineAdvice>> advise_all(const Event& event, const BuiltEvent& built,
                                                const std::vector<PieceStanding>& answers);

/// The advice with the place of every anchor from the foot of `piece` that is nearest to it: "2 lines: one to the front,
/// one to the back; tie front-1 to a stake 2.60 m in front, from the foot; …".
std::string advice_in_words(const LineAdvice& advice, const Area& area, const Piece& piece, Units units);

/// The walkway of the area that a line from `from` to `to` (in the piece's frame) crosses lower than `headroom_m`, or that
/// its anchor stands in; null where there is none.
const Walkway* walkway_under(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                             double headroom_m);

}  // namespace quadrille
