// Balloons that are in no cluster: fillers, toppers, collars. Each with a name by which it is found again.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

struct LooseBalloon {
  std::string name;         ///< "f12": its kind and its number among those, in order along the spine
  std::size_t balloon = 0;  ///< in piece.balloons
  double at_m = 0;          ///< where its neck is along the spine
  std::string side;         ///< see print_side()
};

/// All of them, in order along the spine.
std::vector<LooseBalloon> loose_balloons(const Piece& piece);

/// "filler", "topper"…
const char* print_role(Role role);

}  // namespace quadrille
