// One stretch of rod: its strain energy, the forces on its ends and their exact tangent, for any displacement and rotation
// of the ends.
//
// The rotations of the two ends are split into the turn from one end to the other (ψ, a rotation vector) and the frame half
// way between them; the chord seen from that frame is v. For an element of length L, with m the angles of v to the x axis
// of that frame (as 2 tan of half the angle) and ψ⊥ the bending part of ψ:
//   strain ε = |v|/L − 1 + |ψ⊥|²/24 + |m|²/10
//   energy = EA L ε²/2 + (GJ ψx² + EI |ψ⊥|²)/(2L) + S |m|²/(2L),  S = 12 EI/(1 + 12 EI/(GA L²)).
// For small angles this is the cubic beam, whose ends turn by m ∓ ψ⊥/2 from the chord: 4EI/L and 2EI/L. The two terms in ε
// are what the cubic shape is shorter than its length; with them buckling loads and arcs converge with the fourth power
// of L. Sources: Crisfield, "A consistent co-rotational formulation for non-linear, three-dimensional, beam-elements",
// Comput. Meth. Appl. Mech. Eng. 81, 1990 (from memory: the split of rotations); Oran, "Tangent stiffness in space frames",
// J. Struct. Div. ASCE 99, 1973 (from memory: bowing); the exact derivatives are derived here and checked by differences.
#pragma once

#include <Eigen/Core>
#include <optional>

#include "studio/statics/rotation.hpp"

namespace quadrille {

/// An element at rest. SI units, all stiffnesses above 0.
struct Beam {
  double axial = 0, bending = 0, torsion = 0;  ///< EA [N], EI and GJ [Nm²]
  double transverse = 0;                       ///< S [Nm²], see above
  double length = 0;                           ///< unstretched
  Vec3 chord = Vec3::Zero();                   ///< drawn, from end to end
  Turn axes_from, axes_to;                     ///< section axes at the ends in the drawn shape; x along the rod
};

/// S of the formula above. `shear` GA [N]; 0 = it does not shear.
double transverse_stiffness(double bending, double shear, double length);

using BeamVector = Eigen::Matrix<double, 9, 1>;  ///< chord, turn of `from`, turn of `to`: global axes
using BeamMatrix = Eigen::Matrix<double, 9, 9>;

/// State of a beam: change of its chord [m] and turns of its ends since drawn.
struct BeamEnds {
  Vec3 stretch;
  Turn turn_from, turn_to;
};

struct BeamForces {
  double energy = 0, axial_force = 0, strain = 0;
  BeamVector force;  ///< derivative of the energy by the chord and by further rotations of the ends [N, Nm]
};

struct BeamTangent {
  BeamForces forces;
  BeamVector strain_slope;  ///< derivative of the strain
  BeamMatrix stiffness;     ///< second derivative of the energy, rotations as exp(θ)·R: symmetric
};

/// Nothing where the element is turned in itself by more than 150 degrees or its chord has no length or points backwards.
std::optional<BeamForces> beam_forces(const Beam& beam, const BeamEnds& ends);

/// The same with the tangent, in which `axial_force` takes the place of the element's own axial force where one is given:
/// Newton's method for axial force and displacement as independent unknowns, which takes far larger steps on slender rods.
/// Source: Magisano, Leonetti, Garcea, "How to improve efficiency and robustness of the Newton method in geometrically
/// non-linear structural problem discretized via displacement-based finite elements", CMAME 313, 2017 (from memory).
bool beam_tangent(const Beam& beam, const BeamEnds& ends, std::optional<double> axial_force, BeamTangent& tangent);

}  // namespace quadrille
