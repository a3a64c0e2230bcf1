// write_event: from an event to bytes. The order of calls is the order in the file.
#include <algorithm>
#include <string>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/files/backdrop_element.hpp"
#include "studio/files/element_writer.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/file_header.hpp"
#include "studio/files/quote_element.hpp"
#include "studio/files/value_writer.hpp"

namespace quadrille {
namespace {

std::string site_lines(const Site& site) {
  const Kept kept(site.preserved);
  ElementWriter writer("site", 2, kept);
  writer.word("surroundings", surroundings_words, site.surroundings, Site{}.surroundings);
  writer.word("ground", ground_words, site.ground, Site{}.ground);
  writer.number("gust-m-s", site.gust_m_s);
  writer.number("inflating-celsius", site.inflating_celsius);
  writer.number("event-celsius", site.event_celsius);
  writer.number("altitude-m", site.altitude_m);
  writer.number("inflating-altitude-m", site.inflating_altitude_m);
  writer.number("outlet-m", site.outlet_m);
  writer.number("vehicle-m", site.vehicle_m);
  return writer.finish();
}

std::string structure_lines(const Structure& structure) {
  const Kept kept(structure.preserved);
  ElementWriter writer("structure", 2, kept);
  writer.text("id", structure.id);
  writer.text_unless_empty("name", structure.name);
  writer.word("kind", structure_words, structure.kind, Structure{}.kind);
  writer.number("x-m", structure.x_m);
  writer.number("y-m", structure.y_m);
  writer.number("height-m", structure.height_m);
  writer.number("width-m", structure.width_m);
  writer.number("depth-m", structure.depth_m);
  writer.text_unless_empty("allowed-by", structure.allowed_by);
  return writer.finish();
}

std::string walkway_lines(const Walkway& walkway) {
  const Kept kept(walkway.preserved);
  ElementWriter writer("walkway", 2, kept);
  writer.text("id", walkway.id);
  writer.text_unless_empty("name", walkway.name);
  writer.number("x-m", walkway.x_m);
  writer.number("y-m", walkway.y_m);
  writer.number("width-m", walkway.width_m);
  writer.number("depth-m", walkway.depth_m);
  return writer.finish();
}

void write_last_built(ElementWriter& piece, const Kept& kept, const LastBuilt& last) {
  ElementWriter writer("last-built", 3, kept, piece.inside("last-built"));
  writer.number("width-m", last.width_m);
  writer.number("height-m", last.height_m);
  writer.number("depth-m", last.depth_m);
  writer.whole("clusters", last.clusters);
  for (std::size_t i = 0; i < last.counts.size(); ++i) {
    const LastBuilt::Count& row = last.counts[i];
    const std::string address = "count:" + std::to_string(i + 1);
    ElementWriter count("count", 4, kept, writer.inside(address));
    count.number("nominal-in", row.nominal_in);
    count.number("inflated-m", row.inflated_m);
    count.text("slot", std::string(1, slot_letter(row.slot)));
    count.whole("balloons", row.balloons);
    writer.child(address, count.finish());
  }
  piece.child("last-built", writer.finish());
}

std::string securing_line(const SecuringLine& line) {
  const Kept kept(line.preserved);
  ElementWriter writer("line", 3, kept);
  writer.text("tie", line.tie);
  writer.word("anchor", anchor_words, line.anchor, SecuringLine{}.anchor);
  if (line.anchor == AnchorKind::structure) {
    writer.text("structure", line.structure);
    writer.number("height-m", line.height_m);
  } else {
    writer.number("x-m", line.x_m);
    writer.number("y-m", line.y_m);
  }
  if (line.anchor == AnchorKind::dead_weight) writer.number("mass-kg", line.mass_kg);
  writer.text_unless_empty("cord", line.cord);
  return writer.finish();
}

std::string piece_lines(const PlacedPiece& piece) {
  const Kept kept(piece.preserved);
  ElementWriter writer("piece", 2, kept);
  writer.text("id", piece.id);
  writer.text_unless_empty("name", piece.name);
  writer.text_unless_empty("type", piece.type);
  writer.number("x-m", piece.x_m);
  writer.number("y-m", piece.y_m);
  writer.yes("locked", piece.locked);
  writer.yes("hidden", piece.hidden);
  if (piece.price_minor) writer.whole("price-minor", *piece.price_minor);
  writer.text_unless_empty("note", piece.note);
  if (!piece.last_built) writer.give_up([](std::string_view what) { return what == "last-built"; });
  write_values(writer, kept, piece.values);
  write_colours(writer, kept, piece.colours);
  for (std::size_t i = 0; i < piece.lines.size(); ++i)
    writer.child("line:" + std::to_string(i + 1), securing_line(piece.lines[i]));
  if (piece.last_built)
    write_last_built(writer, kept, *piece.last_built);
  else
    writer.child("last-built", {});
  return writer.finish();
}

std::string area_lines(const Area& area) {
  const Kept kept(area.preserved);
  ElementWriter writer("area", 1, kept);
  writer.text("id", area.id);
  writer.text_unless_empty("name", area.name);
  writer.number("wall-width-m", area.wall_width_m);
  writer.number("wall-height-m", area.wall_height_m);
  if (!area.backdrop) writer.give_up([](std::string_view what) { return what == "backdrop"; });
  writer.child("site", site_lines(area.site));
  writer.child("backdrop", area.backdrop ? backdrop_lines(*area.backdrop, 2) : std::string());
  for (const Structure& structure : area.structures)
    writer.child("structure:" + structure.id, structure_lines(structure));
  for (const Walkway& walkway : area.walkways) writer.child("walkway:" + walkway.id, walkway_lines(walkway));
  for (const auto& piece : area.pieces) writer.child("piece:" + piece->id, piece_lines(*piece));
  return writer.finish();
}

void write_job_and_day(ElementWriter& root, const Kept& kept, const Event& event) {
  ElementWriter job("job", 1, kept, root.inside("job"));
  job.text_unless_empty("title", event.title);
  job.text_unless_empty("client", event.client);
  job.text_unless_empty("venue", event.venue);
  job.number("travel-m", event.terms.travel_m);
  if (event.terms.crew) job.whole("crew", *event.terms.crew);
  if (event.terms.discount != 0) job.whole("discount-ppm", event.terms.discount);
  root.child("job", job.is_empty() && !root.keeps_another("job") ? std::string() : job.finish());
  ElementWriter day("day", 1, kept, root.inside("day"));
  day.text_unless_empty("date", event.date);
  day.text_unless_empty("load-in-from", event.load_in_from);
  day.text_unless_empty("ready-by", event.ready_by);
  day.text_unless_empty("strike-from", event.strike_from);
  root.child("day", day.is_empty() && !root.keeps_another("day") ? std::string() : day.finish());
}

void write_standing(ElementWriter& root, const Kept& kept, const Event& event) {
  ElementWriter standing("standing", 1, kept, root.inside("standing"));
  standing.give_up([&](std::string_view what) {  // else it would be read in the place of what the user took away
    if (what.starts_with("assumption:")) return !event.assumptions.contains(what.substr(11));
    return what.starts_with("tick:") && !event.ticked.contains(what.substr(5));
  });
  for (const auto& [key, number] : event.assumptions) {
    const std::string address = "assumption:" + key;
    ElementWriter writer("assumption", 2, kept, standing.inside(address));
    writer.text("key", key);
    writer.number("value", number);
    standing.child(address, writer.finish());
  }
  for (const std::string& key : event.ticked) {
    const std::string address = "tick:" + key;
    ElementWriter writer("tick", 2, kept, standing.inside(address));
    writer.text("key", key);
    standing.child(address, writer.finish());
  }
  root.child("standing", standing.is_empty() && !root.keeps_another("standing") ? std::string() : standing.finish());
}

}  // namespace

std::string write_event(const Event& event) {
  const Kept kept(event.preserved);
  ElementWriter root("event", 0, kept);
  const bool has_photo = std::ranges::any_of(event.areas, [](const auto& area) { return area->backdrop.has_value(); });
  write_header(root, event_kind, has_photo ? 1 : 0);
  root.word("units", units_words, event.units, Event{}.units);
  root.text("currency", event.currency);
  root.give_up([&](std::string_view what) {
    if (what == "quote") return !event.issued.has_value();
    return what.starts_with("palette:") && std::ranges::find(event.palettes, what.substr(8)) == event.palettes.end();
  });
  write_job_and_day(root, kept, event);
  for (const std::string& palette : event.palettes) {
    const std::string address = "palette:" + palette;
    ElementWriter writer("palette", 1, kept, address);
    writer.text("key", palette);
    root.child(address, writer.finish());
  }
  write_standing(root, kept, event);
  root.child("quote", event.issued ? quote_lines(*event.issued, 1) : std::string());
  for (const auto& area : event.areas) root.child("area:" + area->id, area_lines(*area));
  return whole_file(root, kept);
}

}  // namespace quadrille
