#include "studio/standing/piece_loads.hpp"

#include <cstddef>
#include <utility>

#include "studio/standing/dead_load.hpp"
#include "studio/standing/silhouette.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

constexpr double longest_lever_m = 5;

}  // namespace

PieceLoads::PieceLoads(const Piece& piece, const Site& site, const Assumptions& assumptions)
    : piece_(piece),
      dressing_drag_(assumptions["dressing-drag"] * assumptions["envelope-factor"]),
      rod_drag_(assumptions["rod-drag"]),
      shelter_m_(assumptions["shelter-depth"]) {
  std::vector<const Cluster*> clusters;
  for (const Cluster& cluster : piece.clusters) {
    if (clusters.size() <= cluster.number) clusters.resize(cluster.number + 1, nullptr);
    clusters[cluster.number] = &cluster;
  }
  const AirState air = air_at(site);
  std::vector<double> balloons;
  for (const Balloon& balloon : piece.balloons) {
    const bool of_body = balloon.cluster < clusters.size() && clusters[balloon.cluster] != nullptr;
    carried_.push_back(nearest_on_frame(piece.frame, of_body ? clusters[balloon.cluster]->centre : balloon.centre));
    balloons.push_back(balloon_weight_n(balloon.diameter_m, balloon.nominal_in, air, assumptions["balloon-pressure"],
                                        assumptions["helium-share"]));
  }
  std::vector<double> nodes(piece.frame.nodes.size(), 0.0);
  for (const FrameMember& member : piece.frame.members) {
    const double half =
        member_weight_n(member, (piece.frame.nodes[member.to] - piece.frame.nodes[member.from]).norm()) / 2;
    nodes[member.from] += half;
    nodes[member.to] += half;
  }
  weight_ = gather(-Vec3::UnitZ(), balloons, nodes);
}

const std::vector<Push>& PieceLoads::wind_at_1_pa(double direction_deg) const {
  {
    const std::scoped_lock held(winds_held_);
    if (const auto known = winds_.find(direction_deg); known != winds_.end()) return known->second;
  }
  // Reckoned without the lock, at worst by two threads at once: what comes out is the same.
  std::vector<Push> wind = reckoned_wind(direction_deg);
  const std::scoped_lock held(winds_held_);
  return winds_.try_emplace(direction_deg, std::move(wind)).first->second;
}

std::vector<Push> PieceLoads::reckoned_wind(double direction_deg) const {
  const Silhouette seen = silhouette(piece_, direction_deg, shelter_m_);
  const Vec3 way = wind_way(direction_deg);
  std::vector<double> balloons;
  for (const double area : seen.balloons_m2) balloons.push_back(area * dressing_drag_);
  std::vector<Push> forces = gather(way, balloons, std::vector<double>(piece_.frame.nodes.size(), 0.0));
  for (std::size_t i = 0; i < piece_.frame.members.size(); ++i) {
    const FrameMember& member = piece_.frame.members[i];
    const Vec3 along = piece_.frame.nodes[member.to] - piece_.frame.nodes[member.from];
    if (!(seen.bare_m[i] > 0)) continue;
    const Vec3 half = cross_flow_force(along.normalized() * seen.bare_m[i], member.outer_m, way, 1, rod_drag_) / 2;
    forces.push_back({member.from, half});
    forces.push_back({member.to, half});
  }
  return forces;
}

std::vector<Push> PieceLoads::gather(const Vec3& way, const std::vector<double>& by_balloon,
                                     const std::vector<double>& by_node) const {
  // All forces go one way, so those of a node act together where their sizes' middle is.
  std::vector<double> sizes = by_node;
  std::vector<Vec3> moments(by_node.size(), Vec3::Zero());
  for (std::size_t i = 0; i < by_balloon.size(); ++i) {
    const OnFrame& carried = carried_[i];
    const Vec3 lever = piece_.balloons[i].centre - foot_of(carried, piece_.frame);
    sizes[carried.from] += (1 - carried.share) * by_balloon[i];
    moments[carried.from] += (1 - carried.share) * by_balloon[i] * lever;
    sizes[carried.to] += carried.share * by_balloon[i];
    moments[carried.to] += carried.share * by_balloon[i] * lever;
  }
  std::vector<Push> forces;
  for (std::uint32_t node = 0; node < sizes.size(); ++node) {
    if (sizes[node] == 0) {
      const Vec3 couple = moments[node].cross(way);
      if (couple.norm() > 0) forces.push_back({node, Vec3::Zero(), couple, Vec3::Zero()});
      continue;
    }
    const Vec3 lever = moments[node] / sizes[node], force = sizes[node] * way;
    if (lever.norm() < longest_lever_m)
      forces.push_back({node, force, Vec3::Zero(), lever});
    else  // weight and lift nearly cancel, and their middle runs away: what is left is a couple
      forces.push_back({node, force, moments[node].cross(way), Vec3::Zero()});
  }
  return forces;
}

ForceSum sum_of(const std::vector<Push>& forces, const std::vector<Vec3>& nodes, const Vec3& point) {
  ForceSum sum;
  for (const Push& force : forces) {
    sum.force_n += force.force_n;
    sum.moment_nm += (nodes[force.node] + force.arm_m - point).cross(force.force_n) + force.moment_nm;
  }
  return sum;
}

}  // namespace quadrille
