// A whole frame put together: its unknowns, strain energy, forces and sparse tangent.
#pragma once

#include <Eigen/SparseCore>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "studio/statics/beam_element.hpp"
#include "studio/statics/chord_turning.hpp"
#include "studio/statics/equilibrium.hpp"
#include "studio/statics/frame_model.hpp"

namespace quadrille {

/// All unknowns of a frame, three numbers for the place of each node, then three for each turn (of nodes, then of hinged
/// element ends). Held ones are in it too; forces in this order are forces and moments in global axes.
using FullVector = Eigen::VectorXd;

/// Pushes that count `factor` times.
struct ScaledPushes {
  std::span<const Push> pushes;
  double factor = 1;
};

/// Energy, forces and tangent of one model, which must be usable (frame_fault) and outlive this.
class FrameAssembly {
 public:
  explicit FrameAssembly(const FrameModel& model);

  const FrameModel& model() const { return model_; }
  std::size_t full_size() const { return 3 * (model_.nodes.size() + turns_); }
  int free_size() const { return free_size_; }
  /// Number among the free unknowns, or -1 where a support holds it.
  int free_number(std::size_t full) const { return free_[full]; }
  std::size_t turn_index(std::size_t turn) const { return 3 * (model_.nodes.size() + turn); }
  double size_m() const { return size_m_; }          ///< diagonal of the box around the drawn frame and anchors
  double shortest_m() const { return shortest_m_; }  ///< length of the shortest element
  /// The largest of EA and 12 EI/L² of an element: what its force changes by when it is strained, or turned, by 1.
  double stiffest_n() const { return stiffest_n_; }
  std::size_t turns() const { return turns_; }

  FrameState drawn() const;
  /// Whether `state` belongs to this model: sizes, finite.
  bool fits(const FrameState& state) const;
  /// `slope` of an element (a derivative by its chord and turns) along `step`.
  double along(std::size_t element, const BeamVector& slope, const FullVector& step) const;
  /// The state moved by `step`: places shifted (see ChordTurning), turns turned by exp(step)·R.
  void move(FrameState& state, const FullVector& step) const;

  struct Forces {
    double energy = 0;
    FullVector inner;           ///< derivative of the strain energy
    std::vector<double> axial;  ///< N, of each element
    double bending_nm = 0;      ///< largest moment on an element's end
  };
  /// False where an element or line is outside what it can describe.
  bool forces(const FrameState& state, Forces& forces) const;

  struct Tangent {
    Eigen::SparseMatrix<double> stiffness;  ///< of the free unknowns, lower triangle; pattern fixed at construction
    std::vector<BeamVector> strain_slopes;
    std::vector<double> strains;
    FullVector of_step;  ///< stiffness × `held_step`
  };
  Tangent empty_tangent() const;
  /// Second derivative of the strain energy less that of the work of `pushes`. `axial`: forces to take for the elements'
  /// own (see beam_tangent), or empty. `held_step`: a step of held unknowns whose pull is asked for, or null.
  bool tangent(const FrameState& state, std::span<const ScaledPushes> pushes, std::span<const double> axial,
               const FullVector* held_step, Tangent& tangent) const;

  /// Adds the forces of the pushes to `full`.
  void add_pushes(const FrameState& state, const ScaledPushes& pushes, FullVector& full) const;
  /// Work that the forces (not the moments) of the pushes have done since drawn [J].
  double work(const FrameState& state, const ScaledPushes& pushes) const;

  ElementForces element_forces(const FrameState& state, std::size_t element) const;
  CableForce cable_force(const FrameState& state, std::size_t cable) const;

 private:
  struct Part {
    Beam beam;
    std::size_t turn_from = 0, turn_to = 0;
    std::array<std::size_t, 12> unknowns{};  ///< place from, place to, turn from, turn to
    std::vector<int> slots;
  };
  struct Spring {  ///< of a hinge
    double stiffness = 0;
    std::array<std::size_t, 6> unknowns{};
    std::size_t node = 0, end = 0;
    std::vector<int> slots;
  };
  struct LineEnd {
    std::optional<std::size_t> node;
    Vec3 point, arm;  ///< drawn
  };
  struct Line {
    LineEnd from, to;
    double length = 0, stiffness = 0;
    std::vector<std::size_t> unknowns;  ///< six for each end that has a node
    std::vector<int> slots;
  };
  void number_unknowns();
  void add_parts();
  void make_pattern();
  std::vector<int> slots_of(std::span<const std::size_t> unknowns) const;
  template <class Matrix>
  void scatter(std::span<const std::size_t> unknowns, const std::vector<int>& slots, const Matrix& matrix,
               const FullVector* held_step, Tangent& tangent) const;
  BeamEnds ends_of(const FrameState& state, const Part& part) const;
  Vec3 place_of(const FrameState& state, const LineEnd& end) const;
  void add_line_tangent(const FrameState& state, const Line& line, const FullVector* held_step, Tangent& tangent) const;
  void add_spring_tangent(const FrameState& state, const Spring& spring, const FullVector* held_step,
                          Tangent& tangent) const;

  const FrameModel& model_;
  ChordTurning chords_;
  std::size_t turns_ = 0;
  std::vector<Part> parts_;
  std::vector<Spring> springs_;
  std::vector<Line> lines_;
  std::vector<int> free_;
  int free_size_ = 0;
  Eigen::SparseMatrix<double> pattern_;
  std::vector<std::array<int, 6>> turn_slots_;  ///< of the 3×3 block of each node's turn, lower triangle
  double size_m_ = 0, shortest_m_ = 0, stiffest_n_ = 0;
};

}  // namespace quadrille
