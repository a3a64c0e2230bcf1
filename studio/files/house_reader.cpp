// read_house: from bytes to a house.
#include <functional>
#include <set>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "studio/files/accepted_currency.hpp"
#include "studio/files/file_header.hpp"
#include "studio/files/house_entries.hpp"
#include "studio/files/house_file.hpp"
#include "studio/files/house_words.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/rates.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

std::string nothing_known(const XmlNode&) { return {}; }

/// A child of the root element, or of <pricing>, that is there once and keeps nothing of its own.
using ReadPart = std::function<void(ElementReader& part)>;

class HouseReader {
 public:
  HouseReader(ElementReader& root, House& house) : root_(root), house_(house) {}

  void read() {
    root_.children([&](const XmlNode& child) -> std::string { return read_once(root_, seen_, child); });
    note_what_is_standard();
    check_inflator();
  }

 private:
  using Seen = std::set<std::string, std::less<>>;

  std::string read_once(ElementReader& parent, Seen& seen, const XmlNode& child) {
    const std::string name(child.name);
    const ReadPart read_part = &parent == &root_ ? part_of_house(name) : part_of_pricing(name);
    if (!read_part) return {};
    if (!seen.insert(name).second) return parent.leave("It stands twice, and only the first counts;", name);
    ElementReader part(child, parent.reading(), parent.kept(), parent.inside(name));
    read_part(part);
    part.finish();
    return name;
  }

  ReadPart part_of_house(const std::string& name) {
    if (name == "work") return [&](ElementReader& part) { read_work(part); };
    if (name == "pricing") return [&](ElementReader& part) { read_pricing(part); };
    if (name == "rates") return [&](ElementReader& part) { read_rates(part); };
    if (name == "inflators") return list("inflator", house_.inflators);
    if (name == "failures") return list("failure", house_.failures);
    if (name == "balloons") return list("balloon", house_.balloons);
    if (name == "supplies") return list("supply", house_.supplies);
    if (name == "kits") return list("kit", house_.kits);
    if (name == "repertoire") return list("piece", house_.repertoire);
    if (name == "packings") return list("packing", house_.packings);
    if (name == "jobs") return list("job", house_.jobs);
    return {};
  }

  /// What the file lists replaces the standard list.
  template <class Entry>
  ReadPart list(std::string_view entry, std::vector<Entry>& entries) {
    return [&entries, entry](ElementReader& part) {
      entries.clear();
      Seen addresses;
      part.children([&](const XmlNode& child) -> std::string {
        if (child.name != entry) return {};
        if (std::is_same_v<Entry, FailureRate> && !has_known_finish(child))
          return part.leave("Its finish is none of " + list_of(finish_words) + ", so it does not count;");
        read_entry(child, part.reading(), entries.emplace_back());
        std::string address;
        if constexpr (requires { address_of(entries.back()); })
          address = address_of(entries.back());
        else
          address = std::string(entry) + ":" + std::to_string(entries.size());
        if (!addresses.insert(address).second)
          throw Unreadable{child.line, place_of(child),
                           "This " + std::string(entry) + " stands twice in <" + std::string(part.element().name) +
                               ">; keep one, or give the other its own key."};
        return address;
      });
    };
  }

  static bool has_known_finish(const XmlNode& failure) {
    const std::string* finish = failure.attribute("finish");
    if (finish == nullptr) return true;
    for (const Word<Finish>& entry : finish_words)
      if (*finish == entry.word) return true;
    return false;
  }

  void read_work(ElementReader& part) {
    house_.crew = part.whole("crew", crew_range).value_or(house_.crew);
    house_.inflator = part.text("inflator");
    house_.short_chance = part.number("short-chance", short_chance_range).value_or(house_.short_chance);
    house_.ballast_fill = part.word("ballast-fill", ballast_words, house_.ballast_fill);
    house_.container_l = part.number("container-l", container_range).value_or(house_.container_l);
    part.children(nothing_known);
  }

  void read_rates(ElementReader& part) {
    part.children([&](const XmlNode& child) -> std::string {
      if (child.name != "rate") return {};
      const std::string* key = child.attribute("key");
      if (key == nullptr || key->empty()) return part.leave("It has no key;");
      const std::string address = "rate:" + *key;
      ElementReader reader(child, part.reading(), part.kept(), part.inside(address));
      if (house_.rates.contains(*key)) reader.fail("The rate \"" + shown(*key) + "\" stands twice; keep one.");
      reader.text("key");
      const Rate* known = find_rate(*key);
      const HouseFigure* figure = find_figure(*key);
      // Such as time kept to spare, or the warmth of the sun on a light balloon.
      const bool may_be_nothing = (known != nullptr && known->least <= 0) || (figure != nullptr && figure->least <= 0);
      house_.rates.emplace(*key, reader.required_number("value", may_be_nothing ? no_rate_range : rate_range));
      reader.children(nothing_known);
      reader.finish();
      return address;
    });
  }

  void read_pricing(ElementReader& part) {
    Pricing& pricing = house_.pricing;
    pricing.prices_with_tax = part.word("prices-with-tax", yes_or_no, pricing.prices_with_tax);
    figure(part, "minimum-minor", money_range, pricing.minimum);
    figure(part, "valid-days", days_range, pricing.valid_days);
    Seen seen;
    part.children([&](const XmlNode& child) -> std::string { return read_once(part, seen, child); });
    for (const char* name : {"labour", "markup", "travel", "tax", "deposit"})
      if (!seen.contains(name)) standard_.push_back("<" + std::string(name) + ">");
  }

  ReadPart part_of_pricing(const std::string& name) {
    struct Figure {
      const char* attribute;
      const Range* range;
      std::int64_t Pricing::*field;
    };
    static const std::map<std::string, std::vector<Figure>, std::less<>> parts{
        {"labour",
         {{"wage-per-hour-minor", &money_range, &Pricing::wage_per_hour},
          {"charge-per-hour-minor", &money_range, &Pricing::charge_per_hour}}},
        {"markup",
         {{"balloons-ppm", &share_range, &Pricing::markup_balloons},
          {"supplies-ppm", &share_range, &Pricing::markup_supplies},
          {"labour-ppm", &share_range, &Pricing::markup_labour}}},
        {"travel",
         {{"delivery-base-minor", &money_range, &Pricing::delivery_base},
          {"delivery-per-km-minor", &money_range, &Pricing::delivery_per_km},
          {"cost-per-km-minor", &money_range, &Pricing::travel_cost_per_km}}},
        {"tax",
         {{"pieces-ppm", &share_range, &Pricing::tax_pieces},
          {"delivery-ppm", &share_range, &Pricing::tax_delivery},
          {"work-ppm", &share_range, &Pricing::tax_work},
          {"rental-ppm", &share_range, &Pricing::tax_rental}}},
        {"deposit",
         {{"share-ppm", &deposit_range, &Pricing::deposit}, {"above-minor", &money_range, &Pricing::deposit_above}}}};
    const auto found = parts.find(name);
    if (found == parts.end()) return {};
    return [this, &figures = found->second](ElementReader& part) {
      for (const Figure& row : figures) figure(part, row.attribute, *row.range, house_.pricing.*row.field);
      part.children(nothing_known);
    };
  }

  void figure(ElementReader& part, const char* attribute, const Range& range, std::int64_t& value) {
    if (const auto written = part.whole(attribute, range))
      value = *written;
    else
      standard_.push_back(std::string(attribute));
  }

  void note_what_is_standard() {
    for (const char* name : {"pricing", "inflators", "failures", "supplies"})
      if (!seen_.contains(name)) standard_.push_back("<" + std::string(name) + ">");
    if (standard_.empty()) return;
    std::string list;
    for (const std::string& name : standard_) list += (list.empty() ? "" : ", ") + name;
    root_.report(Weight::note, "standard-figures", root_.element(), {},
                 "It does not say " + list + "; the standard house's serve there, whose prices are invented.",
                 "Put in your own.");
  }

  void check_inflator() {
    if (house_.inflator.empty()) return;
    std::string keys;
    for (const Inflator& inflator : house_.inflators) {
      if (inflator.key == house_.inflator) return;
      keys += (keys.empty() ? "" : ", ") + shown(inflator.key);
    }
    root_.report(Weight::warning, "unknown-inflator", root_.element(), "inflator",
                 "It works with the inflator \"" + shown(house_.inflator) + "\", which is not in its list.",
                 keys.empty() ? "Add it to <inflators>." : "Choose one of " + keys + ".");
  }

  ElementReader& root_;
  House& house_;
  Seen seen_;
  std::vector<std::string> standard_;  // what is not said
};

std::string read_currency(ElementReader& root) {
  std::string currency = root.text("currency");
  if (!minor_digits(currency))
    root.fail((currency.empty() ? std::string("The attribute currency is missing")
                                : "currency=\"" + shown(currency) + "\" is no currency that has a minor unit") +
              "; accepted is " + accepted_currency(currency) + ".");
  return currency;
}

OpenedHouse read(const std::string& bytes) {
  const XmlDocument document = parse_xml(bytes);
  const int space_major = check_root(document, house_kind);
  OpenedHouse opened;
  Reading reading;
  Preserved kept;
  keep_outside(document, kept);
  ElementReader root(document.nodes[document.root], reading, kept);
  opened.read_only = read_header(root, house_kind, space_major).read_only;
  House& house = opened.house = standard_house(read_currency(root));
  house.name = root.text("name");
  house.contact = root.text("contact");
  HouseReader(root, house).read();
  root.finish();
  note_bare_ampersands(document, reading);
  house.preserved = std::move(kept);
  opened.findings = reading.take();
  return opened;
}

}  // namespace

Result<OpenedHouse> read_house(std::string bytes, std::string_view name) {
  try {
    OpenedHouse opened = read(bytes);
    opened.bytes = std::move(bytes);
    return Result<OpenedHouse>::good(std::move(opened));
  } catch (const Unreadable& what) {
    return Result<OpenedHouse>::bad(sentence(name, what));
  }
}

}  // namespace quadrille
