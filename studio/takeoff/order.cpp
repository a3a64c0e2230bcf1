// Spares, stock and packs by colour and nominal size, handed out to the lines in their order.
#include "studio/takeoff/order.hpp"

#include <algorithm>
#include <cstddef>

#include "studio/model/figures.hpp"
#include "studio/takeoff/market.hpp"

namespace quadrille {
namespace {

constexpr std::int64_t most_in_stock = 1'000'000'000;

std::int64_t needed_by(const BalloonLine& line) { return line.used + line.spares - line.on_hand; }

bool share_a_bag(const BalloonLine& a, const BalloonLine& b) {
  return a.colour == b.colour && a.colour_name == b.colour_name && a.nominal_in == b.nominal_in;
}

bool is_of(const BalloonStock& stock, const BalloonBag& bag) {
  return stock.colour == bag.colour && stock.nominal_in == bag.nominal_in && bag.colour != ColourReference{};
}

std::int64_t stock_of(const BalloonBag& bag, const House& house) {
  std::int64_t sum = 0;
  for (const BalloonStock& stock : house.balloons)
    if (is_of(stock, bag))
      sum = std::min(most_in_stock, sum + std::clamp<std::int64_t>(stock.on_hand, 0, most_in_stock));
  return sum;
}

std::optional<Minor> cost_of(const std::vector<BoughtPacks>& bought) {
  __int128 sum = 0;  // packs and prices may both be large
  for (const BoughtPacks& kind : bought) sum += static_cast<__int128>(kind.packs) * kind.price_minor;
  return sum <= highest_amount ? std::optional(static_cast<Minor>(sum)) : std::nullopt;
}

/// Takes packs out of `stock`, largest first, until they hold `needed` balloons; all that are left where `takes_rest`.
std::vector<BoughtPacks> take(std::vector<BoughtPacks>& stock, std::int64_t needed, bool takes_rest) {
  std::vector<BoughtPacks> taken;
  for (BoughtPacks& kind : stock) {
    const std::int64_t wanted =
        takes_rest ? kind.packs
                   : std::min(kind.packs, std::max<std::int64_t>(0, needed + kind.pack_size - 1) / kind.pack_size);
    if (wanted == 0) continue;
    taken.push_back({kind.pack_size, wanted, kind.price_minor});
    kind.packs -= wanted;
    needed -= wanted * kind.pack_size;
  }
  return taken;
}

/// Spares by what is used; stock to the first lines first.
void share_out_what_is_there(const BalloonBag& bag, std::span<BalloonLine> lines) {
  std::vector<std::int64_t> used;
  for (const BalloonLine& line : lines) used.push_back(std::min(line.used, most_in_stock));  // as split() takes them
  const std::vector<std::int64_t> spares = split(bag.spares, used);
  std::int64_t left = bag.on_hand;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    lines[i].spares = spares[i];
    lines[i].on_hand = std::min(left, lines[i].used + lines[i].spares);
    left -= lines[i].on_hand;
  }
}

void share_out_packs(const BalloonBag& bag, std::span<BalloonLine> lines) {
  std::vector<BoughtPacks> packs = bag.bought;
  std::int64_t left_over = 0;
  for (BalloonLine& line : lines) {
    if (packs.empty()) {
      line.order = needed_by(line);
      continue;
    }
    line.bought = take(packs, needed_by(line) - left_over, &line == &lines.back());
    for (const BoughtPacks& kind : line.bought) {
      line.packs += kind.packs;
      line.order += kind.packs * kind.pack_size;
    }
    line.pack_size = line.bought.size() == 1 ? line.bought.front().pack_size : bag.pack_size;
    left_over += line.order - needed_by(line);
  }
}

BalloonBag bag_of(std::span<BalloonLine> lines, std::span<const Palette> palettes, const House& house) {
  const BalloonLine& first = lines.front();
  BalloonBag bag;
  bag.nominal_in = first.nominal_in;
  bag.colour = first.colour;
  bag.colour_name = first.colour_name;
  for (const BalloonLine& line : lines) bag.used += line.used;
  const Colour* const colour = find_colour(palettes, bag.colour);
  const SpareRule rule = spare_rule(house, bag.nominal_in, colour == nullptr ? Finish::matte : colour->finish);
  bag.failure_rate = rule.failure_rate;
  bag.spares = spares_of_bag(bag.used, rule, house);
  bag.in_stock = stock_of(bag, house);
  bag.on_hand = std::min(bag.in_stock, bag.used + bag.spares);

  const std::int64_t needed = bag.used + bag.spares - bag.on_hand;
  const Market market = market_of(bag.colour, bag.nominal_in, palettes, house);
  bag.currency = market.currency;
  bag.is_sold = !cheapest_packs(1, market.packs).empty();
  bag.bought = cheapest_packs(needed, market.packs);
  bag.order = bag.bought.empty() ? needed : 0;
  for (const BoughtPacks& kind : bag.bought) {
    bag.packs += kind.packs;
    bag.order += kind.packs * kind.pack_size;
  }
  if (bag.bought.size() == 1) bag.pack_size = bag.bought.front().pack_size;
  if (needed == 0 || bag.is_sold) bag.cost_minor = cost_of(bag.bought);
  return bag;
}

}  // namespace

SpareRule spare_rule(const House& house, double nominal_in, Finish finish) {
  return {std::clamp(failure_rate(house, nominal_in, finish), 0.0, 0.9), std::clamp(house.short_chance, 1e-6, 0.5)};
}

std::int64_t spares_of_bag(std::int64_t used, const SpareRule& rule, const House& house) {
  const std::int64_t spares = spares_to_order(used, rule);
  if (used == 0 || rule.failure_rate == 0) return spares;
  return std::max(spares, static_cast<std::int64_t>(figure_of(house, "least-spares")));
}

std::vector<BalloonBag> fill_in_order(std::vector<BalloonLine>& lines, std::span<const Palette> palettes,
                                      const House& house) {
  std::vector<BalloonBag> bags;
  for (std::size_t first = 0; first < lines.size();) {
    std::size_t end = first + 1;
    while (end < lines.size() && share_a_bag(lines[first], lines[end])) ++end;
    const auto group = std::span(lines).subspan(first, end - first);
    BalloonBag& bag = bags.emplace_back(bag_of(group, palettes, house));
    bag.first_line = first;
    bag.lines = group.size();
    share_out_what_is_there(bag, group);
    share_out_packs(bag, group);
    first = end;
  }
  return bags;
}

}  // namespace quadrille
