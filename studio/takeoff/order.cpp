// Spares line by line; packs by colour and nominal size, handed out to the lines in their order.
#include "studio/takeoff/order.hpp"

#include <algorithm>
#include <cstddef>

namespace quadrille {
namespace {

std::int64_t needed_by(const BalloonLine& line) {
  return std::max<std::int64_t>(0, line.used + line.spares - line.on_hand);
}

bool share_packs(const BalloonLine& a, const BalloonLine& b) {
  return a.colour == b.colour && a.colour_name == b.colour_name && a.nominal_in == b.nominal_in;
}

std::vector<Pack> offers_for(const BalloonLine& line, std::span<const Palette> palettes) {
  std::vector<Pack> offers;
  if (const Colour* colour = find_colour(palettes, line.colour))
    for (const Pack& pack : colour->packs)
      if (pack.nominal_in == line.nominal_in) offers.push_back(pack);
  return offers;
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

void order_group(std::span<BalloonLine> group, std::span<const Palette> palettes) {
  std::int64_t needed = 0;
  for (const BalloonLine& line : group) needed += needed_by(line);
  std::vector<BoughtPacks> stock = cheapest_packs(needed, offers_for(group.front(), palettes));
  if (stock.empty()) {
    for (BalloonLine& line : group) line.order = needed_by(line);
    return;
  }
  const std::int64_t usual_size = stock.size() == 1 ? stock.front().pack_size : 0;
  std::int64_t left_over = 0;
  for (BalloonLine& line : group) {
    line.bought = take(stock, needed_by(line) - left_over, &line == &group.back());
    for (const BoughtPacks& kind : line.bought) {
      line.packs += kind.packs;
      line.order += kind.packs * kind.pack_size;
    }
    line.pack_size = line.bought.size() == 1 ? line.bought.front().pack_size : usual_size;
    left_over += line.order - needed_by(line);
  }
}

}  // namespace

void fill_in_order(std::vector<BalloonLine>& lines, std::span<const Palette> palettes, const SpareRule& rule) {
  for (BalloonLine& line : lines) line.spares = spares_to_order(line.used, rule);
  for (std::size_t first = 0; first < lines.size();) {
    std::size_t end = first + 1;
    while (end < lines.size() && share_packs(lines[first], lines[end])) ++end;
    order_group(std::span(lines).subspan(first, end - first), palettes);
    first = end;
  }
}

}  // namespace quadrille
