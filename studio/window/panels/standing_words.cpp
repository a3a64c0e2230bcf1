#include "studio/window/panels/standing_words.hpp"

#include <cmath>
#include <utility>

#include "sdk/number.hpp"
#include "studio/model/capital.hpp"
#include "studio/model/lengths.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

struct CheckWords {
  const char *code, *name, *failure;
};

constexpr CheckWords all_words[] = {
    {"tips", "Plate tips", "a base plate tips"},
    {"slides", "Plate slides", "a base plate slides"},
    {"lifts", "Plate lifts off", "a base plate lifts off"},
    {"socket", "Foot in the ground", "a foot comes out of the ground"},
    {"rod", "Rod or pole", "a rod or pole breaks"},
    {"joint", "Joint", "a joint parts"},
    {"line", "Line", "a line pulls more than its working load"},
    {"anchor", "Anchor", "an anchor gives way"},
    {"hook", "Hook or tie", "a hook or tie lets go"},
    {"lean", "Leans", "it leans too far"},
    {"topples", "Topples", "it topples"},
};

const CheckWords* words_of(const std::string& code) {
  for (const CheckWords& words : all_words)
    if (code == words.code) return &words;
  return nullptr;
}

SpeedStyle speeds_in(Units units) {
  return units == Units::feet ? SpeedStyle::miles_per_hour : SpeedStyle::kilometres_per_hour;
}

bool is_reckoned(const PieceStanding& standing) { return !standing.checks.empty(); }

/// Nobody leans on what hangs on hooks or ties: see PieceStanding::push_n.
bool is_hung(const PieceStanding& standing) { return is_reckoned(standing) && standing.push_n == 0; }

std::string pushed_words(const PieceStanding& standing) {
  return print_fixed(standing.bears_push_n, 0) + " N at hand height, of the " + print_fixed(standing.push_n, 0) +
         " N of somebody who leans on it";
}

void say_limit(const PieceStanding& standing, Units units, std::string& text) {
  text += "It bears gusts of " + limit_words(standing, units) + ".";
  if (!standing.governing.code.empty())
    text += " First " + failure_words(standing.governing) + ", in wind " +
            wind_words(standing.governing.direction_deg) + ".";
  text += "\n";
}

void say_what_would_do(const StandingReport& report, Units units, std::string& text) {
  const PieceStanding& standing = report.standing;
  if (!standing.forecast_known || !standing.outdoors) return;
  const std::string gust = gust_words(standing.gust_m_s, units);
  if (standing.ballast_needed_kg && *standing.ballast_needed_kg > 0)
    text += "For the forecast of " + gust + " each foot needs " +
            print_mass(*standing.ballast_needed_kg, masses_in(units)) + " of ballast, beside its plate.\n";
  if (standing.verdict == Verdict::fine || is_hung(standing)) return;
  if (!report.advised) {
    text += "Lines that would hold it are being tried…\n";
    return;
  }
  if (const std::string none = no_advice_in_words(standing); report.advice.empty() && !none.empty())
    text += none + "\n";
  for (const LineAdvice& advice : report.advice)
    text += "With " + advice.words +
            (advice.ballast_kg ? ", and " + print_mass_needed(*advice.ballast_kg, units, 0) + " of ballast on each foot"
                               : std::string()) +
            ": it bears " + gust_words(advice.limit_gust_m_s, units) + ", " +
            reaching_in_words(advice, standing.gust_m_s) + ".\n";
}

/// Alike lines that leave alike limits are said once.
void say_lost_lines(const PieceStanding& standing, Units units, std::string& text) {
  std::vector<std::pair<std::string, int>> said;
  for (const WithoutLine& lost : standing.without) {
    const std::string words =
        "If the line " + lost.line + " is lost, it bears " + gust_words(lost.limit_gust_m_s, units) + ".";
    if (!said.empty() && said.back().first == words)
      ++said.back().second;
    else
      said.emplace_back(words, 1);
  }
  for (const auto& [words, times] : said)
    text += words + (times > 1 ? " (" + std::to_string(times) + " lines alike.)" : "") + "\n";
}

}  // namespace

std::string speed_in(double m_s, Units units) { return print_speed(m_s, speeds_in(units)); }

std::string gust_words(double m_s, Units units) {
  return speed_in(m_s, units) + ", Beaufort " + std::to_string(beaufort_of(m_s).number);
}

std::string gust_in_full(double m_s, Units units) {
  const bool feet = units == Units::feet;
  const BeaufortBand& band = beaufort_of(m_s);
  return print_speed(m_s, speeds_in(units)) + ", " + print_speed(m_s, speeds_in(feet ? Units::metric : Units::feet)) +
         ", Beaufort " + std::to_string(band.number) + " (" + band.name + ")";
}

std::string check_words(const StandingCheck& check) {
  const CheckWords* words = words_of(check.code);
  // "Line, line front-1" would say the word twice.
  if (words != nullptr && check.where.starts_with(check.code)) return with_capital(check.where);
  const std::string name = words != nullptr ? words->name : check.code;
  return name + (check.where.empty() ? "" : ", " + check.where);
}

std::string failure_words(const StandingCheck& check) {
  const CheckWords* words = words_of(check.code);
  const std::string failure = words != nullptr ? words->failure : check.code;
  return failure + (check.where.empty() ? "" : ", " + check.where);
}

std::string used_words(double utilisation) {
  const std::string fails = utilisation > 1 ? ", fails" : "";
  if (utilisation > 9.99) return "over 999 %" + fails;
  // What fails by a hair is not to be read as just borne.
  const double percent = utilisation > 1 ? std::ceil(100 * utilisation) : std::floor(100 * utilisation + 0.5);
  return print_fixed(percent, 0) + " %" + fails;
}

std::string amount_words(double number, const std::string& unit, Units units) {
  if (unit == "Pa") return print_fixed(number / 1e6, 0) + " MPa";
  if (unit == "m") return print_length(number, lengths_in(units));
  if (unit == "of the load") return print_fixed(100 * number, 0) + " % of the load";
  return print_fixed(number, number >= 0.05 && number < 10 ? 1 : 0) + " " + unit;
}

std::string verdict_words(const PieceStanding& standing) {
  if (!is_reckoned(standing)) return "cannot be told";
  const bool indoors = !standing.forecast_known && !standing.outdoors;
  if (!standing.forecast_known && !indoors) return "no forecast";
  const std::string how = is_hung(standing) ? ", hangs" : indoors ? " indoors" : "";
  switch (standing.verdict) {
    case Verdict::fine:
      return "fine" + how;
    case Verdict::watch:
      return how.empty() ? "watch it" : "watch" + how;
    case Verdict::no:
      // It would bear the gust, but is not left up so near its limit.
      if (standing.outdoors && standing.gust_m_s <= standing.limit_gust_m_s) return "take it down";
      return is_hung(standing) ? "does not hold" : "not standing";
    case Verdict::unknown:
      break;
  }
  return "cannot be told";
}

std::string limit_speed(const PieceStanding& standing, Units units) {
  if (!is_reckoned(standing)) return "–";
  return (standing.limit_beyond ? "over " : "") + speed_in(standing.limit_gust_m_s, units);
}

std::string limit_words(const PieceStanding& standing, Units units) {
  if (!is_reckoned(standing)) return "–";
  return (standing.limit_beyond ? "over " : "") + gust_words(standing.limit_gust_m_s, units);
}

std::string side_words(double direction_deg) {
  const std::string words = wind_words(direction_deg);
  std::string_view rest = words;
  for (const std::string_view start : {"from ", "the "})
    if (rest.starts_with(start)) rest.remove_prefix(start.size());
  constexpr std::string_view between = " on the ";
  const auto at = rest.find(between);
  if (at == std::string_view::npos) return std::string(rest);
  return std::string(rest.substr(0, at)) + ", " + std::string(rest.substr(at + between.size()));
}

std::string shift_words(const Vec3& shift_m, Units units) {
  constexpr double least_m = 0.005;
  std::string text;
  const auto add = [&](double part_m, const char* positive, const char* negative) {
    if (std::abs(part_m) < least_m) return;
    text += (text.empty() ? "" : ", ") + print_length(std::abs(part_m), lengths_in(units)) + " " +
            (part_m > 0 ? positive : negative);
  };
  add(shift_m.x(), "to the right", "to the left");
  add(shift_m.y(), "away from you", "towards you");
  add(shift_m.z(), "up", "down");
  return text;
}

std::string standing_text(const StandingReport& report, Units units) {
  const PieceStanding& standing = report.standing;
  if (!is_reckoned(standing)) return standing.reason;
  std::string text;
  for (const std::string& fault : standing.faults) text += fault + "\n";
  for (const std::string& line : standing.not_counted) text += line + "\n";
  if (standing.outdoors && !standing.forecast_known)
    text += "No gust is forecast for this area, so nobody can say whether it stands: enter the forecast.\n";
  if (!standing.converged) text += with_capital(standing.reason) + "\n";
  say_limit(standing, units, text);
  say_what_would_do(report, units, text);
  say_lost_lines(standing, units, text);
  if (is_hung(standing))
    text += "It hangs: each hook or tie bears its part, and lines are not reckoned with.\n";
  else
    text += "It bears a push of " + pushed_words(standing) + ".\n";
  text.pop_back();
  return text;
}

}  // namespace quadrille
