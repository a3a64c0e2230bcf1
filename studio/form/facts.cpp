#include "studio/form/facts.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "sdk/units.hpp"
#include "studio/form/short_number.hpp"
#include "studio/form/sums.hpp"
#include "studio/model/amounts.hpp"
#include "studio/model/calendar.hpp"
#include "studio/model/money.hpp"

namespace quadrille {
namespace {

constexpr UnitOfMeasure way_units[] = {{"m metre metres meter meters"},
                                       {"km kilometre kilometres kilometer kilometers", 1000},
                                       {"mi mile miles", 1609344, 1000},
                                       {"yd yard yards", 9144, 10000},
                                       {"ft foot feet '", 3048, 10000}};

struct FactUnit {
  const char* name;
  double base_per_unit;
};

FactUnit unit_of(FactKind kind, Units units) {
  const bool feet = units == Units::feet;
  switch (kind) {
    case FactKind::length:
      return feet ? FactUnit{"ft", metres_per_foot} : FactUnit{"m", 1};
    case FactKind::way:
      return feet ? FactUnit{"mi", metres_per_mile} : FactUnit{"km", 1000};
    case FactKind::mass:
      return feet ? FactUnit{"lb", kilograms_per_pound} : FactUnit{"kg", 1};
    case FactKind::speed:
      return feet ? FactUnit{"mph", metres_per_second_per_mph} : FactUnit{"km/h", 1 / 3.6};
    case FactKind::temperature:
      return feet ? FactUnit{"°F", 5.0 / 9} : FactUnit{"°C", 1};
    case FactKind::share:
      return {"%", 10'000};
    default:
      return {"", 1};
  }
}

Measure measure_of(FactKind kind) {
  switch (kind) {
    case FactKind::way:
      return {"distance", "12 km, 8 mi or 800 m", way_units};
    case FactKind::mass:
      return {"mass", "10 kg, 350 g, 22 lb or 5 lb 4 oz", mass_units, "lb", "oz", 16};
    case FactKind::speed:
      return {"speed", "24 mph, 38 km/h, 10.7 m/s or 20 kn", speed_units};
    default:
      return {"length", "2.4 m, 230 mm, 9 in, 20 ft or 8' 6\"", length_units, "ft", "in", 12};
  }
}

double offset_of(FactKind kind, Units units) {
  return kind == FactKind::temperature && units == Units::feet ? 32.0 : 0.0;
}

/// An end of the range, rounded inward so that typing it is accepted.
std::string bound_text(FactKind kind, double bound, bool least, Units units) {
  const FactUnit unit = unit_of(kind, units);
  const double in_unit = bound / unit.base_per_unit + offset_of(kind, units);
  const bool feet = kind == FactKind::length && units == Units::feet;
  const double steps_per_unit = feet ? 24 : kind == FactKind::count ? 1 : kind == FactKind::length ? 100 : 10;
  const double steps = in_unit * steps_per_unit;
  const double rounded = (least ? std::ceil(steps - 1e-6) : std::floor(steps + 1e-6)) / steps_per_unit;
  if (feet) return print_feet_inches(rounded * metres_per_foot);
  const std::string text = print_short(rounded, 2);
  return unit.name[0] == '\0' ? text : text + " " + unit.name;
}

std::string range_text(const FactRule& rule, Units units) {
  return bound_text(rule.kind, rule.least, true, units) + " to " + bound_text(rule.kind, rule.most, false, units);
}

std::string typing_help(FactKind kind, Units units) {
  const bool feet = units == Units::feet;
  switch (kind) {
    case FactKind::length:
      return feet ? "A bare number is in feet. 8'6\", 2.4 m or a sum such as 20 ft / 3 can be typed too."
                  : "A bare number is in metres. 30 cm, 8'6\" or a sum such as 2.4 m + 30 cm can be typed too.";
    case FactKind::way:
      return feet ? "A bare number is in miles; 12 km can be typed too."
                  : "A bare number is in kilometres; 8 mi can be typed too.";
    case FactKind::mass:
      return feet ? "A bare number is in pounds. 10 kg or a sum can be typed too."
                  : "A bare number is in kilograms. 22 lb or a sum can be typed too.";
    case FactKind::speed:
      return feet ? "A bare number is in miles per hour. 38 km/h, 10.7 m/s or 20 kn can be typed too."
                  : "A bare number is in kilometres per hour. 24 mph, 10.7 m/s or 20 kn can be typed too.";
    case FactKind::temperature:
      return feet ? "A bare number is in degrees Fahrenheit; 20 °C can be typed too."
                  : "A bare number is in degrees Celsius; 68 °F can be typed too.";
    default:
      return {};
  }
}

/// In base units.
Result<double> read_number(FactKind kind, std::string_view text, Units units) {
  const FactUnit unit = unit_of(kind, units);
  if (kind == FactKind::share) {
    const auto share = parse_share(text);
    return share ? Result<double>::good(static_cast<double>(*share)) : Result<double>::bad(share.error);
  }
  if (kind == FactKind::count) {
    const auto whole = parse_whole(text);
    return whole ? Result<double>::good(static_cast<double>(*whole))
                 : Result<double>::bad(quoted(text) + " is no whole number, such as 2.");
  }
  if (kind == FactKind::temperature) {
    const bool bare = parse_ratio(text).value.has_value() && text.find('%') == std::string_view::npos;
    return parse_temperature(bare ? std::string(text) + " " + unit.name : std::string(text));
  }
  return read_sum(text, measure_of(kind), unit.name);
}

}  // namespace

const FactField* find_fact(const FactFields& fields, std::string_view key) {
  const auto found = std::ranges::find(fields, key, &FactField::key);
  return found == fields.end() ? nullptr : &*found;
}

FactField text_field(const char* key, const char* label, const char* help, const std::string& text) {
  return {key, label, "", FactKind::text, "", help, "", text};
}

FactField choice_field(const char* key, const char* label, const char* help, std::vector<Choice> choices,
                       std::string_view chosen) {
  FactField field{key, label, "", FactKind::choice, "", help, "", ""};
  const auto found = std::ranges::find(choices, chosen, &Choice::key);
  if (found != choices.end()) field.text = found->label;
  field.choices = std::move(choices);
  return field;
}

std::string amount_text(FactKind kind, std::optional<double> amount, Units units) {
  if (!amount) return {};
  if (kind == FactKind::length && units == Units::feet) return print_feet_inches(*amount);
  const FactUnit unit = unit_of(kind, units);
  const double shown = *amount / unit.base_per_unit + offset_of(kind, units);
  if (kind == FactKind::length || kind == FactKind::way) {
    // In full where six digits do: 38.25 km; else as exact as anybody measures: 13.67 mi.
    const std::string text = print_significant(shown, 6);
    const auto back = read_sum(text, measure_of(kind), unit.name);
    return back && std::abs(*back - *amount) <= 1e-9 * std::max(1.0, *amount) ? text : print_significant(shown, 4);
  }
  return print_short(shown, kind == FactKind::share ? 4 : 1);
}

FactField amount_field(const FactRule& rule, std::optional<double> amount, Units units) {
  FactField field;
  field.key = rule.key, field.label = rule.label, field.group = rule.group, field.kind = rule.kind;
  field.unit = unit_of(rule.kind, units).name;
  field.help = rule.help;
  const std::string typing = typing_help(rule.kind, units);
  if (!typing.empty()) field.help += (field.help.empty() ? "" : " ") + typing;
  field.range = range_text(rule, units);
  field.text = amount_text(rule.kind, amount, units);
  return field;
}

Result<std::optional<double>> read_amount(const FactRule& rule, std::string_view text, std::optional<double> now,
                                          Units units) {
  using Answer = Result<std::optional<double>>;
  const std::string_view typed = trimmed_text(text);
  const std::string accepted = range_text(rule, units) + " would be accepted.";
  if (typed.empty())
    return rule.may_be_empty ? Answer::good(std::nullopt)
                             : Answer::bad(std::string(rule.label) + " is missing: " + accepted);
  if (typed == amount_text(rule.kind, now, units)) return Answer::good(now);
  const auto number = read_number(rule.kind, typed, units);
  if (!number) return Answer::bad(number.error);
  // What was rounded to half an inch, or by an offset between scales, still lies within the range.
  const double slack = 1e-9 * std::max(1.0, std::max(std::abs(rule.least), std::abs(rule.most)));
  if (*number < rule.least - slack || *number > rule.most + slack) {
    const std::string shown = amount_text(rule.kind, *number, units), unit = unit_of(rule.kind, units).name;
    const bool marked = rule.kind == FactKind::length && units == Units::feet;
    return Answer::bad(std::string(rule.label) + " is " + shown + (marked || unit.empty() ? "" : " " + unit) + ": " +
                       accepted);
  }
  return Answer::good(std::clamp(*number == 0 ? 0.0 : *number, rule.least, rule.most));
}

Result<std::string> read_choice(std::string_view label, const std::vector<Choice>& choices, std::string_view text) {
  const std::string wanted = in_lower_case(trimmed_text(text));
  std::string list;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    if (wanted == choices[i].key || wanted == in_lower_case(choices[i].label))
      return Result<std::string>::good(choices[i].key);
    list += (i == 0 ? "" : i + 1 == choices.size() ? " or " : ", ") + choices[i].label;
  }
  return Result<std::string>::bad(std::string(label) + " is " + (list.empty() ? "nothing yet" : list) + ", not " +
                                  quoted(text) + ".");
}

Result<std::string> read_clock(std::string_view label, std::string_view text) {
  const auto bad = [&] {
    return Result<std::string>::bad(std::string(label) + " cannot be " + quoted(text) +
                                    ": a time such as 7:30, 19:30 or 7:30 pm would be accepted.");
  };
  std::string rest = in_lower_case(trimmed_text(text));
  if (rest.empty()) return Result<std::string>::good({});
  std::erase_if(rest, is_blank);
  enum class Half { none, morning, evening };
  Half half = Half::none;
  for (const auto& [ending, which] :
       {std::pair{"a.m.", Half::morning}, {"am", Half::morning}, {"p.m.", Half::evening}, {"pm", Half::evening}})
    if (half == Half::none && rest.ends_with(ending)) {
      rest.resize(rest.size() - std::string_view(ending).size());
      half = which;
    }
  std::string_view ahead = rest;
  std::string_view hours = take_digits(ahead), minutes = "0";
  if (!ahead.empty()) {
    if (!take(ahead, ':') && !take(ahead, '.') && !take(ahead, 'h')) return bad();
    minutes = take_digits(ahead);
    if (minutes.size() != 2 || !ahead.empty()) return bad();
  } else if (hours.size() == 4) {
    minutes = hours.substr(2), hours = hours.substr(0, 2);
  }
  if (hours.empty() || hours.size() > 2) return bad();
  auto hour = *parse_whole(hours);
  const auto minute = *parse_whole(minutes);
  if (half != Half::none && (hour < 1 || hour > 12)) return bad();
  if (half == Half::morning && hour == 12) hour = 0;
  if (half == Half::evening && hour < 12) hour += 12;
  const auto two_digits = [](std::int64_t number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  const std::string time = two_digits(hour) + ":" + two_digits(minute);
  return is_time(time) ? Result<std::string>::good(time) : bad();
}

Result<std::string> read_day(std::string_view label, std::string_view text, Units units) {
  if (trimmed_text(text).empty()) return Result<std::string>::good({});
  if (auto day = read_date(text, units == Units::feet)) return Result<std::string>::good(std::move(*day));
  return Result<std::string>::bad(std::string(label) + " cannot be " + quoted(text) +
                                  ": a day of the calendar such as 19 June 2027 or 2027-06-19 would be accepted.");
}

}  // namespace quadrille
