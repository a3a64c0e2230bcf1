// Where a body that is dragged along the floor comes to lie against what stands around it, and the guide lines that say
// so. Snapping is on x and on depth apart.
#pragma once

#include <string>
#include <vector>

#include "studio/arrange/piece_box.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// A way along the floor [m]: to the right, and away from the audience.
struct Way {
  double right_m = 0, back_m = 0;
};

struct SnapRules {
  bool on = true;
  double tolerance_m = 0.05;  ///< nothing farther away draws; 0 or more: the pixels that are near, by the zoom
  bool depth = false;         ///< the drag goes in depth too: otherwise the way's back_m is taken as it is
};

enum class GuideKind { edge, centre, gap, structure, wall, middle, depth };

/// One line that shows what a body came to lie against.
struct Guide {
  GuideKind kind = GuideKind::edge;
  bool in_depth = false;  ///< the line is at a depth, along x; otherwise at an x, from the floor up
  double at_m = 0;        ///< where it is
  /// kind gap: the equal gaps along the floor, from and to, the body's own first; otherwise empty.
  struct Gap {
    double from_m = 0, to_m = 0;
  };
  std::vector<Gap> gaps;
  std::string words;  ///< "middle of the wall", "same gap 1.20 m"
};

struct Snapped {
  Way way;                    ///< the way it then goes
  std::vector<Guide> guides;  ///< all that it lies against there, each once
};

/// The way that the body of `pieces`, which move together in `area`, goes when it is dragged by `way` from where it
/// stands: as it is where snapping is off or nothing is near, else to the nearest of
/// - edges and centres of the other pieces that show, edge to edge and centre to centre;
/// - the same gap to the left as to the right neighbour, or the same gap to a neighbour as it has to the next one;
/// - structures: their middle, their edges where they are known;
/// - the wall's ends and its middle; without a wall the middle between the other pieces;
/// - in depth: the front line, the depth of other pieces and structures.
/// Of several equally near the simpler one draws (centre before edge before gap). Pieces of the body that are hidden move
/// along, but do not draw.
Snapped snap(const Area& area, const BuiltEvent& built, const PieceIds& pieces, const Way& way, const SnapRules& rules,
             Units units);

}  // namespace quadrille
