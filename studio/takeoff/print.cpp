#include "studio/takeoff/print.hpp"

#include <cmath>
#include <cstddef>

#include "sdk/number.hpp"
#include "studio/model/amounts.hpp"
#include "studio/model/figures.hpp"

namespace quadrille {
namespace {

constexpr double litres_per_cubic_foot = 28.316846592;  // 0.3048³ · 1000, exactly
constexpr double tiny = 1e-9;                           // what rounding up passes over

/// Line, tape or strip as it is measured out: from 3 m (10 ft) on no finer than a hand's breadth (a foot), rounded up so
/// that it suffices.
std::string print_run(double metres, LengthStyle lengths) {
  if (lengths == LengthStyle::metres)
    return metres < 3 ? print_length(metres, lengths) : print_fixed(std::ceil(metres * 10 - tiny) / 10, 1) + " m";
  const double feet = metres / metres_per_foot;
  return feet < 10 ? print_length(metres, lengths) : print_length(std::ceil(feet - tiny) * metres_per_foot, lengths);
}

std::string list_of(const std::vector<BoughtPacks>& bought) {
  std::string text;
  for (const BoughtPacks& kind : bought)
    text += (text.empty() ? "" : " + ") + std::to_string(kind.packs) + " × " + std::to_string(kind.pack_size);
  return text;
}

/// A share as a number of a hundred: "5", "2.5", "0.3", "less than 0.1".
std::string of_hundred(double share) {
  const double rounded = std::round(share * 1000) / 10;
  if (rounded == 0 && share > 0) return "less than 0.1";
  return print_number(rounded);
}

const char* word_of(Finish finish) {
  constexpr const char* words[] = {"matte", "pearl", "metallic", "clear"};
  return words[static_cast<std::size_t>(finish)];
}

}  // namespace

std::string print_nominal(double inches) { return print_number(inches) + " in"; }

std::string print_inflated(double metres, LengthStyle lengths) {
  return lengths == LengthStyle::feet_inches ? print_fixed(metres / metres_per_inch, 1) + " in"
                                             : print_fixed(metres * 100, 1) + " cm";
}

std::string print_quantity(double quantity, const std::string& unit, LengthStyle lengths) {
  if (unit == "m") return print_run(quantity, lengths);
  if (unit == "kg")
    return print_mass(quantity, lengths == LengthStyle::metres ? MassStyle::kilograms : MassStyle::pounds);
  if (unit == "l") return print_litres(quantity, lengths == LengthStyle::metres ? Units::metric : Units::feet);
  const bool whole = quantity == std::floor(quantity);
  const std::string number = print_fixed(quantity, whole ? 0 : 2);
  return unit == "piece" ? number : number + " " + unit;
}

std::string print_quantity(const SupplyLine& line, LengthStyle lengths) {
  return print_quantity(line.quantity, line.unit, lengths);
}

std::string print_packs(const BalloonLine& line) {
  if (!line.bought.empty()) return list_of(line.bought);
  if (line.colour == ColourReference{}) return "no colour chosen";
  if (line.order > 0) return "not sold in this size";
  return line.on_hand >= line.used + line.spares ? "from stock" : "from the packs above";
}

std::string print_packs(const BalloonBag& bag) {
  if (!bag.bought.empty()) return list_of(bag.bought);
  if (bag.order == 0) return "from stock";
  return bag.colour == ColourReference{} ? "no colour chosen" : "not sold in this size";
}

std::string print_spare_rule(const House& house, const EventCount& count) {
  std::string rates;
  double usual = failure_rate(House{}, 0, Finish::matte);
  for (const FailureRate& entry : house.failures) {
    std::string what = entry.nominal_in == 0 ? "" : print_nominal(entry.nominal_in);
    if (entry.finish) what += (what.empty() ? "" : " ") + std::string(word_of(*entry.finish));
    if (what.empty())
      usual = entry.rate;
    else
      rates += (rates.empty() ? "" : ", ") + what + ": " + of_hundred(entry.rate);
  }
  const double least = std::floor(figure_of(house, "least-spares"));
  std::string text = "Spares: so many that each colour and size runs short in at most " +
                     of_hundred(house.short_chance) + " of 100 builds, where " + of_hundred(usual) +
                     " in 100 balloons fail" + (rates.empty() ? "" : " (" + rates + ")") + ", spares too" +
                     (least > 0 ? "; at least " + print_fixed(least, 0) + " of each" : "") + ".";
  if (count.total_balloons > 0)
    text += " Something runs short in " + of_hundred(count.short_chance) + " of 100 such events, and in " +
            of_hundred(count.short_chance_with_packs) + " with all that is left in the packs.";
  return text;
}

std::string print_cost(const std::optional<Minor>& cost, const std::string& currency) {
  return cost ? print_money(*cost, currency) : "not known";
}

std::string print_source(const SupplyOrder& line, LengthStyle lengths) {
  std::string text;
  const auto add = [&](const std::string& part) { text += (text.empty() ? "" : " + ") + part; };
  const auto amount = [&](double quantity) { return print_quantity(quantity, line.unit, lengths); };
  if (line.from_kits > 0) add(amount(line.from_kits) + " in kits");
  if (line.on_hand > 0) add(amount(line.on_hand) + " from stock");
  if (line.packs > 0)
    add("buy " + std::to_string(line.packs) +
        (line.pack == 1 && line.unit == "piece" ? "" : " × " + amount(line.pack)));
  else if (line.pack == 0 && line.to_buy > 0)
    add(line.cost_minor ? amount(line.to_buy) : "buy " + amount(line.to_buy) + " (no price)");
  return text;
}

std::string print_use(const SupplyOrder& line) {
  if (line.pack == 0) return {};
  return line.reused ? "reused" : "used up";
}

std::string print_air(double litres, LengthStyle lengths) {
  return lengths == LengthStyle::metres ? print_fixed(litres, 0) + " l"
                                        : print_fixed(litres / litres_per_cubic_foot, 1) + " cu ft";
}

std::string print_watt_hours(double watt_hours) {
  return watt_hours <= 999 ? print_fixed(std::ceil(watt_hours - tiny), 0) + " Wh"
                           : print_fixed(std::ceil(watt_hours / 100 - tiny) / 10, 1) + " kWh";
}

std::string print_running(double seconds) {
  if (seconds <= 90) return print_fixed(std::ceil(seconds - tiny), 0) + " s";
  const double minutes = std::ceil(seconds / 60 - tiny), hours = std::floor(minutes / 60);
  const double rest = minutes - 60 * hours;
  return hours == 0 ? print_fixed(minutes, 0) + " min"
                    : print_fixed(hours, 0) + " h " + (rest < 10 ? "0" : "") + print_fixed(rest, 0) + " min";
}

std::string print_state(const PieceCount& piece) {
  if (piece.as_last_calculated) return "as last calculated";
  return piece.not_built ? "not built" : "";
}

}  // namespace quadrille
