// What ballast does for a piece: how much it takes to reach a gust, and whether its plates have room for that.
#pragma once

#include <memory>
#include <optional>

#include "studio/standing/piece_standing.hpp"
#include "studio/standing/standing_case.hpp"

namespace quadrille {

/// The piece with at least this much ballast on each plate [kg].
Piece with_ballast(const Piece& piece, double kg);

/// The least ballast on any plate [kg]; 0 where there is none.
double ballast_on(const Piece& piece);

/// What every plate has room for [kg]: the least of what the piece type says; 0 where it says nothing or there is no plate.
double ballast_room_kg(const Piece& piece);

/// What must be on each plate, beside its own mass, so that no check fails in this gust from any side [kg]; nothing where
/// there is no plate or something else than a plate fails.
std::optional<double> ballast_for(StandingCase& its, double gust_m_s);

/// The same for a limit gust of `limit_m_s`: with room for how finely limits are found, where something else than a plate
/// does not fail just above it. To be tried: it may fall short by as much as that.
std::optional<double> ballast_for_limit(StandingCase& its, double limit_m_s);

/// What ballast does for the piece with its lines in a gust, and for somebody who leans on it where `push_n` is above 0.
/// What is advised has been tried: with it the limit gust is what the verdict asks for.
BallastAdvice ballast_advice(const Event& event, const Area& area, const PlacedPiece& placed, StandingCase& counted,
                             double gust_m_s, double push_n);

/// The parameter by which piece types take ballast on each foot, of kind mass.
inline constexpr const char* ballast_parameter = "ballast";

/// The change that ballast_in_words() tells first: what lets it stay up, be fine, or bear a push. Rounded up as it is told
/// [whole kilograms or pounds], as far as the plate has room. Nothing where the words tell of none.
std::optional<ValueChange> ballast_change(const PieceStanding& answer, Units units);

/// "With 12 kg of ballast on each foot instead of 10 kg it stays up in that gust, watched; with 31 kg it is fine.", or,
/// where a full container holds `container_kg`, "With a second container on each foot (20 kg) …", rounded up to
/// containers. Empty where ballast does nothing for it or enough is there.
std::string ballast_in_words(const PieceStanding& answer, Units units, double container_kg = 0);

}  // namespace quadrille
