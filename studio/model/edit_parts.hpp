// What edits are made of: changing one area or one piece of an event, so that everything else stays shared.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

#include "studio/model/event.hpp"

namespace quadrille {

/// Replaces the area of this id by `change(copy)`; nothing where there is none.
template <class Change>
void edit_area(Event& event, std::string_view id, Change change) {
  for (auto& area : event.areas)
    if (area->id == id) return area.edit(change);
}

/// Replaces the piece of this id by `change(copy)`; nothing where there is none.
template <class Change>
void edit_piece(Event& event, std::string_view id, Change change) {
  const auto bears_id = [id](const Shared<PlacedPiece>& piece) { return piece->id == id; };
  for (auto& area : event.areas) {
    const auto found = std::ranges::find_if(area->pieces, bears_id);
    if (found == area->pieces.end()) continue;
    const auto index = found - area->pieces.begin();
    return area.edit([&](Area& changed) { changed.pieces[static_cast<std::size_t>(index)].edit(change); });
  }
}

}  // namespace quadrille
