// Bringing a frame into balance: Newton's method along a path of loads, and descent of the energy where that fails.
#pragma once

#include "studio/statics/load_path.hpp"
#include "studio/statics/stiffness.hpp"

namespace quadrille {

enum class Step {
  done,     ///< in balance and stable
  neutral,  ///< in balance, and some motion meets no resistance
  lost,     ///< in balance, and not stable
  unsure,   ///< the tangent is not positive definite on the way: no longer stable, or the step was too long
  failed,   ///< no balance nearby
  runaway,  ///< it moves further and further away
  spent     ///< the bound on the work is reached
};

/// How far the node that has moved farthest is from where it is drawn [m].
double largest_shift(const FrameState& state);

/// Workspace of one analysis. `frame` outlives it.
class Balance {
 public:
  explicit Balance(const FrameAssembly& frame);

  const FrameAssembly& frame() const { return frame_; }

  /// Matrices that may still be factorised; both functions below count it down.
  int left = 0;

  /// Newton from `state`, in balance at some factor near `factor`, without leaving the path: any sign of instability is
  /// `lost` or `unsure`. `state` is changed only when done or neutral.
  Step newton(const LoadPath& path, double factor, FrameState& state);

  /// Down the energy from `state` to a minimum at `factor`, however far. Saddles are left along their softest motion, or
  /// end it as `lost`. `state` is where it ended, whatever the result.
  enum class AtSaddle { leave, stop };
  Step descend(const LoadPath& path, double factor, FrameState& state, AtSaddle at_saddle = AtSaddle::leave);

  /// Largest force out of balance [N] in `state`, moments over the size of the frame, and what counts as none.
  struct Residual {
    FullVector force;  ///< of the free unknowns; outer less inner
    double largest = 0, allowed = 0;
    bool small() const { return largest <= allowed; }
  };
  /// False where `state` is outside what the elements can describe.
  bool residual(const LoadPath& path, double factor, const FrameState& state, Residual& residual);
  const FrameAssembly::Forces& forces() const { return forces_; }

 private:
  Firmness firmness(const LoadPath& path, double factor, const FrameState& state, double shift);
  FullVector spread(const Eigen::VectorXd& free) const;
  double shorten(FullVector& step) const;
  void guess_axial(const FullVector& step);
  double energy(const LoadPath& path, double factor, const FrameState& state) const;
  double steady_work(const LoadPath& path, double factor, const FullVector& step) const;
  Firmness shifted(double& shift);
  bool watchdog(const LoadPath& path, double factor, double shift, FrameState& state, Residual& residual);
  bool leave_saddle(const LoadPath& path, double factor, FrameState& state);
  Eigen::VectorXd softest_motion();

  const FrameAssembly& frame_;
  FrameAssembly::Forces forces_;
  FrameAssembly::Tangent tangent_;
  Stiffness stiffness_;
  std::vector<double> axial_;
};

}  // namespace quadrille
