// The facts of what stands in an area: structures, walkways, the outlet, lines.
#include <algorithm>
#include <string>
#include <utility>

#include "sdk/quantity.hpp"
#include "studio/form/site_form.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/securing.hpp"
#include "studio/model/site_edits.hpp"

namespace quadrille {
namespace {

constexpr double far_m = 1000, high_m = 200;

constexpr FactRule along{"along", "Along the front",
                         "",      FactKind::length,
                         -far_m,  far_m,
                         false,   "From the left end of the front line, to the right."};
constexpr FactRule depth{
    "depth", "Depth", "",    FactKind::length,
    -far_m,  far_m,   false, "From the front line away from the audience; before it with a minus."};
constexpr FactRule height{"height", "Height", "", FactKind::length, 0, high_m, false, "Of its top above the floor."};
constexpr FactRule width{"width", "Width", "",   FactKind::length,
                         0,       far_m,   true, "Along the front line. Empty: not known."};
constexpr FactRule deep{"deep", "From front to back", "", FactKind::length, 0, far_m, true, "Empty: not known."};
constexpr FactRule left{"left", "Left end", "",    FactKind::length,
                        -far_m, far_m,      false, "From the left end of the front line, to the right."};
constexpr FactRule front{
    "front", "Front edge", "",    FactKind::length,
    -far_m,  far_m,        false, "From the front line away from the audience; before it with a minus."};
constexpr FactRule walkway_width{"width", "Width", "", FactKind::length, 0.1, far_m, false, "Along the front line."};
constexpr FactRule walkway_deep{"deep", "From front to back", "", FactKind::length, 0.1, far_m, false, ""};
constexpr FactRule distance{
    "distance", "Distance",
    "",         FactKind::length,
    0,          5000,
    false,      "From where you inflate, over the floor: the length that cord and power are reckoned with."};
constexpr FactRule aside{"aside", "Aside", "",    FactKind::length,
                         -far_m,  far_m,   false, "From the piece's place to the right; to the left with a minus."};
constexpr FactRule ahead{
    "ahead", "Behind", "",    FactKind::length,
    -far_m,  far_m,    false, "From the piece's place away from the audience; in front of it with a minus."};
constexpr FactRule mass{"mass", "Weight", "", FactKind::mass, 0.5, 2000, false, "What the dead weight weighs."};
constexpr FactRule tied_at{"height", "Tied at", "",    FactKind::length,
                           0,        high_m,    false, "Above the floor; no higher than it reaches."};

const std::vector<Choice>& kind_choices() {
  static const std::vector<Choice> choices{{"wall", "Wall"},       {"post", "Post"},  {"tree", "Tree"},
                                           {"railing", "Railing"}, {"beam", "Beam"},  {"vehicle", "Vehicle"},
                                           {"table", "Table"},     {"other", "Other"}};
  return choices;
}

const std::vector<Choice>& anchor_choices() {
  static const std::vector<Choice> choices{
      {"stake", "Stake"}, {"dead-weight", "Dead weight"}, {"structure", "What stands there"}};
  return choices;
}

/// Structures of one name are told apart by their places.
std::vector<Choice> structure_choices(const Area& area, Units units) {
  std::vector<Choice> choices;
  for (const Structure& structure : area.structures) {
    std::string label = structure.name.empty() ? structure.id : structure.name;
    if (std::ranges::count(area.structures, structure.name, &Structure::name) > 1)
      label += ", " + floor_words(structure.x_m, structure.y_m, units);
    choices.push_back({structure.id, label});
  }
  return choices;
}

std::vector<Choice> cord_choices() {
  std::vector<Choice> choices;
  for (const Cord& cord : cords) choices.push_back({cord.key, cord.label});
  return choices;
}

const Piece* built_of(const BuiltEvent& built, const std::string& piece) {
  const auto found = built.find(piece);
  return found == built.end() ? nullptr : &found->second->piece;
}

/// A tie point that the piece does not have (any more) stands among them, so that it is seen.
std::vector<Choice> tie_choices(const Piece* piece, const std::string& chosen) {
  std::vector<Choice> choices;
  for (std::size_t i = 0; piece != nullptr && i < piece->tie_points.size(); ++i) {
    const std::string key = tie_key(*piece, i), &label = piece->tie_points[i].label;
    choices.push_back({key, label.empty() ? key : key + ", " + label});
  }
  if (std::ranges::find(choices, chosen, &Choice::key) == choices.end()) choices.push_back({chosen, chosen});
  return choices;
}

std::string cord_key(const SecuringLine& line) { return line.cord.empty() ? cords.front().key : line.cord; }

FactFields line_fields(const Area& area, const SiteObject& object, const SecuringLine& line, const BuiltEvent& built,
                       Units units) {
  FactFields fields;
  fields.push_back(choice_field("tie", "From", "The point of the piece that it is tied to.",
                                tie_choices(built_of(built, object.id), line.tie), line.tie));
  fields.push_back(choice_field("anchor", "To", "Stakes hold in soft ground alone.", anchor_choices(),
                                anchor_choices()[static_cast<std::size_t>(line.anchor)].key));
  if (line.anchor == AnchorKind::structure) {
    fields.push_back(choice_field("structure", "Which", "What it is tied to; somebody has to allow that.",
                                  structure_choices(area, units), line.structure));
    fields.push_back(amount_field(tied_at, line.height_m, units));
  } else {
    fields.push_back(amount_field(aside, line.x_m, units));
    fields.push_back(amount_field(ahead, line.y_m, units));
    if (line.anchor == AnchorKind::dead_weight) fields.push_back(amount_field(mass, line.mass_kg, units));
  }
  fields.push_back(choice_field("cord", "Cord", "What the line is made of.", cord_choices(), cord_key(line)));
  return fields;
}

/// Sets an amount that must be there. Empty: it was taken.
std::string take(const FactRule& rule, std::string_view text, double& amount, Units units) {
  const auto read = read_amount(rule, text, amount, units);
  if (!read) return read.error;
  amount = **read;
  return {};
}

/// Sets one that may be unknown.
std::string take(const FactRule& rule, std::string_view text, std::optional<double>& amount, Units units) {
  const auto read = read_amount(rule, text, amount, units);
  if (!read) return read.error;
  amount = *read;
  return {};
}

template <class Set>
std::string take_choice(const char* label, const std::vector<Choice>& choices, std::string_view text, Set set) {
  const auto chosen = read_choice(label, choices, text);
  if (!chosen) return chosen.error;
  set(*chosen);
  return {};
}

std::string change(Structure& structure, std::string_view key, std::string_view text, Units units) {
  if (key == "name") structure.name = trimmed_text(text);
  if (key == "allowed-by") structure.allowed_by = trimmed_text(text);
  if (key == "kind")
    return take_choice("Kind", kind_choices(), text, [&](const std::string& chosen) {
      const auto index = std::ranges::find(kind_choices(), chosen, &Choice::key) - kind_choices().begin();
      structure.kind = static_cast<StructureKind>(index);
    });
  if (key == along.key) return take(along, text, structure.x_m, units);
  if (key == depth.key) return take(depth, text, structure.y_m, units);
  if (key == height.key) return take(height, text, structure.height_m, units);
  if (key == width.key) return take(width, text, structure.width_m, units);
  if (key == deep.key) return take(deep, text, structure.depth_m, units);
  return {};
}

std::string change(Walkway& walkway, std::string_view key, std::string_view text, Units units) {
  if (key == "name") walkway.name = trimmed_text(text);
  if (key == left.key) return take(left, text, walkway.x_m, units);
  if (key == front.key) return take(front, text, walkway.y_m, units);
  if (key == walkway_width.key) return take(walkway_width, text, walkway.width_m, units);
  if (key == walkway_deep.key) return take(walkway_deep, text, walkway.depth_m, units);
  return {};
}

std::string change(SecuringLine& line, const Area& area, const Piece* piece, std::string_view key,
                   std::string_view text, Units units) {
  if (key == "tie")
    return take_choice("From", tie_choices(piece, line.tie), text,
                       [&](const std::string& chosen) { line.tie = chosen; });
  if (key == "anchor") {
    if (area.structures.empty() && in_lower_case(trimmed_text(text)) == "what stands there")
      return "Nothing stands there yet that it could be tied to: add a structure first.";
    return take_choice("To", anchor_choices(), text, [&](const std::string& chosen) {
      const auto index = std::ranges::find(anchor_choices(), chosen, &Choice::key) - anchor_choices().begin();
      line = with_anchor(line, static_cast<AnchorKind>(index), area, piece);
    });
  }
  if (key == "structure")
    return take_choice("Which", structure_choices(area, units), text, [&](const std::string& chosen) {
      line.structure = chosen;
      if (const Structure* to = find_structure(area, chosen)) line.height_m = std::min(line.height_m, to->height_m);
    });
  if (key == "cord")
    return take_choice("Cord", cord_choices(), text, [&](const std::string& chosen) {
      if (chosen != cord_key(line)) line.cord = chosen == cords.front().key ? std::string() : chosen;
    });
  if (key == aside.key) return take(aside, text, line.x_m, units);
  if (key == ahead.key) return take(ahead, text, line.y_m, units);
  if (key == mass.key) return take(mass, text, line.mass_kg, units);
  if (key != tied_at.key) return {};
  double at = line.height_m;
  if (std::string fault = take(tied_at, text, at, units); !fault.empty()) return fault;
  const Structure* const to = find_structure(area, line.structure);
  if (to != nullptr && at > to->height_m)
    return (to->name.empty() ? "It" : to->name) + " is " + amount_text(FactKind::length, to->height_m, units) +
           (units == Units::feet ? "" : " m") + " high: the line cannot be tied above that.";
  line.height_m = at;
  return {};
}

Result<Event> outcome(std::string fault, Event event) {
  return fault.empty() ? Result<Event>::good(std::move(event)) : Result<Event>::bad(std::move(fault));
}

}  // namespace

FactFields object_fields(const Event& event, const Area& area, const SiteObject& object, const BuiltEvent& built) {
  const Units units = event.units;
  if (!has_object(area, object)) return {};
  switch (object.kind) {
    case SiteObjectKind::structure: {
      const Structure& it = *find_structure(area, object.id);
      return {
          text_field("name", "Name", "", it.name),
          choice_field("kind", "Kind", "", kind_choices(), kind_choices()[static_cast<std::size_t>(it.kind)].key),
          amount_field(along, it.x_m, units),
          amount_field(depth, it.y_m, units),
          amount_field(height, it.height_m, units),
          amount_field(width, it.width_m, units),
          amount_field(deep, it.depth_m, units),
          text_field("allowed-by", "Allowed by",
                     "Who allowed you to tie to it. Empty: nobody yet, and no line is advised to it.", it.allowed_by)};
    }
    case SiteObjectKind::walkway: {
      const Walkway& it = *find_walkway(area, object.id);
      return {text_field("name", "Name", "", it.name), amount_field(left, it.x_m, units),
              amount_field(front, it.y_m, units), amount_field(walkway_width, it.width_m, units),
              amount_field(walkway_deep, it.depth_m, units)};
    }
    case SiteObjectKind::outlet:
      return {amount_field(distance, area.site.outlet_m, units)};
    case SiteObjectKind::line:
      return line_fields(area, object, *find_line(area, object), built, units);
    case SiteObjectKind::piece:
      break;
  }
  const PlacedPiece& piece = *find_piece(area, object.id);
  FactFields fields{amount_field(along, piece.x_m, units), amount_field(depth, piece.y_m, units)};
  for (FactField& field : fields) field.applies = !piece.locked;
  return fields;
}

Result<Event> with_object_field(const Event& event, std::string_view area_id, const SiteObject& object,
                                const BuiltEvent& built, std::string_view key, std::string_view text) {
  const Area* const area = find_area(event, area_id);
  if (area == nullptr || !has_object(*area, object)) return Result<Event>::good(event);
  switch (object.kind) {
    case SiteObjectKind::structure: {
      Structure structure = *find_structure(*area, object.id);
      std::string fault = change(structure, key, text, event.units);
      return outcome(std::move(fault), with_structure(event, area_id, std::move(structure)));
    }
    case SiteObjectKind::walkway: {
      Walkway walkway = *find_walkway(*area, object.id);
      std::string fault = change(walkway, key, text, event.units);
      return outcome(std::move(fault), with_walkway(event, area_id, std::move(walkway)));
    }
    case SiteObjectKind::outlet: {
      std::optional<double> far = area->site.outlet_m;
      std::string fault = key == distance.key ? take(distance, text, far, event.units) : std::string();
      return outcome(std::move(fault), with_outlet_distance(event, area_id, far));
    }
    case SiteObjectKind::line: {
      SecuringLine line = *find_line(*area, object);
      std::string fault = change(line, *area, built_of(built, object.id), key, text, event.units);
      return outcome(std::move(fault), with_changed_line(event, object.id, object.line, std::move(line)));
    }
    case SiteObjectKind::piece:
      break;
  }
  const PlacedPiece& piece = *find_piece(*area, object.id);
  SitePlace place{piece.x_m, piece.y_m};
  if (piece.locked) return Result<Event>::bad("It is locked in its place.");
  std::string fault;
  if (key == along.key) fault = take(along, text, place.x_m, event.units);
  if (key == depth.key) fault = take(depth, text, place.y_m, event.units);
  return outcome(std::move(fault), moved(event, object.id, place.x_m, place.y_m));
}

}  // namespace quadrille
