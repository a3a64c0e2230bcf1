#include "studio/takeoff/containers.hpp"

#include <algorithm>
#include <cmath>

#include "studio/takeoff/placing.hpp"

namespace quadrille {
namespace {

void add(std::vector<FilledContainers>& all, const std::string& piece, std::optional<std::size_t> support, double kg,
         const House& house) {
  const std::int64_t containers = containers_holding(kg, house);
  if (containers == 0) return;
  const double each = std::round(kg / static_cast<double>(containers) * 1000) / 1000;
  auto found = std::ranges::find(all, each, &FilledContainers::each_kg);
  if (found == all.end()) found = all.insert(all.end(), {each, 0, {}});
  found->containers += containers;
  found->places.push_back({piece, support, containers});
}

}  // namespace

std::vector<FilledContainers> containers_to_fill(const Event& event, const BuiltEvent& built, const House& house) {
  std::vector<FilledContainers> all;
  for (const auto& area : event.areas)
    for (const auto& placed : area->pieces) {
      const auto found = built.find(placed->id);
      if (placed->hidden || found == built.end() || !found->second || found->second->status != Status::ok) continue;
      const Piece& piece = found->second->piece;
      double counted = 0, borne = 0;
      for (const Supply& supply : piece.supplies)
        if (supply.key == ballast_key && supply.unit == "kg") counted += supply.quantity;
      for (std::size_t i = 0; i < piece.supports.size(); ++i) {
        borne += piece.supports[i].ballast_kg;
        add(all, placed->id, i, piece.supports[i].ballast_kg, house);
      }
      add(all, placed->id, std::nullopt, counted - borne, house);
    }
  std::ranges::stable_sort(all, std::greater{}, &FilledContainers::each_kg);
  return all;
}

}  // namespace quadrille
