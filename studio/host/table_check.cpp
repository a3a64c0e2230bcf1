#include "studio/host/table_check.hpp"

#include <cmath>
#include <set>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "sdk/value_text.hpp"
#include "studio/host/limits.hpp"
#include "studio/host/plugin_text.hpp"
#include "studio/host/resolve.hpp"
#include "studio/model/conditions.hpp"

namespace quadrille {
namespace {

/// Thrown inside this file only: the table cannot be taken.
struct BadTable {
  std::string sentence;
};

/// An owned copy of a text of the table; `what` names it in the sentence.
std::string text_of(const char* text, const std::string& what) {
  const auto read = read_text(text, most_table_text);
  if (!read) throw BadTable{what + (text == nullptr ? " is missing (NULL)." : " is longer than a text may be.")};
  if (!is_utf8(*read)) throw BadTable{what + " is not UTF-8 text."};
  return cleaned(*read);
}

/// Lower-case letters, digits and '-' within; begins with a letter.
bool is_key(const std::string& text) {
  const auto letter = [](char c) { return c >= 'a' && c <= 'z'; };
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  return !text.empty() && text.size() <= 64 && letter(text.front()) && text.back() != '-' &&
         std::ranges::all_of(text, [&](char c) { return letter(c) || digit(c) || c == '-'; });
}

std::string key_text(const char* text, const std::string& what) {
  std::string key = text_of(text, what);
  if (!is_key(key))
    throw BadTable{what + " " + quoted(key) + " is no key: it takes lower-case letters, digits and '-' within."};
  return key;
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : text + " ") {
    if (c != ' ') {
      word += c;
    } else if (!word.empty()) {
      words.push_back(word);
      word.clear();
    }
  }
  return words;
}

std::vector<Choice> read_choices(const quadrille_parameter& raw, const std::string& whose) {
  if (raw.choices == nullptr || raw.choice_count == 0 || raw.choice_count > most_choices)
    throw BadTable{whose + " has " + (raw.choice_count > most_choices ? "too many" : "no") + " choices."};
  std::vector<Choice> choices;
  std::set<std::string> keys;
  for (std::uint32_t i = 0; i < raw.choice_count; ++i) {
    const std::string which = whose + ", choice " + std::to_string(i + 1) + ":";
    choices.push_back(
        {key_text(raw.choices[i].key, which + " the key"), text_of(raw.choices[i].label, which + " the label")});
    if (!keys.insert(choices.back().key).second)
      throw BadTable{whose + " has the choice " + quoted(choices.back().key) + " twice."};
  }
  return choices;
}

/// Whether the kind's hard range is looked at: a path's holds for each coordinate.
bool has_range(Kind kind) { return is_number(kind) || kind == Kind::path; }

/// What a hard range may span at most.
std::pair<double, double> widest_range(Kind kind) {
  switch (kind) {
    case Kind::slots:
      return {1, 6};
    case Kind::flag:
      return {0, 1};
    case Kind::seed:
      return {0, 4294967295.0};
    case Kind::count:
      return {-most_count, most_count};
    case Kind::path:
      return {-farthest_m, farthest_m};
    default:
      return {-most_number, most_number};
  }
}

void check_range(const Parameter& p, const std::string& whose) {
  for (const double bound : {p.hard_min, p.hard_max, p.display_min, p.display_max})
    if (!std::isfinite(bound)) throw BadTable{whose + " has a range that is not finite."};
  if (!has_range(p.kind)) return;
  if (p.hard_min > p.hard_max || p.display_min > p.display_max)
    throw BadTable{whose + " has a range that ends below its beginning."};
  if (p.display_min < p.hard_min || p.display_max > p.hard_max)
    throw BadTable{whose + " offers values outside its hard range."};
  const bool whole = p.hard_min == std::floor(p.hard_min) && p.hard_max == std::floor(p.hard_max);
  if (is_whole(p.kind) && !whole) throw BadTable{whose + " holds whole numbers, but its range does not end on them."};
  const auto [least, most] = widest_range(p.kind);
  if (p.hard_min < least || p.hard_max > most)
    throw BadTable{whose + " has a range beyond its kind: " + print_number(least) + " to " + print_number(most) +
                   " would be accepted."};
}

Value read_default(const quadrille_parameter& raw, const Parameter& p, const std::string& whose) {
  const std::string text = text_of(raw.default_text, whose + ": the default text");
  if (is_number(p.kind)) return Value::of_number(p.kind, raw.default_number == 0 ? 0.0 : raw.default_number);
  const auto value = parse_value(p.kind, text);
  if (!value) throw BadTable{whose + " has a default that cannot be read: " + value.error};
  return *value;
}

Parameter read_parameter(const quadrille_parameter& raw, std::uint32_t number) {
  Parameter p;
  p.key = key_text(raw.key, "The key of parameter " + std::to_string(number));
  const std::string whose = "Parameter " + quoted(p.key);
  p.label = text_of(raw.label, whose + ": the label");
  p.hint = text_of(raw.hint, whose + ": the hint");
  p.group = text_of(raw.group, whose + ": the group");
  p.aliases = words_of(text_of(raw.aliases, whose + ": the list of earlier keys"));
  for (const std::string& alias : p.aliases)
    if (!is_key(alias)) throw BadTable{whose + " has the earlier key " + quoted(alias) + ", which is no key."};
  if (p.label.empty()) throw BadTable{whose + " has no label."};
  if (raw.kind < QUADRILLE_LENGTH || raw.kind > QUADRILLE_MIX)
    throw BadTable{whose + " is of the unknown kind " + std::to_string(raw.kind) + "."};
  p.kind = static_cast<Kind>(raw.kind);
  p.hard_min = raw.hard_min;
  p.hard_max = raw.hard_max;
  p.display_min = raw.display_min;
  p.display_max = raw.display_max;
  check_range(p, whose);
  if (p.kind == Kind::choice) p.choices = read_choices(raw, whose);
  if (raw.decimals > 12 || raw.handle_end > QUADRILLE_HANDLE_POINTS || raw.handle_axis > 2)
    throw BadTable{whose + " has decimals or a handle beyond what there is."};
  p.decimals = raw.decimals;
  p.handle_end = raw.handle_end;
  p.handle_axis = raw.handle_axis;
  if (!std::isfinite(raw.handle_gain)) throw BadTable{whose + " has a handle whose gain is not finite."};
  p.handle_gain = raw.handle_gain == 0 ? 1 : raw.handle_gain;
  p.advanced = (raw.flags & QUADRILLE_ADVANCED) != 0;
  if (raw.only_with != nullptr) {
    const auto conditions = parse_conditions(text_of(raw.only_with, whose + ": the conditions"));
    // Conditions only tidy forms up: one that is written in a way which a later minor version may add leaves the field
    // there always rather than the whole plugin out.
    if (conditions)
      p.only_with = *conditions;
    else
      p.hint += (p.hint.empty() ? "" : " ") +
                std::string("(It is always offered: when it matters is written in a way that is not known here.)");
  }
  p.standard = read_default(raw, p, whose);
  if (const std::string fault = fault_of_value(p, p.standard); !fault.empty())
    throw BadTable{whose + " has a default that it does not accept itself: " + fault};
  return p;
}

PieceType read(const quadrille_piece_type& raw) {
  PieceType type;
  type.id = key_text(raw.id, "The id of the piece type");
  type.name = text_of(raw.name, "The name of " + quoted(type.id));
  type.description = text_of(raw.description, "The description of " + quoted(type.id));
  if (type.name.empty()) throw BadTable{"The piece type " + quoted(type.id) + " has no name."};
  if (raw.build == nullptr) throw BadTable{"The piece type " + quoted(type.id) + " has no build function (NULL)."};
  type.build = raw.build;
  if (raw.parameter_count > most_parameters) throw BadTable{"It has more parameters than the studio takes."};
  if (raw.parameter_count > 0 && raw.parameters == nullptr) throw BadTable{"Its parameter table is missing (NULL)."};
  std::set<std::string> keys;
  for (std::uint32_t i = 0; i < raw.parameter_count; ++i) {
    const auto entry = entry_at<quadrille_parameter>(raw.parameters, i, raw.parameter_size);
    Parameter parameter = read_parameter(entry, i + 1);
    std::vector<std::string> names = parameter.aliases;
    names.push_back(parameter.key);
    for (const std::string& name : names)
      if (!keys.insert(name).second) throw BadTable{"The key " + quoted(name) + " stands for two parameters."};
    type.parameters.push_back(std::move(parameter));
  }
  for (const Parameter& parameter : type.parameters)
    if (const std::string fault = fault_of_conditions(type.parameters, parameter); !fault.empty())
      throw BadTable{"Parameter " + quoted(parameter.key) + " " + fault};
  return type;
}

}  // namespace

Result<PieceType> read_piece_type(const quadrille_piece_type& raw) {
  try {
    return Result<PieceType>::good(read(raw));
  } catch (const BadTable& bad) {
    return Result<PieceType>::bad(bad.sentence);
  }
}

}  // namespace quadrille
