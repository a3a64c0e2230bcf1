// What an area holds beside its figures, seen from above: structures, walkways, the outlet, lines and pieces, by name.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

/// A place on the floor of an area, in its x and y.
struct SitePlace {
  double x_m = 0, y_m = 0;
  bool operator==(const SitePlace&) const = default;
};

enum class SiteObjectKind { structure, walkway, outlet, line, piece };

/// One of them. It names its object and does not hold it: the event may no longer have it.
struct SiteObject {
  SiteObjectKind kind = SiteObjectKind::structure;
  std::string id;        ///< of the structure, walkway or piece; of a line: that of its piece; of the outlet: empty
  std::size_t line = 0;  ///< in its piece's lines
  bool operator==(const SiteObject&) const = default;
};

/// By which part one is held: a walkway also by one of its four edges.
enum class SiteGrip { whole, left, right, front, back };

inline const Structure* find_structure(const Area& area, std::string_view id) {
  const auto found = std::ranges::find(area.structures, id, &Structure::id);
  return found == area.structures.end() ? nullptr : &*found;
}

inline const Walkway* find_walkway(const Area& area, std::string_view id) {
  const auto found = std::ranges::find(area.walkways, id, &Walkway::id);
  return found == area.walkways.end() ? nullptr : &*found;
}

inline const PlacedPiece* find_piece(const Area& area, std::string_view id) {
  for (const auto& piece : area.pieces)
    if (piece->id == id) return &*piece;
  return nullptr;
}

/// The line that `object` names, or null.
inline const SecuringLine* find_line(const Area& area, const SiteObject& object) {
  const PlacedPiece* const piece = object.kind == SiteObjectKind::line ? find_piece(area, object.id) : nullptr;
  return piece != nullptr && object.line < piece->lines.size() ? &piece->lines[object.line] : nullptr;
}

/// The middle between the outermost places of the area's pieces: where balloons are inflated and the cord ends. Without
/// pieces the middle of the wall, else the left end of the front line.
inline SitePlace work_place(const Area& area) {
  if (area.pieces.empty()) return {area.wall_width_m.value_or(0) / 2, 0};
  SitePlace least{area.pieces.front()->x_m, area.pieces.front()->y_m}, most = least;
  for (const auto& piece : area.pieces) {
    least = {std::min(least.x_m, piece->x_m), std::min(least.y_m, piece->y_m)};
    most = {std::max(most.x_m, piece->x_m), std::max(most.y_m, piece->y_m)};
  }
  return {(least.x_m + most.x_m) / 2, (least.y_m + most.y_m) / 2};
}

/// True where the area has what `object` names.
inline bool has_object(const Area& area, const SiteObject& object) {
  switch (object.kind) {
    case SiteObjectKind::structure:
      return find_structure(area, object.id) != nullptr;
    case SiteObjectKind::walkway:
      return find_walkway(area, object.id) != nullptr;
    case SiteObjectKind::outlet:
      return area.site.outlet_m.has_value();
    case SiteObjectKind::line:
      return find_line(area, object) != nullptr;
    case SiteObjectKind::piece:
      break;
  }
  return find_piece(area, object.id) != nullptr;
}

/// Structures, walkways, the outlet where its distance is known, then the lines piece by piece.
inline std::vector<SiteObject> site_objects(const Area& area) {
  std::vector<SiteObject> objects;
  for (const Structure& structure : area.structures) objects.push_back({SiteObjectKind::structure, structure.id});
  for (const Walkway& walkway : area.walkways) objects.push_back({SiteObjectKind::walkway, walkway.id});
  if (area.site.outlet_m) objects.push_back({SiteObjectKind::outlet, {}});
  for (const auto& piece : area.pieces)
    for (std::size_t i = 0; i < piece->lines.size(); ++i) objects.push_back({SiteObjectKind::line, piece->id, i});
  return objects;
}

}  // namespace quadrille
