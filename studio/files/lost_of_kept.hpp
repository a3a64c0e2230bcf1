// Part of the check before a save: is all that was kept of a file in the new one?
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "studio/model/event.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

/// The first comment, element or attribute that `event` keeps and that is not in `bytes`, its file; nothing where all
/// are there. Looked for is what belongs to the event, a quote, an area, a site, a structure, a walkway or a
/// piece itself; what
/// belongs to one of their children goes with that child, and what stands for a known child gives way to it.
std::optional<std::string> lost_of_kept(const Event& event, std::string_view bytes);

/// The same of a house. Looked for is what belongs to the house, its lists, its prices and the entries themselves.
std::optional<std::string> lost_of_kept(const House& house, std::string_view bytes);

}  // namespace quadrille
