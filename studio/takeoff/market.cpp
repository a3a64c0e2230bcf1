#include "studio/takeoff/market.hpp"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

#include "studio/colour/difference.hpp"
#include "studio/takeoff/packs.hpp"

namespace quadrille {
namespace {

const Palette* find_palette(std::span<const Palette> palettes, std::string_view key) {
  const auto found = std::ranges::find(palettes, key, &Palette::key);
  return found == palettes.end() ? nullptr : &*found;
}

bool is_sold(const Market& market) { return !cheapest_packs(1, market.packs).empty(); }

}  // namespace

Market market_of(const ColourReference& colour, double nominal_in, std::span<const Palette> palettes,
                 const House& house) {
  Market market{{}, house.currency};
  if (colour == ColourReference{}) return market;
  for (const BalloonStock& stock : house.balloons)
    if (stock.colour == colour && stock.nominal_in == nominal_in)
      market.packs.insert(market.packs.end(), stock.packs.begin(), stock.packs.end());
  if (!market.packs.empty()) return market;
  if (const Palette* palette = find_palette(palettes, colour.palette)) market.currency = palette->currency;
  if (const Colour* found = find_colour(palettes, colour))
    for (const Pack& pack : found->packs)
      if (pack.nominal_in == nominal_in) market.packs.push_back(pack);
  return market;
}

std::vector<double> sizes_sold(const ColourReference& colour, std::span<const Palette> palettes, const House& house) {
  std::set<double> sizes;
  if (const Colour* found = find_colour(palettes, colour))
    for (const Pack& pack : found->packs) sizes.insert(pack.nominal_in);
  for (const BalloonStock& stock : house.balloons)
    if (stock.colour == colour) sizes.insert(stock.nominal_in);
  std::erase_if(sizes, [&](double size) { return !is_sold(market_of(colour, size, palettes, house)); });
  return {sizes.begin(), sizes.end()};
}

std::vector<std::string> alike_sold(const ColourReference& colour, double nominal_in, std::span<const Palette> palettes,
                                    const House& house) {
  const Palette* const palette = find_palette(palettes, colour.palette);
  const Colour* const wanted = find_colour(palettes, colour);
  if (palette == nullptr || wanted == nullptr) return {};
  const auto lab = [](const Colour& c) { return lab_of(Srgb{c.red, c.green, c.blue}); };
  std::vector<std::pair<double, std::string>> sold;
  for (const Colour& other : palette->colours)
    if (&other != wanted && is_sold(market_of({palette->key, other.key}, nominal_in, palettes, house)))
      sold.emplace_back(ciede2000(lab(*wanted), lab(other)), other.name);
  std::ranges::stable_sort(sold, {}, [](const auto& item) { return item.first; });
  std::vector<std::string> names;
  for (auto& [difference, name] : sold) names.push_back(std::move(name));
  return names;
}

}  // namespace quadrille
