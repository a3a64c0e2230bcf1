#include "plugins/arch/sway.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "sdk/number.hpp"

namespace quadrille::arch {
namespace {

constexpr double torsion_share = 1 / 1.3;  // GJ ÷ EI of a round section with ν = 0.3
constexpr int pieces_of_half = 600;

/// A short piece of the left half, from the crown down to the foot. `along` is the unit tangent towards the crown.
struct Bit {
  double from_crown_m = 0, aside_m = 0, below_m = 0;  ///< of its middle, all 0 or more at the crown's left
  double along_x = 0, along_z = 0;
};

struct Half {
  std::vector<Bit> bits;
  double step_m = 0;
};

Half left_half(const Outline& outline) {
  Half half;
  half.step_m = outline.length_m / 2 / pieces_of_half;
  const Vec3 crown = outline.at(outline.length_m / 2).point;
  for (int i = 0; i < pieces_of_half; ++i) {
    const double from_crown = (i + 0.5) * half.step_m;
    const Station here = outline.at(outline.length_m / 2 - from_crown);
    half.bits.push_back(
        {from_crown, crown.x() - here.point.x(), crown.z() - here.point.z(), here.tangent.x(), here.tangent.z()});
  }
  return half;
}

/// Moments at a piece when half a unit push acts at the crown: about the frame's inner normal, and about its own line.
struct Moments {
  double bending = 0, torsion = 0;
};

Moments moments_at(const Bit& bit, double crown_moment) {
  // About x: −½ · below; about z: ½ · aside + what keeps the crown from turning.
  const double about_x = -bit.below_m / 2, about_z = bit.aside_m / 2 + crown_moment;
  return {about_x * bit.along_z - about_z * bit.along_x, about_x * bit.along_x + about_z * bit.along_z};
}

/// The moment at the crown for which the energy is least: it keeps the crown from turning about the vertical. EI = 1.
double crown_moment(const Half& half) {
  double linear = 0, square = 0;
  for (const Bit& bit : half.bits) {
    const Moments at_none = moments_at(bit, 0);
    linear += -at_none.bending * bit.along_x + at_none.torsion * bit.along_z / torsion_share;
    square += bit.along_x * bit.along_x + bit.along_z * bit.along_z / torsion_share;
  }
  return -linear / square;
}

/// Thrust at the crown, in the frame's plane, under a unit weight per length: with the moment there it makes the
/// bending energy least.
double thrust_of_weight(const Half& half) {
  double weight = 0, moved = 0;  // of what hangs above, and its moment about the crown
  double bits = 0, below = 0, below2 = 0, turned = 0, turned_below = 0;
  for (const Bit& bit : half.bits) {
    const double moment = weight * bit.aside_m - moved;
    weight += half.step_m;
    moved += half.step_m * bit.aside_m;
    bits += 1;
    below += bit.below_m;
    below2 += bit.below_m * bit.below_m;
    turned += moment;
    turned_below += moment * bit.below_m;
  }
  // The thrust b that, with the moment a, makes Σ (a + b · below − moment)² least.
  return (bits * turned_below - below * turned) / (bits * below2 - below * below);
}

}  // namespace

Sway sway_of(const Outline& outline, double bending_stiffness_nm2) {
  const Half half = left_half(outline);
  const double held = crown_moment(half), thrust = thrust_of_weight(half);
  double energy = 0, gained = 0;  // of a half, for EI = 1: twice ½∫…
  // From the foot up: the turning of the frame's line about x and z, and the sideways slope that follows from it.
  double turn_x = 0, turn_z = 0;
  for (auto bit = half.bits.rbegin(); bit != half.bits.rend(); ++bit) {
    const Moments m = moments_at(*bit, held);
    energy += (m.bending * m.bending + m.torsion * m.torsion / torsion_share) * half.step_m;
    const double twist = m.torsion / torsion_share;
    const double by_x = (m.bending * bit->along_z + twist * bit->along_x) * half.step_m;
    const double by_z = (-m.bending * bit->along_x + twist * bit->along_z) * half.step_m;
    const double slope = (turn_z + by_z / 2) * bit->along_x - (turn_x + by_x / 2) * bit->along_z;
    const double press = thrust * bit->along_x + bit->from_crown_m * bit->along_z;
    gained += press * slope * slope * half.step_m;
    turn_x += by_x;
    turn_z += by_z;
  }
  // Both halves: the unit push does the work ½ · 1 · v = 2 · ½ energy.
  return {to_twelve_digits(bending_stiffness_nm2 / (2 * energy)),
          to_twelve_digits(bending_stiffness_nm2 * energy / gained)};
}

std::optional<double> sway_under_push_m(const Sway& sway, double weight_n_per_m) {
  if (weight_n_per_m >= sway.limit_n_per_m) return std::nullopt;
  // The weight leans along: it magnifies what the push does by 1/(1 − w/w_limit).
  return named_push_n / sway.stiffness_n_per_m / (1 - weight_n_per_m / sway.limit_n_per_m);
}

}  // namespace quadrille::arch
