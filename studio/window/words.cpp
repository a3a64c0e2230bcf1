// Words for values.
#include "studio/window/words.hpp"

#include <cmath>

#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille {

std::string nominal_text(double nominal_in) { return print_number(nominal_in) + " in"; }

std::string inflated_text(double metres, Units units) {
  return units == Units::feet ? print_fixed(metres / metres_per_inch, 1) + " in" : print_fixed(metres * 100, 1) + " cm";
}

std::string packs_text(const BalloonLine& line) {
  std::string text;
  for (const BoughtPacks& kind : line.bought)
    text += (text.empty() ? "" : " + ") + std::to_string(kind.packs) + " × " + std::to_string(kind.pack_size);
  if (!text.empty()) return text;
  return line.pack_size > 0 ? "from the packs above" : "not sold in this size";
}

std::string quantity_text(const SupplyLine& line, Units units) {
  if (line.unit == "m")
    return print_length(line.quantity, units == Units::feet ? LengthStyle::feet_inches : LengthStyle::metres);
  if (line.unit == "kg")
    return print_mass(line.quantity, units == Units::feet ? MassStyle::pounds : MassStyle::kilograms);
  const bool whole = line.quantity == std::floor(line.quantity);
  const std::string number = print_fixed(line.quantity, whole ? 0 : 2);
  return line.unit == "piece" ? number : number + " " + line.unit;
}

std::string_view finish_text(Finish finish) {
  switch (finish) {
    case Finish::matte:
      return "matte";
    case Finish::pearl:
      return "pearl";
    case Finish::metallic:
      return "metallic";
    case Finish::clear:
      return "clear";
  }
  return "";
}

std::string_view weight_text(Weight weight) {
  switch (weight) {
    case Weight::note:
      return "Note";
    case Weight::warning:
      return "Warning";
    case Weight::problem:
      return "Problem";
  }
  return "Problem";
}

std::string place_text(const Finding& finding, const Event& event) {
  std::string place;
  for (const auto& area : event.areas)
    if (area->id == finding.area) place = area->name.empty() ? "Unnamed area" : area->name;
  if (const PlacedPiece* piece = find_piece(event, finding.piece))
    place += (place.empty() ? "" : ", ") + (piece->name.empty() ? std::string("Unnamed piece") : piece->name);
  return place.empty() ? "Whole event" : place;
}

}  // namespace quadrille
