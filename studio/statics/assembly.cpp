#include "studio/statics/assembly.hpp"

#include <algorithm>
#include <limits>

#include "studio/statics/cable.hpp"
#include "studio/statics/rod_tangents.hpp"

namespace quadrille {
namespace {

constexpr double hinge_spring = 1e-6;  // of EI/L

}  // namespace

FrameAssembly::FrameAssembly(const FrameModel& model) : model_(model), chords_(model), turns_(model.nodes.size()) {
  Eigen::AlignedBox3d box;
  for (const Vec3& node : model.nodes) box.extend(node);
  for (const FrameCable& cable : model.cables)
    for (const CableEnd* end : {&cable.from, &cable.to}) box.extend(end->at);
  size_m_ = box.diagonal().norm();
  add_parts();
  number_unknowns();
  make_pattern();
}

void FrameAssembly::add_parts() {
  const std::size_t nodes = model_.nodes.size();
  const auto directions = rod_tangents(model_);
  shortest_m_ = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < model_.elements.size(); ++i) {
    const FrameElement& element = model_.elements[i];
    Part part;
    Beam& beam = part.beam;
    beam.chord = model_.nodes[element.to] - model_.nodes[element.from];
    beam.axial = element.axial_stiffness_n;
    beam.bending = element.bending_stiffness_nm2;
    beam.torsion = element.torsion_stiffness_nm2;
    beam.axes_from = turn_between(Vec3::UnitX(), directions[i].from);
    beam.axes_to = turn_between(directions[i].from, directions[i].to) * beam.axes_from;
    // The drawn length along the cubic, from the chord and the turn between the ends.
    const double bend = turn_vector(beam.axes_from.conjugate() * beam.axes_to).norm();
    const double drawn = beam.chord.norm() / (1 - bend * bend / 24);
    beam.length = element.length_m > 0 ? element.length_m : drawn;
    beam.transverse = transverse_stiffness(beam.bending, element.shear_stiffness_n, beam.length);
    part.turn_from = element.hinge_from ? turns_++ : element.from;
    part.turn_to = element.hinge_to ? turns_++ : element.to;
    shortest_m_ = std::min(shortest_m_, beam.length);
    stiffest_n_ = std::max({stiffest_n_, beam.axial, 12 * beam.bending / (beam.length * beam.length)});
    for (const auto& [node, turn] :
         {std::pair<std::size_t, std::size_t>{element.from, part.turn_from}, {element.to, part.turn_to}}) {
      if (turn < nodes) continue;
      Spring spring;
      spring.stiffness = hinge_spring * beam.bending / beam.length;
      spring.node = node;
      spring.end = turn;
      springs_.push_back(spring);
    }
    parts_.push_back(part);
  }
  for (const FrameCable& cable : model_.cables) {
    Line line;
    line.length = cable.length_m;
    line.stiffness = cable.axial_stiffness_n / cable.length_m;
    for (const auto& [end, own] : {std::pair{&cable.from, &line.from}, {&cable.to, &line.to}}) {
      own->point = end->at;
      own->arm = Vec3::Zero();
      if (!end->node) continue;
      own->node = *end->node;
      own->arm = end->at - model_.nodes[*end->node];
    }
    lines_.push_back(line);
  }
}

void FrameAssembly::number_unknowns() {
  std::vector<bool> held(full_size());
  for (const FrameSupport& support : model_.supports)
    for (std::size_t axis = 0; axis < 3; ++axis) {
      held[3 * support.node + axis] = !support.moves[axis];
      held[turn_index(support.node) + axis] = !support.turns[axis];
    }
  free_.resize(full_size());
  for (std::size_t i = 0; i < held.size(); ++i) free_[i] = held[i] ? -1 : free_size_++;
  for (Part& part : parts_) {
    const FrameElement& element = model_.elements[static_cast<std::size_t>(&part - parts_.data())];
    for (std::size_t axis = 0; axis < 3; ++axis) {
      part.unknowns[axis] = 3 * element.from + axis;
      part.unknowns[3 + axis] = 3 * element.to + axis;
      part.unknowns[6 + axis] = turn_index(part.turn_from) + axis;
      part.unknowns[9 + axis] = turn_index(part.turn_to) + axis;
    }
  }
  for (Spring& spring : springs_)
    for (std::size_t axis = 0; axis < 3; ++axis) {
      spring.unknowns[axis] = turn_index(spring.node) + axis;
      spring.unknowns[3 + axis] = turn_index(spring.end) + axis;
    }
  for (Line& line : lines_)
    for (const LineEnd* end : {&line.from, &line.to}) {
      if (!end->node) continue;
      for (std::size_t axis = 0; axis < 3; ++axis) line.unknowns.push_back(3 * *end->node + axis);
      for (std::size_t axis = 0; axis < 3; ++axis) line.unknowns.push_back(turn_index(*end->node) + axis);
    }
}

std::vector<int> FrameAssembly::slots_of(std::span<const std::size_t> unknowns) const {
  std::vector<int> slots;
  for (std::size_t i = 0; i < unknowns.size(); ++i)
    for (std::size_t j = 0; j <= i; ++j) {
      const int row = std::max(free_[unknowns[i]], free_[unknowns[j]]);
      const int column = std::min(free_[unknowns[i]], free_[unknowns[j]]);
      if (column < 0) {
        slots.push_back(-1);
        continue;
      }
      const int* begin = pattern_.innerIndexPtr() + pattern_.outerIndexPtr()[column];
      const int* end = pattern_.innerIndexPtr() + pattern_.outerIndexPtr()[column + 1];
      slots.push_back(static_cast<int>(std::lower_bound(begin, end, row) - pattern_.innerIndexPtr()));
    }
  return slots;
}

void FrameAssembly::make_pattern() {
  std::vector<Eigen::Triplet<double>> entries;
  const auto add = [&](std::span<const std::size_t> unknowns) {
    for (const std::size_t a : unknowns)
      for (const std::size_t b : unknowns)
        if (free_[b] >= 0 && free_[a] >= free_[b]) entries.emplace_back(free_[a], free_[b], 0.0);
  };
  for (const Part& part : parts_) add(part.unknowns);
  for (const Spring& spring : springs_) add(spring.unknowns);
  for (const Line& line : lines_) add(line.unknowns);
  pattern_.resize(free_size_, free_size_);
  pattern_.setFromTriplets(entries.begin(), entries.end());
  pattern_.makeCompressed();
  for (Part& part : parts_) part.slots = slots_of(part.unknowns);
  for (Spring& spring : springs_) spring.slots = slots_of(spring.unknowns);
  for (Line& line : lines_) line.slots = slots_of(line.unknowns);
  for (std::size_t node = 0; node < model_.nodes.size(); ++node) {
    const std::array<std::size_t, 3> turn{turn_index(node), turn_index(node) + 1, turn_index(node) + 2};
    const auto slots = slots_of(turn);
    std::ranges::copy(slots, turn_slots_.emplace_back().begin());
  }
}

FrameState FrameAssembly::drawn() const {
  return {std::vector<Vec3>(model_.nodes.size(), Vec3::Zero()), std::vector<Turn>(turns_, Turn::Identity())};
}

bool FrameAssembly::fits(const FrameState& state) const {
  return state.shifts.size() == model_.nodes.size() && state.turns.size() == turns_ &&
         std::ranges::all_of(state.shifts, [](const Vec3& shift) { return shift.allFinite(); }) &&
         std::ranges::all_of(state.turns, [](const Turn& turn) { return std::abs(turn.norm() - 1) < 1e-6; });
}

void FrameAssembly::move(FrameState& state, const FullVector& step) const {
  chords_.move(state.shifts, step.head(static_cast<Eigen::Index>(3 * state.shifts.size())));
  for (std::size_t i = 0; i < turns_; ++i)
    state.turns[i] = (turn_by(step.segment<3>(static_cast<Eigen::Index>(turn_index(i)))) * state.turns[i]).normalized();
}

double FrameAssembly::along(std::size_t element, const BeamVector& slope, const FullVector& step) const {
  const auto at = [&](std::size_t i) {
    return step.segment<3>(static_cast<Eigen::Index>(parts_[element].unknowns[i]));
  };
  return slope.head<3>().dot(at(3) - at(0)) + slope.segment<3>(3).dot(at(6)) + slope.tail<3>().dot(at(9));
}

BeamEnds FrameAssembly::ends_of(const FrameState& state, const Part& part) const {
  return {state.shifts[part.unknowns[3] / 3] - state.shifts[part.unknowns[0] / 3], state.turns[part.turn_from],
          state.turns[part.turn_to]};
}

Vec3 FrameAssembly::place_of(const FrameState& state, const LineEnd& end) const {
  if (!end.node) return end.point;
  return model_.nodes[*end.node] + state.shifts[*end.node] + state.turns[*end.node] * end.arm;
}

bool FrameAssembly::forces(const FrameState& state, Forces& forces) const {
  forces.energy = forces.bending_nm = 0;
  forces.inner.setZero(static_cast<Eigen::Index>(full_size()));
  forces.axial.resize(parts_.size());
  const auto at = [&](std::size_t index) { return forces.inner.segment<3>(static_cast<Eigen::Index>(index)); };
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    const Part& part = parts_[i];
    const auto beam = beam_forces(part.beam, ends_of(state, part));
    if (!beam) return false;
    forces.energy += beam->energy;
    forces.axial[i] = beam->axial_force;
    at(part.unknowns[0]) -= beam->force.head<3>();
    at(part.unknowns[3]) += beam->force.head<3>();
    at(part.unknowns[6]) += beam->force.segment<3>(3);
    at(part.unknowns[9]) += beam->force.tail<3>();
    forces.bending_nm = std::max(forces.bending_nm, beam->force.tail<6>().cwiseAbs().maxCoeff());
  }
  for (const Spring& spring : springs_) {
    const Turn between = state.turns[spring.node].conjugate() * state.turns[spring.end];
    forces.energy += 2 * spring.stiffness * between.vec().squaredNorm();
    const Vec3 moment = state.turns[spring.node] * (2 * spring.stiffness * between.w() * between.vec());
    at(spring.unknowns[0]) -= moment;
    at(spring.unknowns[3]) += moment;
  }
  for (const Line& line : lines_) {
    const Vec3 between = place_of(state, line.to) - place_of(state, line.from);
    const LinePull pull = line_pull(between.norm() - line.length, line.stiffness);
    if (pull.tension == 0) continue;
    forces.energy += pull.energy;
    const Vec3 force = pull.tension * between.normalized();
    for (const auto& [end, sign] : {std::pair{&line.from, -1.0}, {&line.to, 1.0}}) {
      if (!end->node) continue;
      at(3 * *end->node) += sign * force;
      at(turn_index(*end->node)) += sign * (state.turns[*end->node] * end->arm).cross(force);
    }
  }
  return std::isfinite(forces.energy);
}

void FrameAssembly::add_pushes(const FrameState& state, const ScaledPushes& group, FullVector& full) const {
  for (const Push& push : group.pushes) {
    full.segment<3>(static_cast<Eigen::Index>(3 * push.node)) += group.factor * push.force_n;
    full.segment<3>(static_cast<Eigen::Index>(turn_index(push.node))) +=
        group.factor * (push.moment_nm + (state.turns[push.node] * push.arm_m).cross(push.force_n));
  }
}

double FrameAssembly::work(const FrameState& state, const ScaledPushes& group) const {
  double work = 0;
  for (const Push& push : group.pushes)
    work += push.force_n.dot(state.shifts[push.node] + state.turns[push.node] * push.arm_m - push.arm_m);
  return group.factor * work;
}

ElementForces FrameAssembly::element_forces(const FrameState& state, std::size_t element) const {
  const Part& part = parts_[element];
  const auto beam = beam_forces(part.beam, ends_of(state, part));
  if (!beam) return {};
  const Turn from = (state.turns[part.turn_from] * part.beam.axes_from).conjugate();
  const Turn to = (state.turns[part.turn_to] * part.beam.axes_to).conjugate();
  const Vec3 force = beam->force.head<3>();
  return {{from * force, from * Vec3(-beam->force.segment<3>(3))}, {to * force, to * Vec3(beam->force.tail<3>())}};
}

CableForce FrameAssembly::cable_force(const FrameState& state, std::size_t cable) const {
  const Line& line = lines_[cable];
  const Vec3 between = place_of(state, line.to) - place_of(state, line.from);
  CableForce force;
  force.length_m = between.norm();
  force.tension_n = line_pull(force.length_m - line.length, line.stiffness).tension;
  if (force.tension_n > 0) force.pull_on_from = force.tension_n * between.normalized();
  return force;
}

}  // namespace quadrille
