// The form of one or several selected pieces, as a value: what fields there are and what stands in them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"
#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

struct Field {
  Parameter parameter;         ///< with the narrowest range, and the choices, that all of the pieces accept
  std::string unit;            ///< beside the field; empty: none
  std::string help;            ///< what it does, and what may be typed
  std::string range;           ///< in words; empty for kinds without one
  std::string standard;        ///< the default, in words; empty where the pieces' types differ in it
  std::string text;            ///< what stands in it; empty where the pieces differ
  bool exact = true;           ///< false: the text is rounded
  bool various = false;        ///< the pieces differ
  bool is_standard = true;     ///< all stand at their default
  bool applies = true;         ///< it matters, in one of the pieces at least
  std::string waits_for;       ///< where it does not: for what, in words
  std::optional<Value> value;  ///< none where the pieces differ
};

struct FieldGroup {
  std::string name;
  std::vector<Field> fields;
};

struct Form {
  PieceIds pieces;                 ///< those it is about
  std::string type;                ///< id of their type; empty where there are several
  std::vector<FieldGroup> groups;  ///< in the order of the (first piece's) table
  Units units = Units::metric;

  /// The field of this parameter, or null. It lives as long as the form.
  const Field* find(std::string_view key) const;
};

/// The form of those of `pieces` that are in the event and whose type has a table. Of several types it has the parameters
/// that all of them have, by key and kind. Groups of one name are one group.
Form form_of(const Event& event, const PieceIds& pieces, const ParameterTables& tables);

/// Sets one parameter in all of the form's pieces; in a piece where that is its default, nothing stands any more. Under
/// earlier keys nothing stays.
Event with_field(Event event, const Form& form, const ParameterTables& tables, std::string_view key,
                 const Value& value);

/// Back to each piece's default.
Event with_standard(Event event, const Form& form, const ParameterTables& tables, std::string_view key);

/// What was typed into the field of `key`, set in all pieces of the form. On failure with a sentence nothing is changed;
/// typing nothing into a field in which the pieces differ leaves them as they are.
Result<Event> with_typed(const Event& event, const Form& form, const ParameterTables& tables, std::string_view key,
                         std::string_view text);

}  // namespace quadrille
