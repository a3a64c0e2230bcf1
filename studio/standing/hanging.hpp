// Pieces without a frame of their own: garlands on hooks, on a strip, or hung as a chain between two ends.
#pragma once

#include <vector>

#include "sdk/built.hpp"
#include "studio/statics/equilibrium.hpp"
#include "studio/statics/frame_model.hpp"

namespace quadrille {

/// What the ends of a limp chain of length `length_m` between two points, loaded evenly along itself with `load_n` in all
/// (weight and wind together, any way), are held with: on the first and on the second end [N]. The chain hangs as a
/// catenary in the plane of its ends and the load. A chain no longer than the way between its ends is taken to be longer
/// by a thousandth, which is about what a line stretches.
struct ChainEnds {
  Vec3 on_first = Vec3::Zero(), on_second = Vec3::Zero();
};
ChainEnds chain_ends(const Vec3& from_first_to_second, double length_m, const Vec3& load_n);

/// The state of a piece whose frame has nodes and no members, its hooks in their order along it. With just two hooks and a
/// spine it hangs as a chain between them, taut or slack. With more each hook bears what hangs at it, and the line between
/// two hooks in a row, which is longer than their way by `slack` (above 0) or as its spine is, pulls them towards each
/// other: at a hook between others the pulls meet, at the ends they stay. `unstable` where a load finds no hook.
Equilibrium hung(const Piece& piece, const std::vector<Push>& pushes, double slack);

}  // namespace quadrille
