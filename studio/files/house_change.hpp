// A change of the house file that loses nothing of what somebody else wrote there meanwhile.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "studio/files/house_place.hpp"

namespace quadrille {

/// Makes `change` on the house that stands on the disk now, at `loaded`'s place, and saves it as save_house does. Where no
/// file is there yet it is made of `loaded`'s house. Returns a sentence where it failed: no place to save to, a file that
/// cannot be read, or what save_house refuses; the file is then as it was. Whoever holds `loaded` loads it anew afterwards.
std::optional<std::string> change_house(const LoadedHouse& loaded, const std::function<House(House)>& change);

}  // namespace quadrille
