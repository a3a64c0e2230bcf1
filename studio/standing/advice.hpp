// Which lines would make a piece stand: the best two, three and four out of those the site allows.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/standing/walkway_under.hpp"

namespace quadrille {

/// What becomes of a piece in its gust: short of it, it is taken down; otherwise it stays up, watched or fine.
enum class Reaching { less, watched, fine };

struct LineAdvice {
  std::vector<SecuringLine> lines;  ///< instead of those the piece has
  double limit_gust_m_s = 0;        ///< what it bears with them
  std::string words;  ///< "2 lines: one to the front, one to the back left"; for where, see advice_in_words()
  std::optional<double> ballast_kg = std::nullopt;  ///< to be on each foot as well [kg]; empty: what is there will do
  Reaching reaches = Reaching::less;                ///< `less` also where no gust is forecast
};

/// For two, three and four lines the set with the highest limit gust; fewer entries where the site allows none of that
/// number, or none that bears more than `above_m_s`, or where fewer lines do as well by a twentieth. Lines go from the
/// piece's tie points to stakes in soft ground, to dead weights of at most 100 kg on hard ground, or to structures the site
/// owner has allowed; none ends in a walkway, crosses one below headroom, or runs through a structure; and where the piece
/// type asks for that, some go to the front and some to the back. The weights told are as heavy as it takes for the piece to
/// be fine in `gust_m_s`, or for all that it bears with such lines where that is less, in steps of 5 kg; none are advised
/// where `gust_m_s` is 0, since nobody can say how heavy they must be. Found by best_lines_of() among the choices of
/// AnchorSpots; where they do not reach what can be reached in that gust, also with as much more ballast as helps and its
/// plates have room for, if it bears more so than by that ballast alone. On the calling thread.
std::vector<LineAdvice> best_lines(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                                   double gust_m_s, double above_m_s = 0);

/// best_lines() for a piece of which stand() answered this: those that are of use to it, where it stands outdoors and is not
/// found fine; otherwise none. Of use are lines that bear a twentieth more than the piece bears as it is, and where it stays
/// up already, lines that make it fine.
std::vector<LineAdvice> advise(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                               const PieceStanding& answer);

/// advise() for each of `answers`, which are of stand_all(). On all hardware threads.
std::vector<std::vector<LineAdvice>> advise_all(const Event& event, const BuiltEvent& built,
                                                const std::vector<PieceStanding>& answers);

/// The advice with all that it takes to rig it: the place of every anchor from the foot of `piece` that is nearest to it,
/// and the cord. "2 lines: one to the front, one to the back; tie front-1 (top, to the front) to a stake 2.60 m in front,
/// from the foot; …; cord: Nylon cord, 4 mm, 550 lb".
std::string advice_in_words(const LineAdvice& advice, const Area& area, const Piece& piece, Units units);

/// What becomes of the piece in a gust of `gust_m_s`, its forecast, as the end of a sentence that tells what it bears:
/// "and is fine in that gust".
std::string reaching_in_words(const LineAdvice& advice, double gust_m_s);

/// What is said where advise() has no lines for a piece that stands like this: "No lines that the site allows make it bear
/// more." Empty where none are sought, or no forecast is known.
std::string no_advice_in_words(const PieceStanding& answer);

/// "one to the front, two to the back left": by what direction each line leaves the piece, as the audience sees it.
std::string ways_in_words(const std::vector<SecuringLine>& lines, const PlacedPiece& placed, const Piece& piece,
                          const Area& area);

}  // namespace quadrille
