// A piece type's parameter table as owned values: what the form, the command line and the files go by.
#pragma once

#include <algorithm>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/abi.h"
#include "sdk/value.hpp"

namespace quadrille {

struct Choice {
  std::string key, label;
};

/// What another parameter must hold for one to matter.
struct Condition {
  enum class Test { is, is_not, above_zero };
  std::string key;  ///< of the other parameter
  Test test = Test::is;
  std::string word;  ///< a choice's key, or yes or no; empty with above_zero
};

/// All of these must hold; of each, one alternative must.
using Conditions = std::vector<std::vector<Condition>>;

/// One row of a piece type's table; meanings and units as in quadrille_parameter.
struct Parameter {
  std::string key, label, hint, group;
  std::vector<std::string> aliases;  ///< keys it had in earlier versions
  Kind kind = Kind::ratio;
  double hard_min = 0, hard_max = 0, display_min = 0, display_max = 0;
  Value standard;  ///< the default
  std::uint32_t decimals = 0;
  std::uint32_t handle_end = QUADRILLE_NO_HANDLE, handle_axis = 0;
  std::vector<Choice> choices;
  double handle_gain = 1;
  Conditions only_with;  ///< when it matters; empty: always
  bool advanced = false;
};

/// In the order in which they are shown.
using ParameterTable = std::vector<Parameter>;

/// The tables of several piece types, by the types' ids. The tables must outlive it.
using ParameterTables = std::map<std::string, const ParameterTable*, std::less<>>;

/// The parameter that bears `key` now or bore it once; null where there is none.
inline const Parameter* find_parameter(const ParameterTable& table, std::string_view key) {
  const auto now = std::ranges::find(table, key, &Parameter::key);
  if (now != table.end()) return &*now;
  const auto found = std::ranges::find_if(
      table, [&](const Parameter& p) { return std::ranges::find(p.aliases, key) != p.aliases.end(); });
  return found == table.end() ? nullptr : &*found;
}

/// The key under which `values` hold the parameter, its own or an earlier one; empty where it stands at its default.
inline std::string_view held_under(const ValueMap& values, const Parameter& parameter) {
  if (values.contains(parameter.key)) return parameter.key;
  for (const std::string& alias : parameter.aliases)
    if (values.contains(alias)) return alias;
  return {};
}

/// What the parameter stands at: its value in `values`, under its own or an earlier key, or its default.
inline const Value& value_of(const ValueMap& values, const Parameter& parameter) {
  const std::string_view key = held_under(values, parameter);
  return key.empty() ? parameter.standard : values.find(key)->second;
}

}  // namespace quadrille
