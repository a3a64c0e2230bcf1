// Texts that tell a measure in both systems, for a reader whose units are known.
#pragma once

#include <string>

#include "studio/model/event.hpp"

namespace quadrille {

/// `text` with each measure told once: of "2.1 m (7 ft)", "8.0 kg (17.6 lb)" or "450 mm (1' 5 1/2") square" the one in
/// the event's units is left. What stands in brackets otherwise stays.
std::string in_one_unit(const std::string& text, Units units);

}  // namespace quadrille
