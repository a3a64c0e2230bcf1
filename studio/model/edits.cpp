#include "studio/model/edits.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "studio/model/edit_parts.hpp"

namespace quadrille {
namespace {

std::set<std::string> ids_of(const Event& event) {
  std::set<std::string> ids;
  for (const auto& area : event.areas) {
    ids.insert(area->id);
    for (const auto& piece : area->pieces) ids.insert(piece->id);
    for (const auto& structure : area->structures) ids.insert(structure.id);
    for (const auto& walkway : area->walkways) ids.insert(walkway.id);
  }
  return ids;
}

}  // namespace

std::string free_id(const Event& event, std::string_view stem) {
  const std::set<std::string> taken = ids_of(event);
  for (std::size_t number = 1;; ++number) {
    std::string id = std::string(stem) + std::to_string(number);
    if (!taken.contains(id)) return id;
  }
}

Event with_area(Event event, Area area) {
  event.areas.emplace_back(std::move(area));
  return event;
}

Event with_piece(Event event, std::string_view area_id, PlacedPiece piece) {
  edit_area(event, area_id, [&](Area& area) { area.pieces.emplace_back(std::move(piece)); });
  return event;
}

Event without_piece(Event event, std::string_view piece_id) {
  for (auto& area : event.areas) {
    if (std::ranges::none_of(area->pieces, [&](const auto& piece) { return piece->id == piece_id; })) continue;
    area.edit([&](Area& changed) {
      std::erase_if(changed.pieces, [&](const auto& piece) { return piece->id == piece_id; });
    });
  }
  return event;
}

Event moved(Event event, std::string_view piece_id, double x_m, double y_m) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) {
    piece.x_m = x_m;
    piece.y_m = y_m;
  });
  return event;
}

Event with_value(Event event, std::string_view piece_id, const std::string& key, Value value) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.values.insert_or_assign(key, std::move(value)); });
  return event;
}

Event without_value(Event event, std::string_view piece_id, std::string_view key) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) {
    const auto found = piece.values.find(key);
    if (found != piece.values.end()) piece.values.erase(found);
  });
  return event;
}

Event with_colour(Event event, std::string_view piece_id, std::size_t slot, ColourReference colour) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) {
    if (piece.colours.size() <= slot) piece.colours.resize(slot + 1);
    piece.colours[slot] = std::move(colour);
  });
  return event;
}

Event renamed(Event event, std::string_view piece_id, std::string name) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.name = std::move(name); });
  return event;
}

Event with_site(Event event, std::string_view area_id, Site site) {
  edit_area(event, area_id, [&](Area& area) { area.site = std::move(site); });
  return event;
}

Event with_tick(Event event, std::string_view key, bool done) {
  if (done)
    event.ticked.emplace(key);
  else if (const auto found = event.ticked.find(key); found != event.ticked.end())
    event.ticked.erase(found);
  return event;
}

Event with_issued(Event event, IssuedQuote issued) {
  event.issued = std::move(issued);
  return event;
}

}  // namespace quadrille
