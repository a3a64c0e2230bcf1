// Where a loaded frame comes to rest. All loads are conservative, so what is looked for is a minimum of the potential
// energy: an equilibrium counts only when it is stable.
#pragma once

#include <Eigen/Geometry>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studio/statics/frame_model.hpp"

namespace quadrille {

enum class Outcome {
  converged,       ///< at rest, and stable
  bad_model,       ///< the model or the loads cannot be analysed: see the sentence
  mechanism,       ///< at rest, but some motion meets no resistance at all
  unstable,        ///< stability was lost at the load factor `reached` and SolveOptions::past_loss is false
  no_equilibrium,  ///< it moves further and further away
  out_of_steps     ///< none found within the bound on the work
};

/// Where everything is. To be handed back unchanged as the start of a neighbouring load.
struct FrameState {
  std::vector<Vec3> shifts;               ///< m, of each node from its drawn place
  std::vector<Eigen::Quaterniond> turns;  ///< of each node from its drawn attitude; then those of hinged element ends
};

/// What one element carries at an end: the force [N] and moment [Nm] that the part towards `to` exerts on the part
/// towards `from`, in the section's own axes there: x along the rod from `from` to `to`, y and z across it (of a round
/// rod: any two). So force.x() is the axial force, positive in tension, force.y() and z() shear; moment.x() is torsion,
/// y() and z() bending.
struct SectionForce {
  Vec3 force_n = Vec3::Zero();
  Vec3 moment_nm = Vec3::Zero();
};

struct ElementForces {
  SectionForce at_from, at_to;
};

/// What the ground exerts on the frame at a support, in the global axes: force [N] and moment [Nm] about the node where it
/// is now. The frame pushes the ground by the opposite.
struct Reaction {
  Vec3 force_n = Vec3::Zero();
  Vec3 moment_nm = Vec3::Zero();
};

struct CableForce {
  double tension_n = 0;              ///< 0 or more
  double length_m = 0;               ///< between its ends now
  Vec3 pull_on_from = Vec3::Zero();  ///< N, on what it is tied to at `from`; on `to` it is the opposite
};

struct Equilibrium {
  Outcome outcome = Outcome::out_of_steps;
  std::string reason;  ///< a sentence where the outcome is not `converged`
  /// How far on the way from the start (the state that was given, or no load at all) to the load the last state in balance
  /// was found: 1 when all of it was. The rest of this value belongs to that state, and is a picture of what happens rather
  /// than an answer unless the outcome is `converged`.
  double reached = 0;
  /// How far on that way stability was lost, or the way could not be followed further, and the frame moved to another shape
  /// (it buckled or toppled). With the outcome `converged` it found rest again, perhaps hanging upside down: judge by the
  /// shifts.
  std::optional<double> lost_stability_at;
  FrameState state;
  std::vector<ElementForces> elements;
  std::vector<Reaction> supports;
  std::vector<CableForce> cables;
  double energy_j = 0;    ///< strain energy of rods and lines
  double residual_n = 0;  ///< largest force out of balance at any node (moments over the size of the frame)
  int iterations = 0;     ///< matrices factorised

  bool converged() const { return outcome == Outcome::converged; }
};

struct SolveOptions {
  /// Bound on the work: matrices factorised, about 0.1 ms each for 60 elements.
  int most_iterations = 1500;
  /// Go on to the nearest stable shape where the load is above what the frame bears; otherwise stop there as `unstable`.
  bool past_loss = true;
};

struct CriticalLoad {
  Outcome outcome = Outcome::out_of_steps;  ///< `unstable` = found; `converged` = stable up to the largest factor asked
  std::string reason;
  double factor = 0;  ///< the frame is stable below it; to `precision` of itself
  FrameState state;   ///< the last stable shape
  int iterations = 0;
};

/// The analysis of one model: numbering and sparsity are worked out once, then any number of loads. One object belongs to
/// one thread; it keeps nothing from one load to the next.
/// Converged means: every force out of balance is below 1e-8 of the load scale (the sum of all pushes, moments by the size
/// of the frame, and the largest bending moment by that size), or below what rounding leaves of the elements' forces where
/// that is more (2e-15 of the larger of EA and 12 EI/L², times displacement over element length); and the tangent
/// stiffness is positive definite.
class FrameAnalysis {
 public:
  explicit FrameAnalysis(FrameModel model);
  ~FrameAnalysis();
  FrameAnalysis(FrameAnalysis&&) noexcept;
  FrameAnalysis& operator=(FrameAnalysis&&) noexcept;

  const FrameModel& model() const;
  /// Why the model cannot be analysed; empty when it can. Every call below then gives `bad_model` with this sentence.
  const std::string& fault() const;

  /// The state at rest under `loads`. From the drawn shape: first what it does by itself, then all loads grown together.
  /// From `start` (a state of this model, usually of a neighbouring load): straight from there. Ends after
  /// options.most_iterations and at most 20 more; never throws on bad numbers, which are a `bad_model`.
  Equilibrium solve(const FrameLoads& loads, const SolveOptions& options = {}, const FrameState* start = nullptr);

  /// The least factor above 0 at which the frame under `constant` + factor × `growing` is no longer stable, followed from
  /// factor 0 up to `most`. Moves of supports in `growing` are ignored.
  CriticalLoad critical(const FrameLoads& constant, const FrameLoads& growing, double most, double precision = 1e-5,
                        const SolveOptions& options = {});

 private:
  class Impl;
  std::unique_ptr<Impl> impl_;
};

/// For one load of one model.
Equilibrium solve(const FrameModel& model, const FrameLoads& loads, const SolveOptions& options = {},
                  const FrameState* start = nullptr);

}  // namespace quadrille
