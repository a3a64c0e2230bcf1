// One figure of the house as it stands in a field, for people.
#pragma once

#include <string>
#include <vector>

namespace quadrille {

struct HouseField {
  std::string key;       ///< stable, and its own on its page or in its entry: "wage-per-hour"
  std::string label;     ///< "What an hour costs you"
  std::string unit;      ///< beside the field: "s/kg", "USD"; empty: none
  std::string help;      ///< what it does, and where its standard comes from
  std::string range;     ///< "0.5 to 120"; empty where anything may be written
  std::string text;      ///< what stands in it
  std::string standard;  ///< the default as it would stand there; empty where there is none
  bool has_standard = false;
  bool is_standard = false;          ///< it stands at the default
  bool may_be_typed = true;          ///< false: only one of the choices
  std::vector<std::string> choices;  ///< what may be chosen, or is proposed
  bool operator==(const HouseField&) const = default;
};

struct HouseFieldGroup {
  std::string name;  ///< empty: it needs none
  std::vector<HouseField> fields;
};

}  // namespace quadrille
