#include "studio/takeoff/last_built.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <string_view>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {
namespace {

constexpr double largest_m = 100'000, largest_nominal_in = 1'000;

double whole_millimetres(double metres) { return std::nearbyint(metres * 1000) / 1000; }

LastBuilt last_built_of(const BuiltPiece& built) {
  LastBuilt last;
  last.width_m = whole_millimetres(built.box.width_m());
  last.height_m = whole_millimetres(built.box.height_m());
  last.depth_m = whole_millimetres(built.box.depth_m());
  last.clusters = static_cast<std::int64_t>(built.piece.clusters.size());
  last.counts = counts_of(built.piece);
  return last;
}

bool fits_a_file(const LastBuilt& last) {
  const auto is_size = [](double metres) { return metres >= 0 && metres <= largest_m; };
  return is_size(last.width_m) && is_size(last.height_m) && is_size(last.depth_m) &&
         std::ranges::all_of(last.counts, [&](const LastBuilt::Count& count) {
           return is_size(count.inflated_m) && count.nominal_in <= largest_nominal_in && count.slot < most_lettered;
         });
}

}  // namespace

Event with_last_built(Event event, const BuiltEvent& built) {
  for (auto& area : event.areas) {
    std::vector<std::pair<std::size_t, LastBuilt>> fresh;
    for (std::size_t i = 0; i < area->pieces.size(); ++i) {
      const auto found = built.find(area->pieces[i]->id);
      if (found == built.end() || found->second == nullptr || found->second->status != Status::ok) continue;
      LastBuilt last = last_built_of(*found->second);
      if (fits_a_file(last) && area->pieces[i]->last_built != last) fresh.emplace_back(i, std::move(last));
    }
    if (fresh.empty()) continue;
    area.edit([&](Area& changed) {
      for (auto& [i, last] : fresh)
        changed.pieces[i].edit([&](PlacedPiece& piece) { piece.last_built = std::move(last); });
    });
  }
  return event;
}

BuiltEvent still_true(const BuiltEvent& built, const Event& studied, const Event& event) {
  std::map<std::string_view, const PlacedPiece*> then;
  for (const auto& area : studied.areas)
    for (const auto& piece : area->pieces) then[piece->id] = &*piece;
  BuiltEvent kept;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      const auto found = built.find(piece->id);
      const auto before = then.find(piece->id);
      if (found == built.end() || before == then.end()) continue;
      if (before->second->type == piece->type && before->second->values == piece->values) kept.insert(*found);
    }
  return kept;
}

}  // namespace quadrille
