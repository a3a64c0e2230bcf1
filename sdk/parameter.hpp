// How a piece type writes its parameter table: one constexpr line per parameter, the only place where it exists.
//
//   constexpr quadrille_parameter parameters[] = {
//       length("height", "Height", "From the floor to the top of the frame.", "Frame").range(0.5, 8).standard(2),
//       choice("hand", "Hand", "Which way the spiral climbs.", "Pattern", hands).standard_text("right"),
//   };
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "sdk/value.hpp"

namespace quadrille {

/// Builds one quadrille_parameter. Every method returns a changed copy; units are those of the kind (see abi.h).
class ParameterEntry {
 public:
  constexpr ParameterEntry(Kind kind, const char* key, const char* label, const char* hint, const char* group)
      : entry_{key, label, hint, group, "", "", nullptr, 0, static_cast<std::uint32_t>(kind), 0, 0, 0,
               0,   0,     3,    0,     0,  0,  0,       ""} {}

  /// Hard range, both ends included: values outside never reach build. Also becomes the display range.
  constexpr ParameterEntry range(double least, double most) const {
    ParameterEntry changed = *this;
    changed.entry_.hard_min = changed.entry_.display_min = least;
    changed.entry_.hard_max = changed.entry_.display_max = most;
    return changed;
  }
  /// What a slider offers; call it after range.
  constexpr ParameterEntry display(double least, double most) const {
    ParameterEntry changed = *this;
    changed.entry_.display_min = least;
    changed.entry_.display_max = most;
    return changed;
  }
  constexpr ParameterEntry standard(double number) const {
    ParameterEntry changed = *this;
    changed.entry_.default_number = number;
    return changed;
  }
  constexpr ParameterEntry standard_text(const char* text) const {
    ParameterEntry changed = *this;
    changed.entry_.default_text = text;
    return changed;
  }
  /// Decimals worth showing in the SI unit.
  constexpr ParameterEntry decimals(std::uint32_t count) const {
    ParameterEntry changed = *this;
    changed.entry_.decimals = count;
    return changed;
  }
  /// Keys it had in earlier versions, separated by spaces.
  constexpr ParameterEntry formerly(const char* keys) const {
    ParameterEntry changed = *this;
    changed.entry_.aliases = keys;
    return changed;
  }
  /// Offers the value for dragging: `end` is QUADRILLE_HANDLE_…, `axis` 0 x, 1 y, 2 z; `gain` is the change of the value
  /// per metre that the handle is dragged outward.
  constexpr ParameterEntry handle(std::uint32_t end, std::uint32_t axis, double gain = 1) const {
    ParameterEntry changed = *this;
    changed.entry_.handle_end = end;
    changed.entry_.handle_axis = axis;
    changed.entry_.handle_gain = gain;
    return changed;
  }
  /// When it matters, written as in abi.h: "frame=square", "topper!=none", "ballast>0", "pattern=stripes|pattern=zigzag".
  /// Forms show it as idle otherwise; build gets its value all the same.
  constexpr ParameterEntry only_with(const char* conditions) const {
    ParameterEntry changed = *this;
    changed.entry_.only_with = conditions;
    return changed;
  }
  /// Forms keep it out of the way: few people ever change it.
  constexpr ParameterEntry advanced() const {
    ParameterEntry changed = *this;
    changed.entry_.flags |= QUADRILLE_ADVANCED;
    return changed;
  }
  template <std::size_t N>
  constexpr ParameterEntry of(const quadrille_choice (&choices)[N]) const {
    ParameterEntry changed = *this;
    changed.entry_.choices = choices;
    changed.entry_.choice_count = static_cast<std::uint32_t>(N);
    return changed;
  }
  constexpr operator quadrille_parameter() const { return entry_; }  // NOLINT(google-explicit-constructor)

 private:
  quadrille_parameter entry_;
};

constexpr ParameterEntry length(const char* key, const char* label, const char* hint, const char* group) {
  return {Kind::length, key, label, hint, group};
}
constexpr ParameterEntry angle(const char* key, const char* label, const char* hint, const char* group) {
  return {Kind::angle, key, label, hint, group};
}
constexpr ParameterEntry mass(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::mass, key, label, hint, group).decimals(2);
}
constexpr ParameterEntry count(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::count, key, label, hint, group).decimals(0);
}
constexpr ParameterEntry ratio(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::ratio, key, label, hint, group).decimals(2);
}
constexpr ParameterEntry flag(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::flag, key, label, hint, group).range(0, 1).decimals(0);
}
/// Nominal balloon size, inches: 1 to 48, standard 11.
constexpr ParameterEntry balloon(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::balloon, key, label, hint, group).range(1, 48).display(5, 36).standard(11).decimals(0);
}
/// Number of colour slots, 1 to 6, standard 2.
constexpr ParameterEntry slots(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::slots, key, label, hint, group).range(1, 6).standard(2).decimals(0);
}
constexpr ParameterEntry seed(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::seed, key, label, hint, group)
      .range(0, 4294967295.0)
      .display(0, 999)
      .standard(1)
      .decimals(0);
}
template <std::size_t N>
constexpr ParameterEntry choice(const char* key, const char* label, const char* hint, const char* group,
                                const quadrille_choice (&choices)[N]) {
  return ParameterEntry(Kind::choice, key, label, hint, group).of(choices).standard_text(choices[0].key).decimals(0);
}
constexpr ParameterEntry rows(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::rows, key, label, hint, group).decimals(0);
}
/// Points; each coordinate lies within the hard range.
constexpr ParameterEntry path(const char* key, const char* label, const char* hint, const char* group) {
  return ParameterEntry(Kind::path, key, label, hint, group).range(-50, 50).handle(QUADRILLE_HANDLE_POINTS, 0);
}
constexpr ParameterEntry mix(const char* key, const char* label, const char* hint, const char* group) {
  return {Kind::mix, key, label, hint, group};
}

/// Several tables as one, in their order: for parameters that piece types share.
template <std::size_t... N>
constexpr auto joined(const quadrille_parameter (&... tables)[N]) {
  std::array<quadrille_parameter, (N + ...)> all{};
  std::size_t at = 0;
  const auto append = [&](const auto& table) {
    for (const quadrille_parameter& entry : table) all[at++] = entry;
  };
  (append(tables), ...);
  return all;
}

}  // namespace quadrille
