#include "studio/model/parameter_check.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "sdk/units.hpp"
#include "sdk/value_text.hpp"
#include "sdk/vec.hpp"

namespace quadrille {
namespace {

std::string name_of(Kind kind) {
  switch (kind) {
    case Kind::length:
      return "a length";
    case Kind::angle:
      return "an angle";
    case Kind::mass:
      return "a mass";
    case Kind::count:
    case Kind::slots:
    case Kind::seed:
      return "a whole number";
    case Kind::ratio:
      return "a number";
    case Kind::flag:
      return "yes or no";
    case Kind::balloon:
      return "a nominal balloon size";
    case Kind::choice:
      return "one of its choices";
    case Kind::rows:
      return "rows of slot letters";
    case Kind::path:
      return "points";
    case Kind::mix:
      return "balloon sizes with shares";
  }
  return "another value";
}

/// The same in feet, inches or pounds, for readers who think in them: "22' 11 1/2\"", "0.16 in", "2.2 lb"; empty for
/// other kinds and for what is too large to be meant.
std::string in_feet_or_pounds(Kind kind, double number) {
  constexpr double most_meant = 1e6, too_small_for_half_inches = 0.1;
  if (!(std::abs(number) < most_meant)) return {};
  if (kind == Kind::mass) return print_mass(number, MassStyle::pounds);
  if (kind != Kind::length) return {};
  if (number == 0 || std::abs(number) >= too_small_for_half_inches) return print_feet_inches(number);
  return print_number(std::round(number / metres_per_inch * 100) / 100) + " in";
}

std::string in_brackets(const std::string& text) { return text.empty() ? text : " (" + text + ")"; }

/// "0.5 m to 6 m (1' 7 1/2\" to 19' 8\")".
std::string range_of(Kind kind, double least, double most) {
  if (kind == Kind::flag) return "yes or no";
  const std::string from = in_feet_or_pounds(kind, least), to = in_feet_or_pounds(kind, most);
  return in_words(kind, least) + " to " + in_words(kind, most) +
         in_brackets(from.empty() || to.empty() ? "" : from + " to " + to);
}

std::string choices_of(const Parameter& p) {
  std::string list;
  for (std::size_t i = 0; i < p.choices.size(); ++i)
    list += (i == 0 ? "" : i + 1 == p.choices.size() ? " or " : ", ") + p.choices[i].key;
  return list;
}

/// How sentences name a parameter; its key goes with the message.
std::string name_of(const Parameter& p) { return p.label; }

std::string number_of(Kind kind, double number) {
  return in_words(kind, number) + in_brackets(in_feet_or_pounds(kind, number));
}

std::string fault_of_number(const Parameter& p, double number) {
  const std::string accepted = range_of(p.kind, p.hard_min, p.hard_max) + " would be accepted.";
  if (!std::isfinite(number)) return name_of(p) + " is not a finite number: " + accepted;
  if (number < p.hard_min || number > p.hard_max)
    return name_of(p) + " is " + number_of(p.kind, number) + ": " + accepted;
  if (is_whole(p.kind) && number != std::floor(number))
    return name_of(p) + " is " + print_number(number) + ", which is no whole number: " + accepted;
  return {};
}

std::string fault_of_text(const Parameter& p, const std::string& text) {
  if (text.size() > most_value_text) return name_of(p) + " is a longer text than the studio takes.";
  if (p.kind == Kind::choice) {
    if (std::ranges::find(p.choices, text, &Choice::key) != p.choices.end()) return {};
    return name_of(p) + " is " + quoted(text) + ": " + choices_of(p) + " would be accepted.";
  }
  const auto rows = parse_rows(text);
  return rows ? std::string() : name_of(p) + ": " + rows.error;
}

std::string fault_of_mix(const Parameter& p, const std::vector<double>& list) {
  double shares = 0;
  for (std::size_t i = 0; i < list.size(); i += 3) {
    if (list[i] <= 0 || list[i + 1] <= 0 || list[i + 2] < 0)
      return name_of(p) + ", entry " + std::to_string(i / 3 + 1) +
             ": sizes above 0 and a share of 0 or more would be " + "accepted.";
    shares += list[i + 2];
  }
  if (!list.empty() && !(shares > 0)) return name_of(p) + " has no share above 0: at least one would be accepted.";
  return {};
}

std::string fault_of_list(const Parameter& p, const std::vector<double>& list) {
  if (list.size() % 3 != 0)
    return name_of(p) + " does not consist of whole triples: " + name_of(p.kind) + " would be accepted.";
  if (list.size() > most_list)
    return name_of(p) + " has more than " + std::to_string(most_list / 3) + " entries: fewer would be accepted.";
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string place = name_of(p) + ", entry " + std::to_string(i / 3 + 1);
    if (!std::isfinite(list[i])) return place + " is not finite: finite numbers would be accepted.";
    if (p.kind == Kind::path && (list[i] < p.hard_min || list[i] > p.hard_max))
      return place + ": a coordinate is " + number_of(Kind::length, list[i]) + ": " +
             range_of(Kind::length, p.hard_min, p.hard_max) + " would be accepted.";
  }
  return p.kind == Kind::mix ? fault_of_mix(p, list) : std::string();
}

}  // namespace

std::string in_words(Kind kind, double number) {
  switch (kind) {
    case Kind::length:
      return print_number(number) + " m";
    case Kind::angle:
      return print_number(std::round(number * 180 / pi * 1e6) / 1e6) + "°";
    case Kind::mass:
      return print_number(number) + " kg";
    case Kind::balloon:
      return print_number(number) + " in";
    case Kind::flag:
      return number == 0 ? "no" : number == 1 ? "yes" : print_number(number);
    case Kind::count:
    case Kind::slots:
    case Kind::seed:
      return std::abs(number) < 1e15 && number == std::floor(number) ? print_fixed(number, 0) : print_number(number);
    default:
      return print_number(number);
  }
}

std::string fault_of_value(const Parameter& p, const Value& value) {
  if (value.kind != p.kind)
    return name_of(p) + " holds another kind of value: " + name_of(p.kind) +
           (p.choices.empty() ? ""
                              : ", " + choices_of(p) + ", in a file written choice=" + quoted(p.choices[0].key) + ",") +
           " would be accepted.";
  if (is_number(p.kind)) return fault_of_number(p, value.number);
  if (is_text(p.kind)) return fault_of_text(p, value.text);
  return fault_of_list(p, value.list);
}

std::string accepted_range(const Parameter& p) { return range_of(p.kind, p.hard_min, p.hard_max); }

Value in_one_form(const Value& value) {
  if (is_number(value.kind)) return Value::of_number(value.kind, value.number == 0 ? 0.0 : value.number);
  if (value.kind == Kind::rows) return *parse_rows(value.text);
  if (is_text(value.kind)) return Value::of_text(value.kind, value.text);
  Value list = Value::of_list(value.kind, value.list);
  for (double& number : list.list) number = number == 0 ? 0.0 : number;
  return list;
}

std::string unit_meant(const Parameter& p, double number) {
  const auto is_usual = [&](double value) { return value >= p.display_min && value <= p.display_max; };
  if (p.kind != Kind::length || !std::isfinite(number) || is_usual(number)) return {};
  constexpr std::size_t most_offered = 2;
  std::vector<std::string> offers;
  for (const char* unit : {"ft", "in", "cm", "mm"}) {
    const std::string text = print_number(number) + unit;
    const auto meant = parse_length(text);
    if (meant && is_usual(*meant) && offers.size() < most_offered)
      offers.push_back(text + " (" + in_words(p.kind, *meant) + ")");
  }
  if (offers.empty()) return {};
  return "did you mean " + offers.front() + (offers.size() > 1 ? " or " + offers.back() : "") + "?";
}

std::optional<Value> nearest_accepted(const Parameter& p, const Value& value) {
  if (value.kind != p.kind || !is_number(p.kind) || !std::isfinite(value.number)) return std::nullopt;
  const double whole = is_whole(p.kind) ? std::round(value.number) : value.number;
  return Value::of_number(p.kind, std::clamp(whole, p.hard_min, p.hard_max));
}

}  // namespace quadrille
