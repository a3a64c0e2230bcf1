// The ways in which a piece may be tied: sets of two, three and four lines.
#pragma once

#include <cstddef>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

/// One line of a set, before it is known what it is anchored to: from a tie point, its way over the floor measured from
/// straight ahead of its purpose (front, back, left, right), towards the right as the audience sees it.
struct LineWay {
  TiePurpose purpose;
  std::size_t number;  ///< among the tie points of that purpose
  double angle;        ///< on the floor: 0 = to the right, π/2 = away from the audience
};

struct LineSet {
  const char* words;
  std::vector<LineWay> ways;
};

/// All that are tried.
const std::vector<LineSet>& line_sets();

}  // namespace quadrille
