#include "studio/takeoff/tools.hpp"

#include <algorithm>

#include "sdk/number.hpp"
#include "studio/model/lengths.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

class ToolList {
 public:
  explicit ToolList(const House& house) : house_(house) {}

  void add(const char* key, std::string name, std::string why, bool reused = true) {
    Tool tool{key, std::move(name), std::move(why), {}, reused};
    if (const SupplyStock* const own = find_supply(house_, tool.key); own != nullptr) {
      tool.kept_where = own->kept_where;
      if (!own->name.empty() && own->key == tool.key) tool.name = own->name;
    }
    tools_.push_back(std::move(tool));
  }
  std::vector<Tool> take() { return std::move(tools_); }

 private:
  const House& house_;
  std::vector<Tool> tools_;
};

std::string name_of_area(const Event& event, const std::string& id) {
  for (const auto& area : event.areas)
    if (area->id == id) return area->name.empty() ? "an unnamed area" : area->name;
  return id;
}

/// How high balloons, frames and hooks of what is shown reach over the floor.
double highest_point_m(const Event& event, const BuiltEvent& built) {
  double highest = 0;
  for (const auto& area : event.areas)
    for (const auto& placed : area->pieces) {
      const auto found = built.find(placed->id);
      if (placed->hidden || found == built.end() || !found->second || found->second->status != Status::ok) continue;
      highest = std::max(highest, found->second->box.most.z());
      for (const Vec3& node : found->second->piece.frame.nodes) highest = std::max(highest, node.z());
    }
  return highest;
}

void add_power(ToolList& list, const Event& event, const AreaPower& power) {
  const std::string where = name_of_area(event, power.area);
  if (has_cord(power)) {
    list.add("tool-cord", "Cord of " + print_cord(power, event.units) + ", " + print_gauges(power, event.units), where);
    return;
  }
  std::string own = print_own_power(power);
  own[0] = 'A';
  list.add("tool-battery", own, where + (power.cord_m ? ": no cord reaches the outlet" : ": no outlet is known"));
}

}  // namespace

std::vector<Tool> tools_of(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                           std::span<const AreaPower> power) {
  ToolList list(house);
  if (count.total_balloons == 0) return {};
  const auto is_used = [&](const auto& area) {
    return std::ranges::any_of(count.pieces,
                               [&](const PieceCount& piece) { return piece.area == area->id && piece.balloons > 0; });
  };
  const bool outdoors = std::ranges::any_of(event.areas, [&](const auto& area) {
    return area->site.surroundings == Surroundings::outdoors && is_used(area);
  });
  if (const Inflator* const inflator = inflator_in_use(house); inflator != nullptr)
    list.add("tool-inflator", inflator->name.empty() ? "Inflator" : inflator->name, "");
  else
    list.add("tool-inflator", "Inflator or hand pump", "the house has none on its list");
  for (const AreaPower& area : power) add_power(list, event, area);
  if (outdoors && !power.empty()) list.add("tool-ground-fault", "Ground-fault device for the cord", "outdoors");
  const bool walked =
      std::ranges::any_of(event.areas, [&](const auto& area) { return !area->walkways.empty() && is_used(area); });
  if (walked && !power.empty()) list.add("tool-cord-cover", "Covers or tape for cords on walkways", "");
  list.add("tool-sizer", "Sizer for the balloons", "");
  list.add("tool-scissors", "Scissors and a knife", "");
  list.add("tool-tape-measure", "Tape measure", "");
  const double highest_m = highest_point_m(event, built);
  if (highest_m > floor_reach_m)
    list.add("tool-ladder", "Ladder", "the highest point is at " + print_length(highest_m, lengths_in(event.units)));
  if (std::ranges::any_of(count.supplies, [](const SupplyLine& line) { return line.key == "stake"; }))
    list.add("tool-mallet", "Mallet for the stakes", "");
  if (outdoors) list.add("tool-anemometer", "Anemometer", "outdoors");
  list.add("tool-first-aid", "First aid kit", "");
  list.add("tool-broom", "Broom", "");
  list.add("tool-bags", "Bags for burst balloons and scraps", "", false);
  return list.take();
}

}  // namespace quadrille
