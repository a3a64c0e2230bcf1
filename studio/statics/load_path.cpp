#include "studio/statics/load_path.hpp"

namespace quadrille {

std::array<ScaledPushes, 2> pushes_at(const LoadPath& path, double factor) {
  return {ScaledPushes{path.constant, 1}, ScaledPushes{path.growing, factor}};
}

FullVector outer_forces(const FrameAssembly& frame, const LoadPath& path, const FrameState& state, double factor) {
  FullVector outer = FullVector::Zero(static_cast<Eigen::Index>(frame.full_size()));
  if (path.left_over.size() > 0) outer = (1 - factor) * path.left_over;
  for (const ScaledPushes& group : pushes_at(path, factor)) frame.add_pushes(state, group, outer);
  return outer;
}

double load_scale(const FrameAssembly& frame, const LoadPath& path, double factor) {
  double scale = 0;
  for (const ScaledPushes& group : pushes_at(path, factor))
    for (const Push& push : group.pushes)
      scale += std::abs(group.factor) * (push.force_n.norm() + push.moment_nm.norm() / frame.size_m());
  return scale;
}

FullVector held_step(const FrameAssembly& frame, const LoadPath& path, const FrameState& state, double factor) {
  FullVector step = FullVector::Zero(static_cast<Eigen::Index>(frame.full_size()));
  for (const LoadPath::Way& way : path.ways) {
    const Vec3 shift = way.shift_from + factor * (way.shift_to - way.shift_from) - state.shifts[way.node];
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (!way.moves[axis]) step(static_cast<Eigen::Index>(3 * way.node + axis)) = shift[static_cast<int>(axis)];
    if (way.turns) continue;
    const Vec3 turn = turn_vector(way.turn_from.slerp(factor, way.turn_to) * state.turns[way.node].conjugate());
    if (turn.norm() > 1e-14) step.segment<3>(static_cast<Eigen::Index>(frame.turn_index(way.node))) = turn;
  }
  return step.isZero(0) ? FullVector() : step;
}

std::vector<LoadPath::Way> ways_of(const FrameModel& model, const std::vector<SupportMove>& moves,
                                   const FrameState& start) {
  std::vector<LoadPath::Way> ways;
  for (const FrameSupport& support : model.supports) {
    LoadPath::Way way;
    way.node = support.node;
    way.moves = support.moves;
    way.turns = support.turns[0] || support.turns[1] || support.turns[2];
    way.shift_from = start.shifts[support.node];
    way.turn_from = start.turns[support.node];
    way.shift_to = Vec3::Zero();
    way.turn_to = Turn::Identity();
    for (const SupportMove& move : moves) {
      if (model.supports[move.support].node != support.node) continue;
      way.shift_to += move.shift_m;
      way.turn_to = turn_by(move.turn_rad) * way.turn_to;
    }
    ways.push_back(way);
  }
  return ways;
}

}  // namespace quadrille
