#include "studio/arrange/mirroring.hpp"

#include <algorithm>
#include <utility>

#include "sdk/row_text.hpp"
#include "studio/model/conditions.hpp"
#include "studio/model/edit_parts.hpp"
#include "studio/model/securing.hpp"

namespace quadrille {
namespace {

std::string other_hand(const std::string& key) {
  if (key == "left" || key.starts_with("left-")) return "right" + key.substr(4);
  if (key == "right" || key.starts_with("right-")) return "left" + key.substr(5);
  return {};
}

/// The rows as they are seen from the other side: places are counted round the rod, so all but the first change.
std::string mirrored_rows(const std::string& text) {
  const auto words = row_words(text);
  if (!words) return text;
  std::string rows;
  for (std::string word : *words) {
    std::reverse(word.begin() + 1, word.end());
    rows.append(rows.empty() ? "" : " ").append(word);
  }
  return rows;
}

/// The mirror image of one value; the same where the parameter has no hand.
Value mirrored_value(const Parameter& parameter, Value value) {
  if (parameter.kind == Kind::path && value.kind == Kind::path) {
    for (std::size_t i = 0; i < value.list.size(); i += 3) value.list[i] = value.list[i] == 0 ? 0 : -value.list[i];
  } else if (parameter.kind == Kind::choice && value.kind == Kind::choice) {
    const std::string other = other_hand(value.text);
    if (!other.empty() && std::ranges::find(parameter.choices, other, &Choice::key) != parameter.choices.end())
      value.text = other;
  } else if (parameter.kind == Kind::rows && value.kind == Kind::rows) {
    value.text = mirrored_rows(value.text);
  }
  return value;
}

bool has_path(const ParameterTable& table) {
  return std::ranges::any_of(table, [](const Parameter& parameter) { return parameter.kind == Kind::path; });
}

/// The tie point of the same purpose that lies nearest to the mirror image of this one; its own where there is none.
std::string mirrored_tie(const Piece& piece, const std::string& key) {
  const auto mine = find_tie_point(piece, key);
  if (!mine) return key;
  Vec3 image = piece.tie_points[*mine].point;
  image.x() = -image.x();
  std::size_t nearest = *mine;
  double least = 0.05;  // what lies farther away is no mirror image
  for (std::size_t i = 0; i < piece.tie_points.size(); ++i) {
    if (piece.tie_points[i].purpose != piece.tie_points[*mine].purpose) continue;
    const double far = (piece.tie_points[i].point - image).norm();
    if (far < least) nearest = i, least = far;
  }
  return tie_key(piece, nearest);
}

void mirror_lines(PlacedPiece& piece, const Piece* made, bool ties_change) {
  for (SecuringLine& line : piece.lines) {
    if (line.x_m != 0) line.x_m = -line.x_m;
    if (made != nullptr && ties_change) line.tie = mirrored_tie(*made, line.tie);
  }
}

Event mirrored_one(Event event, const std::string& id, double axis_m, const ParameterTables& tables,
                   const BuiltEvent& built) {
  const PlacedPiece* found = find_piece(event, id);
  if (found == nullptr || found->locked) return event;
  const BuiltPiece* made = standing_build(*found, built);
  const auto table = tables.find(found->type);
  const bool known = table != tables.end() && table->second != nullptr;
  edit_piece(event, id, [&](PlacedPiece& piece) {
    piece.x_m = tidy(2 * axis_m - piece.x_m);
    // The tie points of a path go to the other side with it, each by its own key.
    mirror_lines(piece, made ? &made->piece : nullptr, known && !has_path(*table->second));
    if (known) piece.values = mirrored_values(*table->second, piece.values);
  });
  return event;
}

}  // namespace

ValueMap mirrored_values(const ParameterTable& table, const ValueMap& values) {
  ValueMap mirrored = values;
  for (const Parameter& parameter : table) {
    const Value& before = value_of(values, parameter);
    const Value after = mirrored_value(parameter, before);
    if (after == before || !applies_now(table, values, parameter)) continue;
    const std::string held(held_under(values, parameter));
    mirrored.erase(held);
    if (!(after == parameter.standard)) mirrored.insert_or_assign(held.empty() ? parameter.key : held, after);
  }
  return mirrored;
}

Event mirrored(Event event, const PieceIds& pieces, double axis_m, const ParameterTables& tables,
               const BuiltEvent& built) {
  for (const std::string& id : pieces) event = mirrored_one(std::move(event), id, axis_m, tables, built);
  return event;
}

Event mirrored_in_place(Event event, const PieceIds& pieces, const ParameterTables& tables, const BuiltEvent& built) {
  for (const std::string& id : pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    if (piece == nullptr) continue;
    const double middle = box_of(*piece, built).middle_x();
    event = mirrored_one(std::move(event), id, middle, tables, built);
  }
  return event;
}

std::optional<double> middle_of(const Event& event, const PieceIds& pieces, const BuiltEvent& built) {
  std::vector<PieceBox> boxes;
  for (const std::string& id : pieces)
    if (const PlacedPiece* piece = find_piece(event, id)) boxes.push_back(box_of(*piece, built));
  const auto all = box_around(boxes);
  return all ? std::optional(all->middle_x()) : std::nullopt;
}

}  // namespace quadrille
