// The sparse tangent of a frame: each part's second derivative added to its places in the matrix.
#include <algorithm>

#include "studio/statics/assembly.hpp"
#include "studio/statics/cable.hpp"

namespace quadrille {
namespace {

/// Second derivative of force·(turned arm) by the turn.
Mat3 arm_stiffness(const Vec3& force, const Vec3& arm) {
  Mat3 matrix = 0.5 * (force * arm.transpose() + arm * force.transpose());
  matrix.diagonal().array() -= force.dot(arm);
  return matrix;
}

}  // namespace

FrameAssembly::Tangent FrameAssembly::empty_tangent() const {
  return {pattern_, std::vector<BeamVector>(parts_.size()), std::vector<double>(parts_.size()),
          FullVector::Zero(static_cast<Eigen::Index>(full_size()))};
}

template <class Matrix>
void FrameAssembly::scatter(std::span<const std::size_t> unknowns, const std::vector<int>& slots, const Matrix& matrix,
                            const FullVector* held_step, Tangent& tangent) const {
  double* values = tangent.stiffness.valuePtr();
  std::size_t next = 0;
  for (std::size_t i = 0; i < unknowns.size(); ++i)
    for (std::size_t j = 0; j <= i; ++j, ++next)
      if (slots[next] >= 0) values[slots[next]] += matrix(static_cast<int>(i), static_cast<int>(j));
  if (held_step == nullptr) return;
  for (std::size_t i = 0; i < unknowns.size(); ++i)
    for (std::size_t j = 0; j < unknowns.size(); ++j)
      tangent.of_step(static_cast<Eigen::Index>(unknowns[i])) +=
          matrix(static_cast<int>(i), static_cast<int>(j)) * (*held_step)(static_cast<Eigen::Index>(unknowns[j]));
}

void FrameAssembly::add_spring_tangent(const FrameState& state, const Spring& spring, const FullVector* held_step,
                                       Tangent& tangent) const {
  const Turn between = state.turns[spring.node].conjugate() * state.turns[spring.end];
  const Vec3 u = state.turns[spring.node] * between.vec();
  const double w = between.w(), k = spring.stiffness;
  const Mat3 own = k * (w * w * Mat3::Identity() - u * u.transpose());
  Eigen::Matrix<double, 6, 6> matrix;
  matrix << own, cross_matrix(k * w * u) - own, -cross_matrix(k * w * u) - own, own;
  scatter(spring.unknowns, spring.slots, matrix, held_step, tangent);
}

void FrameAssembly::add_line_tangent(const FrameState& state, const Line& line, const FullVector* held_step,
                                     Tangent& tangent) const {
  const Vec3 between = place_of(state, line.to) - place_of(state, line.from);
  const double length = between.norm();
  const LinePull pull = line_pull(length - line.length, line.stiffness);
  if (pull.stiffness == 0) return;
  const Vec3 along = between / length;
  const Mat3 both = along * along.transpose();
  const Mat3 core = pull.stiffness * both + pull.tension / length * (Mat3::Identity() - both);
  Eigen::Matrix<double, 3, 12> by;
  Eigen::Matrix<double, 12, 12> geometric = Eigen::Matrix<double, 12, 12>::Zero();
  int column = 0;
  for (const auto& [end, sign] : {std::pair{&line.from, -1.0}, {&line.to, 1.0}}) {
    if (!end->node) continue;
    const Vec3 arm = state.turns[*end->node] * end->arm;
    by.block<3, 3>(0, column) = sign * Mat3::Identity();
    by.block<3, 3>(0, column + 3) = -sign * cross_matrix(arm);
    geometric.block<3, 3>(column + 3, column + 3) = arm_stiffness(sign * pull.tension * along, arm);
    column += 6;
  }
  const Eigen::MatrixXd matrix =
      by.leftCols(column).transpose() * core * by.leftCols(column) + geometric.topLeftCorner(column, column);
  scatter(line.unknowns, line.slots, matrix, held_step, tangent);
}

bool FrameAssembly::tangent(const FrameState& state, std::span<const ScaledPushes> pushes,
                            std::span<const double> axial, const FullVector* held_step, Tangent& tangent) const {
  std::fill_n(tangent.stiffness.valuePtr(), tangent.stiffness.nonZeros(), 0.0);
  if (held_step != nullptr) tangent.of_step.setZero();
  BeamTangent beam;
  Eigen::Matrix<double, 12, 12> matrix;
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    const Part& part = parts_[i];
    const auto given = axial.empty() ? std::nullopt : std::optional(axial[i]);
    if (!beam_tangent(part.beam, ends_of(state, part), given, beam)) return false;
    tangent.strains[i] = beam.forces.strain;
    tangent.strain_slopes[i] = beam.strain_slope;
    const auto chord = beam.stiffness.topLeftCorner<3, 3>();
    const auto turn_chord = beam.stiffness.bottomLeftCorner<6, 3>();
    matrix.block<3, 3>(0, 0) = matrix.block<3, 3>(3, 3) = chord;
    matrix.block<3, 3>(0, 3) = matrix.block<3, 3>(3, 0) = -chord;
    matrix.block<6, 3>(6, 0) = -turn_chord;
    matrix.block<6, 3>(6, 3) = turn_chord;
    matrix.block<3, 6>(0, 6) = -turn_chord.transpose();
    matrix.block<3, 6>(3, 6) = turn_chord.transpose();
    matrix.block<6, 6>(6, 6) = beam.stiffness.bottomRightCorner<6, 6>();
    scatter(part.unknowns, part.slots, matrix, held_step, tangent);
  }
  for (const Spring& spring : springs_) add_spring_tangent(state, spring, held_step, tangent);
  for (const Line& line : lines_) add_line_tangent(state, line, held_step, tangent);
  for (const ScaledPushes& group : pushes)
    for (const Push& push : group.pushes) {
      if (push.arm_m.isZero()) continue;
      const Mat3 block = arm_stiffness(group.factor * push.force_n, state.turns[push.node] * push.arm_m);
      int next = 0;
      for (int i = 0; i < 3; ++i)
        for (int j = 0; j <= i; ++j, ++next)
          if (const int slot = turn_slots_[push.node][static_cast<std::size_t>(next)]; slot >= 0)
            tangent.stiffness.valuePtr()[slot] -= block(i, j);
    }
  return true;
}

}  // namespace quadrille
