// How long work takes: every rate with a key, a unit and a source, and the decorator's own value where the house has one.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "studio/model/finding.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

struct Rate {
  const char* key;
  const char* label;
  const char* unit;  ///< "s", "s/kg", "m/s", "kg", … ; for one person; empty = a plain ratio
  double standard, least, most;
  const char* source;
};

/// All of them, in the order in which they are shown.
std::span<const Rate> all_rates();

/// The rate with this key, or null.
const Rate* find_rate(std::string_view key);

/// The house's value of a rate; one outside its range is drawn to its nearer end. `key` is one of all_rates(), anything
/// else throws std::invalid_argument.
double rate_of(const House& house, std::string_view key);

/// What stands before a work's key in the key of a rate for work that no rate of all_rates() is for: that of a piece type
/// of another maker. "work-polish" are the seconds for one unit of "polish".
inline constexpr const char* foreign_work = "work-";

/// The house's own rate [s] for one unit of such work, drawn into the range of "other-work"; nothing where it has none.
std::optional<double> rate_of_foreign_work(const House& house, std::string_view work_key);

/// Warnings about what the house holds of rates and figures (figures.hpp) that are not known ("rate-unknown"), or outside
/// their range ("rate-range"); one that is no number is taken as the standard.
Findings rate_findings(const House& house);

}  // namespace quadrille
