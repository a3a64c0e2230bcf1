#include "studio/form/remedies.hpp"

#include <utility>

#include "studio/form/field_units.hpp"
#include "studio/form/form.hpp"
#include "studio/model/conditions.hpp"
#include "studio/model/parameter_check.hpp"

namespace quadrille {
namespace {

/// The value that would mend what is said of `parameter`, which stands at `now`.
std::optional<Value> mending(const Finding& finding, const ParameterTable& table, const PlacedPiece& piece,
                             const Parameter& parameter) {
  if (finding.change && finding.change->piece == piece.id && find_parameter(table, finding.change->key) == &parameter)
    return finding.change->value;
  const Value& now = value_of(piece.values, parameter);
  if (finding.code == "refused" && !fault_of_value(parameter, now).empty()) return nearest_accepted(parameter, now);
  if (finding.code == "note" && !applies_now(table, piece.values, parameter)) return parameter.standard;
  return std::nullopt;
}

}  // namespace

std::optional<Remedy> remedy_of(const Event& event, const Finding& finding, const ParameterTables& tables) {
  const PlacedPiece* piece = find_piece(event, finding.change ? finding.change->piece : finding.piece);
  if (piece == nullptr) return std::nullopt;
  const auto table = tables.find(piece->type);
  if (table == tables.end() || table->second == nullptr) return std::nullopt;
  const Parameter* parameter = find_parameter(*table->second, finding.change ? finding.change->key : finding.key);
  if (parameter == nullptr) return std::nullopt;
  const auto value = mending(finding, *table->second, *piece, *parameter);
  if (!value || !fault_of_value(*parameter, *value).empty() || *value == value_of(piece->values, *parameter))
    return std::nullopt;
  return Remedy{"Set " + parameter->label + " to " + value_in_words(*parameter, *value, event.units),
                {piece->id, parameter->key, *value}};
}

Event with_remedy(Event event, const Finding& finding, const ParameterTables& tables) {
  const auto remedy = remedy_of(event, finding, tables);
  if (!remedy) return event;
  const Form form = form_of(event, {remedy->change.piece}, tables);
  return with_field(std::move(event), form, tables, remedy->change.key, remedy->change.value);
}

std::string remedy_in_words(const Event& event, const Findings& findings, const ParameterTables& tables) {
  std::string words, key;
  std::size_t pieces = 0;
  bool alike = true;
  for (const Finding& finding : findings) {
    const auto remedy = remedy_of(event, finding, tables);
    if (!remedy) continue;
    alike = alike && (pieces == 0 || remedy->words == words);
    if (pieces++ == 0) words = remedy->words, key = remedy->change.key;
  }
  if (pieces < 2) return words;
  const std::string on = " on " + std::to_string(pieces) + " pieces";
  if (alike) return words + on;
  const Parameter* parameter = nullptr;
  for (const auto& [type, table] : tables)
    if (parameter == nullptr && table != nullptr) parameter = find_parameter(*table, key);
  return "Set " + (parameter ? parameter->label : key) + on + ", each to its own";
}

Event with_remedies(Event event, const Findings& findings, const ParameterTables& tables) {
  for (const Finding& finding : findings) event = with_remedy(std::move(event), finding, tables);
  return event;
}

}  // namespace quadrille
