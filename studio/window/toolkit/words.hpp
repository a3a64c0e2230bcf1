// Values in words for the lists; numbers are printed by studio/takeoff/print.hpp.
#pragma once

#include <string>
#include <string_view>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// "Problem", "Warning", "Note".
std::string_view weight_text(Weight weight);
/// "Garden entrance, Welcome arch"; "Whole event" where it names neither.
std::string place_text(const Finding& finding, const Event& event);

}  // namespace quadrille
