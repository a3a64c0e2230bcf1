// Counting: piece by piece, then the pieces added up; the totals are sums of the pieces and nothing else.
#include "studio/takeoff/count.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <tuple>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/takeoff/order.hpp"
#include "studio/takeoff/placing.hpp"
#include "studio/takeoff/spares.hpp"

namespace quadrille {
namespace {

// No piece can have more balloons than this; a file that claims more cannot be meant.
constexpr std::int64_t most_of_a_line = 1'000'000'000;

/// What makes two balloons stand on one line; sorted as the list is. Slots without a colour keep apart by their name.
using LineKey = std::tuple<std::string, std::string, std::string, double, std::int64_t>;

LineKey key_of(const BalloonLine& line) {
  return {line.colour.palette, line.colour.colour, line.colour_name, line.nominal_in,
          std::llround(line.inflated_m * 1000)};
}

using Lines = std::map<LineKey, BalloonLine>;

std::vector<BalloonLine> values_of(Lines lines) {
  std::vector<BalloonLine> list;
  for (auto& [key, line] : lines) list.push_back(std::move(line));
  return list;
}

void add(Lines& lines, const BalloonLine& line) {
  const auto [place, is_new] = lines.try_emplace(key_of(line), line);
  if (!is_new) place->second.used += line.used;
}

using Supplies = std::map<std::pair<std::string, std::string>, SupplyLine>;  // by key and unit

void add(Supplies& supplies, const SupplyLine& supply) {
  const auto [place, is_new] = supplies.try_emplace({supply.key, supply.unit}, supply);
  if (!is_new) place->second.quantity += supply.quantity;
}

std::vector<SupplyLine> values_of(Supplies supplies) {
  std::vector<SupplyLine> list;
  for (auto& [key, line] : supplies) list.push_back(std::move(line));
  return list;
}

BalloonLine line_of(const PlacedPiece& piece, std::uint32_t slot, std::span<const Palette> palettes) {
  BalloonLine line;
  if (slot < piece.colours.size()) line.colour = piece.colours[slot];
  if (line.colour == ColourReference{}) {
    line.colour_name = "no colour (slot " + slot_name(slot) + ")";
  } else if (const Colour* colour = find_colour(palettes, line.colour)) {
    line.colour_name = colour->name;
  } else {
    line.colour_name = line.colour.colour + " (not in palette " + line.colour.palette + ")";
  }
  return line;
}

/// Balloons of one piece by slot, nominal size and inflated diameter in whole millimetres.
using Counts = std::map<std::tuple<std::uint32_t, double, std::int64_t>, std::int64_t>;

Counts summed(const Piece& piece) {
  Counts counts;
  for (const Balloon& balloon : piece.balloons)
    ++counts[{balloon.slot, balloon.nominal_in, std::llround(balloon.diameter_m * 1000)}];
  return counts;
}

Counts summed(const LastBuilt& last) {
  Counts counts;
  for (const LastBuilt::Count& count : last.counts) {
    const std::int64_t balloons = std::clamp<std::int64_t>(count.balloons, 0, most_of_a_line);
    if (balloons > 0) counts[{count.slot, count.nominal_in, std::llround(count.inflated_m * 1000)}] += balloons;
  }
  return counts;
}

void count_balloons(PieceCount& count, const Counts& counts, const PlacedPiece& piece,
                    std::span<const Palette> palettes) {
  Lines lines;
  for (const auto& [what, balloons] : counts) {
    const auto& [slot, nominal_in, millimetres] = what;
    BalloonLine line = line_of(piece, slot, palettes);
    line.nominal_in = nominal_in;
    line.inflated_m = static_cast<double>(millimetres) / 1000;
    line.used = balloons;
    add(lines, line);
    count.balloons += balloons;
    if (slot >= most_lettered) continue;  // counted in the whole, not by slot
    if (count.by_slot.size() <= slot) count.by_slot.resize(std::size_t{slot} + 1, 0);
    count.by_slot[slot] += balloons;
  }
  count.lines = values_of(std::move(lines));
}

/// As the house calls it, so that a part has one name on every list.
std::string name_of_supply(const std::string& key, const std::string& name, const House& house) {
  const SupplyStock* const own = find_supply(house, key);
  return own != nullptr && own->key == key && !own->name.empty() ? own->name : name;
}

void count_supplies(PieceCount& count, const PlacedPiece& placed, const Piece& piece, const Area& area,
                    const House& house) {
  Supplies supplies;
  const auto add_named = [&](SupplyLine line) {
    line.name = name_of_supply(line.key, line.name, house);
    add(supplies, line);
  };
  for (const Supply& supply : piece.supplies) add_named({supply.key, supply.label, supply.unit, supply.quantity});
  for (const SupplyLine& supply : placing_supplies(placed, piece, area, house)) add_named(supply);
  count.supplies = values_of(std::move(supplies));
}

PieceCount count_piece(const PlacedPiece& piece, const Area& area, const BuiltEvent& built,
                       std::span<const Palette> palettes, const House& house) {
  PieceCount count;
  count.id = piece.id;
  count.name = piece.name;
  count.type = piece.type;
  count.area = area.id;
  const auto found = built.find(piece.id);
  if (found == built.end() || !found->second) {
    count.as_last_calculated = piece.last_built.has_value();
    count.not_built = !count.as_last_calculated;
    if (!piece.last_built) return count;
    count_balloons(count, summed(*piece.last_built), piece, palettes);
    count.clusters = std::clamp<std::int64_t>(piece.last_built->clusters, 0, most_of_a_line);
  } else if (found->second->status == Status::ok) {
    const Piece& content = found->second->piece;
    count_balloons(count, summed(content), piece, palettes);
    count_supplies(count, piece, content, area, house);
    count.clusters = static_cast<std::int64_t>(content.clusters.size());
  } else {
    count.not_built = true;
  }
  return count;
}

}  // namespace

std::vector<LastBuilt::Count> counts_of(const Piece& piece) {
  std::vector<LastBuilt::Count> list;
  for (const auto& [what, balloons] : summed(piece)) {
    const auto& [slot, nominal_in, millimetres] = what;
    list.push_back({nominal_in, static_cast<double>(millimetres) / 1000, slot, balloons});
  }
  return list;
}

EventCount count_event(const Event& event, const BuiltEvent& built, std::span<const Palette> palettes,
                       const House& house) {
  EventCount count;
  Lines lines;
  Supplies supplies;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      if (piece->hidden) continue;
      count.pieces.push_back(count_piece(*piece, *area, built, palettes, house));
      const PieceCount& last = count.pieces.back();
      for (const BalloonLine& line : last.lines) add(lines, line);
      for (const SupplyLine& supply : last.supplies) add(supplies, supply);
      count.total_balloons += last.balloons;
    }
  count.balloons = values_of(std::move(lines));
  count.supplies = values_of(std::move(supplies));
  count.bags = fill_in_order(count.balloons, palettes, house);
  double enough = 1, enough_with_packs = 1;
  for (const BalloonBag& bag : count.bags) {
    enough *= 1 - chance_of_running_short(bag.used, bag.spares, bag.failure_rate);
    enough_with_packs *= 1 - chance_of_running_short(bag.used, bag.order + bag.on_hand - bag.used, bag.failure_rate);
  }
  count.short_chance = 1 - enough;
  count.short_chance_with_packs = 1 - enough_with_packs;
  return count;
}

EventCount count_event(const Event& event, const BuiltEvent& built, std::span<const Palette> palettes) {
  return count_event(event, built, palettes, standard_house(event.currency));
}

}  // namespace quadrille
