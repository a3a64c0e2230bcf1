// The stockroom's entries: inflators, balloons, supplies, kits, and how often balloons fail.
#include <set>
#include <utility>

#include "sdk/number.hpp"
#include "studio/files/element_writer.hpp"
#include "studio/files/house_entries.hpp"
#include "studio/files/house_words.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

constexpr int entry_depth = 2;

std::string nothing_known(const XmlNode&) { return {}; }

void close(ElementReader& reader) {
  reader.children(nothing_known);
  reader.finish();
}

}  // namespace

std::string address_of(const Inflator& inflator) { return "inflator:" + inflator.key; }

std::string address_of(const FailureRate& failure) {
  return "failure:" + print_number(failure.nominal_in) + "/" +
         (failure.finish ? word_of(finish_words, *failure.finish) : "");
}

std::string address_of(const BalloonStock& stock) {
  return "balloon:" + stock.colour.palette + "/" + stock.colour.colour + "/" + print_number(stock.nominal_in);
}

std::string address_of(const SupplyStock& supply) { return "supply:" + supply.key; }

std::string address_of(const FrameKit& kit) { return "kit:" + kit.key; }

void read_entry(const XmlNode& element, Reading& reading, Inflator& inflator) {
  ElementReader reader(element, reading, inflator.preserved);
  inflator.key = reader.required("key");
  inflator.name = reader.text("name");
  inflator.litres_per_s = reader.required_number("litres-per-s", flow_range);
  inflator.nozzles = reader.whole("nozzles", nozzle_range).value_or(inflator.nozzles);
  inflator.watts = reader.number("watts", power_range).value_or(inflator.watts);
  inflator.volts = reader.number("volts", voltage_range).value_or(inflator.volts);
  inflator.source = reader.text("source");
  close(reader);
}

std::string entry_lines(const Inflator& inflator) {
  const Kept kept(inflator.preserved);
  ElementWriter writer("inflator", entry_depth, kept);
  writer.text("key", inflator.key);
  writer.text_unless_empty("name", inflator.name);
  writer.number("litres-per-s", inflator.litres_per_s);
  writer.whole("nozzles", inflator.nozzles);
  writer.number("watts", inflator.watts);
  writer.number("volts", inflator.volts);
  writer.text_unless_empty("source", inflator.source);
  return writer.finish();
}

void read_entry(const XmlNode& element, Reading& reading, FailureRate& failure) {
  ElementReader reader(element, reading, failure.preserved);
  failure.nominal_in = reader.number("nominal-in", sold_size_range).value_or(0);
  const std::string finish = reader.text("finish");
  for (const Word<Finish>& entry : finish_words)
    if (finish == entry.word) failure.finish = entry.value;
  failure.rate = reader.required_number("rate", failure_range);
  close(reader);
}

std::string entry_lines(const FailureRate& failure) {
  const Kept kept(failure.preserved);
  ElementWriter writer("failure", entry_depth, kept);
  if (failure.nominal_in != 0) writer.number("nominal-in", failure.nominal_in);
  if (failure.finish) writer.text("finish", word_of(finish_words, *failure.finish));
  writer.number("rate", failure.rate);
  return writer.finish();
}

void read_entry(const XmlNode& element, Reading& reading, BalloonStock& stock) {
  ElementReader reader(element, reading, stock.preserved);
  stock.colour.palette = reader.required("palette");
  stock.colour.colour = reader.required("key");
  stock.nominal_in = reader.required_number("nominal-in", sold_size_range);
  stock.on_hand = reader.whole("on-hand", count_range).value_or(0);
  std::set<std::int64_t> counts;
  reader.children([&](const XmlNode& child) -> std::string {
    if (child.name != "pack") return {};
    const std::string address = "pack:" + std::to_string(stock.packs.size() + 1);
    ElementReader pack(child, reading, stock.preserved, reader.inside(address));
    const std::int64_t count = pack.required_whole("count", pack_count_range);
    if (!counts.insert(count).second) pack.fail("A pack of " + std::to_string(count) + " stands twice; keep one.");
    stock.packs.push_back({stock.nominal_in, count, pack.required_whole("price-minor", pack_price_range)});
    close(pack);
    return address;
  });
  reader.finish();
}

std::string entry_lines(const BalloonStock& stock) {
  const Kept kept(stock.preserved);
  ElementWriter writer("balloon", entry_depth, kept);
  writer.text("palette", stock.colour.palette);
  writer.text("key", stock.colour.colour);
  writer.number("nominal-in", stock.nominal_in);
  writer.whole("on-hand", stock.on_hand);
  for (std::size_t i = 0; i < stock.packs.size(); ++i) {
    const std::string address = "pack:" + std::to_string(i + 1);
    ElementWriter pack("pack", entry_depth + 1, kept, address);
    pack.whole("count", stock.packs[i].count);
    pack.whole("price-minor", stock.packs[i].price_minor);
    writer.child(address, pack.finish());
  }
  return writer.finish();
}

void read_entry(const XmlNode& element, Reading& reading, SupplyStock& supply) {
  ElementReader reader(element, reading, supply.preserved);
  supply.key = reader.required("key");
  supply.name = reader.text("name");
  supply.pack = reader.number("pack", pack_quantity_range).value_or(supply.pack);
  supply.price_minor = reader.required_whole("price-minor", pack_price_range);
  supply.on_hand = reader.number("on-hand", quantity_range).value_or(0);
  supply.reused = reader.word("reused", yes_or_no, false);
  supply.rental_minor = reader.whole("rental-minor", money_range).value_or(0);
  supply.mass_kg = reader.number("mass-kg", unit_mass_range).value_or(0);
  supply.kept_where = reader.text("kept-where");
  close(reader);
}

std::string entry_lines(const SupplyStock& supply) {
  const Kept kept(supply.preserved);
  ElementWriter writer("supply", entry_depth, kept);
  writer.text("key", supply.key);
  writer.text_unless_empty("name", supply.name);
  writer.number("pack", supply.pack);
  writer.whole("price-minor", supply.price_minor);
  if (supply.on_hand != 0) writer.number("on-hand", supply.on_hand);
  writer.yes("reused", supply.reused);
  if (supply.rental_minor != 0) writer.whole("rental-minor", supply.rental_minor);
  if (supply.mass_kg != 0) writer.number("mass-kg", supply.mass_kg);
  writer.text_unless_empty("kept-where", supply.kept_where);
  return writer.finish();
}

void read_entry(const XmlNode& element, Reading& reading, FrameKit& kit) {
  ElementReader reader(element, reading, kit.preserved);
  kit.key = reader.required("key");
  kit.name = reader.text("name");
  kit.on_hand = reader.whole("on-hand", count_range).value_or(kit.on_hand);
  kit.rental_minor = reader.whole("rental-minor", money_range).value_or(0);
  kit.kept_where = reader.text("kept-where");
  std::set<std::string> supplies;
  reader.children([&](const XmlNode& child) -> std::string {
    if (child.name != "part") return {};
    const std::string address = "part:" + std::to_string(kit.parts.size() + 1);
    ElementReader part(child, reading, kit.preserved, reader.inside(address));
    std::string supply = part.required("supply");
    if (!supplies.insert(supply).second) part.fail("The part \"" + shown(supply) + "\" stands twice; keep one.");
    kit.parts.push_back({std::move(supply), part.required_number("quantity", part_range)});
    close(part);
    return address;
  });
  reader.finish();
}

std::string entry_lines(const FrameKit& kit) {
  const Kept kept(kit.preserved);
  ElementWriter writer("kit", entry_depth, kept);
  writer.text("key", kit.key);
  writer.text_unless_empty("name", kit.name);
  writer.whole("on-hand", kit.on_hand);
  writer.whole("rental-minor", kit.rental_minor);
  writer.text_unless_empty("kept-where", kit.kept_where);
  for (std::size_t i = 0; i < kit.parts.size(); ++i) {
    const std::string address = "part:" + std::to_string(i + 1);
    ElementWriter part("part", entry_depth + 1, kept, address);
    part.text("supply", kit.parts[i].supply);
    part.number("quantity", kit.parts[i].quantity);
    writer.child(address, part.finish());
  }
  return writer.finish();
}

}  // namespace quadrille
