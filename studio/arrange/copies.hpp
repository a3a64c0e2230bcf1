// Copies of pieces within an area: duplicates and arrays.
#pragma once

#include "studio/model/piece_edits.hpp"

namespace quadrille {

struct Copies {
  Event event;
  PieceIds ids;  ///< of the new pieces, in the order in which they were made
};

/// A copy of each of `pieces`, in its area and in front of the others, moved by the way [m], with an id and a name of its
/// own. Copies are neither locked nor hidden. Stakes and dead weights go along; lines to structures end where they did.
Copies duplicated(const Event& event, const PieceIds& pieces, double right_m, double back_m);

/// Equal steps along one axis, the piece itself being the first.
struct Steps {
  int count = 1;      ///< places in all, 1 to 200; beyond it the nearer of both is taken
  double over_m = 0;  ///< from the first place to the last, of either sign
  double at(int step) const { return count > 1 ? over_m * step / (count - 1) : 0; }
};

/// `count` places a step of `spacing_m` apart.
Steps steps_of(int count, double spacing_m);
/// As many places `spacing_m` (above 0) apart as fit into `over_m`: 5 m at 2 m gives 3, which reach over 4 m.
Steps steps_within(double over_m, double spacing_m);

/// A grid of places along the front line and in depth: one step along and several in depth is a row along an aisle, two
/// steps along make it pairs.
struct ArrayPlan {
  Steps along, depth;
  bool facing = false;  ///< what stands in the second half along is mirrored, so that the halves face each other
};

/// Copies of `pieces` at every place of the plan but the first, where they stand themselves. Names count on in the order
/// in which one walks: row after row from the front, in each from the left. With `facing` the copies are mirrored about
/// their own places by `mirror`, which takes the event and the copies' ids and returns the changed event.
template <class Mirror>
Copies arrayed(const Event& event, const PieceIds& pieces, const ArrayPlan& plan, Mirror mirror);
Copies arrayed(const Event& event, const PieceIds& pieces, const ArrayPlan& plan);

namespace copies_detail {
int places_of(const Steps& steps);
}

template <class Mirror>
Copies arrayed(const Event& event, const PieceIds& pieces, const ArrayPlan& plan, Mirror mirror) {
  Copies all{event, {}};
  const int along = copies_detail::places_of(plan.along), depth = copies_detail::places_of(plan.depth);
  for (int row = 0; row < depth; ++row)
    for (int step = 0; step < along; ++step) {
      if (row == 0 && step == 0) continue;
      Copies made = duplicated(all.event, pieces, plan.along.at(step), plan.depth.at(row));
      all.event = plan.facing && 2 * step >= along ? mirror(std::move(made.event), made.ids) : std::move(made.event);
      all.ids.insert(all.ids.end(), made.ids.begin(), made.ids.end());
    }
  return all;
}

}  // namespace quadrille
