// Loads and supports on their way from one state to another.
#pragma once

#include <span>
#include <vector>

#include "studio/statics/assembly.hpp"

namespace quadrille {

/// At factor λ: constant + λ × growing + (1 − λ) × left_over, supports at λ of their way.
struct LoadPath {
  std::span<const Push> constant, growing;
  /// Forces that hold the first state in balance at λ = 0 whatever it is, and are gone at 1; of constant direction; empty
  /// = none.
  FullVector left_over;

  /// A held node on its way.
  struct Way {
    std::size_t node = 0;
    Vec3 shift_from, shift_to;
    Turn turn_from, turn_to;
    bool turns = false;  ///< it turns freely: its turn is not prescribed
    std::array<bool, 3> moves{};
  };
  std::vector<Way> ways;
};

std::array<ScaledPushes, 2> pushes_at(const LoadPath& path, double factor);
/// All outer forces at `factor`, in the order of FullVector.
FullVector outer_forces(const FrameAssembly& frame, const LoadPath& path, const FrameState& state, double factor);
/// The sum of the sizes of all pushes, moments divided by the size of the frame [N].
double load_scale(const FrameAssembly& frame, const LoadPath& path, double factor);
/// The step of the held unknowns from `state` to their places at `factor`; empty where none moves.
FullVector held_step(const FrameAssembly& frame, const LoadPath& path, const FrameState& state, double factor);
/// Takes `moves` as the end of the ways and `start` as their beginning.
std::vector<LoadPath::Way> ways_of(const FrameModel& model, const std::vector<SupportMove>& moves,
                                   const FrameState& start);

}  // namespace quadrille
