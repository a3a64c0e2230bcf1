// write_event: from an event to bytes. The order of calls is the order in the file.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/files/element_writer.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/file_header.hpp"

namespace quadrille {
namespace {

std::string letter_of(std::size_t slot) { return std::string(1, slot_letter(static_cast<std::uint32_t>(slot))); }

std::string site_lines(const Site& site) {
  const Kept kept(site.preserved);
  ElementWriter writer("site", 2, kept);
  writer.word("surroundings", surroundings_words, site.surroundings, Site{}.surroundings);
  writer.word("ground", ground_words, site.ground, Site{}.ground);
  writer.number("gust-m-s", site.gust_m_s);
  writer.number("inflating-celsius", site.inflating_celsius);
  writer.number("event-celsius", site.event_celsius);
  writer.number("altitude-m", site.altitude_m);
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

void write_rows(ElementWriter& list, const Kept& kept, const std::string& row,
                const std::array<const char*, 3>& columns, const std::vector<double>& numbers) {
  for (std::size_t i = 0; i + 2 < numbers.size(); i += 3) {
    const std::string address = row + ":" + std::to_string(i / 3 + 1);
    ElementWriter writer(row, 4, kept, list.inside(address));
    for (std::size_t column = 0; column < 3; ++column) writer.number(columns[column], numbers[i + column]);
    list.child(address, writer.finish());
  }
}

void write_value(ElementWriter& piece, const Kept& kept, const std::string& key, const Value& value) {
  const std::string element = value.kind == Kind::path ? "path" : value.kind == Kind::mix ? "mix" : "set";
  const std::string address = element + ":" + key;
  ElementWriter writer(element, 3, kept, piece.inside(address));
  writer.text("key", key);
  for (const KindWord& kind : kind_words) {
    if (kind.kind != value.kind) continue;
    if (is_text(kind.kind))
      writer.text(kind.word, value.text);
    else if (kind.kind == Kind::flag)
      writer.text(kind.word, word_of(yes_or_no, value.number != 0));
    else if (is_whole(kind.kind) && std::abs(value.number) < 1e15)
      writer.whole(kind.word, std::llround(value.number));
    else
      writer.number(kind.word, value.number);
  }
  if (value.kind == Kind::path) write_rows(writer, kept, "point", {"x-m", "y-m", "z-m"}, value.list);
  if (value.kind == Kind::mix) write_rows(writer, kept, "entry", {"nominal-in", "inflated-m", "share"}, value.list);
  piece.child(address, writer.finish());
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
    count.text("slot", letter_of(row.slot));
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
  writer.give_up([&](std::string_view what) {  // else it would be read in the place of what the user chose
    if (what == "last-built") return !piece.last_built.has_value();
    return what.starts_with("value:") && piece.values.contains(what.substr(6));
  });
  for (const auto& [key, value] : piece.values) write_value(writer, kept, key, value);
  for (std::size_t slot = 0; slot < piece.colours.size(); ++slot) {
    const std::string address = "colour:" + letter_of(slot);
    ElementWriter colour("colour", 3, kept, address);
    colour.text("slot", letter_of(slot));
    colour.text_unless_empty("palette", piece.colours[slot].palette);
    colour.text_unless_empty("key", piece.colours[slot].colour);
    writer.child(address, colour.finish());
  }
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
  writer.child("site", site_lines(area.site));
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
  const std::string version = std::to_string(file_major) + "." + std::to_string(file_minor);
  ElementWriter root("event", 0, kept);
  root.text("xmlns", std::string(event_kind.space) + std::to_string(file_major));
  root.text("version", root.kept_or("version", true, version));
  root.text("reader", root.kept_or("reader", true, version));
  root.word("units", units_words, event.units, Event{}.units);
  root.text("currency", event.currency);
  root.give_up([&](std::string_view what) {
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
  for (const auto& area : event.areas) root.child("area:" + area->id, area_lines(*area));

  std::string bytes = line_of("<?xml version=\"1.0\" encoding=\"UTF-8\"?>", 0);
  std::string below;
  for (const Preserved::Node* node : kept.inside("/").nodes)
    (node->before.empty() ? below : bytes) += line_of(node->xml, 0);
  return bytes + root.finish() + below;
}

}  // namespace quadrille
