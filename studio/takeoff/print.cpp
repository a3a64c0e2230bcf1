#include "studio/takeoff/print.hpp"

#include <cmath>

#include "sdk/number.hpp"

namespace quadrille {

std::string print_nominal(double inches) { return print_number(inches) + " in"; }

std::string print_inflated(double metres, LengthStyle lengths) {
  return lengths == LengthStyle::feet_inches ? print_fixed(metres / metres_per_inch, 1) + " in"
                                             : print_fixed(metres * 100, 1) + " cm";
}

std::string print_quantity(const SupplyLine& line, LengthStyle lengths) {
  if (line.unit == "m") return print_length(line.quantity, lengths);
  if (line.unit == "kg")
    return print_mass(line.quantity, lengths == LengthStyle::metres ? MassStyle::kilograms : MassStyle::pounds);
  const bool whole = line.quantity == std::floor(line.quantity);
  const std::string number = print_fixed(line.quantity, whole ? 0 : 2);
  return line.unit == "piece" ? number : number + " " + line.unit;
}

std::string print_packs(const BalloonLine& line) {
  std::string text;
  for (const BoughtPacks& kind : line.bought)
    text += (text.empty() ? "" : " + ") + std::to_string(kind.packs) + " × " + std::to_string(kind.pack_size);
  if (!text.empty()) return text;
  if (line.colour == ColourReference{}) return "no colour chosen";
  return line.pack_size > 0 ? "from the packs above" : "not sold in this size";
}

std::string print_state(const PieceCount& piece) {
  if (piece.as_last_calculated) return "as last calculated";
  return piece.not_built ? "not built" : "";
}

}  // namespace quadrille
