#include "studio/standing/ballast.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/amounts.hpp"
#include "studio/standing/counted_lines.hpp"
#include "studio/standing/number_word.hpp"

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

double unit_kg(Units units) { return units == Units::feet ? kilograms_per_pound : 1; }

/// Up to a whole pound or kilogram, as it is told; to a tenth where the plate has no room for that.
double told_kg(double kg, double limit_kg, Units units) {
  const double unit = unit_kg(units), whole = std::ceil(kg / unit - 1e-6) * unit;
  return limit_kg > 0 && whole > limit_kg ? std::ceil(kg / unit * 10 - 1e-6) / 10 * unit : whole;
}

std::string mass_words(double kg, Units units) {
  const double mass = kg / unit_kg(units);
  return print_fixed(mass, std::abs(mass - std::round(mass)) < 0.05 ? 0 : 1) + (units == Units::feet ? " lb" : " kg");
}

/// How many more containers of this size hold it on each foot; 0 where the foot's ballast is no number of full ones, or
/// the plate has no room for them.
int more_containers(const BallastAdvice& ballast, double kg, double container_kg) {
  constexpr double same = 0.02, most = 50;
  if (!(container_kg > 0)) return 0;
  const double has = std::round(ballast.has_kg / container_kg), wants = std::ceil(kg / container_kg - 1e-6);
  if (std::abs(has * container_kg - ballast.has_kg) > same * container_kg || wants - has > most) return 0;
  if (ballast.limit_kg > 0 && wants * container_kg > ballast.limit_kg) return 0;
  return static_cast<int>(wants - has);
}

/// "With 12 kg of ballast on each foot instead of 10 kg", "With a second container on each foot (20 kg)"; `briefly`, after
/// such a one, "with 12 kg".
std::string with_more(const BallastAdvice& ballast, double kg, Units units, double container_kg, bool briefly = false) {
  const std::string with = briefly ? "with " : "With ";
  if (const int more = more_containers(ballast, kg, container_kg); more > 0) {
    const int has = static_cast<int>(std::lround(ballast.has_kg / container_kg));
    const std::string many = number_word(static_cast<std::size_t>(more));
    const std::string what = more > 1   ? many + (has > 0 ? " more containers" : " containers")
                             : has == 0 ? "a container"
                             : has == 1 ? "a second container"
                                        : "one more container";
    return with + what + " on each foot (" + print_load((has + more) * container_kg, units) + ")";
  }
  const std::string amount = with + mass_words(told_kg(kg, ballast.limit_kg, units), units);
  if (briefly) return amount;
  return amount + " of ballast on each foot instead of " +
         (ballast.has_kg > 0 ? print_load(ballast.has_kg, units) : "none");
}

}  // namespace

std::optional<ValueChange> ballast_change(const PieceStanding& answer, Units units) {
  const Advised ballast = advised(answer);
  if (ballast.does == BallastDoes::nothing || ballast.does == BallastDoes::is_too_much) return std::nullopt;
  double kg = told_kg(ballast.kg, answer.ballast.limit_kg, units);
  if (answer.ballast.limit_kg > 0 && kg > answer.ballast.limit_kg) kg = ballast.kg;
  return ValueChange{answer.id, ballast_parameter, Value::of_number(Kind::mass, kg)};
}

std::string ballast_in_words(const PieceStanding& answer, Units units, double container_kg) {
  const BallastAdvice& ballast = answer.ballast;
  const Advised what = advised(answer);
  const auto with = [&](double kg) { return with_more(ballast, kg, units, container_kg); };
  switch (what.does) {
    case BallastDoes::lets_it_stay_up: {
      const bool could_be_fine = ballast.fine_kg && *ballast.fine_kg > ballast.has_kg;
      const std::string fine = could_be_fine ? with_more(ballast, *ballast.fine_kg, units, container_kg, true) : "";
      const bool does_it_at_once = could_be_fine && with(*ballast.fine_kg) == with(what.kg);
      if (does_it_at_once) return with(what.kg) + " it is fine in that gust.";
      return with(what.kg) + " it stays up in that gust, watched" +
             (could_be_fine ? "; " + fine + " it is fine." : ".");
    }
    case BallastDoes::makes_it_fine:
      return with(what.kg) + " it is fine in that gust.";
    case BallastDoes::is_too_much:
      return "It would take " + mass_words(told_kg(what.kg, 0, units), units) +
             " of ballast on each foot, and its plate has room for " + mass_words(ballast.limit_kg, units) +
             ": take a wider plate.";
    case BallastDoes::bears_push:
      return with(what.kg) + " it also bears somebody who leans on it.";
    case BallastDoes::nothing:
      break;
  }
  return {};
}

}  // namespace quadrille
