#include "studio/standing/site_words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/lengths.hpp"

namespace quadrille {
namespace {

constexpr double newtons_per_pound_force = kilograms_per_pound * 9.80665;

std::string with_decimals(double number, double whole_from) { return print_fixed(number, number < whole_from ? 1 : 0); }

}  // namespace

double gust_number(double m_s, Units units) {
  return units == Units::feet ? m_s / metres_per_second_per_mph : m_s * 3.6;
}

std::string print_gust(double m_s, Units units) {
  const double speed = gust_number(m_s, units);
  std::string number = print_fixed(speed, 1);
  if (speed >= 20 && number.ends_with(".0")) number.resize(number.size() - 2);
  return number + (units == Units::feet ? " mph" : " km/h");
}

std::string print_mass_needed(double kg, Units units, int decimals) {
  const double mass = units == Units::feet ? kg / kilograms_per_pound : kg, steps = std::pow(10.0, decimals);
  return print_fixed(std::ceil(mass * steps - 1e-6) / steps, decimals) + (units == Units::feet ? " lb" : " kg");
}

std::string print_force(double newtons, Units units) {
  return units == Units::feet ? with_decimals(newtons / newtons_per_pound_force, 10) + " lbf"
                              : with_decimals(newtons, 10) + " N";
}

std::string print_amount(double number, std::string_view unit, Units units) {
  const bool feet = units == Units::feet;
  if (unit == "N") return print_force(number, units);
  if (unit == "m") return print_length(number, lengths_in(units));
  if (unit == "Nm")
    return feet ? with_decimals(number / (newtons_per_pound_force * metres_per_foot), 10) + " ft·lbf"
                : with_decimals(number, 10) + " Nm";
  if (unit == "Pa") {
    const double psi = number * metres_per_inch * metres_per_inch / newtons_per_pound_force;
    return feet ? print_fixed(std::round(psi / 100) * 100, 0) + " psi" : with_decimals(number / 1e6, 10) + " MPa";
  }
  if (unit == "of the load") return print_fixed(100 * number, 0) + " % of the load";
  return print_number(number) + " " + std::string(unit);
}

std::string place_words(const AnchorPlace& place, Units units) {
  constexpr double least_m = 0.05;
  const double x_m = place.right_m, y_m = place.away_m;
  const LengthStyle style = lengths_in(units);
  std::string words;
  if (std::abs(y_m) >= least_m) words = print_length(std::abs(y_m), style) + (y_m < 0 ? " in front" : " behind");
  if (std::abs(x_m) >= least_m)
    words +=
        (words.empty() ? "" : ", ") + print_length(std::abs(x_m), style) + (x_m < 0 ? " to the left" : " to the right");
  return (words.empty() ? "at the " : words + ", from the ") + (place.foot.empty() ? "piece's place" : place.foot);
}

std::string anchor_in_words(const SecuringLine& line, const Area& area, const Piece& piece, Units units) {
  const auto place = [&] { return place_words(anchor_place(piece, line.x_m, line.y_m), units); };
  if (line.anchor == AnchorKind::stake) return "a stake " + place();
  if (line.anchor == AnchorKind::dead_weight)
    return "a dead weight of " + print_mass(line.mass_kg, masses_in(units)) + " " + place();
  const auto structure = std::ranges::find(area.structures, line.structure, &Structure::id);
  const bool named = structure != area.structures.end() && !structure->name.empty();
  return (named ? structure->name : line.structure) + ", at " + print_length(line.height_m, lengths_in(units)) +
         " of height";
}

const char* failure_of(std::string_view code) {
  constexpr std::pair<const char*, const char*> words[] = {
      {"tips", "a base plate tips"},
      {"slides", "a base plate slides"},
      {"lifts", "a base plate lifts off"},
      {"socket", "a foot comes out of the ground"},
      {"rod", "a rod or pole is overstressed"},
      {"joint", "a joint parts"},
      {"line", "a line pulls more than its working load"},
      {"anchor", "an anchor gives way"},
      {"hook", "a hook or tie bears more than it holds"},
      {"lean", "it leans too far"},
      {"topples", "it topples"},
      {"no-rest", "no rest was found within the bound on the work"},
  };
  for (const auto& [known, sentence] : words)
    if (code == known) return sentence;
  return "a check fails";
}

}  // namespace quadrille
