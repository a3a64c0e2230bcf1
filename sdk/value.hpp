// A parameter's value, as the event keeps it and as a piece type receives it.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "sdk/abi.h"

namespace quadrille {

/// What a parameter holds; units as in abi.h (metres, radians, kilograms; a balloon's nominal size in inches).
enum class Kind : std::uint32_t {
  length = QUADRILLE_LENGTH,
  angle = QUADRILLE_ANGLE,
  mass = QUADRILLE_MASS,
  count = QUADRILLE_COUNT,
  ratio = QUADRILLE_RATIO,
  flag = QUADRILLE_FLAG,
  balloon = QUADRILLE_BALLOON,
  slots = QUADRILLE_SLOTS,
  seed = QUADRILLE_SEED,
  choice = QUADRILLE_CHOICE,
  rows = QUADRILLE_ROWS,
  path = QUADRILLE_PATH,
  mix = QUADRILLE_MIX
};

/// True for the kinds whose value is `Value::number`.
constexpr bool is_number(Kind kind) { return kind <= Kind::seed; }
/// True for the kinds whose value is `Value::text`.
constexpr bool is_text(Kind kind) { return kind == Kind::choice || kind == Kind::rows; }
/// True for the kinds whose number is whole.
constexpr bool is_whole(Kind kind) {
  return kind == Kind::count || kind == Kind::flag || kind == Kind::slots || kind == Kind::seed;
}

/// One value. Only the field that the kind uses counts; the others stay empty, so that equal values compare equal.
struct Value {
  Kind kind = Kind::ratio;
  double number = 0;
  std::string text;
  std::vector<double> list;  ///< path: x,y,z per point [m]; mix: nominal [in], inflated diameter [m], share per entry

  bool operator==(const Value&) const = default;

  static Value of_number(Kind kind, double number) { return {kind, number, {}, {}}; }
  static Value of_text(Kind kind, std::string text) { return {kind, 0, std::move(text), {}}; }
  static Value of_list(Kind kind, std::vector<double> list) { return {kind, 0, {}, std::move(list)}; }
};

/// Values by parameter key. What is not in it stands at the parameter's default.
using ValueMap = std::map<std::string, Value, std::less<>>;

}  // namespace quadrille
