#include "studio/standing/ballast.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/units.hpp"
#include "studio/model/lengths.hpp"
#include "studio/standing/counted_lines.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {
namespace {

bool has_plate(const Piece& piece) {
  return std::ranges::any_of(piece.supports, [](const Support& foot) { return foot.kind == SupportKind::plate; });
}

bool is_of_plate(const StandingCheck& check) {
  return check.code == "tips" || check.code == "slides" || check.code == "lifts";
}

bool only_plates_fail(const std::vector<StandingCheck>& checks) {
  return std::ranges::all_of(checks,
                             [](const StandingCheck& check) { return check.utilisation <= 1 || is_of_plate(check); });
}

/// Up to the tenth of a kilogram that is printed.
double rounded_up_kg(double kg) { return std::ceil(kg * 10 - 1e-6) / 10; }

class Trials {
 public:
  Trials(const Event& event, const Area& area, const PlacedPiece& placed, StandingCase& counted)
      : event_(event), area_(area), placed_(placed), counted_(counted), piece_(counted.piece()) {}

  /// What brings the limit gust up to `limit_m_s`; `beyond_kg` grows to what finds no room.
  std::optional<double> for_limit(std::optional<double> limit_m_s, double& beyond_kg) {
    if (!limit_m_s || *limit_m_s > highest_gust_m_s) return std::nullopt;
    auto kg = ballast_for_limit(counted_, *limit_m_s);
    if (!kg) return std::nullopt;
    const double room = ballast_room_kg(piece_);
    for (int trial = 0; trial < 4; ++trial, *kg = *kg * 1.05 + 0.1) {
      *kg = rounded_up_kg(*kg);
      if (*kg >= most_ballast_kg) return std::nullopt;
      if (room > 0 && *kg > room) {
        beyond_kg = std::max(beyond_kg, *kg);
        return std::nullopt;
      }
      if (*kg <= ballast_on(piece_) || reaches(*kg, *limit_m_s)) return kg;
    }
    return std::nullopt;
  }

  /// What lets it bear a push at hand height from four sides.
  std::optional<double> for_push(double push_n, double height_m) {
    double kg = 0;
    for (const double direction : {90.0, 270.0, 0.0, 180.0}) {
      const WindAnswer answer = counted_.pushed(push_n, height_m, direction);
      if (!answer.stands || !only_plates_fail(answer.checks)) return std::nullopt;
      kg = std::max(kg, counted_.ballast_needed_kg(answer));
    }
    kg = rounded_up_kg(1.01 * kg);
    const double room = ballast_room_kg(piece_);
    if (kg >= most_ballast_kg || (room > 0 && kg > room)) return std::nullopt;
    return kg;
  }

 private:
  bool reaches(double kg, double limit_m_s) const {
    const Piece heavier = with_ballast(piece_, kg);
    return secured(event_, area_, placed_, heavier, counted_.loads()).limit.gust_m_s >= limit_m_s;
  }

  const Event& event_;
  const Area& area_;
  const PlacedPiece& placed_;
  StandingCase& counted_;
  const Piece& piece_;
};

}  // namespace

Piece with_ballast(const Piece& piece, double kg) {
  Piece heavier = piece;
  for (Support& foot : heavier.supports)
    if (foot.kind == SupportKind::plate) foot.ballast_kg = std::max(foot.ballast_kg, kg);
  return heavier;
}

double ballast_on(const Piece& piece) {
  double least = most_ballast_kg;
  for (const Support& foot : piece.supports)
    if (foot.kind == SupportKind::plate) least = std::min(least, foot.ballast_kg);
  return has_plate(piece) ? least : 0;
}

double ballast_room_kg(const Piece& piece) {
  double room = 0;
  for (const Support& foot : piece.supports)
    if (foot.kind == SupportKind::plate && foot.ballast_limit_kg > 0)
      room = room > 0 ? std::min(room, foot.ballast_limit_kg) : foot.ballast_limit_kg;
  return room;
}

std::optional<double> ballast_for(StandingCase& its, double gust_m_s) {
  if (!has_plate(its.piece())) return std::nullopt;
  const StandingCase::AllRound round = its.all_round(gust_m_s);
  if (!round.stands || !only_plates_fail(round.checks)) return std::nullopt;
  return round.ballast_needed_kg;
}

std::optional<double> ballast_for_limit(StandingCase& its, double limit_m_s) {
  constexpr double above = 1.02;  // limits are found one part in a hundred below what fails
  if (const auto kg = ballast_for(its, std::min(above * limit_m_s, highest_gust_m_s))) return kg;
  return ballast_for(its, limit_m_s);
}

BallastAdvice ballast_advice(const Event& event, const Area& area, const PlacedPiece& placed, StandingCase& counted,
                             double gust_m_s, double push_n) {
  BallastAdvice advice;
  if (!has_plate(counted.piece())) return advice;
  advice.has_kg = ballast_on(counted.piece());
  advice.limit_kg = ballast_room_kg(counted.piece());
  Trials trials(event, area, placed, counted);
  const Assumptions& figures = counted.assumptions();
  const double watch = figures["watch-share"], take_down = figures["take-down-share"];
  if (gust_m_s > 0) {
    advice.stays_up_kg = trials.for_limit(limit_for_m_s(gust_m_s, take_down, take_down), advice.beyond_kg);
    if (advice.stays_up_kg) {
      double beyond = 0;
      advice.fine_kg = trials.for_limit(limit_for_m_s(gust_m_s, watch, take_down), beyond);
    }
  }
  if (push_n > 0) advice.bears_push_kg = trials.for_push(push_n, figures["push-height"]);
  return advice;
}

namespace {

enum class BallastDoes { nothing, lets_it_stay_up, makes_it_fine, is_too_much, bears_push };

struct Advised {
  BallastDoes does = BallastDoes::nothing;
  double kg = 0;  ///< on each foot
};

/// What ballast is advised for what is wrong with the piece.
Advised advised(const PieceStanding& answer) {
  const BallastAdvice& ballast = answer.ballast;
  const auto lacks = [&](const std::optional<double>& kg) { return kg && *kg > ballast.has_kg; };
  if (answer.verdict == Verdict::no && lacks(ballast.stays_up_kg))
    return {BallastDoes::lets_it_stay_up, *ballast.stays_up_kg};
  if (answer.verdict == Verdict::watch && answer.gust_m_s > 0)
    return lacks(ballast.fine_kg) ? Advised{BallastDoes::makes_it_fine, *ballast.fine_kg} : Advised{};
  if (answer.verdict == Verdict::no && ballast.beyond_kg > 0) return {BallastDoes::is_too_much, ballast.beyond_kg};
  const bool leaned_on = answer.gust_m_s == 0 && answer.push_asked && answer.bears_push_n < answer.push_n;
  if (leaned_on && lacks(ballast.bears_push_kg)) return {BallastDoes::bears_push, *ballast.bears_push_kg};
  return {};
}

}  // namespace

std::optional<ValueChange> ballast_change(const PieceStanding& answer, Units units) {
  const Advised ballast = advised(answer);
  if (ballast.does == BallastDoes::nothing || ballast.does == BallastDoes::is_too_much) return std::nullopt;
  const double unit_kg = units == Units::feet ? kilograms_per_pound : 1;
  double kg = std::ceil(ballast.kg / unit_kg * 10 - 1e-6) / 10 * unit_kg;
  if (answer.ballast.limit_kg > 0 && kg > answer.ballast.limit_kg) kg = ballast.kg;
  return ValueChange{answer.id, ballast_parameter, Value::of_number(Kind::mass, kg)};
}

std::string ballast_in_words(const PieceStanding& answer, Units units) {
  const auto mass = [&](double kg) { return print_mass(kg, masses_in(units)); };
  const auto needed = [&](double kg) { return print_mass_needed(kg, units, 1); };
  const BallastAdvice& ballast = answer.ballast;
  const Advised what = advised(answer);
  const std::string put = needed(what.kg) + " of ballast on each foot, where " + mass(ballast.has_kg) + " are";
  switch (what.does) {
    case BallastDoes::lets_it_stay_up: {
      const bool could_be_fine = ballast.fine_kg && *ballast.fine_kg > ballast.has_kg;
      return "Put " + put + ": then it stays up in that gust, watched" +
             (could_be_fine ? "; with " + needed(*ballast.fine_kg) + " it is fine." : ".");
    }
    case BallastDoes::makes_it_fine:
      return "Put " + put + ": then it is fine in that gust.";
    case BallastDoes::is_too_much:
      return "It would take " + put + ", and its plate has room for " + mass(ballast.limit_kg) +
             ": take a wider plate.";
    case BallastDoes::bears_push:
      return "Put " + put + ": then it bears somebody who leans on it.";
    case BallastDoes::nothing:
      break;
  }
  return {};
}

}  // namespace quadrille
