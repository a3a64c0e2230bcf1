// write_house: from a house to bytes. The order of calls is the order in the file.
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "studio/files/element_writer.hpp"
#include "studio/files/file_header.hpp"
#include "studio/files/house_entries.hpp"
#include "studio/files/house_file.hpp"
#include "studio/files/house_words.hpp"

namespace quadrille {
namespace {

void write_work(ElementWriter& root, const Kept& kept, const House& house) {
  ElementWriter work("work", 1, kept, "work");
  work.whole("crew", house.crew);
  work.text_unless_empty("inflator", house.inflator);
  work.number("short-chance", house.short_chance);
  work.word("ballast-fill", ballast_words, house.ballast_fill, House{}.ballast_fill);
  work.number("container-l", house.container_l);
  root.child("work", work.finish());
}

struct PricingFigure {
  const char* attribute;
  std::int64_t amount;
};

void write_part(ElementWriter& pricing, const Kept& kept, const char* name, const std::vector<PricingFigure>& figures) {
  ElementWriter part(name, pricing.depth() + 1, kept, pricing.inside(name));
  for (const PricingFigure& figure : figures) part.whole(figure.attribute, figure.amount);
  pricing.child(name, part.finish());
}

void write_pricing(ElementWriter& root, const Kept& kept, const Pricing& pricing) {
  ElementWriter writer("pricing", 1, kept, "pricing");
  writer.word("prices-with-tax", yes_or_no, pricing.prices_with_tax, Pricing{}.prices_with_tax);
  writer.whole("minimum-minor", pricing.minimum);
  writer.whole("valid-days", pricing.valid_days);
  write_part(writer, kept, "labour",
             {{"wage-per-hour-minor", pricing.wage_per_hour}, {"charge-per-hour-minor", pricing.charge_per_hour}});
  write_part(writer, kept, "markup",
             {{"balloons-ppm", pricing.markup_balloons},
              {"supplies-ppm", pricing.markup_supplies},
              {"labour-ppm", pricing.markup_labour}});
  write_part(writer, kept, "travel",
             {{"delivery-base-minor", pricing.delivery_base},
              {"delivery-per-km-minor", pricing.delivery_per_km},
              {"cost-per-km-minor", pricing.travel_cost_per_km}});
  write_part(writer, kept, "tax",
             {{"pieces-ppm", pricing.tax_pieces},
              {"delivery-ppm", pricing.tax_delivery},
              {"work-ppm", pricing.tax_work},
              {"rental-ppm", pricing.tax_rental}});
  write_part(writer, kept, "deposit", {{"share-ppm", pricing.deposit}, {"above-minor", pricing.deposit_above}});
  root.child("pricing", writer.finish());
}

void write_rates(ElementWriter& root, const Kept& kept, const House& house) {
  ElementWriter rates("rates", 1, kept, "rates");
  for (const auto& [key, value] : house.rates) {
    const std::string address = "rate:" + key;
    ElementWriter rate("rate", 2, kept, rates.inside(address));
    rate.text("key", key);
    rate.number("value", value);
    rates.child(address, rate.finish());
  }
  root.child("rates", rates.is_empty() && !root.keeps_another("rates") ? std::string() : rates.finish());
}

enum class WhereEmpty { written, left_out };

template <class Entry>
void write_list(ElementWriter& root, const Kept& kept, const std::string& name, std::string_view entry,
                const std::vector<Entry>& entries, WhereEmpty where_empty) {
  ElementWriter list(name, 1, kept, name);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    std::string address;
    if constexpr (requires { address_of(entries[i]); })
      address = address_of(entries[i]);
    else
      address = std::string(entry) + ":" + std::to_string(i + 1);
    list.child(address, entry_lines(entries[i]));
  }
  const bool left_out = where_empty == WhereEmpty::left_out && list.is_empty() && !root.keeps_another(name);
  root.child(name, left_out ? std::string() : list.finish());
}

}  // namespace

std::string write_house(const House& house) {
  const Kept kept(house.preserved);
  ElementWriter root("house", 0, kept);
  write_header(root, house_kind);
  root.text("currency", house.currency);
  root.text_unless_empty("name", house.name);
  root.text_unless_empty("contact", house.contact);
  write_work(root, kept, house);
  write_pricing(root, kept, house.pricing);
  write_rates(root, kept, house);
  write_list(root, kept, "inflators", "inflator", house.inflators, WhereEmpty::written);
  write_list(root, kept, "failures", "failure", house.failures, WhereEmpty::written);
  write_list(root, kept, "balloons", "balloon", house.balloons, WhereEmpty::left_out);
  write_list(root, kept, "supplies", "supply", house.supplies, WhereEmpty::written);
  write_list(root, kept, "kits", "kit", house.kits, WhereEmpty::left_out);
  write_list(root, kept, "repertoire", "piece", house.repertoire, WhereEmpty::left_out);
  write_list(root, kept, "packings", "packing", house.packings, WhereEmpty::left_out);
  write_list(root, kept, "jobs", "job", house.jobs, WhereEmpty::left_out);
  return whole_file(root, kept);
}

}  // namespace quadrille
