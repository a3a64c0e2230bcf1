#include "studio/form/slot_fields.hpp"

#include <algorithm>

#include "sdk/pattern.hpp"

namespace quadrille {
namespace {

const Piece* built_piece(const PlacedPiece& piece, const BuiltEvent& built) {
  const auto found = built.find(piece.id);
  return found == built.end() || found->second == nullptr ? nullptr : &found->second->piece;
}

void add_piece(std::vector<SlotField>& fields, const PlacedPiece& piece, std::size_t slots, const Piece* made) {
  while (fields.size() < slots) fields.push_back({fields.size(), slot_name(fields.size()), {}, false, 0});
  for (std::size_t slot = 0; slot < slots; ++slot) {
    const ColourReference colour = slot < piece.colours.size() ? piece.colours[slot] : ColourReference{};
    SlotField& field = fields[slot];
    if (field.various) continue;
    if (field.colour && !(*field.colour == colour)) {
      field.various = true;
      field.colour.reset();
    } else {
      field.colour = colour;
    }
  }
  if (made == nullptr) return;
  for (const Balloon& balloon : made->balloons)
    if (balloon.slot < slots) ++fields[balloon.slot].balloons;
}

}  // namespace

std::size_t slots_of(const PlacedPiece& piece, const ParameterTable& table, const BuiltEvent& built) {
  std::size_t slots = 1;
  const auto declared = std::ranges::find(table, Kind::slots, &Parameter::kind);
  if (declared != table.end()) {
    const double number = value_of(piece.values, *declared).number;
    slots = static_cast<std::size_t>(std::clamp(number, 1.0, static_cast<double>(most_slots)));
  }
  if (const Piece* made = built_piece(piece, built))
    for (const Balloon& balloon : made->balloons)
      slots = std::max(slots, std::min<std::size_t>(balloon.slot, most_slots - 1) + 1);
  return slots;
}

std::vector<SlotField> slot_fields(const Event& event, const PieceIds& pieces, const ParameterTables& tables,
                                   const BuiltEvent& built) {
  std::vector<SlotField> fields;
  for (const std::string& id : pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    if (piece == nullptr) continue;
    const auto table = tables.find(piece->type);
    const std::size_t slots = table != tables.end() && table->second != nullptr
                                  ? slots_of(*piece, *table->second, built)
                                  : std::max<std::size_t>(piece->colours.size(), 1);
    add_piece(fields, *piece, slots, built_piece(*piece, built));
  }
  return fields;
}

}  // namespace quadrille
