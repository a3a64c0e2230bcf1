#include "studio/arrange/cut_out.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/quoted.hpp"
#include "studio/arrange/piece_box.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/event_edits.hpp"

namespace quadrille {
namespace {

void take_structures(const Area& area, const PlacedPiece& piece, std::vector<Structure>& structures) {
  for (const SecuringLine& line : piece.lines) {
    if (line.anchor != AnchorKind::structure) continue;
    const auto found = std::ranges::find(area.structures, line.structure, &Structure::id);
    if (found != area.structures.end() && std::ranges::find(structures, found->id, &Structure::id) == structures.end())
      structures.push_back(*found);
  }
}

/// How far all of the pieces go.
FloorPlace way_to(const CutOut& cut, const Area& area, std::optional<FloorPlace> where) {
  constexpr double aside_m = 0.3, same_place_m = 1e-3;
  const FloorPlace middle = middle_of(cut);
  if (where) return {where->x_m - middle.x_m, where->y_m - middle.y_m};
  FloorPlace way;
  const auto taken = [&](const PlacedPiece& piece) {
    return std::ranges::any_of(area.pieces, [&](const auto& other) {
      return std::abs(other->x_m - piece.x_m - way.x_m) < same_place_m &&
             std::abs(other->y_m - piece.y_m - way.y_m) < same_place_m;
    });
  };
  while (std::ranges::any_of(cut.pieces, taken)) way.x_m += aside_m;
  return way;
}

/// Pastes piece by piece and keeps account of what is left out.
class Paste {
 public:
  Paste(const Event& event, const Area& area, const CutOut& cut) : area_(area), cut_(cut), pasted_{event, {}, {}} {}

  void add(PlacedPiece piece, const FloorPlace& way) {
    piece.id = free_id(pasted_.event, "p");
    piece.name = free_name(pasted_.event, piece.name);
    piece.x_m = tidy(piece.x_m + way.x_m);
    piece.y_m = tidy(piece.y_m + way.y_m);
    piece.locked = piece.hidden = false;
    leave_out_lines(piece);
    if (piece.price_minor && cut_.currency != pasted_.event.currency) {
      piece.price_minor.reset();
      say(Weight::note, "price-left-out", piece.id, "price",
          "Its own price was in " + cut_.currency + " and this event is in " + pasted_.event.currency +
              ": it was left out.",
          "Give it a price in " + pasted_.event.currency + ", or let it be reckoned.");
    }
    pasted_.ids.push_back(piece.id);
    pasted_.event = with_piece(std::move(pasted_.event), area_.id, std::move(piece));
  }

  Pasted done() {
    for (const std::string& palette : cut_.palettes) pasted_.event = with_palette(std::move(pasted_.event), palette);
    return std::move(pasted_);
  }

 private:
  bool is_here(const std::string& structure) const {
    const auto there = std::ranges::find(cut_.structures, structure, &Structure::id);
    const auto here = std::ranges::find(area_.structures, structure, &Structure::id);
    return here != area_.structures.end() &&
           (there == cut_.structures.end() || (here->name == there->name && here->kind == there->kind));
  }
  void leave_out_lines(PlacedPiece& piece) {
    std::erase_if(piece.lines, [&](const SecuringLine& line) {
      if (line.anchor != AnchorKind::structure || is_here(line.structure)) return false;
      const auto there = std::ranges::find(cut_.structures, line.structure, &Structure::id);
      const std::string name = there == cut_.structures.end() || there->name.empty() ? line.structure : there->name;
      say(Weight::warning, "line-left-out", piece.id, "lines",
          "Its line " + line.tie + " was tied to " + quoted(name) + ", which this area does not have: it was left out.",
          "Tie it to a structure here, a stake or a dead weight.");
      return true;
    });
  }
  void say(Weight weight, const char* code, const std::string& piece, const char* key, std::string text,
           std::string remedy) {
    pasted_.findings.push_back({weight, code, area_.id, piece, key, std::move(text), std::move(remedy)});
  }

  const Area& area_;
  const CutOut& cut_;
  Pasted pasted_;
};

}  // namespace

FloorPlace middle_of(const CutOut& cut) {
  const auto [left, right] = std::ranges::minmax_element(cut.pieces, {}, &PlacedPiece::x_m);
  const auto [front, back] = std::ranges::minmax_element(cut.pieces, {}, &PlacedPiece::y_m);
  return {(left->x_m + right->x_m) / 2, (front->y_m + back->y_m) / 2};
}

CutOut cut_out(const Event& event, const PieceIds& pieces) {
  CutOut cut;
  cut.currency = event.currency;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      if (std::ranges::find(pieces, piece->id) == pieces.end()) continue;
      cut.pieces.push_back(*piece);
      take_structures(*area, *piece, cut.structures);
      for (const ColourReference& colour : piece->colours)
        if (!colour.palette.empty() && std::ranges::find(cut.palettes, colour.palette) == cut.palettes.end())
          cut.palettes.push_back(colour.palette);
    }
  return cut;
}

Event event_of(const CutOut& cut, Units units) {
  Area area;
  area.structures = cut.structures;
  for (const PlacedPiece& piece : cut.pieces) area.pieces.emplace_back(piece);
  Event event;
  event.units = units;
  event.currency = cut.currency;
  event.palettes = cut.palettes;
  area.id = "a1";
  event.areas.emplace_back(area);
  // An id of the pieces may be just that one.
  if (find_piece(event, area.id) != nullptr ||
      std::ranges::find(area.structures, area.id, &Structure::id) != area.structures.end())
    event.areas[0].edit([id = free_id(event, "a")](Area& renamed) { renamed.id = id; });
  return event;
}

CutOut event_cut_out(const Event& event) {
  PieceIds all;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) all.push_back(piece->id);
  return cut_out(event, all);
}

Pasted with_pasted(const Event& event, std::string_view area_id, const CutOut& cut, std::optional<FloorPlace> where) {
  const Area* area = find_area(event, area_id);
  if (area == nullptr || cut.pieces.empty()) return {event, {}, {}};
  Paste paste(event, *area, cut);
  const FloorPlace way = way_to(cut, *area, where);
  for (const PlacedPiece& piece : cut.pieces) paste.add(piece, way);
  return paste.done();
}

}  // namespace quadrille
