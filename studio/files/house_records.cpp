// What the house has learned and made: pieces of the repertoire, measured packings, finished jobs.
#include "studio/files/element_writer.hpp"
#include "studio/files/house_entries.hpp"
#include "studio/files/house_words.hpp"
#include "studio/files/value_reader.hpp"
#include "studio/files/value_writer.hpp"
#include "studio/model/calendar.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

constexpr int entry_depth = 2;
constexpr const char* accepted_date = "a date such as 2027-06-19";

std::string nothing_known(const XmlNode&) { return {}; }

std::optional<double> found(const std::map<std::string, double, std::less<>>& seconds, const std::string& key) {
  const auto entry = seconds.find(key);
  return entry == seconds.end() ? std::nullopt : std::optional(entry->second);
}

std::string read_seconds(ElementReader& job, const XmlNode& child, JobRecord& record) {
  const std::string* key = child.attribute("key");
  if (key == nullptr || key->empty()) return job.leave("It has no key;");
  const std::string address = "rate:" + *key;
  ElementReader reader(child, job.reading(), job.kept(), job.inside(address));
  if (record.planned_s.contains(*key) || record.actual_s.contains(*key))
    reader.fail("The rate \"" + shown(*key) + "\" stands twice in this job; keep one.");
  reader.text("key");
  const auto planned = reader.number("planned-s", seconds_range), actual = reader.number("actual-s", seconds_range);
  if (!planned && !actual) reader.fail("It needs planned-s, actual-s or both.");
  if (planned) record.planned_s.emplace(*key, *planned);
  if (actual) record.actual_s.emplace(*key, *actual);
  reader.children(nothing_known);
  reader.finish();
  return address;
}

}  // namespace

std::string address_of(const RepertoirePiece& piece) { return "piece:" + piece.key; }

void read_entry(const XmlNode& element, Reading& reading, RepertoirePiece& piece) {
  ElementReader reader(element, reading, piece.preserved);
  piece.key = reader.required("key");
  piece.name = reader.text("name");
  piece.type = reader.text("type");
  if (piece.type.empty())
    reader.report(Weight::warning, "no-type", element, "type", "It does not say of which type it is.",
                  "Add type=\"…\"; `quadrille pieces` lists the types.");
  piece.price_minor = reader.whole("price-minor", money_range);
  piece.note = reader.text("note");
  SlotColours colours;
  reader.children([&](const XmlNode& child) -> std::string {
    if (holds_value(child)) return read_value(reader, child, piece.values);
    return child.name == "colour" ? colours.read(reader, child) : std::string();
  });
  reader.finish();
  piece.colours = colours.take();
}

std::string entry_lines(const RepertoirePiece& piece) {
  const Kept kept(piece.preserved);
  ElementWriter writer("piece", entry_depth, kept);
  writer.text("key", piece.key);
  writer.text_unless_empty("name", piece.name);
  writer.text_unless_empty("type", piece.type);
  if (piece.price_minor) writer.whole("price-minor", *piece.price_minor);
  writer.text_unless_empty("note", piece.note);
  write_values(writer, kept, piece.values);
  write_colours(writer, kept, piece.colours);
  return writer.finish();
}

void read_entry(const XmlNode& element, Reading& reading, PackingCalibration& packing) {
  ElementReader reader(element, reading, packing.preserved);
  packing.nominal_in = reader.required_number("nominal-in", sold_size_range);
  packing.inflated_m = reader.required_number("inflated-m", inflated_range);
  packing.cluster_size = reader.whole("cluster-size", cluster_range).value_or(packing.cluster_size);
  packing.tightness = reader.number("tightness", packing_range).value_or(packing.tightness);
  packing.snug = reader.number("snug", packing_range).value_or(packing.snug);
  packing.date = reader.text("date");
  reader.check_form(is_date(packing.date), "date", packing.date, accepted_date);
  packing.note = reader.text("note");
  reader.children(nothing_known);
  reader.finish();
}

std::string entry_lines(const PackingCalibration& packing) {
  const Kept kept(packing.preserved);
  ElementWriter writer("packing", entry_depth, kept);
  writer.number("nominal-in", packing.nominal_in);
  writer.number("inflated-m", packing.inflated_m);
  writer.whole("cluster-size", packing.cluster_size);
  writer.number("tightness", packing.tightness);
  writer.number("snug", packing.snug);
  writer.text_unless_empty("date", packing.date);
  writer.text_unless_empty("note", packing.note);
  return writer.finish();
}

void read_entry(const XmlNode& element, Reading& reading, JobRecord& job) {
  ElementReader reader(element, reading, job.preserved);
  job.date = reader.text("date");
  reader.check_form(is_date(job.date), "date", job.date, accepted_date);
  job.title = reader.text("title");
  reader.children(
      [&](const XmlNode& child) { return child.name == "rate" ? read_seconds(reader, child, job) : std::string(); });
  reader.finish();
}

std::string entry_lines(const JobRecord& job) {
  const Kept kept(job.preserved);
  ElementWriter writer("job", entry_depth, kept);
  writer.text_unless_empty("date", job.date);
  writer.text_unless_empty("title", job.title);
  auto keys = job.planned_s;
  keys.insert(job.actual_s.begin(), job.actual_s.end());
  for (const auto& [key, either] : keys) {
    const std::string address = "rate:" + key;
    ElementWriter rate("rate", entry_depth + 1, kept, address);
    rate.text("key", key);
    rate.number("planned-s", found(job.planned_s, key));
    rate.number("actual-s", found(job.actual_s, key));
    writer.child(address, rate.finish());
  }
  return writer.finish();
}

}  // namespace quadrille
