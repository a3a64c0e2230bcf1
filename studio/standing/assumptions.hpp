// What the standing check takes for granted: every figure with a name, a unit, a source, and the decorator's own value
// where the event holds one.
#pragma once

#include <span>
#include <string_view>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

struct Assumption {
  const char* key;
  const char* label;
  const char* unit;  ///< empty = a plain ratio
  double standard, least, most;
  const char* source;
};

/// All of them, in the order in which they are shown.
std::span<const Assumption> all_assumptions();

/// The assumption with this key, or null.
const Assumption* find_assumption(std::string_view key);

/// Reads figures for one event. Values that the event holds outside their range are drawn to its nearer end.
class Assumptions {
 public:
  explicit Assumptions(const Event& event) : event_(event) {}

  /// `key` is one of all_assumptions(); any other is a fault in the program and throws std::logic_error.
  double operator[](std::string_view key) const;
  /// Friction of a plate on the ground; a ratio.
  double friction(Ground ground) const;
  /// What a stake holds in a level pull [N]: 0 in ground that none can be driven into; less by "ground-wetness", down to
  /// the "wet-stake-share" of it in soaked ground.
  double stake_hold_n(Ground ground) const;

 private:
  const Event& event_;
};

/// Warnings about what the event holds of assumptions that are not known, or outside their range.
Findings assumption_findings(const Event& event);

/// "friction-grass": the key of a figure that goes by the ground.
std::string ground_key(std::string_view stem, Ground ground);

}  // namespace quadrille
