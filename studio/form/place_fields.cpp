#include "studio/form/place_fields.hpp"

#include <string>
#include <utility>

#include "studio/form/field_units.hpp"
#include "studio/form/trimmed.hpp"
#include "studio/form/typed.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

/// A row as of a parameter table, so that places are shown and read as lengths are.
Parameter row_of(std::string_view key) {
  const bool along = key == place_along_key;
  Parameter row;
  row.key = key;
  row.label = along ? "Along" : "Depth";
  row.hint = along
                 ? "From the left edge of the area to the middle of the piece."
                 : "From the front line to the middle of the piece; away from the audience is more, before the line is "
                   "less than 0.";
  row.group = "Place";
  row.kind = Kind::length;
  row.hard_min = -farthest_place_m, row.hard_max = farthest_place_m;
  row.display_min = -10, row.display_max = 10;
  row.standard = Value::of_number(Kind::length, 0);
  return row;
}

double at(const PlacedPiece& piece, std::string_view key) { return key == place_along_key ? piece.x_m : piece.y_m; }

Field place_field(const Event& event, const PieceIds& pieces, std::string_view key) {
  Field field;
  field.parameter = row_of(key);
  field.unit = unit_of(field.parameter, event.units).name;
  field.help = field.parameter.hint + " " + typing_help(field.parameter, event.units);
  for (const std::string& id : pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    if (piece == nullptr) continue;
    const Value value = Value::of_number(Kind::length, at(*piece, key));
    field.various = field.various || (field.value && !(*field.value == value));
    field.value = value;
  }
  if (field.various) field.value.reset();
  if (!field.value) return field;
  const ValueText text = text_of(field.parameter, *field.value, event.units);
  field.text = text.text, field.exact = text.exact;
  return field;
}

}  // namespace

FieldGroup place_group(const Event& event, const PieceIds& pieces) {
  return {"Place", {place_field(event, pieces, place_along_key), place_field(event, pieces, place_depth_key)}};
}

Result<Event> with_typed_place(const Event& event, const PieceIds& pieces, std::string_view key,
                               std::string_view text) {
  const Field field = place_field(event, pieces, key);
  const bool nothing = trimmed_text(text).empty();
  if ((field.various && nothing) || (!field.various && text == field.text)) return Result<Event>::good(event);
  const auto value = field.value ? read_field(field.parameter, *field.value, text, event.units)
                                 : read_typed(field.parameter, text, event.units);
  if (!value) return Result<Event>::bad(value.error);
  Event changed = event;
  for (const std::string& id : pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    if (piece == nullptr) continue;
    if (piece->locked)
      return Result<Event>::bad((piece->name.empty() ? "The piece" : piece->name) +
                                " is locked in its place: unlock it to move it.");
    const bool along = key == place_along_key;
    changed = moved(std::move(changed), id, along ? value->number : piece->x_m, along ? piece->y_m : value->number);
  }
  return Result<Event>::good(std::move(changed));
}

}  // namespace quadrille
