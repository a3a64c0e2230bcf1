// What a piece stands on or hangs from, each with a name.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

struct NamedSupport {
  std::size_t support = 0;  ///< in piece.supports
  std::string name;         ///< "left foot", "foot 2 of 3", "hook 4"
  Vec3 place = Vec3::Zero();
  bool is_foot = false;  ///< a plate or a socket; otherwise it hangs
  double at_m = 0;       ///< along the spine
};

/// Feet first, from the left; then hooks and what else holds it, along the spine. One without a node is left out.
std::vector<NamedSupport> named_supports(const Piece& piece);

}  // namespace quadrille
