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

/// The state of a piece whose frame has nodes and no members: every load is borne by the support at its node; with just two
/// supports and a spine that sags, the piece hangs as a chain between them. `unstable` where a load finds no support.
Equilibrium hung(const Piece& piece, const std::vector<Push>& pushes);

}  // namespace quadrille
