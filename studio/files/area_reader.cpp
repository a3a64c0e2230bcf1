#include "studio/files/area_reader.hpp"

#include <utility>

#include "studio/files/backdrop_element.hpp"
#include "studio/files/value_reader.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

std::string nothing_known(const XmlNode&) { return {}; }

Site read_site(const XmlNode& element, Reading& reading) {
  Site site;
  ElementReader reader(element, reading, site.preserved);
  site.surroundings = reader.word("surroundings", surroundings_words, site.surroundings);
  site.ground = reader.word("ground", ground_words, site.ground);
  site.gust_m_s = reader.number("gust-m-s", gust_range);
  site.inflating_celsius = reader.number("inflating-celsius", celsius_range);
  site.event_celsius = reader.number("event-celsius", celsius_range);
  site.altitude_m = reader.number("altitude-m", altitude_range);
  site.inflating_altitude_m = reader.number("inflating-altitude-m", altitude_range);
  site.outlet_m = reader.number("outlet-m", size_range);
  site.vehicle_m = reader.number("vehicle-m", size_range);
  reader.children(nothing_known);
  reader.finish();
  return site;
}

Structure read_structure(const XmlNode& element, Reading& reading, Ids& ids) {
  Structure structure;
  ElementReader reader(element, reading, structure.preserved);
  structure.id = ids.of(reader, "s");
  structure.name = reader.text("name");
  structure.kind = reader.word("kind", structure_words, structure.kind);
  structure.x_m = reader.number("x-m", place_range).value_or(0);
  structure.y_m = reader.number("y-m", place_range).value_or(0);
  structure.height_m = reader.number("height-m", size_range).value_or(0);
  structure.width_m = reader.number("width-m", size_range);
  structure.depth_m = reader.number("depth-m", size_range);
  structure.allowed_by = reader.text("allowed-by");
  reader.children(nothing_known);
  reader.finish();
  return structure;
}

Walkway read_walkway(const XmlNode& element, Reading& reading, Ids& ids) {
  Walkway walkway;
  ElementReader reader(element, reading, walkway.preserved);
  walkway.id = ids.of(reader, "w");
  walkway.name = reader.text("name");
  walkway.x_m = reader.number("x-m", place_range).value_or(0);
  walkway.y_m = reader.number("y-m", place_range).value_or(0);
  walkway.width_m = reader.number("width-m", size_range).value_or(0);
  walkway.depth_m = reader.number("depth-m", size_range).value_or(0);
  reader.children(nothing_known);
  reader.finish();
  return walkway;
}

LastBuilt read_last_built(ElementReader& piece, const XmlNode& child) {
  LastBuilt last;
  ElementReader reader(child, piece.reading(), piece.kept(), piece.inside("last-built"));
  last.width_m = reader.number("width-m", size_range).value_or(0);
  last.height_m = reader.number("height-m", size_range).value_or(0);
  last.depth_m = reader.number("depth-m", size_range).value_or(0);
  last.clusters = reader.whole("clusters", count_range).value_or(0);
  reader.children([&](const XmlNode& row) -> std::string {
    if (row.name != "count") return {};
    const std::string address = "count:" + std::to_string(last.counts.size() + 1);
    ElementReader count(row, reader.reading(), reader.kept(), reader.inside(address));
    const auto slot = count.slot("slot");
    if (!slot) count.fail("slot is missing or no letter from A to Z.");
    last.counts.push_back({count.number("nominal-in", nominal_range).value_or(0),
                           count.number("inflated-m", size_range).value_or(0), static_cast<std::uint32_t>(*slot),
                           count.whole("balloons", count_range).value_or(0)});
    count.children(nothing_known);
    count.finish();
    return address;
  });
  reader.finish();
  return last;
}

SecuringLine read_line(const XmlNode& element, Reading& reading) {
  SecuringLine line;
  ElementReader reader(element, reading, line.preserved);
  line.tie = reader.text("tie");
  line.anchor = reader.word("anchor", anchor_words, line.anchor);
  if (line.anchor == AnchorKind::structure) {
    line.structure = reader.text("structure");
    line.height_m = reader.number("height-m", size_range).value_or(0);
  } else {
    line.x_m = reader.number("x-m", place_range).value_or(0);
    line.y_m = reader.number("y-m", place_range).value_or(0);
  }
  if (line.anchor == AnchorKind::dead_weight) line.mass_kg = reader.number("mass-kg", mass_range).value_or(0);
  line.cord = reader.text("cord");
  reader.children(nothing_known);
  reader.finish();
  return line;
}

std::string read_piece_child(ElementReader& piece, const XmlNode& child, PlacedPiece& placed, SlotColours& colours) {
  if (holds_value(child)) return read_value(piece, child, placed.values);
  if (child.name == "colour") return colours.read(piece, child);
  if (child.name == "line") {
    placed.lines.push_back(read_line(child, piece.reading()));
    return "line:" + std::to_string(placed.lines.size());
  }
  if (child.name != "last-built") return {};
  if (placed.last_built) return piece.leave("It stands twice, and only the first counts;", "last-built");
  placed.last_built = read_last_built(piece, child);
  return "last-built";
}

PlacedPiece read_piece(const XmlNode& element, Reading& reading, Ids& ids) {
  PlacedPiece piece;
  ElementReader reader(element, reading, piece.preserved);
  piece.id = ids.of(reader, "p");
  reading.piece = piece.id;
  piece.name = reader.text("name");
  piece.type = reader.text("type");
  if (piece.type.empty())
    reader.report(Weight::warning, "no-type", element, "type", "It does not say of which type it is.",
                  "Add type=\"…\"; `quadrille pieces` lists the types.");
  piece.x_m = reader.number("x-m", place_range).value_or(0);
  piece.y_m = reader.number("y-m", place_range).value_or(0);
  piece.locked = reader.word("locked", yes_or_no, false);
  piece.hidden = reader.word("hidden", yes_or_no, false);
  piece.price_minor = reader.whole("price-minor", money_range);
  piece.note = reader.text("note");
  SlotColours colours;
  reader.children([&](const XmlNode& child) { return read_piece_child(reader, child, piece, colours); });
  reader.finish();
  piece.colours = colours.take();
  reading.piece.clear();
  return piece;
}

}  // namespace

Ids::Ids(const XmlNode& event) {
  const auto is = [](const XmlNode& node, std::string_view name) { return node.own && node.name == name; };
  for (const XmlNode& area : event.children) {
    if (!is(area, "area")) continue;
    add(area);
    for (const XmlNode& child : area.children)
      if (is(child, "piece") || is(child, "structure") || is(child, "walkway")) add(child);
  }
}

void Ids::add(const XmlNode& element) {
  const std::string* id = element.attribute("id");
  if (id == nullptr || id->empty()) return;
  const auto [first, added] = lines_.emplace(*id, element.line);
  if (!added)
    throw Unreadable{element.line, place_of(element),
                     "The id \"" + shown(*id) + "\" is already borne by what line " + std::to_string(first->second) +
                         " begins; each needs its own."};
}

std::string Ids::of(ElementReader& element, std::string_view stem) {
  std::string id = element.text("id");
  int& number = next_[std::string(stem)];
  while (id.empty()) {
    std::string next = std::string(stem) + std::to_string(++number);
    if (!lines_.emplace(next, element.element().line).second) continue;
    id = std::move(next);
    element.report(Weight::note, "no-id", element.element(), "id", "It has no id; it is called \"" + id + "\" here.",
                   {});
  }
  return id;
}

Area read_area(const XmlNode& element, Reading& reading, Ids& ids) {
  Area area;
  ElementReader reader(element, reading, area.preserved);
  area.id = ids.of(reader, "a");
  reading.area = area.id;
  area.name = reader.text("name");
  area.wall_width_m = reader.number("wall-width-m", size_range);
  area.wall_height_m = reader.number("wall-height-m", size_range);
  bool has_site = false;
  reader.children([&](const XmlNode& child) -> std::string {
    if (child.name == "site") {
      if (std::exchange(has_site, true)) return reader.leave("It stands twice, and only the first counts;");
      area.site = read_site(child, reading);
      return "site";
    }
    if (child.name == "backdrop") {
      if (area.backdrop) return reader.leave("It stands twice, and only the first counts;", "backdrop");
      auto backdrop = read_backdrop(child, reading);
      if (!backdrop) return reader.leave(std::move(backdrop.error));
      area.backdrop = std::move(backdrop.value);
      return "backdrop";
    }
    if (child.name == "structure")
      return "structure:" + area.structures.emplace_back(read_structure(child, reading, ids)).id;
    if (child.name == "walkway") return "walkway:" + area.walkways.emplace_back(read_walkway(child, reading, ids)).id;
    if (child.name == "piece") return "piece:" + area.pieces.emplace_back(read_piece(child, reading, ids))->id;
    return {};
  });
  reader.finish();
  reading.area.clear();
  return area;
}

}  // namespace quadrille
