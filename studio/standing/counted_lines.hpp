// Which of its lines a piece can count on.
#pragma once

#include <memory>
#include <vector>

#include "studio/standing/gust_limit.hpp"

namespace quadrille {

/// A line that gives way, or whose anchor does, in a gust that the piece bears without it.
struct LineNotCounted {
  std::size_t line = 0;      ///< its place in the piece's lines
  double gives_way_m_s = 0;  ///< the gust in which it does
};

/// A piece with the lines that it bears the most with.
struct Secured {
  PlacedPiece placed;  ///< with the lines that count alone
  GustLimit limit;
  std::vector<LineNotCounted> not_counted;  ///< in the order in which they give way
};

/// Leaves out the line that gives way first, and so on for as long as a line is what fails; of all these the piece with
/// the highest limit. A line is not a fault in itself: one at a weak anchor does no more harm than being pulled out, so
/// that a line that gives way never lowers what is borne. `loads` are those of the piece in this area.
Secured secured(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece,
                const std::shared_ptr<const PieceLoads>& loads);

}  // namespace quadrille
