// What an area holds, in words.
#include <cmath>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "sdk/vec.hpp"
#include "studio/form/site_form.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/securing.hpp"

namespace quadrille {
namespace {

constexpr double least_m = 0.005;

/// "2.60 m front, 1.20 m left", from the piece's place.
std::string way_words(double x_m, double y_m, LengthStyle style) {
  std::string words;
  if (std::abs(y_m) >= least_m) words = print_length(std::abs(y_m), style) + (y_m < 0 ? " front" : " back");
  if (std::abs(x_m) >= least_m)
    words += (words.empty() ? "" : ", ") + print_length(std::abs(x_m), style) + (x_m < 0 ? " left" : " right");
  return words.empty() ? "right beneath" : words;
}

std::string name_or(const std::string& name, const char* otherwise) { return name.empty() ? otherwise : name; }

std::string anchor_words(const SecuringLine& line, const Area& area, Units units) {
  const LengthStyle style = lengths_in(units);
  if (line.anchor == AnchorKind::stake) return "Stake, " + way_words(line.x_m, line.y_m, style);
  if (line.anchor == AnchorKind::dead_weight)
    return print_mass(line.mass_kg, masses_in(units)) + ", " + way_words(line.x_m, line.y_m, style);
  const Structure* const to = find_structure(area, line.structure);
  return to == nullptr ? "Something that is gone"
                       : name_or(to->name, "Structure") + ", at " + print_length(line.height_m, style);
}

/// How long and how steep it runs, or what it lacks.
std::string run_words(const SecuringLine& line, const PlacedPiece& placed, const Area& area, const BuiltEvent& built,
                      LengthStyle style) {
  const auto found = built.find(placed.id);
  if (found == built.end()) return "The piece is not built";
  const auto run = run_of(line, placed, found->second->piece, area);
  if (!run) return run.error;
  const Vec3 way = run->to - run->from;
  const double degrees = std::atan2(std::abs(way.z()), std::hypot(way.x(), way.y())) * 180 / pi;
  return print_length(run->length_m(), style) + " at " + print_fixed(degrees, 0) + "°";
}

std::string structure_measures(const Structure& structure, LengthStyle style) {
  std::string words;
  const auto add = [&](double metres, const char* what) {
    if (metres > 0) words += (words.empty() ? "" : ", ") + print_length(metres, style) + what;
  };
  add(structure.height_m, " high");
  add(structure.width_m.value_or(0), " wide");
  add(structure.depth_m.value_or(0), " deep");
  if (!structure.allowed_by.empty()) words += (words.empty() ? "" : ", ") + std::string("allowed");
  return words;
}

}  // namespace

std::string floor_words(double x_m, double y_m, Units units) {
  const LengthStyle style = lengths_in(units);
  std::string words = print_length(x_m, style) + " along";
  if (std::abs(y_m) >= least_m) words += ", " + print_length(std::abs(y_m), style) + (y_m < 0 ? " front" : " back");
  return words;
}

std::string object_name(const Area& area, const SiteObject& object) {
  if (object.kind == SiteObjectKind::outlet) return "Outlet";
  if (const Structure* it = find_structure(area, object.id); it && object.kind == SiteObjectKind::structure)
    return name_or(it->name, "Structure");
  if (const Walkway* it = find_walkway(area, object.id); it && object.kind == SiteObjectKind::walkway)
    return name_or(it->name, "Walkway");
  const PlacedPiece* const piece = find_piece(area, object.id);
  const std::string name = piece != nullptr ? name_or(piece->name, "piece") : std::string("piece");
  if (object.kind == SiteObjectKind::piece) return name;
  const SecuringLine* const line = find_line(area, object);
  return line != nullptr ? "Line " + line->tie + " of " + name : std::string("Line");
}

SiteRow site_row(const Event& event, const Area& area, const SiteObject& object, const BuiltEvent& built) {
  const LengthStyle style = lengths_in(event.units);
  SiteRow row{object, "", "", ""};
  if (!has_object(area, object)) return row;
  row.what = object_name(area, object);
  switch (object.kind) {
    case SiteObjectKind::structure: {
      const Structure& it = *find_structure(area, object.id);
      row.where = floor_words(it.x_m, it.y_m, event.units);
      row.measures = structure_measures(it, style);
      return row;
    }
    case SiteObjectKind::walkway: {
      const Walkway& it = *find_walkway(area, object.id);
      row.where = floor_words(it.x_m, it.y_m, event.units);
      row.measures = print_length(it.width_m, style) + " × " + print_length(it.depth_m, style);
      return row;
    }
    case SiteObjectKind::outlet:
      row.where = print_length(area.site.outlet_m.value_or(0), style) + " from where you inflate";
      return row;
    case SiteObjectKind::line: {
      const SecuringLine& line = *find_line(area, object);
      row.what = object_name(area, {SiteObjectKind::piece, object.id}) + ", " + line.tie;
      row.where = anchor_words(line, area, event.units);
      row.measures = run_words(line, *find_piece(area, object.id), area, built, style);
      return row;
    }
    case SiteObjectKind::piece:
      break;
  }
  const PlacedPiece& piece = *find_piece(area, object.id);
  row.where = floor_words(piece.x_m, piece.y_m, event.units);
  return row;
}

std::vector<SiteRow> site_rows(const Event& event, const Area& area, const BuiltEvent& built) {
  std::vector<SiteRow> rows;
  for (const SiteObject& object : site_objects(area)) rows.push_back(site_row(event, area, object, built));
  return rows;
}

}  // namespace quadrille
