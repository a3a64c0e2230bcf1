// The cheapest packs, by dynamic programming over the number of balloons still to be had.
#include "studio/takeoff/packs.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <utility>

namespace quadrille {
namespace {

using Cost = std::pair<std::int64_t, std::int64_t>;  // minor units, then packs

constexpr std::int64_t most_states = 4'000'000;

/// Usable offers, one per size (its cheapest), largest first.
std::vector<Pack> usable(std::span<const Pack> offers) {
  std::vector<Pack> kept;
  for (const Pack& offer : offers)
    if (offer.count >= 1 && offer.count <= 1'000'000'000 && offer.price_minor >= 0 &&
        offer.price_minor <= highest_pack_price)
      kept.push_back(offer);
  std::ranges::sort(kept, [](const Pack& a, const Pack& b) {
    return a.count != b.count ? a.count > b.count : a.price_minor < b.price_minor;
  });
  const auto repeated = std::ranges::unique(kept, {}, &Pack::count);
  kept.erase(repeated.begin(), repeated.end());
  return kept;
}

std::int64_t packs_for(std::int64_t needed, std::int64_t pack_size) {
  return needed / pack_size + (needed % pack_size == 0 ? 0 : 1);
}

/// The offer with the lowest price per balloon; of equal ones the largest. `offers` is sorted largest first. The
/// products stay below 1e21, beyond 64 bits.
std::size_t cheapest_per_balloon(const std::vector<Pack>& offers) {
  std::size_t best = 0;
  for (std::size_t i = 1; i < offers.size(); ++i)
    if (static_cast<__int128>(offers[i].price_minor) * offers[best].count <
        static_cast<__int128>(offers[best].price_minor) * offers[i].count)
      best = i;
  return best;
}

std::vector<BoughtPacks> one_size(std::int64_t needed, const std::vector<Pack>& offers) {
  const auto cost = [&](const Pack& offer) {
    return static_cast<__int128>(packs_for(needed, offer.count)) * offer.price_minor;
  };
  const auto best = std::ranges::min_element(offers, [&](const Pack& a, const Pack& b) { return cost(a) < cost(b); });
  return {{best->count, packs_for(needed, best->count), best->price_minor}};
}

/// How many packs of each offer make up `needed` balloons or more at least cost.
std::vector<std::int64_t> fill(std::int64_t needed, const std::vector<Pack>& offers) {
  const auto states = static_cast<std::size_t>(needed) + 1;
  std::vector<Cost> cost(states, Cost{std::numeric_limits<std::int64_t>::max(), 0});
  std::vector<std::size_t> last(states, 0);  // the offer bought last on the way to that many balloons
  cost[0] = {0, 0};
  const auto before = [&](std::size_t balloons, const Pack& offer) {
    const auto size = static_cast<std::size_t>(offer.count);
    return balloons > size ? balloons - size : 0;
  };
  for (std::size_t balloons = 1; balloons < states; ++balloons)
    for (std::size_t i = 0; i < offers.size(); ++i) {
      const Cost& rest = cost[before(balloons, offers[i])];
      const Cost whole{rest.first + offers[i].price_minor, rest.second + 1};
      if (whole < cost[balloons]) {
        cost[balloons] = whole;
        last[balloons] = i;
      }
    }
  std::vector<std::int64_t> packs(offers.size(), 0);
  for (std::size_t balloons = states - 1; balloons > 0; balloons = before(balloons, offers[last[balloons]]))
    ++packs[last[balloons]];
  return packs;
}

}  // namespace

std::vector<BoughtPacks> cheapest_packs(std::int64_t needed, std::span<const Pack> offered) {
  const std::vector<Pack> offers = usable(offered);
  if (needed <= 0 || offers.empty()) return {};
  if (offers.size() == 1) return one_size(needed, offers);

  // Among as many other packs as the best one holds balloons, some together hold a multiple of its size (pigeonhole on
  // their running sums) and can be exchanged for it at no greater cost. So fewer than that many others are ever bought,
  // and whatever lies beyond what they can hold is bought in packs of the best size outright.
  const std::size_t best = cheapest_per_balloon(offers);
  const std::int64_t size = offers[best].count;
  const std::int64_t open = (size - 1) * offers.front().count;
  const std::int64_t outright = needed > open ? (needed - open) / size : 0;
  const std::int64_t rest = needed - outright * size;
  if (rest > most_states) return one_size(needed, offers);

  std::vector<std::int64_t> packs = fill(rest, offers);
  packs[best] += outright;
  std::vector<BoughtPacks> bought;
  for (std::size_t i = 0; i < offers.size(); ++i)
    if (packs[i] > 0) bought.push_back({offers[i].count, packs[i], offers[i].price_minor});
  return bought;
}

}  // namespace quadrille
