// A field together with the figure that it shows: makers for each kind of figure.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/files/words.hpp"
#include "studio/house_form/house_field.hpp"
#include "studio/model/money.hpp"

namespace quadrille {

/// Bound to a figure that must outlive it.
struct HouseCell {
  HouseField field;
  /// Reads what was typed into the figure; a sentence that says what would be accepted, and the figure as it was, where
  /// that is not possible.
  std::function<std::optional<std::string>(std::string_view typed)> take;
  /// Sets the figure to its default; empty where it has none.
  std::function<void()> reset;
};

struct HouseCellGroup {
  std::string name;
  std::vector<HouseCell> cells;
};

/// What all makers begin with.
struct HouseCellHead {
  std::string key, label, help;
};

/// Any text; with `needed` not an empty one.
HouseCell text_cell(HouseCellHead head, std::string& figure, bool needed = false);
/// A day of the calendar, "2027-06-19", or nothing.
HouseCell date_cell(HouseCellHead head, std::string& figure);
/// Yes or no.
HouseCell flag_cell(HouseCellHead head, bool& figure, std::optional<bool> standard = {});
/// An amount of the currency within the range [minor units].
HouseCell amount_cell(HouseCellHead head, Minor& figure, const std::string& currency, const Range& range,
                      std::optional<Minor> standard = {});
/// A share, shown in per cent.
HouseCell share_cell(HouseCellHead head, PartsPerMillion& figure, const Range& range,
                     std::optional<PartsPerMillion> standard = {});
/// The same of a plain number: 0.05 is shown as 5 %, to four decimals.
HouseCell chance_cell(HouseCellHead head, double& figure, const Range& range, std::optional<double> standard = {});
/// A number in `unit`; sums are reckoned, "3*12".
HouseCell number_cell(HouseCellHead head, const std::string& unit, double& figure, const Range& range,
                      std::optional<double> standard = {});
HouseCell whole_cell(HouseCellHead head, const std::string& unit, std::int64_t& figure, const Range& range,
                     std::optional<std::int64_t> standard = {});
/// One of `labels`: `chosen` gives the number of the present one, below 0 for none, `choose` sets it.
HouseCell choice_cell(HouseCellHead head, std::vector<std::string> labels, int chosen,
                      std::function<void(std::size_t)> choose, std::optional<std::size_t> standard = {});

/// "0 to 100", "above 0, at most 100"; empty where the range has no bound that anybody would meet.
std::string range_in_words(const Range& range, double per_unit = 1);

}  // namespace quadrille
