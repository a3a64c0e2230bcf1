#include "studio/house_form/house_cell.hpp"

#include <cmath>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "sdk/value.hpp"
#include "studio/form/field_units.hpp"
#include "studio/form/short_number.hpp"
#include "studio/form/sums.hpp"
#include "studio/form/trimmed.hpp"
#include "studio/model/calendar.hpp"

namespace quadrille {
namespace {

constexpr double ppm = 1'000'000;
constexpr double no_bound = 1e9;  ///< nobody meets a bound from there on

HouseField field_of(HouseCellHead head) {
  HouseField field;
  field.key = std::move(head.key), field.label = std::move(head.label), field.help = std::move(head.help);
  return field;
}

bool is_within(double number, const Range& range) {
  return number <= range.most && (range.above ? number > range.least : number >= range.least);
}

/// "The wage is 0 to 20 USD; '-3' is not."
std::string outside(const std::string& label, const std::string& accepted, std::string_view typed) {
  return label + ": " + accepted + " would be accepted, not " + quoted(typed) + ".";
}

/// The number that was typed, or a sentence.
Result<double> number_of(std::string_view typed) { return read_sum(typed, measure_of(Kind::ratio), ""); }

std::string percent_text(double share) { return print_short(share * 100, 4); }

/// The standard of a figure that is compared by its value.
template <class T>
void set_standard(HouseCell& cell, T& figure, const std::optional<T>& standard, std::string text) {
  if (!standard) return;
  cell.field.has_standard = true;
  cell.field.standard = std::move(text);
  cell.field.is_standard = figure == *standard;
  cell.reset = [&figure, value = *standard] { figure = value; };
}

}  // namespace

std::string range_in_words(const Range& range, double per_unit) {
  const auto bound = [per_unit](double number) { return print_short(to_twelve_digits(number / per_unit), 6); };
  const bool open = range.most >= no_bound;
  if (range.above) return "above " + bound(range.least) + (open ? "" : ", at most " + bound(range.most));
  if (open) return range.least == 0 ? "0 or more" : "";
  return bound(range.least) + " to " + bound(range.most);
}

HouseCell text_cell(HouseCellHead head, std::string& figure, bool needed) {
  HouseCell cell{field_of(std::move(head)), {}, {}};
  cell.field.text = figure;
  cell.take = [&figure, needed, label = cell.field.label](std::string_view typed) -> std::optional<std::string> {
    const std::string_view text = trimmed_text(typed);
    if (needed && text.empty()) return label + " is needed.";
    figure = text;
    return std::nullopt;
  };
  return cell;
}

HouseCell date_cell(HouseCellHead head, std::string& figure) {
  HouseCell cell = text_cell(std::move(head), figure);
  cell.field.range = "such as 2027-06-19";
  cell.take = [&figure, label = cell.field.label](std::string_view typed) -> std::optional<std::string> {
    const std::string_view text = trimmed_text(typed);
    if (!text.empty() && !is_date(text)) return outside(label, "a day such as 2027-06-19, or nothing,", text);
    figure = text;
    return std::nullopt;
  };
  return cell;
}

HouseCell choice_cell(HouseCellHead head, std::vector<std::string> labels, int chosen,
                      std::function<void(std::size_t)> choose, std::optional<std::size_t> standard) {
  HouseCell cell{field_of(std::move(head)), {}, {}};
  if (chosen >= 0 && static_cast<std::size_t>(chosen) < labels.size())
    cell.field.text = labels[static_cast<std::size_t>(chosen)];
  cell.field.may_be_typed = false;
  if (standard) {
    cell.field.has_standard = true;
    cell.field.standard = labels[*standard];
    cell.field.is_standard = cell.field.text == cell.field.standard;
    cell.reset = [choose, number = *standard] { choose(number); };
  }
  cell.field.choices = labels;
  cell.take = [choose, labels, label = cell.field.label](std::string_view typed) -> std::optional<std::string> {
    const std::string_view text = trimmed_text(typed);
    for (std::size_t i = 0; i < labels.size(); ++i)
      if (labels[i] == text) return choose(i), std::nullopt;
    return text.empty() ? label + ": choose one." : outside(label, "one of the list", text);
  };
  return cell;
}

HouseCell flag_cell(HouseCellHead head, bool& figure, std::optional<bool> standard) {
  return choice_cell(
      std::move(head), {"no", "yes"}, figure ? 1 : 0, [&figure](std::size_t number) { figure = number == 1; },
      standard ? std::optional<std::size_t>(*standard ? 1 : 0) : std::nullopt);
}

HouseCell amount_cell(HouseCellHead head, Minor& figure, const std::string& currency, const Range& range,
                      std::optional<Minor> standard) {
  HouseCell cell{field_of(std::move(head)), {}, {}};
  cell.field.unit = currency;
  cell.field.text = print_figure(figure, currency);
  cell.field.range = "0 or more";
  set_standard(cell, figure, standard, standard ? print_figure(*standard, currency) : "");
  cell.take = [&figure, currency, range,
               label = cell.field.label](std::string_view typed) -> std::optional<std::string> {
    const auto amount = parse_money(trimmed_text(typed), currency);
    if (!amount) return label + ": " + amount.error;
    if (!is_within(static_cast<double>(*amount), range))
      return outside(label, "0 to " + print_figure(static_cast<Minor>(range.most), currency), typed);
    figure = *amount;
    return std::nullopt;
  };
  return cell;
}

HouseCell share_cell(HouseCellHead head, PartsPerMillion& figure, const Range& range,
                     std::optional<PartsPerMillion> standard) {
  HouseCell cell{field_of(std::move(head)), {}, {}};
  cell.field.unit = "%";
  cell.field.text = percent_text(static_cast<double>(figure) / ppm);
  cell.field.range = range_in_words(range, ppm / 100);
  set_standard(cell, figure, standard, standard ? percent_text(static_cast<double>(*standard) / ppm) : "");
  cell.take = [&figure, range, label = cell.field.label,
               accepted = cell.field.range + " %"](std::string_view typed) -> std::optional<std::string> {
    const auto share = parse_share(trimmed_text(typed));
    if (!share) return label + ": " + share.error;
    if (!is_within(static_cast<double>(*share), range)) return outside(label, accepted, typed);
    figure = *share;
    return std::nullopt;
  };
  return cell;
}

HouseCell chance_cell(HouseCellHead head, double& figure, const Range& range, std::optional<double> standard) {
  HouseCell cell{field_of(std::move(head)), {}, {}};
  cell.field.unit = "%";
  cell.field.text = percent_text(figure);
  cell.field.range = range_in_words(range, 0.01);
  set_standard(cell, figure, standard, standard ? percent_text(*standard) : "");
  cell.take = [&figure, range, label = cell.field.label,
               accepted = cell.field.range + " %"](std::string_view typed) -> std::optional<std::string> {
    const auto share = parse_share(trimmed_text(typed));
    if (!share) return label + ": " + share.error;
    const double chance = static_cast<double>(*share) / ppm;
    if (!is_within(chance, range)) return outside(label, accepted, typed);
    figure = chance;
    return std::nullopt;
  };
  return cell;
}

HouseCell number_cell(HouseCellHead head, const std::string& unit, double& figure, const Range& range,
                      std::optional<double> standard) {
  HouseCell cell{field_of(std::move(head)), {}, {}};
  cell.field.unit = unit;
  cell.field.text = print_number(figure);
  cell.field.range = range_in_words(range);
  set_standard(cell, figure, standard, standard ? print_number(*standard) : "");
  cell.take = [&figure, range, label = cell.field.label,
               accepted = cell.field.range](std::string_view typed) -> std::optional<std::string> {
    const auto number = number_of(typed);
    if (!number) return label + ": " + number.error;
    if (!is_within(*number, range)) return outside(label, accepted, typed);
    figure = *number == 0 ? 0 : *number;
    return std::nullopt;
  };
  return cell;
}

HouseCell whole_cell(HouseCellHead head, const std::string& unit, std::int64_t& figure, const Range& range,
                     std::optional<std::int64_t> standard) {
  HouseCell cell{field_of(std::move(head)), {}, {}};
  cell.field.unit = unit;
  cell.field.text = std::to_string(figure);
  cell.field.range = range_in_words(range);
  set_standard(cell, figure, standard, standard ? std::to_string(*standard) : "");
  cell.take = [&figure, range, label = cell.field.label,
               accepted = cell.field.range](std::string_view typed) -> std::optional<std::string> {
    const auto number = number_of(typed);
    if (!number) return label + ": " + number.error;
    if (!is_within(*number, range) || std::floor(*number) != *number)
      return outside(label, "a whole number, " + accepted + ",", typed);
    figure = static_cast<std::int64_t>(*number);
    return std::nullopt;
  };
  return cell;
}

}  // namespace quadrille
