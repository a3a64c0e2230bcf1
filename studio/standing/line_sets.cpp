#include "studio/standing/line_sets.hpp"

#include "sdk/vec.hpp"

namespace quadrille {

const std::vector<LineSet>& line_sets() {
  constexpr TiePurpose front = TiePurpose::front, back = TiePurpose::back, side = TiePurpose::side;
  constexpr double ahead = -pi / 2, behind = pi / 2, right = 0, left = pi, splay = pi / 6;
  static const std::vector<LineSet> all{
      {{front, 0, ahead}, {back, 0, behind}},
      {{front, 0, ahead - splay}, {front, 0, ahead + splay}, {back, 0, behind}},
      {{front, 0, ahead}, {back, 0, behind - splay}, {back, 0, behind + splay}},
      // One to the back, two forward to the sides, a third of the way round from each other; and the other way round.
      {{back, 0, behind}, {front, 0, -splay}, {front, 0, left + splay}},
      {{front, 0, ahead}, {back, 0, splay}, {back, 0, left - splay}},
      {{front, 0, ahead - splay}, {front, 0, ahead + splay}, {back, 0, behind - splay}, {back, 0, behind + splay}},
      {{front, 0, ahead - pi / 4}, {front, 0, ahead + pi / 4}, {back, 0, behind - pi / 4}, {back, 0, behind + pi / 4}},
      // From each leg one to the front and one to the back, outwards.
      {{side, 0, -3 * pi / 4}, {side, 0, 3 * pi / 4}, {side, 1, -pi / 4}, {side, 1, pi / 4}},
      {{front, 0, ahead}, {back, 0, behind}, {side, 0, left}, {side, 1, right}},
  };
  return all;
}

}  // namespace quadrille
