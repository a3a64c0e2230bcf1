// Plain ways to tie a piece: the sets of two, three and four lines that a search begins with.
#pragma once

#include <cstddef>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

/// One line of a set, before it is known what it is anchored to.
struct LineWay {
  TiePurpose purpose;
  std::size_t number;  ///< among the tie points of that purpose
  double angle;        ///< on the floor: 0 = to the right, π/2 = away from the audience
};

using LineSet = std::vector<LineWay>;

const std::vector<LineSet>& line_sets();

}  // namespace quadrille
