#include "studio/house_form/house_lists.hpp"

#include <stdexcept>
#include <string_view>
#include <utility>

#include "sdk/number.hpp"
#include "studio/files/house_entries.hpp"
#include "studio/files/words.hpp"
#include "studio/house_form/house_entry_cells.hpp"
#include "studio/labour/calibration.hpp"
#include "studio/model/rates.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

/// Calls `act` with the list itself.
template <class HouseOrConst, class Act>
auto on_list(HouseOrConst& house, HouseList list, Act act) {
  switch (list) {
    case HouseList::balloons:
      return act(house.balloons);
    case HouseList::supplies:
      return act(house.supplies);
    case HouseList::kits:
      return act(house.kits);
    case HouseList::inflators:
      return act(house.inflators);
    case HouseList::failures:
      return act(house.failures);
    case HouseList::packings:
      return act(house.packings);
    case HouseList::jobs:
      break;
  }
  return act(house.jobs);
}

template <class List>
using EntryOf = typename std::remove_cvref_t<List>::value_type;

struct ListWords {
  const char *title, *entry, *words;
  std::vector<HouseColumn> columns;
};

ListWords words_of(HouseList list) {
  switch (list) {
    case HouseList::balloons:
      return {"Balloons",
              "balloon",
              "What is on the shelf is used before anything is bought. Packs of your own replace the palette's.",
              {{"Colour"}, {"Size"}, {"On hand", true}, {"Packs"}}};
    case HouseList::supplies:
      return {"Supplies",
              "supply",
              "What a pack costs, what is on the shelf, and what comes back from a job.",
              {{"Key"},
               {"Name"},
               {"Pack", true},
               {"Price", true},
               {"On hand", true},
               {"Comes back"},
               {"Rental", true},
               {"Kept where"}}};
    case HouseList::kits:
      return {"Frame kits",
              "kit",
              "Hardware that is kept and rented out together, such as the parts of one arch.",
              {{"Key"}, {"Name"}, {"On hand", true}, {"Rental", true}, {"Parts"}, {"Kept where"}}};
    case HouseList::inflators:
      return {"Inflators",
              "inflator",
              "What blows the balloons up. Crew and travel says which one is used.",
              {{"Key"}, {"Name"}, {"l/s", true}, {"Nozzles", true}, {"W", true}, {"V", true}}};
    case HouseList::failures:
      return {"Failing balloons",
              "failure rate",
              "How many balloons fail while they are inflated and mounted. The most special rate that fits counts.",
              {{"Size"}, {"Finish"}, {"Fail", true}}};
    case HouseList::packings:
      return {"Measured packing",
              "measured packing",
              "How tight clusters of yours really sit, measured on finished builds.",
              {{"Size"},
               {"Inflated to", true},
               {"In a cluster", true},
               {"Tightness", true},
               {"Snug", true},
               {"Measured on"},
               {"Note"}}};
    case HouseList::jobs:
      return {"Finished jobs",
              "job",
              "What was planned against what a watch said. Your rates of work are learned from it.",
              {{"Done on"}, {"Title"}, {"Planned", true}, {"Timed", true}}};
  }
  return {};
}

std::string size_text(double nominal_in) { return nominal_in > 0 ? print_nominal(nominal_in) : "every size"; }
std::string money_text(Minor amount, const HouseEntryContext& context) {
  return print_figure(amount, context.house.currency);
}
const char* yes(bool is) { return is ? "yes" : "no"; }

std::vector<std::string> row_of(const BalloonStock& stock, const HouseEntryContext& context) {
  return {name_of(stock.colour, context.palettes), size_text(stock.nominal_in), std::to_string(stock.on_hand),
          stock.packs.empty() ? std::string("the palette's") : packs_text(stock.packs, context.house.currency)};
}

std::vector<std::string> row_of(const SupplyStock& supply, const HouseEntryContext& context) {
  return {supply.key,
          supply.name,
          print_number(supply.pack),
          money_text(supply.price_minor, context),
          print_number(supply.on_hand),
          yes(supply.reused),
          money_text(supply.rental_minor, context),
          supply.kept_where};
}

std::vector<std::string> row_of(const FrameKit& kit, const HouseEntryContext& context) {
  return {kit.key,
          kit.name,
          std::to_string(kit.on_hand),
          money_text(kit.rental_minor, context),
          parts_text(kit.parts),
          kit.kept_where};
}

std::vector<std::string> row_of(const Inflator& inflator, const HouseEntryContext&) {
  return {inflator.key,
          inflator.name,
          print_number(inflator.litres_per_s),
          std::to_string(inflator.nozzles),
          print_number(inflator.watts),
          print_number(inflator.volts)};
}

std::vector<std::string> row_of(const FailureRate& failure, const HouseEntryContext&) {
  const std::string finish = failure.finish ? word_of(finish_words, *failure.finish) : "every finish";
  return {size_text(failure.nominal_in), finish, print_significant(failure.rate * 100, 4) + " %"};
}

std::vector<std::string> row_of(const PackingCalibration& packing, const HouseEntryContext&) {
  return {size_text(packing.nominal_in),
          print_significant(packing.inflated_m * 100, 4) + " cm",
          std::to_string(packing.cluster_size),
          print_significant(packing.tightness, 4),
          print_significant(packing.snug, 4),
          packing.date,
          packing.note};
}

std::vector<std::string> row_of(const JobRecord& job, const HouseEntryContext&) {
  double planned_s = 0;
  for (const auto& [key, seconds] : job.planned_s)
    if (!key.starts_with("air-")) planned_s += seconds;  // it stands in the inflating's as well
  const std::size_t timed = job.actual_s.size();
  return {job.date, job.title, minutes_text(planned_s),
          timed == 0 ? std::string("nothing yet") : std::to_string(timed) + (timed == 1 ? " task" : " tasks")};
}

template <class Entry>
Entry new_entry(const House& house) {
  Entry entry;
  // A new one begins as what is used now, where a nothing would not do.
  if constexpr (std::is_same_v<Entry, Inflator>) {
    const Inflator* const used = inflator_in_use(house);
    if (used != nullptr) entry.litres_per_s = used->litres_per_s, entry.volts = used->volts;
  }
  if constexpr (std::is_same_v<Entry, BalloonStock> || std::is_same_v<Entry, PackingCalibration>) entry.nominal_in = 11;
  if constexpr (std::is_same_v<Entry, FailureRate>) entry.rate = failure_rate(house, 11, Finish::matte);
  return entry;
}

/// What a file cannot hold twice.
template <class Entry>
std::optional<std::string> repeated(const std::vector<Entry>& entries, std::size_t row) {
  if constexpr (requires { address_of(entries[row]); })
    for (std::size_t i = 0; i < entries.size(); ++i)
      if (i != row && address_of(entries[i]) == address_of(entries[row]))
        return "There is such an entry already; change that one, or choose another.";
  return std::nullopt;
}

template <class Entry>
void follow_key(House&, const Entry&, const Entry&) {}

/// The inflator in use stays so when it gets another key.
void follow_key(House& house, const Inflator& before, const Inflator& after) {
  if (!house.inflator.empty() && house.inflator == before.key) house.inflator = after.key;
}

}  // namespace

std::string with_article(const std::string& entry) {
  const bool vowel = !entry.empty() && std::string_view("aeiou").find(entry.front()) != std::string_view::npos;
  return (vowel ? "an " : "a ") + entry;
}

HouseTable table_of(const House& house, HouseList list, std::span<const Palette> palettes) {
  ListWords words = words_of(list);
  HouseTable table{words.title, words.entry, words.words, std::move(words.columns), {}};
  const HouseEntryContext context{house, palettes};
  on_list(house, list, [&](const auto& entries) {
    for (const auto& entry : entries) table.rows.push_back(row_of(entry, context));
  });
  return table;
}

std::vector<HouseField> entry_of(const House& house, HouseList list, std::optional<std::size_t> row,
                                 std::span<const Palette> palettes) {
  return on_list(house, list, [&](const auto& entries) {
    using Entry = EntryOf<decltype(entries)>;
    Entry entry = row ? entries.at(*row) : new_entry<Entry>(house);
    std::vector<HouseField> fields;
    for (HouseCell& cell : cells_of(entry, {house, palettes})) fields.push_back(std::move(cell.field));
    return fields;
  });
}

HouseEntryChange with_entry(const House& house, HouseList list, std::optional<std::size_t> row,
                            const std::map<std::string, std::string>& typed, std::span<const Palette> palettes) {
  House changed = house;
  std::vector<HouseEntryFault> faults;
  on_list(changed, list, [&](auto& entries) {
    using Entry = EntryOf<decltype(entries)>;
    if (!row) entries.push_back(new_entry<Entry>(house));
    const std::size_t at = row.value_or(entries.size() - 1);
    Entry& entry = entries.at(at);
    const Entry before = entry;
    std::string first;
    for (HouseCell& cell : cells_of(entry, {house, palettes})) {
      const auto found = typed.find(cell.field.key);
      if (first.empty()) first = cell.field.key;
      const bool is_new_choice = !row && !cell.field.may_be_typed && cell.field.text.empty();
      if (found == typed.end() || (found->second == cell.field.text && row)) {
        if (found == typed.end() && is_new_choice)
          faults.push_back({cell.field.key, cell.field.label + ": choose one."});
        continue;
      }
      if (auto fault = cell.take(found->second)) faults.push_back({cell.field.key, std::move(*fault)});
    }
    if (faults.empty())
      if (auto fault = repeated(entries, at)) faults.push_back({first, std::move(*fault)});
    if (faults.empty()) follow_key(changed, before, entry);
  });
  if (!faults.empty()) return {std::nullopt, std::move(faults)};
  return {std::move(changed), {}};
}

House without_entry(House house, HouseList list, std::size_t row) {
  on_list(house, list, [&](auto& entries) {
    if (row < entries.size()) entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(row));
  });
  return house;
}

HouseTable learned_rates(const House& house) {
  HouseTable table{"What they say of your rates",
                   "rate",
                   "Few jobs are believed little: a rate goes only part of the way from its default.",
                   {{"Work"}, {"Now", true}, {"Learned", true}, {"Unit"}, {"Jobs", true}},
                   {}};
  for (const CalibratedRate& rate : calibrated_rates(house)) {
    const Rate* const row = find_rate(rate.key);
    table.rows.push_back({label_of_rate(rate.key), print_significant(rate.held, 3), print_significant(rate.proposed, 3),
                          row == nullptr ? "" : row->unit, std::to_string(rate.jobs)});
  }
  return table;
}

}  // namespace quadrille
