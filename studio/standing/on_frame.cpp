#include "studio/standing/on_frame.hpp"

#include <algorithm>
#include <limits>

namespace quadrille {

OnFrame nearest_on_frame(const Frame& frame, const Vec3& place) {
  OnFrame nearest;
  double least = std::numeric_limits<double>::infinity();
  for (const FrameMember& member : frame.members) {
    const Vec3& a = frame.nodes[member.from];
    const Vec3 along = frame.nodes[member.to] - a;
    const double square = along.squaredNorm();
    const double share = square > 0 ? std::clamp((place - a).dot(along) / square, 0.0, 1.0) : 0;
    const double apart = (place - a - share * along).squaredNorm();
    if (apart < least) least = apart, nearest = {member.from, member.to, share};
  }
  if (!frame.members.empty()) return nearest;
  for (std::uint32_t node = 0; node < frame.nodes.size(); ++node) {
    const double apart = (place - frame.nodes[node]).squaredNorm();
    if (apart < least) least = apart, nearest = {node, node, 0};
  }
  return nearest;
}

Vec3 foot_of(const OnFrame& carried, const Frame& frame) {
  return frame.nodes[carried.from] + carried.share * (frame.nodes[carried.to] - frame.nodes[carried.from]);
}

}  // namespace quadrille
