#include "studio/house_form/house_entry_cells.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "sdk/units.hpp"
#include "studio/files/house_words.hpp"
#include "studio/form/sums.hpp"
#include "studio/form/trimmed.hpp"
#include "studio/model/rates.hpp"

namespace quadrille {
namespace {

constexpr double metres_per_centimetre = 0.01;

constexpr std::array<UnitOfMeasure, 3> time_units{
    {{"s sec second seconds"}, {"min minute minutes", 60}, {"h hour hours", 3600}}};
constexpr Measure time_measure{"time", "12 min, 90 s or 1.5 h", time_units};

/// The parts of a text between the marks, without blanks at their ends; empty ones are left out.
std::vector<std::string_view> parted(std::string_view text, char mark) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t end = text.find(mark);
    if (const auto part = trimmed_text(text.substr(0, end)); !part.empty()) parts.push_back(part);
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

HouseCell packs_cell(BalloonStock& stock, const std::string& currency) {
  std::string text = packs_text(stock.packs, currency);
  HouseCell cell = text_cell({"packs", "Packs",
                              "How you buy them: the balloons in a pack and its price, several packs "
                              "parted by a ';'. Empty: as the palette says."},
                             text);
  cell.field.range = "such as 50 for 14.00; 100 for 24.00";
  cell.take = [&stock, currency](std::string_view typed) -> std::optional<std::string> {
    std::vector<Pack> packs;
    for (const std::string_view part : parted(typed, ';')) {
      const std::size_t at = part.find(" for ");
      const auto count = parse_whole(trimmed_text(part.substr(0, at)));
      const auto price = at == std::string_view::npos ? Result<Minor>::bad("")
                                                      : parse_money(trimmed_text(part.substr(at + 5)), currency);
      if (!count || !price || *count < 1 || static_cast<double>(*count) > pack_count_range.most || *price < 0 ||
          *price > highest_pack_price)
        return "Packs: a pack is written as 50 for 14.00, and not as " + quoted(part) + ".";
      if (std::ranges::find(packs, *count, &Pack::count) != packs.end())
        return "Packs: a pack of " + std::to_string(*count) + " stands twice.";
      packs.push_back({stock.nominal_in, *count, *price});
    }
    stock.packs = std::move(packs);
    return std::nullopt;
  };
  return cell;
}

HouseCell parts_cell(FrameKit& kit) {
  std::string text = parts_text(kit.parts);
  HouseCell cell =
      text_cell({"parts", "Parts", "Each supply's key and how many of it are in one kit, parted by a ';'."}, text);
  cell.field.range = "such as rod-glass-fibre 4; sleeve 3";
  cell.take = [&kit](std::string_view typed) -> std::optional<std::string> {
    std::vector<FrameKit::Part> parts;
    for (const std::string_view part : parted(typed, ';')) {
      const std::size_t at = part.rfind(' ');
      const std::string_view key = trimmed_text(part.substr(0, at));
      std::string number(at == std::string_view::npos ? "" : part.substr(at + 1));
      std::ranges::replace(number, ',', '.');
      const auto quantity = parse_number(number);
      if (!quantity || *quantity <= 0 || *quantity > part_range.most)
        return "Parts: a part is written as sleeve 3, and not as " + quoted(part) + ".";
      if (std::ranges::find(parts, key, &FrameKit::Part::supply) != parts.end())
        return "Parts: " + quoted(key) + " stands twice.";
      parts.push_back({std::string(key), *quantity});
    }
    kit.parts = std::move(parts);
    return std::nullopt;
  };
  return cell;
}

/// The colours that can be chosen, with the entry's own where no palette has it.
HouseCell colour_cell(ColourReference& colour, std::span<const Palette> palettes) {
  std::vector<ColourReference> colours;
  std::vector<std::string> labels;
  const auto add = [&](const ColourReference& reference) {
    colours.push_back(reference);
    labels.push_back(name_of(reference, palettes));
  };
  for (const Palette& palette : palettes)
    for (const Colour& each : palette.colours) add({palette.key, each.key});
  auto at = std::ranges::find(colours, colour);
  if (at == colours.end() && !colour.colour.empty()) {
    add(colour);
    at = colours.end() - 1;
  }
  const int chosen = at == colours.end() ? -1 : static_cast<int>(at - colours.begin());
  return choice_cell({"colour", "Colour", "As the palettes name it."}, std::move(labels), chosen,
                     [&colour, colours](std::size_t number) { colour = colours[number]; });
}

/// A key that others refer to; `proposed` can be chosen instead of typed.
HouseCell key_cell(std::string& key, const char* help, std::vector<std::string> proposed = {}) {
  HouseCell cell = text_cell({"key", "Key", help}, key, true);
  cell.field.choices = std::move(proposed);
  return cell;
}

HouseCell size_cell(double& nominal_in, const char* help) {
  return number_cell({"size", "Size", help}, "in", nominal_in, sold_size_range);
}

HouseCell where_cell(std::string& kept_where) {
  return text_cell({"kept-where", "Kept where", "For the pull list: \"Shelf 3\"."}, kept_where);
}

}  // namespace

std::string name_of(const ColourReference& colour, std::span<const Palette> palettes) {
  const Colour* const known = find_colour(palettes, colour);
  if (known == nullptr) return colour.palette + "/" + colour.colour;
  const auto palette = std::ranges::find(palettes, colour.palette, &Palette::key);
  return known->name + " (" + palette->name + ")";
}

std::string packs_text(const std::vector<Pack>& packs, const std::string& currency) {
  std::string text;
  for (const Pack& pack : packs)
    text +=
        (text.empty() ? "" : "; ") + std::to_string(pack.count) + " for " + print_figure(pack.price_minor, currency);
  return text;
}

std::string parts_text(const std::vector<FrameKit::Part>& parts) {
  std::string text;
  for (const FrameKit::Part& part : parts)
    text += (text.empty() ? "" : "; ") + part.supply + " " + print_number(part.quantity);
  return text;
}

std::string minutes_text(double seconds) { return print_significant(seconds / 60, 3) + " min"; }

std::string label_of_rate(std::string_view key) {
  const Rate* const row = find_rate(key);
  return row == nullptr ? std::string(key) : row->label;
}

std::vector<HouseCell> cells_of(BalloonStock& stock, const HouseEntryContext& context) {
  std::vector<HouseCell> cells;
  cells.push_back(colour_cell(stock.colour, context.palettes));
  HouseCell size = size_cell(stock.nominal_in, "The size that the trade calls them by.");
  // The packs hold the size as well.
  size.take = [&stock, take = std::move(size.take)](std::string_view typed) {
    auto fault = take(typed);
    for (Pack& pack : stock.packs) pack.nominal_in = stock.nominal_in;
    return fault;
  };
  cells.push_back(std::move(size));
  cells.push_back(whole_cell({"on-hand", "On hand", "Loose balloons and full packs together."}, "balloons",
                             stock.on_hand, count_range));
  cells.push_back(packs_cell(stock, context.house.currency));
  return cells;
}

std::vector<HouseCell> cells_of(SupplyStock& supply, const HouseEntryContext& context) {
  std::vector<std::string> proposed;
  for (const SupplyStock& each : standard_house(context.house.currency).supplies) proposed.push_back(each.key);
  const std::string& currency = context.house.currency;
  std::vector<HouseCell> cells;
  cells.push_back(key_cell(supply.key,
                           "The supply's key, as the lists have it, or the beginning of several up to a '-': "
                           "rod-glass-fibre stands for every such rod without an entry of its own.",
                           std::move(proposed)));
  cells.push_back(text_cell({"name", "Name", "Empty: as the piece calls it."}, supply.name));
  cells.push_back(number_cell({"pack", "In a pack",
                               "How much is bought at once, in the supply's unit: 100 for a spool "
                               "of 100 m, 1 for single rods."},
                              "", supply.pack, pack_quantity_range));
  cells.push_back(amount_cell({"price", "Price of a pack", "What a pack costs you."}, supply.price_minor, currency,
                              pack_price_range));
  cells.push_back(number_cell({"on-hand", "On hand", "In the supply's unit."}, "", supply.on_hand, quantity_range));
  cells.push_back(flag_cell({"reused", "Comes back", "Owned and used again, not used up."}, supply.reused));
  cells.push_back(amount_cell({"rental", "Rental", "Asked of the client for each unit that comes back."},
                              supply.rental_minor, currency, money_range));
  cells.push_back(
      number_cell({"mass", "Weight of a unit", "For the load of the vehicle."}, "kg", supply.mass_kg, unit_mass_range));
  cells.push_back(where_cell(supply.kept_where));
  return cells;
}

std::vector<HouseCell> cells_of(FrameKit& kit, const HouseEntryContext& context) {
  std::vector<HouseCell> cells;
  cells.push_back(key_cell(kit.key, "A short word of your own that no other kit has."));
  cells.push_back(text_cell({"name", "Name", "As the lists show it."}, kit.name));
  cells.push_back(whole_cell({"on-hand", "On hand", "How many such kits there are."}, "", kit.on_hand, count_range));
  cells.push_back(amount_cell({"rental", "Rental", "Asked for the whole kit, in place of its parts one by one."},
                              kit.rental_minor, context.house.currency, money_range));
  cells.push_back(parts_cell(kit));
  cells.push_back(where_cell(kit.kept_where));
  return cells;
}

std::vector<HouseCell> cells_of(Inflator& inflator, const HouseEntryContext&) {
  std::vector<HouseCell> cells;
  cells.push_back(key_cell(inflator.key, "A short word of your own that no other inflator has."));
  cells.push_back(text_cell({"name", "Name", "As the lists show it."}, inflator.name));
  cells.push_back(number_cell({"flow", "Air", "Through one nozzle."}, "l/s", inflator.litres_per_s, flow_range));
  cells.push_back(whole_cell({"nozzles", "Nozzles", "One person fills that many balloons at once."}, "",
                             inflator.nozzles, nozzle_range));
  cells.push_back(number_cell({"power", "Power", "While it blows; 0 by hand or from a cylinder."}, "W", inflator.watts,
                              power_range));
  cells.push_back(number_cell({"voltage", "Voltage", "Of the outlet it needs."}, "V", inflator.volts, voltage_range));
  cells.push_back(text_cell({"source", "Source", "Where these figures come from."}, inflator.source));
  return cells;
}

std::vector<HouseCell> cells_of(FailureRate& failure, const HouseEntryContext&) {
  constexpr Range size_or_any{0, sold_size_range.most, sold_size_range.unit};
  std::vector<std::string> labels{"every finish"};
  for (const Word<Finish>& entry : finish_words) labels.push_back(entry.word);
  std::vector<HouseCell> cells;
  cells.push_back(number_cell({"size", "Size", "0: every size."}, "in", failure.nominal_in, size_or_any));
  cells.push_back(choice_cell({"finish", "Finish", "The most special rate that fits a balloon counts."},
                              std::move(labels), failure.finish ? static_cast<int>(*failure.finish) + 1 : 0,
                              [&failure](std::size_t number) {
                                failure.finish.reset();
                                if (number > 0) failure.finish = finish_words[number - 1].value;
                              }));
  cells.push_back(chance_cell({"rate", "Fail", "Of a hundred balloons while they are inflated and mounted."},
                              failure.rate, failure_range));
  return cells;
}

std::vector<HouseCell> cells_of(PackingCalibration& packing, const HouseEntryContext&) {
  const char* const packing_help = "Measured on a finished build, by what hard spheres take.";
  std::vector<HouseCell> cells;
  cells.push_back(size_cell(packing.nominal_in, "The size that the trade calls them by."));
  HouseCell inflated =
      text_cell({"inflated", "Inflated to", "The diameter they were blown to: 23 cm, or 9 in."}, packing.note);
  const double centimetres = to_twelve_digits(packing.inflated_m / metres_per_centimetre);
  inflated.field.text = packing.inflated_m > 0 ? print_number(centimetres) : "";
  inflated.field.unit = "cm";
  inflated.field.range = "above 0, at most 1000";
  inflated.take = [&packing](std::string_view typed) -> std::optional<std::string> {
    const auto length = read_sum(typed, {"length", "23 cm or 9 in", length_units}, "cm");
    if (!length) return "Inflated to: " + length.error;
    if (*length <= 0 || *length > inflated_range.most)
      return "Inflated to: above 0 and at most 10 m would be accepted, not " + quoted(typed) + ".";
    packing.inflated_m = *length;
    return std::nullopt;
  };
  cells.push_back(std::move(inflated));
  cells.push_back(whole_cell({"cluster", "In a cluster", "Balloons that are tied together."}, "balloons",
                             packing.cluster_size, cluster_range));
  cells.push_back(number_cell({"tightness", "Tightness", std::string("Distance between clusters. ") + packing_help}, "",
                              packing.tightness, packing_range));
  cells.push_back(number_cell({"snug", "Snug", std::string("How near the balloons lie to the rod. ") + packing_help},
                              "", packing.snug, packing_range));
  cells.push_back(date_cell({"date", "Measured on", "A day of the calendar, or nothing."}, packing.date));
  cells.push_back(text_cell({"note", "Note", ""}, packing.note));
  return cells;
}

std::vector<HouseCell> cells_of(JobRecord& job, const HouseEntryContext&) {
  std::vector<HouseCell> cells;
  cells.push_back(text_cell({"title", "Title", "What the job was."}, job.title));
  cells.push_back(date_cell({"date", "Done on", "A day of the calendar, or nothing."}, job.date));
  std::set<std::string> keys;
  for (const auto& [key, planned] : job.planned_s) keys.insert(key);
  for (const auto& [key, actual] : job.actual_s) keys.insert(key);
  for (const std::string& key : keys) {
    if (key.starts_with("air-")) continue;  // the inflator's own time: no watch is held against it
    const auto planned = job.planned_s.find(key), actual = job.actual_s.find(key);
    std::string none;
    HouseCell cell = text_cell({"rate:" + key, label_of_rate(key), ""}, none);
    if (actual != job.actual_s.end()) cell.field.text = print_significant(actual->second / 60, 6);
    cell.field.unit = "min";
    if (planned != job.planned_s.end()) cell.field.range = "planned " + minutes_text(planned->second);
    cell.field.help = "Minutes of work of all who did it, as a watch said; empty: not timed.";
    cell.take = [&job, key, label = cell.field.label](std::string_view typed) -> std::optional<std::string> {
      if (trimmed_text(typed).empty()) {
        job.actual_s.erase(key);
        return std::nullopt;
      }
      const auto seconds = read_sum(typed, time_measure, "min");
      if (!seconds) return label + ": " + seconds.error;
      if (*seconds < 0 || *seconds > seconds_range.most)
        return label + ": 0 or more minutes would be accepted, not " + quoted(typed) + ".";
      job.actual_s.insert_or_assign(key, *seconds);
      return std::nullopt;
    };
    cells.push_back(std::move(cell));
  }
  return cells;
}

}  // namespace quadrille
