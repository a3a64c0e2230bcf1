// What weighs on a piece's frame and what the wind does to it, brought to the nodes of the frame.
#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <vector>

#include "sdk/built.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/assumptions.hpp"
#include "studio/standing/on_frame.hpp"
#include "studio/statics/frame_model.hpp"

namespace quadrille {

/// Loads of one built piece, whatever its lines; safe to ask from several threads at once. Balloons are carried by the
/// nearest place of the frame to the middle of their cluster, or to themselves; what lies between two nodes is shared by
/// the lever rule, and keeps its moment about the frame.
class PieceLoads {
 public:
  /// `piece` has at least one node and outlives this; with no member, each node carries what is nearest to it.
  PieceLoads(const Piece& piece, const Site& site, const Assumptions& assumptions);

  /// Weight of balloons, rods and poles, one force at most for each node.
  const std::vector<Push>& weight() const { return weight_; }
  /// The wind's forces at a velocity pressure of 1 Pa; they grow in proportion to it. `direction_deg` as in wind_way().
  /// On the balloons it pushes its own way, on the bare frame across the members; what hides right
  /// behind other balloons is not counted twice, and nothing shelters what is farther off than "shelter-depth".
  /// The answer is kept, and stays where it is as long as this lives.
  const std::vector<Push>& wind_at_1_pa(double direction_deg) const;

 private:
  std::vector<Push> reckoned_wind(double direction_deg) const;
  std::vector<Push> gather(const Vec3& way, const std::vector<double>& by_balloon,
                           const std::vector<double>& by_node) const;

  const Piece& piece_;
  double dressing_drag_, rod_drag_, shelter_m_;
  std::vector<OnFrame> carried_;  ///< by balloon
  std::vector<Push> weight_;
  mutable std::mutex winds_held_;
  mutable std::map<double, std::vector<Push>> winds_;  ///< by direction
};

/// The sum of `forces`, and their moment about `point`, as drawn.
struct ForceSum {
  Vec3 force_n = Vec3::Zero(), moment_nm = Vec3::Zero();
};
ForceSum sum_of(const std::vector<Push>& forces, const std::vector<Vec3>& nodes, const Vec3& point);

}  // namespace quadrille
