#include "studio/labour/loads.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "sdk/balloon_size.hpp"
#include "sdk/vec.hpp"
#include "studio/model/rates.hpp"
#include "studio/takeoff/air.hpp"
#include "studio/takeoff/placing.hpp"

namespace quadrille {
namespace {

constexpr double heap_share = 0.64;
// A file may claim more clusters than anybody can carry; beyond, they are taken as one heap.
constexpr std::int64_t most_items = 2000;

/// Supplies whose mass is known otherwise: from the geometry, or from what a weight is filled with.
bool is_weighed(std::string_view key) {
  const auto begins = [&](std::string_view stem) { return key.starts_with(stem); };
  return begins("rod-") || begins("base-plate") || begins(ballast_key) || begins("dead-weight");
}

void add_containers(std::vector<LoadItem>& items, double mass_kg, bool filled, const House& house) {
  const std::int64_t containers = std::min(containers_holding(mass_kg, house), most_items);
  if (containers == 0) return;
  const double each = (filled ? mass_kg / static_cast<double>(containers) : 0) + rate_of(house, "container-mass");
  items.insert(items.end(), static_cast<std::size_t>(containers), {each, 0, false});
}

double supplies_kg(const PieceCount& count, const House& house) {
  double mass = 0;
  for (const SupplyLine& line : count.supplies)
    if (const SupplyStock* stock = find_supply(house, line.key); stock != nullptr && !is_weighed(line.key))
      mass += std::max(stock->mass_kg, 0.0) * std::max(line.quantity, 0.0);
  return mass;
}

struct Trip {
  double mass_kg, bulk_l;  ///< that it still takes
};

/// How many more trips what can be divided asks for, after it has filled those there are.
std::int64_t trips_for_rest(double mass_kg, double bulk_l, const std::vector<Trip>& trips, const TripLimit& limit) {
  for (const Trip& trip : trips) {
    mass_kg -= trip.mass_kg;
    bulk_l -= trip.bulk_l;
  }
  return static_cast<std::int64_t>(std::ceil(std::max({mass_kg / limit.mass_kg, bulk_l / limit.bulk_l, 0.0}) - 1e-9));
}

}  // namespace

Trips trips_of(std::vector<LoadItem> items, const TripLimit& limit) {
  std::ranges::stable_sort(items, [](const LoadItem& a, const LoadItem& b) {
    return std::pair(a.mass_kg, a.bulk_l) > std::pair(b.mass_kg, b.bulk_l);
  });
  Trips answer;
  std::vector<Trip> trips;
  double rest_kg = 0, rest_l = 0;
  for (const LoadItem& item : items) {
    answer.mass_kg += item.mass_kg;
    answer.bulk_l += item.bulk_l;
    if (item.divisible) {
      rest_kg += item.mass_kg;
      rest_l += item.bulk_l;
      continue;
    }
    answer.heaviest_kg = std::max(answer.heaviest_kg, item.mass_kg);
    const double share = std::max(item.mass_kg / limit.mass_kg, item.bulk_l / limit.bulk_l);
    if (share > 1) {
      answer.trips += static_cast<std::int64_t>(std::ceil(share - 1e-9));
      continue;
    }
    const auto fits = std::ranges::find_if(trips, [&](const Trip& trip) {
      return item.mass_kg <= trip.mass_kg + 1e-9 && item.bulk_l <= trip.bulk_l + 1e-9;
    });
    Trip& trip = fits == trips.end() ? trips.emplace_back(Trip{limit.mass_kg, limit.bulk_l}) : *fits;
    trip.mass_kg -= item.mass_kg;
    trip.bulk_l -= item.bulk_l;
  }
  answer.trips += std::ssize(trips) + trips_for_rest(rest_kg, rest_l, trips, limit);
  return answer;
}

double frame_mass_kg(const Frame& frame) {
  double mass = 0;
  for (const FrameMember& member : frame.members) {
    const double length_m = (frame.nodes[member.to] - frame.nodes[member.from]).norm();
    const double area_m2 = pi / 4 * (member.outer_m * member.outer_m - member.inner_m * member.inner_m);
    mass += length_m * area_m2 * member.density_kg_m3;
  }
  return mass;
}

std::int64_t containers_of(const PieceCount& count) {
  const auto line = std::ranges::find(count.supplies, ballast_container_key, &SupplyLine::key);
  return line == count.supplies.end() ? 0 : std::llround(line->quantity);
}

double ballast_kg(const Piece& piece) {
  double mass = 0;
  for (const Support& support : piece.supports) mass += std::max(support.ballast_kg, 0.0);
  return mass;
}

double dead_weights_kg(const PlacedPiece& placed) {
  double mass = 0;
  for (const SecuringLine& line : placed.lines)
    if (line.anchor == AnchorKind::dead_weight) mass += std::max(line.mass_kg, 0.0);
  return mass;
}

std::vector<LoadItem> items_of(const PlacedPiece& placed, const PieceCount& count, const Piece* piece,
                               const House& house, bool with_ballast) {
  std::vector<LoadItem> items;
  for (const SecuringLine& line : placed.lines)
    if (line.anchor == AnchorKind::dead_weight) add_containers(items, line.mass_kg, with_ballast, house);
  double rest_kg = supplies_kg(count, house);
  for (const BalloonLine& line : count.lines)
    rest_kg += latex_mass_kg(line.nominal_in) * static_cast<double>(line.used);
  if (piece != nullptr) {
    rest_kg += frame_mass_kg(piece->frame);
    for (const Support& support : piece->supports) {
      if (support.own_mass_kg > 0) items.push_back({support.own_mass_kg, 0, false});
      add_containers(items, support.ballast_kg, with_ballast, house);
    }
  }
  items.push_back({rest_kg, 0, true});
  return items;
}

double volume_l(const PieceCount& count) {
  double litres = 0;
  for (const BalloonLine& line : count.lines)
    litres += balloon_litres(line.inflated_m) * static_cast<double>(line.used);
  return litres;
}

std::vector<LoadItem> made_clusters(const PieceCount& count) {
  const double bulk_l = volume_l(count) / heap_share;
  if (count.clusters < 1 || count.clusters > most_items) return {{0, bulk_l, true}};
  return std::vector<LoadItem>(static_cast<std::size_t>(count.clusters),
                               {0, bulk_l / static_cast<double>(count.clusters), false});
}

}  // namespace quadrille
