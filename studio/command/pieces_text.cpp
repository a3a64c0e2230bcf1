// What each kind is called, and what it accepts, in words.
#include "studio/command/pieces_text.hpp"

#include <ostream>
#include <string>
#include <string_view>

#include "sdk/value_text.hpp"
#include "studio/command/table.hpp"

namespace quadrille {
namespace {

struct KindName {
  std::string_view name, unit;
};

KindName name_of(Kind kind) {
  switch (kind) {
    case Kind::length:
      return {"length", "m"};
    case Kind::angle:
      return {"angle", "rad"};
    case Kind::mass:
      return {"mass", "kg"};
    case Kind::count:
      return {"count", ""};
    case Kind::ratio:
      return {"ratio", ""};
    case Kind::flag:
      return {"flag", ""};
    case Kind::balloon:
      return {"balloon", "in"};
    case Kind::slots:
      return {"slots", ""};
    case Kind::seed:
      return {"seed", ""};
    case Kind::choice:
      return {"choice", ""};
    case Kind::rows:
      return {"rows", ""};
    case Kind::path:
      return {"path", "m"};
    case Kind::mix:
      return {"mix", ""};
  }
  return {"unknown", ""};
}

Json json_of(const Value& value) {
  if (is_number(value.kind)) return value.number;
  if (is_text(value.kind)) return value.text;
  return value.list;
}

Json json_of(const Parameter& parameter) {
  constexpr std::string_view ends[] = {"none", "left", "right", "top", "points"};
  constexpr std::string_view axes[] = {"x", "y", "z"};
  const KindName kind = name_of(parameter.kind);
  Json json{{"key", parameter.key},
            {"label", parameter.label},
            {"hint", parameter.hint},
            {"group", parameter.group},
            {"kind", kind.name},
            {"unit", kind.unit},
            {"default", json_of(parameter.standard)},
            {"default_text", print_value(parameter.standard)},
            {"hard_min", parameter.hard_min},
            {"hard_max", parameter.hard_max},
            {"display_min", parameter.display_min},
            {"display_max", parameter.display_max},
            {"decimals", parameter.decimals},
            {"choices", Json::array()},
            {"aliases", parameter.aliases},
            {"handle", nullptr}};
  for (const Choice& choice : parameter.choices)
    json["choices"].push_back({{"key", choice.key}, {"label", choice.label}});
  if (parameter.handle_end != QUADRILLE_NO_HANDLE && parameter.handle_end < std::size(ends) &&
      parameter.handle_axis < std::size(axes))
    json["handle"] = {{"end", ends[parameter.handle_end]}, {"axis", axes[parameter.handle_axis]}};
  return json;
}

/// "0.5m to 30m", "left or right", "text".
std::string accepted_text(const Parameter& parameter) {
  if (parameter.kind == Kind::flag) return "yes or no";
  if (is_number(parameter.kind) || parameter.kind == Kind::path) {
    const Kind kind = parameter.kind == Kind::path ? Kind::length : parameter.kind;
    return print_value(Value::of_number(kind, parameter.hard_min)) + " to " +
           print_value(Value::of_number(kind, parameter.hard_max));
  }
  if (parameter.kind == Kind::rows) return "rows of slot letters";
  if (parameter.kind == Kind::mix) return "size, diameter, share; …";
  std::string text;
  for (const Choice& choice : parameter.choices) text += (text.empty() ? "" : ", ") + choice.key;
  return text;
}

void print_type(const PieceType& type, std::ostream& out) {
  out << type.id << ": " << type.name << " (" << type.plugin_id << " " << type.plugin_version << ")\n"
      << type.description << '\n';
  std::vector<std::vector<std::string>> rows;
  for (const Parameter& parameter : type.parameters)
    rows.push_back({parameter.key, std::string(name_of(parameter.kind).name), print_value(parameter.standard),
                    accepted_text(parameter), parameter.hint});
  out << print_table({"key", "kind", "default", "accepts", "what it does"}, rows) << '\n';
}

}  // namespace

Json json_of(const PieceTypes& types) {
  Json json{{"types", Json::array()}, {"refused", Json::array()}};
  for (const PieceType& type : types.types) {
    Json entry{{"id", type.id},
               {"name", type.name},
               {"description", type.description},
               {"plugin", type.plugin_id},
               {"plugin_version", type.plugin_version},
               {"file", type.file.string()},
               {"parameters", Json::array()}};
    for (const Parameter& parameter : type.parameters) entry["parameters"].push_back(json_of(parameter));
    json["types"].push_back(std::move(entry));
  }
  for (const RefusedFile& file : types.refused)
    json["refused"].push_back(
        {{"file", file.file.string()}, {"reason", key_of(file.reason)}, {"sentence", file.sentence}});
  return json;
}

void print_text(const PieceTypes& types, std::ostream& out) {
  for (const PieceType& type : types.types) print_type(type, out);
  if (!types.refused.empty()) out << "Refused plugin files\n";
  for (const RefusedFile& file : types.refused)
    out << "  " << file.file.string() << "\n    " << key_of(file.reason) << ": " << file.sentence << '\n';
}

}  // namespace quadrille
