#include "studio/model/securing.hpp"

#include <algorithm>

#include "studio/model/site_object.hpp"

namespace quadrille {
namespace {

const char* word_of(TiePurpose purpose) {
  return purpose == TiePurpose::front ? "front" : purpose == TiePurpose::back ? "back" : "side";
}

std::string list_of_ties(const Piece& piece) {
  std::string list;
  for (std::size_t i = 0; i < piece.tie_points.size(); ++i)
    list += (i == 0 ? "" : ", ") + tie_key(piece, i) + " (" + piece.tie_points[i].label + ")";
  return list.empty() ? "none" : list;
}

}  // namespace

const Cord* find_cord(std::string_view key) {
  if (key.empty()) return &cords.front();
  const auto* found = std::ranges::find_if(cords, [&](const Cord& cord) { return key == cord.key; });
  return found == cords.end() ? nullptr : found;
}

std::string tie_key(const Piece& piece, std::size_t tie_point) {
  const TiePurpose purpose = piece.tie_points.at(tie_point).purpose;
  int number = 0;
  for (std::size_t i = 0; i <= tie_point; ++i) number += piece.tie_points[i].purpose == purpose ? 1 : 0;
  return std::string(word_of(purpose)) + "-" + std::to_string(number);
}

std::optional<std::size_t> find_tie_point(const Piece& piece, std::string_view key) {
  for (std::size_t i = 0; i < piece.tie_points.size(); ++i)
    if (tie_key(piece, i) == key) return i;
  return std::nullopt;
}

Result<LineRun> run_of(const SecuringLine& line, const PlacedPiece& placed, const Piece& piece, const Area& area) {
  const auto tie = find_tie_point(piece, line.tie);
  if (!tie)
    return Result<LineRun>::bad("The piece has no tie point \"" + line.tie + "\"; it has: " + list_of_ties(piece) +
                                ".");
  LineRun run{*tie, piece.tie_points[*tie].point, Vec3(line.x_m, line.y_m, 0)};
  if (line.anchor == AnchorKind::structure) {
    const Structure* const structure = find_structure(area, line.structure);
    if (structure == nullptr)
      return Result<LineRun>::bad("The area has no structure \"" + line.structure + "\" to tie to.");
    if (line.height_m > structure->height_m)
      return Result<LineRun>::bad("The line is tied higher than the structure \"" + structure->name + "\" reaches.");
    run.to = Vec3(structure->x_m - placed.x_m, structure->y_m - placed.y_m, line.height_m);
  }
  if (run.length_m() < 0.05)
    return Result<LineRun>::bad("The line from " + line.tie + " has no length: its anchor is where it begins.");
  return Result<LineRun>::good(run);
}

}  // namespace quadrille
