#include "studio/form/form.hpp"

#include <algorithm>
#include <utility>

#include "sdk/quoted.hpp"
#include "studio/form/field_units.hpp"
#include "studio/form/typed.hpp"
#include "studio/model/conditions.hpp"
#include "studio/model/edit_parts.hpp"

namespace quadrille {
namespace {

/// A piece with the table of its type.
struct Formed {
  const PlacedPiece* piece = nullptr;
  const ParameterTable* table = nullptr;
};

std::vector<Formed> formed_pieces(const Event& event, const PieceIds& pieces, const ParameterTables& tables) {
  std::vector<Formed> formed;
  for (const std::string& id : pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    if (piece == nullptr) continue;
    const auto table = tables.find(piece->type);
    if (table != tables.end() && table->second != nullptr) formed.push_back({piece, table->second});
  }
  return formed;
}

const Parameter* same_in(const ParameterTable& table, const Parameter& parameter) {
  const auto found = std::ranges::find(table, parameter.key, &Parameter::key);
  return found != table.end() && found->kind == parameter.kind ? &*found : nullptr;
}

/// Narrows `parameter` to what `other` accepts as well; false where nothing is left.
bool narrow(Parameter& parameter, const Parameter& other) {
  parameter.hard_min = std::max(parameter.hard_min, other.hard_min);
  parameter.hard_max = std::min(parameter.hard_max, other.hard_max);
  const double least = parameter.hard_min, most = std::max(parameter.hard_min, parameter.hard_max);
  parameter.display_min = std::clamp(std::max(parameter.display_min, other.display_min), least, most);
  parameter.display_max = std::clamp(std::min(parameter.display_max, other.display_max), parameter.display_min, most);
  parameter.advanced = parameter.advanced && other.advanced;
  std::erase_if(parameter.choices, [&](const Choice& choice) {
    return std::ranges::find(other.choices, choice.key, &Choice::key) == other.choices.end();
  });
  if (parameter.kind == Kind::choice) return !parameter.choices.empty();
  return parameter.hard_min <= parameter.hard_max || !is_number(parameter.kind);
}

void add_state(Field& field, const std::vector<Formed>& formed, Units units) {
  field.applies = false;
  for (const Formed& one : formed) {
    const Parameter& own = *same_in(*one.table, field.parameter);
    const Value& value = value_of(one.piece->values, own);
    if (field.value && !(*field.value == value)) field.various = true;
    if (!field.value) field.value = value;
    field.is_standard = field.is_standard && value == own.standard;
    field.applies = field.applies || applies_now(*one.table, one.piece->values, own);
  }
  if (!field.applies) {
    const Formed& first = formed.front();
    field.waits_for = conditions_in_words(*first.table, *same_in(*first.table, field.parameter));
  }
  if (field.various) return field.value.reset();
  const ValueText shown = text_of(field.parameter, *field.value, units);
  field.text = shown.text, field.exact = shown.exact;
}

std::optional<Field> field_of(const Parameter& first, const std::vector<Formed>& formed, Units units) {
  Field field;
  field.parameter = first;
  bool one_standard = true;
  for (const Formed& one : formed) {
    const Parameter* own = same_in(*one.table, first);
    if (own == nullptr || !narrow(field.parameter, *own)) return std::nullopt;
    one_standard = one_standard && own->standard == first.standard;
  }
  field.unit = unit_of(field.parameter, units).name;
  const std::string typing = typing_help(field.parameter, units);
  field.help = first.hint + (first.hint.empty() || typing.empty() ? "" : " ") + typing;
  field.range = range_in_words(field.parameter, units);
  if (one_standard) field.standard = value_in_words(first, first.standard, units);
  add_state(field, formed, units);
  return field;
}

/// Sets the parameter under its present key, or takes it away where `value` is none or its default.
void set_value(ValueMap& values, const Parameter& parameter, const Value* value) {
  for (const std::string& alias : parameter.aliases) values.erase(alias);
  if (value == nullptr || *value == parameter.standard)
    values.erase(parameter.key);
  else
    values.insert_or_assign(parameter.key, *value);
}

Event with_each(Event event, const Form& form, const ParameterTables& tables, std::string_view key,
                const Value* value) {
  const Field* field = form.find(key);
  if (field == nullptr) return event;
  const Event before = event;
  for (const Formed& one : formed_pieces(before, form.pieces, tables)) {
    const Parameter* own = same_in(*one.table, field->parameter);
    if (own == nullptr) continue;
    edit_piece(event, one.piece->id, [&](PlacedPiece& piece) { set_value(piece.values, *own, value); });
  }
  return event;
}

}  // namespace

const Field* Form::find(std::string_view key) const {
  for (const FieldGroup& group : groups)
    for (const Field& field : group.fields)
      if (field.parameter.key == key) return &field;
  return nullptr;
}

Form form_of(const Event& event, const PieceIds& pieces, const ParameterTables& tables) {
  Form form;
  form.units = event.units;
  const std::vector<Formed> formed = formed_pieces(event, pieces, tables);
  if (formed.empty()) return form;
  for (const Formed& one : formed) form.pieces.push_back(one.piece->id);
  const auto same_type = [&](const Formed& one) { return one.piece->type == formed.front().piece->type; };
  if (std::ranges::all_of(formed, same_type)) form.type = formed.front().piece->type;
  for (const Parameter& parameter : *formed.front().table) {
    auto field = field_of(parameter, formed, event.units);
    if (!field) continue;
    auto group = std::ranges::find(form.groups, parameter.group, &FieldGroup::name);
    if (group == form.groups.end()) {
      form.groups.push_back({parameter.group, {}});
      group = form.groups.end() - 1;
    }
    group->fields.push_back(std::move(*field));
  }
  return form;
}

Event with_field(Event event, const Form& form, const ParameterTables& tables, std::string_view key,
                 const Value& value) {
  return with_each(std::move(event), form, tables, key, &value);
}

Event with_standard(Event event, const Form& form, const ParameterTables& tables, std::string_view key) {
  return with_each(std::move(event), form, tables, key, nullptr);
}

Result<Event> with_typed(const Event& event, const Form& form, const ParameterTables& tables, std::string_view key,
                         std::string_view text) {
  const Field* field = form.find(key);
  if (field == nullptr) return Result<Event>::bad("The form has no field " + quoted(key) + ".");
  const bool nothing = text.find_first_not_of(" \t") == text.npos;
  if (field->various && nothing) return Result<Event>::good(event);
  if (!field->various && text == field->text) return Result<Event>::good(event);
  const auto value = field->value ? read_field(field->parameter, *field->value, text, form.units)
                                  : read_typed(field->parameter, text, form.units);
  if (!value) return Result<Event>::bad(value.error);
  return Result<Event>::good(with_field(event, form, tables, key, *value));
}

}  // namespace quadrille
