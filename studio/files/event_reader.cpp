// read_event: from bytes to an event.
#include <functional>
#include <set>
#include <utility>

#include "studio/files/accepted_currency.hpp"
#include "studio/files/area_reader.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/file_header.hpp"
#include "studio/files/quote_element.hpp"
#include "studio/model/calendar.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

void read_job(ElementReader& root, const XmlNode& child, Event& event) {
  ElementReader reader(child, root.reading(), root.kept(), root.inside("job"));
  event.title = reader.text("title");
  event.client = reader.text("client");
  event.venue = reader.text("venue");
  event.terms.travel_m = reader.number("travel-m", travel_range);
  event.terms.crew = reader.whole("crew", crew_range);
  event.terms.discount = reader.whole("discount-ppm", discount_range).value_or(0);
  reader.children([](const XmlNode&) { return std::string(); });
  reader.finish();
}

void read_day(ElementReader& root, const XmlNode& child, Event& event) {
  ElementReader reader(child, root.reading(), root.kept(), root.inside("day"));
  const auto time = [&](const char* attribute) {
    std::string text = reader.text(attribute);
    reader.check_form(is_time(text), attribute, text, "a time such as 07:30");
    return text;
  };
  event.date = reader.text("date");
  reader.check_form(is_date(event.date), "date", event.date, "a date such as 2027-06-19");
  event.load_in_from = time("load-in-from");
  event.ready_by = time("ready-by");
  event.strike_from = time("strike-from");
  reader.children([](const XmlNode&) { return std::string(); });
  reader.finish();
}

std::string read_palette_reference(ElementReader& root, const XmlNode& child, Event& event) {
  const std::string* key = child.attribute("key");
  if (key == nullptr || key->empty()) return root.leave("It has no key;");
  const std::string address = "palette:" + *key;
  ElementReader reader(child, root.reading(), root.kept(), root.inside(address));
  for (const std::string& listed : event.palettes)
    if (listed == *key) return root.leave("The palette stands twice;", address);
  event.palettes.push_back(reader.text("key"));
  reader.children([](const XmlNode&) { return std::string(); });
  reader.finish();
  return address;
}

std::string read_assumption(ElementReader& standing, const XmlNode& child, Event& event) {
  const std::string* key = child.attribute("key");
  if (key == nullptr || key->empty()) return standing.leave("It has no key;");
  const std::string address = "assumption:" + *key;
  if (event.assumptions.contains(*key)) return standing.leave("The assumption stands twice;", address);
  ElementReader reader(child, standing.reading(), standing.kept(), standing.inside(address));
  reader.text("key");
  const auto number = reader.number("value", ratio_range);
  if (!number) reader.fail("The assumption \"" + shown(*key) + "\" has no value.");
  event.assumptions.emplace(*key, *number);
  reader.children([](const XmlNode&) { return std::string(); });
  reader.finish();
  return address;
}

std::string read_tick(ElementReader& standing, const XmlNode& child, Event& event) {
  const std::string* key = child.attribute("key");
  if (key == nullptr || key->empty()) return standing.leave("It has no key;");
  const std::string address = "tick:" + *key;
  if (event.ticked.contains(*key)) return standing.leave("The tick stands twice;", address);
  ElementReader reader(child, standing.reading(), standing.kept(), standing.inside(address));
  event.ticked.insert(reader.text("key"));
  reader.children([](const XmlNode&) { return std::string(); });
  reader.finish();
  return address;
}

void read_standing(ElementReader& root, const XmlNode& child, Event& event) {
  ElementReader reader(child, root.reading(), root.kept(), root.inside("standing"));
  reader.children([&](const XmlNode& entry) -> std::string {
    if (entry.name == "assumption") return read_assumption(reader, entry, event);
    if (entry.name == "tick") return read_tick(reader, entry, event);
    return {};
  });
  reader.finish();
}

void read_issued(ElementReader& root, const XmlNode& child, Event& event) {
  event.issued = read_quote(child, root.reading(), event.currency);
}

void read_children(ElementReader& root, Event& event) {
  Ids ids(root.element());
  std::set<std::string, std::less<>> seen;
  root.children([&](const XmlNode& child) -> std::string {
    const auto read_once = child.name == "job"        ? read_job
                           : child.name == "day"      ? read_day
                           : child.name == "standing" ? read_standing
                           : child.name == "quote"    ? read_issued
                                                      : nullptr;
    if (read_once != nullptr) {
      const std::string name(child.name);
      if (!seen.insert(name).second) return root.leave("It stands twice, and only the first counts;", name);
      read_once(root, child, event);
      return name;
    }
    if (child.name == "palette") return read_palette_reference(root, child, event);
    if (child.name == "area") return "area:" + event.areas.emplace_back(read_area(child, root.reading(), ids))->id;
    return {};
  });
}

OpenedEvent read(const std::string& bytes) {
  const XmlDocument document = parse_xml(bytes);
  const int space_major = check_root(document, event_kind);
  OpenedEvent opened;
  Event& event = opened.event;
  Reading reading;
  keep_outside(document, event.preserved);
  ElementReader root(document.nodes[document.root], reading, event.preserved);
  opened.read_only = read_header(root, event_kind, space_major).read_only;
  event.units = root.word("units", units_words, event.units);
  if (const std::string currency = root.text("currency"); !currency.empty()) {
    root.check_form(is_currency(currency), "currency", currency, accepted_currency(currency));
    event.currency = currency;
  }
  read_children(root, event);
  root.finish();
  note_bare_ampersands(document, reading);
  opened.findings = reading.take();
  return opened;
}

}  // namespace

Result<OpenedEvent> read_event(std::string bytes, std::string_view name) {
  try {
    OpenedEvent opened = read(bytes);
    opened.bytes = std::move(bytes);
    return Result<OpenedEvent>::good(std::move(opened));
  } catch (const Unreadable& what) {
    return Result<OpenedEvent>::bad(sentence(name, what));
  }
}

}  // namespace quadrille
