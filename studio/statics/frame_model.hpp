// A frame as the analysis sees it: rods and poles as beams, lines, feet, and what pushes. Plain values in SI units, in the
// frame of sdk/abi.h (x to the right, y away from the audience, z up). "Drawn" is the shape the nodes are given in.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/vec.hpp"

namespace quadrille {

/// A stretch of rod between two nodes, of the same stiffness in both directions of bending (round or square section).
/// A cubic beam that may be turned and moved as far as one likes; within itself it must not bend by more than 150 degrees.
struct FrameElement {
  std::uint32_t from = 0, to = 0;
  double axial_stiffness_n = 0;      ///< EA, above 0
  double bending_stiffness_nm2 = 0;  ///< EI, above 0
  double torsion_stiffness_nm2 = 0;  ///< GJ, above 0
  double shear_stiffness_n = 0;      ///< GA of shear; 0 = it does not shear
  /// as_drawn: free of stress in the drawn shape. straight: bent from straight into the drawn shape, with the stress of
  /// that bending in it; where just two such elements meet at a node, turning by less than 0.6 rad, the rod runs through
  /// with one tangent (see FrameModel::tangents).
  Rest rest = Rest::as_drawn;
  /// Unstretched length [m]; 0 = the length at which the drawn shape is neither stretched nor compressed.
  double length_m = 0;
  /// A hinge between this end and its node: it passes forces, and no moment but that of a spring of a millionth of EI
  /// over the element's length, which keeps a stretch between two hinges from spinning about its own line.
  bool hinge_from = false, hinge_to = false;
};

/// A node held by the ground or a structure. `moves` and `turns` say along and about which axes (x, y, z) it is free.
/// A clamped foot leaves all false; one that turns freely, and a hook, have all three of `turns`. A node that turns about
/// two axes only cannot be told apart from its history when it turns far, and is refused.
struct FrameSupport {
  std::uint32_t node = 0;
  std::array<bool, 3> moves{};
  std::array<bool, 3> turns{};
};

/// One end of a line. With a node: tied to what is rigidly joined to that node, at `at` in the drawn shape [m].
/// Without: an anchor that stays at `at`.
struct CableEnd {
  std::optional<std::uint32_t> node;
  Vec3 at = Vec3::Zero();
};

/// A line that pulls and never pushes. Its force is EA/length × stretch; to keep it smooth it follows a parabola where the
/// stretch lies within ±cable_corner_m: a line slack by more than that carries exactly nothing, one stretched by more
/// carries exactly EA/length × stretch, and in between the force is at most EA/length × cable_corner_m / 4 above that.
struct FrameCable {
  CableEnd from, to;
  double length_m = 0;           ///< unstretched, above 0
  double axial_stiffness_n = 0;  ///< EA, above 0
};

inline constexpr double cable_corner_m = 5e-5;

struct FrameModel {
  std::vector<Vec3> nodes;  ///< m, drawn
  /// Direction of the rod at each node in the drawn shape, for elements that are straight when free; empty or one per
  /// node, of any length; zero = found from the neighbouring nodes (third order in their distance; where the rod ends
  /// at a corner or a branch, as at its feet). State the feet's when the rod is clamped in a known direction.
  std::vector<Vec3> tangents;
  std::vector<FrameElement> elements;
  std::vector<FrameSupport> supports;  ///< at most one per node
  std::vector<FrameCable> cables;
};

/// A force and a moment on a node, of constant size and direction however the frame moves.
/// The force acts at the node plus `arm_m`, which is given in the drawn shape and turns with the node. A moment of constant
/// direction has no potential where the node also turns about other axes: stability is then judged by the symmetric part
/// of the tangent. Weights and wind beside a node are therefore better given as a force with an arm.
struct Push {
  std::uint32_t node = 0;
  Vec3 force_n = Vec3::Zero();
  Vec3 moment_nm = Vec3::Zero();
  Vec3 arm_m = Vec3::Zero();
};

/// Where a support is taken to from its drawn place: shifted, and turned by a rotation vector of at most π. Only what the
/// support holds is moved; a turn needs a support that does not turn.
struct SupportMove {
  std::uint32_t support = 0;  ///< its number in FrameModel::supports
  Vec3 shift_m = Vec3::Zero();
  Vec3 turn_rad = Vec3::Zero();
};

struct FrameLoads {
  std::vector<Push> pushes;  ///< any number on a node; they add up
  std::vector<SupportMove> moves;
};

}  // namespace quadrille
