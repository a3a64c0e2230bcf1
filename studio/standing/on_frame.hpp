// Where what is not on the frame is carried by it.
#pragma once

#include <cstdint>

#include "sdk/built.hpp"

namespace quadrille {

/// Where a place is carried on the frame: (1 − share) by node `from`, share by node `to`.
struct OnFrame {
  std::uint32_t from = 0, to = 0;
  double share = 0;
};

/// The place of the frame nearest to `place`; with no member, the nearest node. `frame` has at least one node.
OnFrame nearest_on_frame(const Frame& frame, const Vec3& place);

/// That place as drawn [m].
Vec3 foot_of(const OnFrame& carried, const Frame& frame);

}  // namespace quadrille
