// How a rigid frame holds itself upright sideways, out of its own plane: how far it gives way to a push at the crown, and
// under which weight it would lean over by itself.
#pragma once

#include <optional>

#include "plugins/arch/outline.hpp"

namespace quadrille::arch {

/// Figures of a frame symmetric about x = 0, made of one round section, stress-free as drawn, with feet that are held
/// fast; to 12 digits.
struct Sway {
  double stiffness_n_per_m = 0;  ///< a level push at the crown, square to the frame, ÷ how far the crown gives way
  double limit_n_per_m = 0;      ///< weight per length along the frame at which the crown leans over by itself
};

/// Stiffness: each half, cut at the crown, carries half of the push and the moment about the vertical that keeps the
/// crown from turning; Castigliano's theorem over bending and torsion, GJ = EI/(1 + ν), ν = 0.3 (drawn
/// glass fibre twists more easily). Source: linear beam theory, derived here; shear and the lengthening of the rod are
/// left out.
/// Limit: Rayleigh's quotient with the shape that the push gives. The weight presses each point of the frame along its
/// line with N = H cos θ + w s sin θ (θ slope, s length from the crown, H thrust of the weight in the frame's own plane,
/// by Castigliano again); the lean gains ½∫ N v'² ds. It is an upper bound to what linear theory gives, about 2 % above
/// it for two uprights; bending in the frame's plane is left out of the coupling.
Sway sway_of(const Outline& outline, double bending_stiffness_nm2);

/// A push at the crown, as of a draught or somebody who brushes past, and how far the crown of a sound frame gives way
/// to it, as a share of the frame's height. Our own choice.
inline constexpr double named_push_n = 5, most_sway_share = 0.1;

/// How far the crown gives way to the named push while the frame bears `weight_n_per_m`; nothing where it leans over by
/// itself.
std::optional<double> sway_under_push_m(const Sway& sway, double weight_n_per_m);

}  // namespace quadrille::arch
