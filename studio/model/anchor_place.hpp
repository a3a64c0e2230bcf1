// Where the anchor of a line stands, as one paces it out on the ground: from the foot that is nearest to it. Whoever says
// such a place, at the terminal or on paper, says this one.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

/// A plate or a socket on which a piece stands.
struct Foot {
  std::size_t support = 0;    ///< in piece.supports
  std::string name;           ///< "foot" where there is one, "left foot" and "right foot", "foot 2 of 3"
  Vec3 place = Vec3::Zero();  ///< in the piece's frame [m]
};

/// The feet of a piece from the left; one without a node is left out.
std::vector<Foot> feet_of(const Piece& piece);

struct AnchorPlace {
  std::string foot;                ///< name of the nearest foot; empty where the piece has none
  double right_m = 0, away_m = 0;  ///< from that foot, else from the piece's place
};

/// `x_m` and `y_m` are the anchor's in the piece's frame. Of feet that are as near the leftmost counts.
AnchorPlace anchor_place(const Piece& piece, double x_m, double y_m);

}  // namespace quadrille
