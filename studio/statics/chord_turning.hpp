// Moving the nodes of a frame by a step so that its elements turn instead of growing longer.
#pragma once

#include <Eigen/SparseCholesky>
#include <array>
#include <memory>
#include <vector>

#include "studio/statics/frame_model.hpp"

namespace quadrille {

/// A straight move of the nodes by more than a little stretches every element that it turns, by the square of the angle,
/// and a slender rod resists that with forces far above all others. Here the change d of a chord c becomes a turn by
/// c × d/|c|² and a stretch by c·d/|c|², and the places of the nodes are those that come nearest to all the chords (least
/// squares, weighted with one over the length), held ones staying where the step puts them. To first order the result is
/// the step itself.
class ChordTurning {
 public:
  explicit ChordTurning(const FrameModel& model);

  /// Adds `step` (three numbers per node) to `shifts`, and what turning the chords takes beyond it.
  void move(std::vector<Vec3>& shifts, const Eigen::Ref<const Eigen::VectorXd>& step) const;

 private:
  struct Axis {
    std::vector<int> free;  ///< number of each node among those that may move along this axis, or -1
    int size = 0;
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factors;
  };
  const FrameModel& model_;
  std::array<std::unique_ptr<Axis>, 3> axes_;
};

}  // namespace quadrille
