// The direction a bent rod has at its nodes, which is where its bending stress comes from.
#pragma once

#include <vector>

#include "studio/statics/frame_model.hpp"

namespace quadrille {

struct EndDirections {
  Vec3 from = Vec3::UnitX(), to = Vec3::UnitX();  ///< unit tangents, pointing from `from` to `to`
};

/// For each element of a usable model. Elements that are straight when free follow the curve through their nodes: the
/// polynomial through up to five neighbouring nodes of one rod over their distances along it, or what the model states.
/// Others have the direction of their chord at both ends.
std::vector<EndDirections> rod_tangents(const FrameModel& model);

}  // namespace quadrille
