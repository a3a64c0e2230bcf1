// Facts that are typed in by hand: of a place, of what stands there, of the job. Fields as values, and what may be typed
// into them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"
#include "studio/form/trimmed.hpp"
#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

/// Amounts are kept in metres, kilograms, metres per second, degrees Celsius, parts per million and whole numbers.
/// `way` is a distance by road.
enum class FactKind { text, choice, date, time, length, way, mass, speed, temperature, share, count };

struct FactField {
  std::string key, label, group;
  FactKind kind = FactKind::text;
  std::string unit;       ///< beside the field; empty: none
  std::string help;       ///< what it is for, and what may be typed
  std::string range;      ///< in words; empty for kinds without one
  std::string text;       ///< what stands in it; empty: not known. Of a choice the label, of a day ISO 8601
  std::string note = {};  ///< a word about it, beneath the field; empty: none
  std::vector<Choice> choices = {};
  bool applies = true;  ///< false: it does not matter as things are
};

using FactFields = std::vector<FactField>;

/// The field of this key, or null; it lives as long as `fields`.
const FactField* find_fact(const FactFields& fields, std::string_view key);

/// An amount that is asked for.
struct FactRule {
  const char *key, *label, *group;
  FactKind kind;
  double least, most;  ///< both accepted; as amounts of the kind are kept
  bool may_be_empty;   ///< nothing typed: not known
  const char* help;
};

/// The field of a text, in no group.
FactField text_field(const char* key, const char* label, const char* help, const std::string& text);

/// The field of a choice, in no group; nothing stands in it where `chosen` is the key of none.
FactField choice_field(const char* key, const char* label, const char* help, std::vector<Choice> choices,
                       std::string_view chosen);

/// The field of an amount; nothing: not known.
FactField amount_field(const FactRule& rule, std::optional<double> amount, Units units);

/// The amount as it stands in its field, without the unit that stands beside it: feet and inches to half an inch, speeds,
/// masses and temperatures to a tenth. Empty for nothing.
std::string amount_text(FactKind kind, std::optional<double> amount, Units units);

/// What `text` means in the field that shows `now`: its own text gives back the very amount, though it was rounded to be
/// shown; nothing typed is nothing, where that may be. Lengths, masses and speeds may be sums; a bare number is in the unit
/// beside the field. Fails with a sentence that says what would be accepted.
Result<std::optional<double>> read_amount(const FactRule& rule, std::string_view text, std::optional<double> now,
                                          Units units);

/// The key of the first choice whose label or key `text` is, in either case. Fails with a sentence that lists the
/// labels.
Result<std::string> read_choice(std::string_view label, const std::vector<Choice>& choices, std::string_view text);

/// A local time as "07:30" from "7:30", "7.30 pm", "0730", "7 pm" or "7"; empty from nothing. Fails with a
/// sentence on anything else.
Result<std::string> read_clock(std::string_view label, std::string_view text);

/// A day in ISO 8601 from what read_date takes, the month first where `units` are feet; empty from nothing. Fails with a
/// sentence on what is no day of the calendar.
Result<std::string> read_day(std::string_view label, std::string_view text, Units units);

}  // namespace quadrille
