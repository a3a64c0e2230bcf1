#include "studio/model/piece_edits.hpp"

#include <set>
#include <utility>

#include "sdk/number.hpp"
#include "studio/model/edit_parts.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

template <class Change>
Event with_each(Event event, const PieceIds& pieces, Change change) {
  for (const std::string& id : pieces) edit_piece(event, id, change);
  return event;
}

/// "Column 2" is "Column" and 2; what ends in no number that can be counted on has 1.
std::pair<std::string, std::int64_t> counted(std::string_view name) {
  const std::size_t last = name.find_last_not_of("0123456789");
  const auto number = last == name.npos ? std::nullopt : parse_whole(name.substr(last + 1));
  if (!number || last == 0 || name[last] != ' ' || *number > 1'000'000) return {std::string(name), 1};
  return {std::string(name.substr(0, last)), *number};
}

}  // namespace

std::string free_name(const Event& event, std::string_view name) {
  std::set<std::string, std::less<>> taken;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) taken.insert(piece->name);
  if (name.empty() || !taken.contains(name)) return std::string(name);
  auto [stem, number] = counted(name);
  std::string free;
  do {
    free = stem + " " + std::to_string(++number);
  } while (taken.contains(free));
  return free;
}

const Area* area_of(const Event& event, std::string_view piece_id) {
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces)
      if (piece->id == piece_id) return &*area;
  return nullptr;
}

Event without_pieces(Event event, const PieceIds& pieces) {
  for (const std::string& id : pieces) event = without_piece(std::move(event), id);
  return event;
}

Event moved_by(Event event, const PieceIds& pieces, double right_m, double back_m) {
  return with_each(std::move(event), pieces, [&](PlacedPiece& piece) {
    piece.x_m += right_m;
    piece.y_m += back_m;
  });
}

Event with_values(Event event, const PieceIds& pieces, const std::string& key, const Value& value) {
  return with_each(std::move(event), pieces, [&](PlacedPiece& piece) { piece.values.insert_or_assign(key, value); });
}

Event without_values(Event event, const PieceIds& pieces, std::string_view key) {
  for (const std::string& id : pieces) event = without_value(std::move(event), id, key);
  return event;
}

Event with_change(Event event, const ValueChange& change) {
  return with_value(std::move(event), change.piece, change.key, change.value);
}

Event with_colours(Event event, const PieceIds& pieces, std::size_t slot, const ColourReference& colour) {
  for (const std::string& id : pieces) event = with_colour(std::move(event), id, slot, colour);
  return event;
}

Event with_lock(Event event, const PieceIds& pieces, bool locked) {
  return with_each(std::move(event), pieces, [&](PlacedPiece& piece) { piece.locked = locked; });
}

Event with_hidden(Event event, const PieceIds& pieces, bool hidden) {
  return with_each(std::move(event), pieces, [&](PlacedPiece& piece) { piece.hidden = hidden; });
}

Event with_note(Event event, std::string_view piece_id, std::string note) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.note = std::move(note); });
  return event;
}

Event with_price(Event event, std::string_view piece_id, std::optional<std::int64_t> price_minor) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.price_minor = price_minor; });
  return event;
}

Event with_type(Event event, std::string_view piece_id, std::string type) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.type = std::move(type); });
  return event;
}

Event in_area(Event event, std::string_view piece_id, std::string_view area_id) {
  const PlacedPiece* found = find_piece(event, piece_id);
  const bool there = std::ranges::any_of(event.areas, [&](const auto& area) { return area->id == area_id; });
  if (found == nullptr || !there || area_of(event, piece_id)->id == area_id) return event;
  PlacedPiece piece = *found;
  return with_piece(without_piece(std::move(event), piece_id), area_id, std::move(piece));
}

Event with_line(Event event, std::string_view piece_id, SecuringLine line) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.lines.push_back(std::move(line)); });
  return event;
}

Event with_changed_line(Event event, std::string_view piece_id, std::size_t index, SecuringLine line) {
  const PlacedPiece* found = find_piece(event, piece_id);
  if (found == nullptr || index >= found->lines.size()) return event;
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.lines[index] = std::move(line); });
  return event;
}

Event without_line(Event event, std::string_view piece_id, std::size_t index) {
  const PlacedPiece* found = find_piece(event, piece_id);
  if (found == nullptr || index >= found->lines.size()) return event;
  edit_piece(event, piece_id,
             [&](PlacedPiece& piece) { piece.lines.erase(piece.lines.begin() + static_cast<std::ptrdiff_t>(index)); });
  return event;
}

Event with_lines(Event event, std::string_view piece_id, std::vector<SecuringLine> lines) {
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.lines = std::move(lines); });
  return event;
}

}  // namespace quadrille
