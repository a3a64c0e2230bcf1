#include "studio/standing/line_sets.hpp"

#include "sdk/vec.hpp"

namespace quadrille {
namespace {

constexpr double pi_by_6 = pi / 6;

}  // namespace

const std::vector<LineSet>& line_sets() {
  constexpr TiePurpose front = TiePurpose::front, back = TiePurpose::back, side = TiePurpose::side;
  constexpr double ahead = -pi / 2, behind = pi / 2, right = 0, left = pi;
  static const std::vector<LineSet> all{
      {"one to the front, one to the back", {{front, 0, ahead}, {back, 0, behind}}},
      {"two splayed to the front, one to the back",
       {{front, 0, ahead - pi_by_6}, {front, 0, ahead + pi_by_6}, {back, 0, behind}}},
      {"one to the front, two splayed to the back",
       {{front, 0, ahead}, {back, 0, behind - pi_by_6}, {back, 0, behind + pi_by_6}}},
      {"one to the back, two forward to the sides, a third of the way round from each other",
       {{back, 0, behind}, {front, 0, -pi_by_6}, {front, 0, left + pi_by_6}}},
      {"one to the front, two back to the sides, a third of the way round from each other",
       {{front, 0, ahead}, {back, 0, pi_by_6}, {back, 0, left - pi_by_6}}},
      {"two splayed to the front, two to the back",
       {{front, 0, ahead - pi_by_6},
        {front, 0, ahead + pi_by_6},
        {back, 0, behind - pi_by_6},
        {back, 0, behind + pi_by_6}}},
      {"two to the front and two to the back, splayed by 45°",
       {{front, 0, ahead - pi / 4},
        {front, 0, ahead + pi / 4},
        {back, 0, behind - pi / 4},
        {back, 0, behind + pi / 4}}},
      {"one from each leg to the front and one to the back, outwards",
       {{side, 0, -3 * pi / 4}, {side, 0, 3 * pi / 4}, {side, 1, -pi / 4}, {side, 1, pi / 4}}},
      {"one to the front, one to the back, one to each side",
       {{front, 0, ahead}, {back, 0, behind}, {side, 0, left}, {side, 1, right}}},
  };
  return all;
}

}  // namespace quadrille
