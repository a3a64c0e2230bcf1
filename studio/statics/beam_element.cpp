#include "studio/statics/beam_element.hpp"

#include <Eigen/Geometry>

namespace quadrille {
namespace {

using Mat36 = Eigen::Matrix<double, 3, 6>;
using Vec6 = Eigen::Matrix<double, 6, 1>;
using Mat6 = Eigen::Matrix<double, 6, 6>;

/// ψ, v and the rest of the geometry in the frame half way between the ends.
struct Split {
  Mat3 axes;    ///< of that frame, in global axes
  double w;     ///< cos of half the turn from end to end
  Vec3 u;       ///< sin of half of it times its axis
  HalfAngle f;  ///< ψ = 2 f u
  Vec3 psi;
  Vec3 v;
  double length, strain;
  double facing;    ///< |v| + vx
  Vec3 direction;   ///< v/|v|
  double my, mz;    ///< m
  Vec3 my_v, mz_v;  ///< its derivatives by v
};

bool split_ends(const Beam& beam, const BeamEnds& ends, Split& split) {
  const Turn from = ends.turn_from * beam.axes_from;
  Turn to = ends.turn_to * beam.axes_to;
  if (from.dot(to) < 0) to.coeffs() = -to.coeffs();
  const Turn between = from.conjugate() * to;
  split.w = between.w();
  if (!(split.w > 0.25)) return false;
  split.u = between.vec();
  split.f = half_angle(split.w, split.u.norm());
  split.psi = 2 * split.f.value * split.u;
  split.axes = Turn(from.coeffs() + to.coeffs()).normalized().toRotationMatrix();
  split.v = split.axes.transpose() * (beam.chord + ends.stretch);
  split.length = split.v.norm();
  split.facing = split.length + split.v.x();
  if (!(split.facing > 1e-2 * split.length) || !(split.length > 1e-3 * beam.length)) return false;
  // The small change of length without the rounding of two large ones.
  const double drawn = beam.chord.norm();
  split.strain =
      (ends.stretch.dot(2 * beam.chord + ends.stretch) / (split.length + drawn) + (drawn - beam.length)) / beam.length;
  split.direction = split.v / split.length;
  const Vec3 facing_v = split.direction + Vec3::UnitX();
  split.my = 2 * split.v.y() / split.facing;
  split.mz = 2 * split.v.z() / split.facing;
  split.my_v = (2 * Vec3::UnitY() - split.my * facing_v) / split.facing;
  split.mz_v = (2 * Vec3::UnitZ() - split.mz * facing_v) / split.facing;
  split.strain += (split.psi.y() * split.psi.y() + split.psi.z() * split.psi.z()) / 24 +
                  (split.my * split.my + split.mz * split.mz) / 10;
  return true;
}

/// Derivatives of the energy by ψ and v when the axial force is `axial`.
struct Inner {
  Vec3 psi, v;
  double bending;     ///< EI/L + N L/12
  double transverse;  ///< S/L + N L/5
};

Inner inner_forces(const Beam& beam, const Split& split, double axial) {
  Inner inner;
  inner.bending = beam.bending / beam.length + axial * beam.length / 12;
  inner.transverse = beam.transverse / beam.length + axial * beam.length / 5;
  inner.psi =
      Vec3(beam.torsion / beam.length * split.psi.x(), inner.bending * split.psi.y(), inner.bending * split.psi.z());
  inner.v = axial * split.direction + inner.transverse * (split.my * split.my_v + split.mz * split.mz_v);
  return inner;
}

/// First derivative of ψ by the difference of the ends' rotations, in the middle frame; symmetric.
Mat3 turn_slope(const Split& split) {
  const Mat3 square = split.u * split.u.transpose();
  return split.f.value * (Mat3::Identity() - square / (1 + split.w)) - split.f.slope * square;
}

/// The derivative by chord and rotations, from those by ψ and v, in global axes.
BeamVector outer(const Split& split, const Vec3& psi, const Vec3& v) {
  const Vec3 couple = v.cross(split.v), tangent = split.u / (1 + split.w);
  const Vec3 sum = 0.5 * couple, difference = turn_slope(split) * psi + 0.5 * tangent.cross(couple);
  BeamVector result;
  result << split.axes * v, split.axes * (sum - difference), split.axes * (sum + difference);
  return result;
}

Vec6 strain_by_inner(const Beam& beam, const Split& split) {
  Vec6 slope;
  slope << 0, split.psi.y() / 12, split.psi.z() / 12,
      split.direction / beam.length + (split.my * split.my_v + split.mz * split.mz_v) / 5;
  return slope;
}

/// Second derivative of the energy by (ψ, v).
Mat6 inner_stiffness(const Beam& beam, const Split& split, const Inner& inner, double axial) {
  const Vec6 strain = strain_by_inner(beam, split);
  Mat6 stiffness = beam.axial * beam.length * strain * strain.transpose();
  stiffness(0, 0) += beam.torsion / beam.length;
  stiffness(1, 1) += inner.bending;
  stiffness(2, 2) += inner.bending;
  const Mat3 length_vv = (Mat3::Identity() - split.direction * split.direction.transpose()) / split.length;
  const Vec3 facing_v = split.direction + Vec3::UnitX();
  const double d = split.facing, square = split.my * split.my + split.mz * split.mz;
  const Vec3 side = Vec3(0, split.my, split.mz);
  Mat3 block = split.my_v * split.my_v.transpose() + split.mz_v * split.mz_v.transpose();
  block += -2 / (d * d) * (side * facing_v.transpose() + facing_v * side.transpose());
  block += 2 * square / (d * d) * (facing_v * facing_v.transpose()) - square / d * length_vv;
  stiffness.bottomRightCorner<3, 3>() += inner.transverse * block + axial * length_vv;
  return stiffness;
}

/// Second derivatives of ψ and v themselves, weighted with the forces: of (difference, sum, chord) in the middle frame.
void add_geometric(const Split& split, const Inner& inner, const Mat3& slope, BeamMatrix& stiffness) {
  const Vec3 &u = split.u, y = split.u / (1 + split.w);
  const double w = split.w, along = inner.psi.dot(u);
  const Vec3 across = inner.psi - u * (u.dot(inner.psi) / (1 + w));
  const double g = 2 * split.f.value, g1 = 2 * split.f.slope, g2 = 2 * split.f.bend;
  const Vec3 couple = inner.v.cross(split.v);
  const Vec3 k = y.cross(couple);
  Mat3 dd = -0.25 * (g + g1 * w) * along * Mat3::Identity() + 0.25 * g2 * along * (u * u.transpose()) -
            0.25 * g1 * (u * across.transpose() + across * u.transpose()) +
            0.125 * (k * y.transpose() + y * k.transpose());
  Mat3 sd = 0.25 * cross_matrix(slope * inner.psi) + 0.125 * (couple * y.transpose());
  sd.diagonal().array() -= 0.125 * y.dot(couple);
  Mat3 q = 0.5 * (inner.v * split.v.transpose() + split.v * inner.v.transpose());
  q.diagonal().array() -= inner.v.dot(split.v);
  // The middle frame turns by (sum + difference × y)/2.
  const Mat3 by_difference = -0.5 * cross_matrix(y);
  const Mat3 q_difference = q * by_difference, force = cross_matrix(inner.v);
  dd += by_difference.transpose() * q_difference;
  sd += 0.5 * q_difference;
  const Mat3 dv = by_difference.transpose() * force, sv = 0.5 * force;
  stiffness.block<3, 3>(0, 0) += dd;
  stiffness.block<3, 3>(3, 0) += sd;
  stiffness.block<3, 3>(0, 3) += sd.transpose();
  stiffness.block<3, 3>(3, 3) += 0.25 * q;
  stiffness.block<3, 3>(0, 6) += dv;
  stiffness.block<3, 3>(6, 0) += dv.transpose();
  stiffness.block<3, 3>(3, 6) += sv;
  stiffness.block<3, 3>(6, 3) += sv.transpose();
}

/// From (difference, sum, chord) in the middle frame to (chord, from, to) in global axes.
void to_outer(const Split& split, const BeamMatrix& middle, BeamMatrix& stiffness) {
  const Mat3& axes = split.axes;
  const auto turned = [&](const Mat3& block) -> Mat3 { return axes * block * axes.transpose(); };
  const Mat3 dd = middle.block<3, 3>(0, 0), sd = middle.block<3, 3>(3, 0), ss = middle.block<3, 3>(3, 3);
  const Mat3 vd = middle.block<3, 3>(6, 0), vs = middle.block<3, 3>(6, 3);
  const Mat3 ds = sd.transpose();
  stiffness.block<3, 3>(0, 0) = turned(middle.block<3, 3>(6, 6));
  stiffness.block<3, 3>(0, 3) = turned(vs - vd);
  stiffness.block<3, 3>(0, 6) = turned(vs + vd);
  stiffness.block<3, 3>(3, 3) = turned(ss - sd - ds + dd);
  stiffness.block<3, 3>(3, 6) = turned(ss + sd - ds - dd);
  stiffness.block<3, 3>(6, 6) = turned(ss + sd + ds + dd);
  stiffness.block<3, 3>(3, 0) = stiffness.block<3, 3>(0, 3).transpose();
  stiffness.block<3, 3>(6, 0) = stiffness.block<3, 3>(0, 6).transpose();
  stiffness.block<3, 3>(6, 3) = stiffness.block<3, 3>(3, 6).transpose();
}

BeamForces forces_of(const Beam& beam, const Split& split) {
  BeamForces forces;
  forces.strain = split.strain;
  forces.axial_force = beam.axial * split.strain;
  const Inner inner = inner_forces(beam, split, forces.axial_force);
  const double square = split.my * split.my + split.mz * split.mz;
  const Vec3& psi = split.psi;
  forces.energy = (beam.axial * beam.length * split.strain * split.strain +
                   (beam.torsion * psi.x() * psi.x() + beam.bending * (psi.y() * psi.y() + psi.z() * psi.z()) +
                    beam.transverse * square) /
                       beam.length) /
                  2;
  forces.force = outer(split, inner.psi, inner.v);
  return forces;
}

}  // namespace

double transverse_stiffness(double bending, double shear, double length) {
  return 12 * bending / (1 + (shear > 0 ? 12 * bending / (shear * length * length) : 0.0));
}

std::optional<BeamForces> beam_forces(const Beam& beam, const BeamEnds& ends) {
  Split split;
  if (!split_ends(beam, ends, split)) return std::nullopt;
  return forces_of(beam, split);
}

bool beam_tangent(const Beam& beam, const BeamEnds& ends, std::optional<double> axial_force, BeamTangent& tangent) {
  Split split;
  if (!split_ends(beam, ends, split)) return false;
  tangent.forces = forces_of(beam, split);
  const double axial = axial_force.value_or(tangent.forces.axial_force);
  const Inner inner = inner_forces(beam, split, axial);
  const Vec6 strain = strain_by_inner(beam, split);
  tangent.strain_slope = outer(split, strain.head<3>(), strain.tail<3>());

  const Mat3 slope = turn_slope(split), v_cross = 0.5 * cross_matrix(split.v);
  const Mat6 stiff = inner_stiffness(beam, split, inner, axial);
  // Rows (ψ, v) by columns (difference, sum, chord).
  Eigen::Matrix<double, 6, 9> by = Eigen::Matrix<double, 6, 9>::Zero();
  by.block<3, 3>(0, 0) = slope;
  by.block<3, 3>(3, 0) = -v_cross * cross_matrix(split.u / (1 + split.w));
  by.block<3, 3>(3, 3) = v_cross;
  by.block<3, 3>(3, 6) = Mat3::Identity();
  const Eigen::Matrix<double, 6, 9> stiff_by = stiff * by;
  BeamMatrix middle = by.transpose() * stiff_by;
  add_geometric(split, inner, slope, middle);
  to_outer(split, middle, tangent.stiffness);
  return true;
}

}  // namespace quadrille
