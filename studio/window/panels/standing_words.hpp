// How a piece stands, in words for the window.
#pragma once

#include <string>
#include <string_view>

#include "studio/model/event.hpp"
#include "studio/standing/checks.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/window/job/standing_worker.hpp"

namespace quadrille {

/// "16 mph" or "26 km/h".
std::string speed_in(double m_s, Units units);
/// "16 mph, Beaufort 4" in the units of the event.
std::string gust_words(double m_s, Units units);
/// "16 mph, 26 km/h, Beaufort 4 (moderate breeze)", the event's unit first.
std::string gust_in_full(double m_s, Units units);

/// What is looked at, and where: "Plate tips, left foot", "Rod or pole"; a code that is not known stands for itself.
std::string check_words(const StandingCheck& check);
/// What happens where it fails: "a base plate tips, left foot".
std::string failure_words(const StandingCheck& check);
/// "66 %", "131 %, fails"; what is beyond measure is "over 999 %, fails".
std::string used_words(double utilisation);
/// A check's figure with its unit, lengths as the event prints them.
std::string amount_words(double number, const std::string& unit, Units units);

/// "fine", "watch it", "take it down" (it would bear the gust, but that is past its level), "not standing", with a word where it stands indoors or hangs; or what is the matter instead.
std::string verdict_words(const PieceStanding& standing);
/// "16 mph, Beaufort 4"; "more than …" where nothing failed; "–" where nothing was reckoned.
std::string limit_words(const PieceStanding& standing, Units units);
/// The same without the Beaufort number: "16 mph".
std::string limit_speed(const PieceStanding& standing, Units units);

/// Where a wind comes from, to stand under "from": "front", "behind, left".
std::string side_words(double direction_deg);

/// How far and which way something moved [m]: "5 cm to the right and 40 cm towards you".
std::string shift_words(const Vec3& shift_m, Units units);

/// All there is to say of one piece beside its checks: its limit, what would make it stand, what a lost line leaves, who
/// may lean on it. Several lines.
std::string standing_text(const StandingReport& report, Units units);

}  // namespace quadrille
