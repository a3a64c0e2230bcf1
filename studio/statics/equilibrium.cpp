#include "studio/statics/equilibrium.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/statics/balance.hpp"
#include "studio/statics/frame_faults.hpp"

namespace quadrille {
namespace {

constexpr double shortest_step = 1.0 / 4096;  // of a load
constexpr double snap_share = 0.05;    // of the frame's size: what goes farther by the shortest step has left the path
constexpr int most_on_path = 60;       // matrices for the way down to a rest next to the path
constexpr double step_off = 1.0 / 16;  // of a load: right above the one that is lost nothing drives it to anywhere

/// Result of following a path to its end.
struct Followed {
  Outcome outcome = Outcome::converged;
  double reached = 0;
  std::optional<double> lost_at;
};

Outcome outcome_of(Step step) {
  switch (step) {
    case Step::done:
      return Outcome::converged;
    case Step::neutral:
      return Outcome::mechanism;
    case Step::lost:
    case Step::unsure:
      return Outcome::unstable;
    case Step::runaway:
      return Outcome::no_equilibrium;
    case Step::failed:
      return Outcome::no_equilibrium;
    case Step::spent:
      return Outcome::out_of_steps;
  }
  return Outcome::out_of_steps;
}

const char* sentence(Outcome outcome) {
  switch (outcome) {
    case Outcome::converged:
    case Outcome::bad_model:
      return "";
    case Outcome::mechanism:
      return "Some motion of the frame meets no resistance: it needs another support or line.";
    case Outcome::unstable:
      return "The frame does not stay in its shape under this load.";
    case Outcome::no_equilibrium:
      return "No shape was found in which the frame is at rest: treat it as not standing.";
    case Outcome::out_of_steps:
      return "No shape at rest was found within the bound on the work: treat the frame as not standing.";
  }
  return "";
}

double farthest_apart(const FrameState& one, const FrameState& other) {
  double most = 0;
  for (std::size_t i = 0; i < one.shifts.size(); ++i) most = std::max(most, (one.shifts[i] - other.shifts[i]).norm());
  return most;
}

/// Down the energy from a rest that the least step of load disturbs: true, and `state` moved, where another rest lies so
/// near that the path goes on there. A limp frame gives Newton's method nothing to go by long before it gives way.
bool goes_on(Balance& balance, const LoadPath& path, double target, FrameState& state) {
  FrameState near = state;
  const int kept = std::max(0, balance.left - most_on_path);
  balance.left -= kept;
  const Step found = balance.descend(path, target, near, Balance::AtSaddle::stop);
  balance.left += kept;
  if (found != Step::done) return false;
  if (farthest_apart(near, state) > snap_share * balance.frame().size_m()) return false;
  state = std::move(near);
  return true;
}

/// From `state`, at rest at factor 0, to factor 1, by steps as long as they go.
Followed follow(Balance& balance, const LoadPath& path, bool past_loss, FrameState& state) {
  Followed followed;
  const bool supports_move = held_step(balance.frame(), path, state, 1).size() > 0;
  double step = 1;
  Step last = Step::done;
  while (followed.reached < 1) {
    double target = std::min(1.0, followed.reached + step);
    last = balance.newton(path, target, state);
    if (last == Step::lost || last == Step::unsure || last == Step::failed) {
      // Once off the path there is none to keep to; but supports must not leap.
      if (step > shortest_step && (!followed.lost_at || supports_move)) {
        step = std::max(shortest_step, step / 4);
        continue;
      }
      if (!followed.lost_at && last != Step::lost && goes_on(balance, path, target, state)) {
        last = Step::done;
      } else {
        // What is found from here is somewhere else.
        if (!followed.lost_at) followed.lost_at = followed.reached;
        if (!past_loss) {
          last = balance.left > 0 ? Step::lost : Step::spent;
          break;
        }
        if (!supports_move) target = std::min(1.0, followed.reached + std::max(step, step_off));
        last = balance.descend(path, target, state);
      }
    }
    if (last != Step::done && last != Step::neutral) break;
    followed.reached = target;
    step *= 4;
  }
  followed.outcome = outcome_of(last);
  return followed;
}

}  // namespace

class FrameAnalysis::Impl {
 public:
  explicit Impl(FrameModel model) : model_(std::move(model)), fault_(frame_fault(model_)) {
    if (!fault_.empty()) return;
    frame_.emplace(model_);
    balance_.emplace(*frame_);
  }

  const FrameModel& model() const { return model_; }
  const std::string& fault() const { return fault_; }

  Equilibrium solve(const FrameLoads& loads, const SolveOptions& options, const FrameState* start) {
    Equilibrium result;
    result.reason = unusable(loads, start);
    if (!result.reason.empty()) {
      result.outcome = Outcome::bad_model;
      return result;
    }
    balance_->left = std::max(1, options.most_iterations);
    result.state = start != nullptr ? *start : frame_->drawn();
    LoadPath path;
    Followed followed;
    if (start == nullptr) followed = settle(options.past_loss, result.state);
    path.ways = ways_of(model_, loads.moves, result.state);
    if (start == nullptr)
      path.growing = loads.pushes;
    else
      path.constant = loads.pushes;
    if (followed.outcome == Outcome::converged || followed.outcome == Outcome::mechanism) {
      leave_over(path, result.state);
      const auto lost = followed.lost_at;
      followed = follow(*balance_, path, options.past_loss, result.state);
      if (lost) followed.lost_at = lost;
    }
    result.outcome = followed.outcome;
    result.reached = followed.reached;
    result.lost_stability_at = followed.lost_at;
    result.reason = sentence(result.outcome);
    report(path, result);
    result.iterations = options.most_iterations - balance_->left;
    return result;
  }

  CriticalLoad critical(const FrameLoads& constant, const FrameLoads& growing, double most, double precision,
                        const SolveOptions& options) {
    CriticalLoad result;
    if (fault_.empty()) result.reason = loads_fault(model_, growing);
    if (result.reason.empty() && !(most > 0 && std::isfinite(most)))
      result.reason = "The largest factor must be above 0 and finite.";
    if (!result.reason.empty() || !fault_.empty()) {
      result.outcome = Outcome::bad_model;
      if (result.reason.empty()) result.reason = fault_;
      return result;
    }
    const Equilibrium first = solve(constant, options, nullptr);
    result.outcome = first.outcome;
    result.reason = first.reason;
    result.state = first.state;
    result.iterations = first.iterations;
    if (first.converged() && first.lost_stability_at) result.outcome = Outcome::unstable;
    if (result.outcome != Outcome::converged) return result;
    LoadPath path;
    path.constant = constant.pushes;
    path.growing = growing.pushes;
    path.ways = ways_of(model_, constant.moves, result.state);
    climb(path, most, precision, result);
    result.iterations = options.most_iterations - balance_->left;
    return result;
  }

 private:
  std::string unusable(const FrameLoads& loads, const FrameState* start) const {
    if (!fault_.empty()) return fault_;
    if (auto fault = loads_fault(model_, loads); !fault.empty()) return fault;
    if (start != nullptr && !frame_->fits(*start)) return "The state to start from does not belong to this frame.";
    return {};
  }

  /// What the forces of `state` lack for balance at factor 0.
  void leave_over(LoadPath& path, const FrameState& state) {
    path.left_over.resize(0);
    const FullVector outer = outer_forces(*frame_, path, state, 0);
    FrameAssembly::Forces forces;
    if (!frame_->forces(state, forces)) return;
    path.left_over = forces.inner - outer;
    for (std::size_t i = 0; i < frame_->full_size(); ++i)
      if (frame_->free_number(i) < 0) path.left_over(static_cast<Eigen::Index>(i)) = 0;
  }

  /// From the drawn shape to the one in which the bent rods are at rest without load.
  Followed settle(bool past_loss, FrameState& state) {
    LoadPath path;
    path.ways = ways_of(model_, {}, state);
    Balance::Residual out;
    if (balance_->residual(path, 1, state, out) && out.small()) return {};
    leave_over(path, state);
    Followed followed = follow(*balance_, path, past_loss, state);
    if (followed.lost_at) followed.lost_at = 0;
    return followed;
  }

  /// Follows `path` without leaving it, by steps that shrink where stability is lost.
  void climb(const LoadPath& path, double most, double precision, CriticalLoad& result) {
    double step = most / 16;
    while (result.factor < most) {
      const double target = std::min(most, result.factor + step);
      FrameState state = result.state;
      const Step made = balance_->newton(path, target, state);
      if (made == Step::spent) {
        result.outcome = Outcome::out_of_steps;
        result.reason = sentence(result.outcome);
        return;
      }
      if (made == Step::done) {
        result.factor = target;
        result.state = state;
        step *= 1.5;
      } else if (step > precision * std::max(result.factor, 1e-6 * most)) {
        step /= 3;
      } else {
        result.outcome = made == Step::neutral ? Outcome::mechanism : Outcome::unstable;
        result.reason = sentence(result.outcome);
        return;
      }
    }
    result.outcome = Outcome::converged;
  }

  void report(const LoadPath& path, Equilibrium& result) {
    Balance::Residual out;
    if (!balance_->residual(path, result.reached, result.state, out)) return;
    const FrameAssembly::Forces& forces = balance_->forces();
    result.residual_n = out.largest;
    result.energy_j = forces.energy;
    const FullVector outer = outer_forces(*frame_, path, result.state, result.reached);
    const FullVector held = forces.inner - outer;
    for (const FrameSupport& support : model_.supports) {
      Reaction& reaction = result.supports.emplace_back();
      for (std::size_t axis = 0; axis < 3; ++axis) {
        const auto i = static_cast<int>(axis);
        if (!support.moves[axis]) reaction.force_n[i] = held(static_cast<Eigen::Index>(3 * support.node + axis));
        if (!support.turns[axis])
          reaction.moment_nm[i] = held(static_cast<Eigen::Index>(frame_->turn_index(support.node) + axis));
      }
    }
    for (std::size_t i = 0; i < model_.elements.size(); ++i)
      result.elements.push_back(frame_->element_forces(result.state, i));
    for (std::size_t i = 0; i < model_.cables.size(); ++i)
      result.cables.push_back(frame_->cable_force(result.state, i));
  }

  FrameModel model_;
  std::string fault_;
  std::optional<FrameAssembly> frame_;
  std::optional<Balance> balance_;
};

FrameAnalysis::FrameAnalysis(FrameModel model) : impl_(std::make_unique<Impl>(std::move(model))) {}
FrameAnalysis::~FrameAnalysis() = default;
FrameAnalysis::FrameAnalysis(FrameAnalysis&&) noexcept = default;
FrameAnalysis& FrameAnalysis::operator=(FrameAnalysis&&) noexcept = default;

const FrameModel& FrameAnalysis::model() const { return impl_->model(); }
const std::string& FrameAnalysis::fault() const { return impl_->fault(); }

Equilibrium FrameAnalysis::solve(const FrameLoads& loads, const SolveOptions& options, const FrameState* start) {
  return impl_->solve(loads, options, start);
}

CriticalLoad FrameAnalysis::critical(const FrameLoads& constant, const FrameLoads& growing, double most,
                                     double precision, const SolveOptions& options) {
  return impl_->critical(constant, growing, most, precision, options);
}

Equilibrium solve(const FrameModel& model, const FrameLoads& loads, const SolveOptions& options,
                  const FrameState* start) {
  return FrameAnalysis(model).solve(loads, options, start);
}

}  // namespace quadrille
