// Values in words for the lists. No number is worked out here; they are only written in the event's units.
#pragma once

#include <string>
#include <string_view>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// "11 in": the name of a balloon's size.
std::string nominal_text(double nominal_in);
/// What it is inflated to: "9.1 in" or "23.0 cm".
std::string inflated_text(double metres, Units units);
/// "2 × 100 + 1 × 50", "from the packs above", "not sold in this size".
std::string packs_text(const BalloonLine& line);
/// "7", "14' 9"", "4.50 m", "22.0 lb"…
std::string quantity_text(const SupplyLine& line, Units units);
std::string_view finish_text(Finish finish);
/// "Problem", "Warning", "Note".
std::string_view weight_text(Weight weight);
/// "Garden entrance, Welcome arch"; "Whole event" where it names neither.
std::string place_text(const Finding& finding, const Event& event);

}  // namespace quadrille
