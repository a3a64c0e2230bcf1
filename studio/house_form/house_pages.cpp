// Which figures stand on which page. Every cell is bound to a copy of the house, so that an edit is House -> House.
#include "studio/house_form/house_pages.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "studio/files/house_words.hpp"
#include "studio/form/trimmed.hpp"
#include "studio/house_form/house_cell.hpp"
#include "studio/house_form/house_currency.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/rates.hpp"

namespace quadrille {
namespace {

constexpr const char* invented = "The default is invented; put in your own.";

/// A rate or figure that House::rates holds where it is not the standard.
template <class Row>
HouseCell rate_cell(House& house, const Row& row) {
  const auto held = house.rates.find(row.key);
  const double number = held == house.rates.end() ? row.standard : held->second;
  HouseCell cell{{}, {}, {}};
  cell.field.key = row.key, cell.field.label = row.label, cell.field.unit = row.unit;
  cell.field.help = "Default from: " + std::string(row.source) + ".";
  cell.field.text = print_number(number);
  const Range range{row.least, row.most, ""};
  cell.field.range = range_in_words(range);
  cell.field.standard = print_number(row.standard);
  cell.field.has_standard = true;
  cell.field.is_standard = held == house.rates.end() || number == row.standard;
  cell.reset = [&house, key = std::string(row.key)] { house.rates.erase(key); };
  cell.take = [&house, range, label = cell.field.label, key = std::string(row.key),
               standard = row.standard](std::string_view typed) -> std::optional<std::string> {
    double typed_number = 0;
    HouseCell plain = number_cell({key, label, ""}, "", typed_number, range);
    if (auto fault = plain.take(typed)) return fault;
    if (typed_number == standard)
      house.rates.erase(key);
    else
      house.rates.insert_or_assign(key, typed_number);
    return std::nullopt;
  };
  return cell;
}

std::vector<HouseCellGroup> business(House& house) {
  HouseCellGroup group{"", {}};
  group.cells.push_back(text_cell({"name", "Name", "Of your business, as it stands on the sheets."}, house.name));
  group.cells.push_back(text_cell(
      {"contact", "Contact", "Telephone, mail or address, as it stands on the client's sheet."}, house.contact));
  std::string& currency = house.currency;
  HouseCell cell = text_cell({"currency", "Currency",
                              "Its code of three letters (ISO 4217), of every amount in the house. Amounts keep their "
                              "figures when it changes: nothing is converted."},
                             currency);
  cell.field.range = "such as USD, EUR or JPY";
  cell.take = [&house](std::string_view typed) -> std::optional<std::string> {
    const std::string code(trimmed_text(typed));
    auto changed = with_currency(house, code);
    if (!changed) return changed.error;
    house = std::move(*changed.value);
    return std::nullopt;
  };
  group.cells.push_back(std::move(cell));
  return {std::move(group)};
}

std::vector<HouseCellGroup> prices(House& house) {
  Pricing& own = house.pricing;
  const Pricing usual = standard_house(house.currency).pricing;
  const auto amount = [&](const char* key, const char* label, const char* help, Minor Pricing::*figure) {
    return amount_cell({key, label, std::string(help) + " " + invented}, own.*figure, house.currency, money_range,
                       usual.*figure);
  };
  const auto share = [&](const char* key, const char* label, const char* help, PartsPerMillion Pricing::*figure) {
    return share_cell({key, label, help}, own.*figure, share_range, usual.*figure);
  };
  std::vector<HouseCellGroup> groups;
  groups.push_back(
      {"Labour",
       {amount("wage-per-hour", "Wage", "What an hour of one person costs you.", &Pricing::wage_per_hour),
        amount("charge-per-hour", "Charge", "What an hour of one person costs the client, for set-up and strike.",
               &Pricing::charge_per_hour)}});
  groups.push_back(
      {"Mark-ups",
       {share("markup-balloons", "On balloons", "On top of what they cost: 150 % is two and a half times.",
              &Pricing::markup_balloons),
        share("markup-supplies", "On supplies", "On top of what they cost.", &Pricing::markup_supplies),
        share("markup-labour", "On labour", "On top of the wages for making a piece.", &Pricing::markup_labour)}});
  groups.push_back(
      {"Delivery",
       {amount("delivery-base", "For each event", "Asked once for delivery, besides the distance.",
               &Pricing::delivery_base),
        amount("delivery-per-km", "For each km", "Asked for each kilometre, there and back.",
               &Pricing::delivery_per_km),
        amount("travel-cost-per-km", "Cost of a km", "What a kilometre costs you.", &Pricing::travel_cost_per_km)}});
  const char* tax = "The share that your law asks for; 0 where none is.";
  groups.push_back({"Tax",
                    {flag_cell({"prices-with-tax", "Prices are told with tax",
                                "Whether the prices on the client's sheet have the tax in them."},
                               own.prices_with_tax, usual.prices_with_tax),
                     share("tax-pieces", "On pieces", tax, &Pricing::tax_pieces),
                     share("tax-delivery", "On delivery", tax, &Pricing::tax_delivery),
                     share("tax-work", "On set-up and strike", tax, &Pricing::tax_work),
                     share("tax-rental", "On rental", tax, &Pricing::tax_rental)}});
  groups.push_back({"Quote",
                    {share_cell({"deposit", "Deposit", "Share of the total that is asked beforehand."}, own.deposit,
                                deposit_range, usual.deposit),
                     amount("deposit-above", "Deposit above", "No deposit is asked for a total of this or less.",
                            &Pricing::deposit_above),
                     amount("minimum", "Least for a job", "A job below it is warned of.", &Pricing::minimum),
                     whole_cell({"valid-days", "Holds for", "How long a quote holds."}, "days", own.valid_days,
                                days_range, usual.valid_days)}});
  return groups;
}

/// The rates from the key `first` on, up to before `past`; to the end where that is null.
HouseCellGroup rates_between(House& house, const char* name, std::string_view first, const char* past) {
  HouseCellGroup group{name, {}};
  bool inside = false;
  for (const Rate& row : all_rates()) {
    if (row.key == first) inside = true;
    if (past != nullptr && std::string_view(row.key) == past) break;
    if (inside) group.cells.push_back(rate_cell(house, row));
  }
  return group;
}

HouseCell inflator_cell(House& house) {
  std::vector<std::string> labels, keys;
  int chosen = -1;
  for (const Inflator& inflator : house.inflators) {
    if (inflator.key == house.inflator || (house.inflator.empty() && keys.empty()))
      chosen = static_cast<int>(keys.size());
    keys.push_back(inflator.key);
    labels.push_back(inflator.name.empty() ? inflator.key : inflator.name);
  }
  return choice_cell({"inflator", "Inflator", "The one that is used; the list of them is under Stockroom."},
                     std::move(labels), chosen, [&house, keys](std::size_t number) { house.inflator = keys[number]; });
}

std::vector<HouseCellGroup> crew_and_travel(House& house) {
  const House usual = standard_house(house.currency);
  std::vector<HouseCellGroup> groups;
  groups.push_back(
      {"Crew",
       {whole_cell({"crew", "People on a job", "Where an event does not say."}, "", house.crew, crew_range, usual.crew),
        inflator_cell(house)}});
  groups.push_back(
      {"Ballast",
       {choice_cell(
            {"ballast-fill", "Filled with", "What ballast containers are filled with."}, {"water", "sand"},
            static_cast<int>(house.ballast_fill),
            [&house](std::size_t number) { house.ballast_fill = static_cast<BallastFill>(number); },
            static_cast<std::size_t>(usual.ballast_fill)),
        number_cell({"container", "A container holds", "What one ballast container holds when it is full."}, "l",
                    house.container_l, container_range, usual.container_l)}});
  groups.push_back(rates_between(house, "Loading, carrying, driving", "pull", "burst"));
  return groups;
}

std::vector<HouseCellGroup> rates(House& house) {
  std::vector<HouseCellGroup> groups;
  groups.push_back(rates_between(house, "Balloons and clusters", "inflate-small", "join-rod"));
  groups.push_back(rates_between(house, "Frames, ballast, lines", "join-rod", "last-check"));
  groups.push_back(rates_between(house, "At the venue", "last-check", "pull"));
  groups.push_back(rates_between(house, "Taking down", "burst", nullptr));
  return groups;
}

std::vector<HouseCellGroup> reckoning(House& house) {
  HouseCellGroup spares{"Spares", {}}, air{"Air and power", {}};
  spares.cells.push_back(chance_cell({"short-chance", "May run short",
                                      "Accepted chance that balloons of one colour and size run short on a build: the "
                                      "spares are reckoned from it."},
                                     house.short_chance, short_chance_range,
                                     standard_house(house.currency).short_chance));
  for (const HouseFigure& row : all_figures())
    (std::string_view(row.key) == "least-spares" ? spares : air).cells.push_back(rate_cell(house, row));
  return {std::move(spares), std::move(air)};
}

std::vector<HouseCellGroup> cells_of(House& house, HousePage page) {
  switch (page) {
    case HousePage::business:
      return business(house);
    case HousePage::prices:
      return prices(house);
    case HousePage::crew_and_travel:
      return crew_and_travel(house);
    case HousePage::rates:
      return rates(house);
    case HousePage::reckoning:
      return reckoning(house);
  }
  return {};
}

/// Does `act` with the cell of that key, bound to `house`.
template <class Act>
auto with_cell(House& house, HousePage page, std::string_view key, Act act) {
  for (HouseCellGroup& group : cells_of(house, page))
    for (HouseCell& cell : group.cells)
      if (cell.field.key == key) return act(cell);
  throw std::invalid_argument("the page has no field " + std::string(key));
}

}  // namespace

std::string_view name_of(HousePage page) {
  switch (page) {
    case HousePage::business:
      return "Business";
    case HousePage::prices:
      return "Prices";
    case HousePage::crew_and_travel:
      return "Crew and travel";
    case HousePage::rates:
      return "Rates of work";
    case HousePage::reckoning:
      return "Spares, air, power";
  }
  return "";
}

std::vector<HouseFieldGroup> page_of(const House& house, HousePage page) {
  House copy = house;
  std::vector<HouseFieldGroup> groups;
  for (HouseCellGroup& group : cells_of(copy, page)) {
    HouseFieldGroup& shown = groups.emplace_back();
    shown.name = std::move(group.name);
    for (HouseCell& cell : group.cells) shown.fields.push_back(std::move(cell.field));
  }
  return groups;
}

Result<House> with_house_field(const House& house, HousePage page, std::string_view key, std::string_view text) {
  House changed = house;
  const auto fault = with_cell(changed, page, key, [&](HouseCell& cell) -> std::optional<std::string> {
    if (text == cell.field.text) return std::nullopt;
    return cell.take(text);
  });
  return fault ? Result<House>::bad(*fault) : Result<House>::good(std::move(changed));
}

House with_house_default(const House& house, HousePage page, std::string_view key) {
  House changed = house;
  with_cell(changed, page, key, [](HouseCell& cell) {
    if (cell.reset) cell.reset();
    return 0;
  });
  return changed;
}

}  // namespace quadrille
