// Down the potential energy of a frame to a minimum, past saddles: slower than Newton's method and not to be led astray.
#include <algorithm>
#include <cmath>

#include "studio/statics/balance.hpp"

namespace quadrille {

/// Potential energy but for moments and left-over forces, whose work is added step by step.
double Balance::energy(const LoadPath& path, double factor, const FrameState& state) const {
  double energy = forces_.energy;
  for (const ScaledPushes& group : pushes_at(path, factor)) energy -= frame_.work(state, group);
  return energy;
}

/// Work of moments and left-over forces along `step`.
double Balance::steady_work(const LoadPath& path, double factor, const FullVector& step) const {
  double work = path.left_over.size() > 0 ? (1 - factor) * path.left_over.dot(step) : 0.0;
  for (const ScaledPushes& group : pushes_at(path, factor))
    for (const Push& push : group.pushes)
      work +=
          group.factor * push.moment_nm.dot(step.segment<3>(static_cast<Eigen::Index>(frame_.turn_index(push.node))));
  return work;
}

/// Factorises the tangent with the least shift from `shift` up that makes it positive definite.
Firmness Balance::shifted(double& shift) {
  for (;;) {
    --left;
    const Firmness firm = stiffness_.factorise(tangent_.stiffness, shift);
    if (firm == Firmness::stable || left <= 0) return firm;
    const double least = 1e-10 * stiffness_.largest();
    if (!std::isfinite(least) || shift > 1e6 * stiffness_.largest()) return Firmness::unstable;
    shift = std::max(10 * shift, least);
  }
}

/// Up to four steps from `state`, the later ones to take back the stretching that a long first one brings; true, and
/// `state` moved, as soon as the energy is below where it started.
bool Balance::watchdog(const LoadPath& path, double factor, double shift, FrameState& state, Residual& out) {
  const double start = energy(path, factor, state), first = out.largest;
  FrameState trial = state;
  double steady = 0;
  for (int i = 0; i < 4 && left > 0; ++i) {
    if (i > 0) {
      const auto pushes = pushes_at(path, factor);
      if (!frame_.tangent(trial, pushes, axial_, nullptr, tangent_)) return false;
      double stronger = shift;
      if (shifted(stronger) != Firmness::stable) return false;
    }
    FullVector step = spread(stiffness_.solve(out.force));
    if (!step.allFinite()) return false;
    shorten(step);
    guess_axial(step);
    steady += steady_work(path, factor, step);
    frame_.move(trial, step);
    if (!residual(path, factor, trial, out)) return false;
    const double gain = start - (energy(path, factor, trial) - steady);
    const double rounding = 1e-13 * (std::abs(start) + forces_.energy);
    if (gain > rounding || (gain > -rounding && out.largest < 0.5 * first)) {
      state = trial;
      return true;
    }
  }
  return false;
}

/// The motion that meets least resistance, of the free unknowns, by inverse iteration.
Eigen::VectorXd Balance::softest_motion() {
  double shift = 0;
  Eigen::VectorXd motion = Eigen::VectorXd::Zero(frame_.free_size());
  if (shifted(shift) != Firmness::stable) return motion;
  // From ten times too much down to little more than is needed, so that the iteration is quick.
  for (int i = 0; i < 6 && left > 0; ++i) {
    --left;
    if (stiffness_.factorise(tangent_.stiffness, shift / 1.5) != Firmness::stable) break;
    shift /= 1.5;
  }
  --left;
  if (stiffness_.factorise(tangent_.stiffness, shift) != Firmness::stable) return motion;
  for (Eigen::Index i = 0; i < motion.size(); ++i) motion(i) = std::sin(1.0 + 0.7 * static_cast<double>(i));
  for (int i = 0; i < 12; ++i) motion = stiffness_.solve(motion).normalized();
  return motion;
}

bool Balance::leave_saddle(const LoadPath& path, double factor, FrameState& state) {
  const double start = energy(path, factor, state);
  FullVector motion = spread(softest_motion());
  const double largest = motion.cwiseAbs().maxCoeff();
  if (!(largest > 0)) return false;
  // The same way on every machine: the largest component points forward.
  Eigen::Index at = 0;
  motion.cwiseAbs().maxCoeff(&at);
  motion *= (motion(at) < 0 ? -1 : 1) / largest;
  for (double size = 0.05 * std::min(1.0, frame_.size_m()); size > 1e-6 * frame_.size_m(); size /= 4)
    for (const double sign : {1.0, -1.0}) {
      FrameState trial = state;
      FullVector step = sign * size * motion;
      shorten(step);
      frame_.move(trial, step);
      if (!frame_.forces(trial, forces_)) continue;
      if (energy(path, factor, trial) - steady_work(path, factor, step) < start) {
        state = trial;
        return true;
      }
    }
  return false;
}

Step Balance::descend(const LoadPath& path, double factor, FrameState& state, AtSaddle at_saddle) {
  const FullVector held = held_step(frame_, path, state, factor);
  if (held.size() > 0) frame_.move(state, held);
  Residual out;
  double shift = 0;
  while (left > 0) {
    if (!residual(path, factor, state, out)) return Step::failed;
    if (largest_shift(state) > 20 * frame_.size_m()) return Step::runaway;
    if (out.small()) {
      const Firmness end = firmness(path, factor, state, 0);
      if (end == Firmness::stable) return Step::done;
      if (end == Firmness::neutral) return Step::neutral;
      if (at_saddle == AtSaddle::stop) return Step::lost;
      // A motion that gains nothing that can be measured is one without resistance.
      if (!leave_saddle(path, factor, state)) return Step::neutral;
      shift = 0;
      continue;
    }
    const auto pushes = pushes_at(path, factor);
    if (!frame_.tangent(state, pushes, {}, nullptr, tangent_)) return Step::failed;
    if (shifted(shift) != Firmness::stable) return left > 0 ? Step::failed : Step::spent;
    if (watchdog(path, factor, shift, state, out))
      shift = shift / 10 < 1e-10 * stiffness_.largest() ? 0 : shift / 10;
    else
      shift = std::max(10 * shift, 1e-8 * stiffness_.largest());
    if (shift > 1e4 * stiffness_.largest()) return Step::failed;
  }
  return Step::spent;
}

}  // namespace quadrille
