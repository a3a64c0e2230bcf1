#include "studio/statics/balance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quadrille {
namespace {

constexpr double longest_turn_rad = 0.8;  // of one step of Newton's method
constexpr int most_corrections = 25;

/// A shift resists turns as if masses were spread over the frame: a turn weighs as a move by an element's length.
Eigen::VectorXd weights_of(const FrameAssembly& frame) {
  Eigen::VectorXd weights(frame.free_size());
  const double length = frame.shortest_m();
  for (std::size_t i = 0; i < frame.full_size(); ++i)
    if (const int free = frame.free_number(i); free >= 0) weights(free) = i < frame.turn_index(0) ? 1 : length * length;
  return weights;
}

}  // namespace

double largest_shift(const FrameState& state) {
  double largest = 0;
  for (const Vec3& shift : state.shifts) largest = std::max(largest, shift.norm());
  return largest;
}

Balance::Balance(const FrameAssembly& frame)
    : frame_(frame), tangent_(frame.empty_tangent()), stiffness_(tangent_.stiffness, weights_of(frame)) {}

bool Balance::residual(const LoadPath& path, double factor, const FrameState& state, Residual& residual) {
  if (!frame_.forces(state, forces_)) return false;
  const FullVector outer = outer_forces(frame_, path, state, factor);
  residual.force.resize(frame_.free_size());
  residual.largest = 0;
  for (std::size_t i = 0; i < frame_.full_size(); ++i) {
    const int free = frame_.free_number(i);
    if (free < 0) continue;
    const auto full = static_cast<Eigen::Index>(i);
    const double force = outer(full) - forces_.inner(full);
    residual.force(free) = force;
    residual.largest = std::max(residual.largest, std::abs(force) / (i < frame_.turn_index(0) ? 1 : frame_.size_m()));
  }
  const double rounding = 2e-15 * frame_.stiffest_n() * (1 + largest_shift(state) / frame_.shortest_m());
  residual.allowed =
      std::max(1e-8 * (load_scale(frame_, path, factor) + forces_.bending_nm / frame_.size_m()), rounding);
  return std::isfinite(residual.largest);
}

FullVector Balance::spread(const Eigen::VectorXd& free) const {
  FullVector full = FullVector::Zero(static_cast<Eigen::Index>(frame_.full_size()));
  for (std::size_t i = 0; i < frame_.full_size(); ++i)
    if (frame_.free_number(i) >= 0) full(static_cast<Eigen::Index>(i)) = free(frame_.free_number(i));
  return full;
}

/// Shortens a step that turns a node or an element too far; what is left of it.
double Balance::shorten(FullVector& step) const {
  double most = step.tail(static_cast<Eigen::Index>(3 * frame_.turns())).cwiseAbs().maxCoeff();
  for (const FrameElement& element : frame_.model().elements) {
    const Vec3 apart = step.segment<3>(3 * static_cast<Eigen::Index>(element.to)) -
                       step.segment<3>(3 * static_cast<Eigen::Index>(element.from));
    const double length = (frame_.model().nodes[element.to] - frame_.model().nodes[element.from]).norm();
    most = std::max(most, apart.norm() / length);
  }
  if (most <= longest_turn_rad) return 1;
  step *= longest_turn_rad / most;
  return longest_turn_rad / most;
}

void Balance::guess_axial(const FullVector& step) {
  const auto& elements = frame_.model().elements;
  axial_.resize(elements.size());
  for (std::size_t i = 0; i < elements.size(); ++i)
    axial_[i] =
        elements[i].axial_stiffness_n * (tangent_.strains[i] + frame_.along(i, tangent_.strain_slopes[i], step));
}

Firmness Balance::firmness(const LoadPath& path, double factor, const FrameState& state, double shift) {
  const auto pushes = pushes_at(path, factor);
  if (!frame_.tangent(state, pushes, {}, nullptr, tangent_)) return Firmness::unstable;
  --left;
  return stiffness_.factorise(tangent_.stiffness, shift);
}

Step Balance::newton(const LoadPath& path, double factor, FrameState& state) {
  FrameState trial = state;
  FullVector held = held_step(frame_, path, trial, factor);
  Residual out;
  axial_.clear();
  for (int i = 0; i < most_corrections; ++i) {
    if (left <= 0) return Step::spent;
    if (!residual(path, factor, trial, out)) return Step::failed;
    if (held.size() == 0 && out.small()) {
      const Firmness end = firmness(path, factor, trial, 0);
      if (end == Firmness::unstable) return Step::lost;
      state = trial;
      return end == Firmness::stable ? Step::done : Step::neutral;
    }
    const auto pushes = pushes_at(path, factor);
    if (!frame_.tangent(trial, pushes, axial_, held.size() > 0 ? &held : nullptr, tangent_)) return Step::failed;
    --left;
    Firmness firm = stiffness_.factorise(tangent_.stiffness, 0);
    if (firm == Firmness::neutral) {
      // Enough to go on in some direction; what matters is the balance found in the end.
      --left;
      firm = stiffness_.factorise(tangent_.stiffness, 1e-9 * stiffness_.largest());
    }
    if (firm == Firmness::unstable) return Step::unsure;
    Eigen::VectorXd right = out.force;
    if (held.size() > 0)
      for (std::size_t k = 0; k < frame_.full_size(); ++k)
        if (frame_.free_number(k) >= 0) right(frame_.free_number(k)) -= tangent_.of_step(static_cast<Eigen::Index>(k));
    FullVector step = spread(stiffness_.solve(right));
    if (!step.allFinite()) return Step::failed;
    if (held.size() > 0) step += held;
    if (shorten(step) < 1 && held.size() > 0) return Step::failed;
    held.resize(0);
    guess_axial(step);
    frame_.move(trial, step);
    if (largest_shift(trial) > 20 * frame_.size_m()) return Step::failed;
  }
  return Step::failed;
}

}  // namespace quadrille
