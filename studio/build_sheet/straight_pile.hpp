// A stretch of a garland drawn straight: where its balloons lie, which are seen, and where the names of these stand.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "studio/build_sheet/build_subject.hpp"
#include "studio/build_sheet/pile_names.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// A balloon where it lies once the spine is drawn straight from left to right.
struct StraightBalloon {
  double along_m = 0, off_m = 0, away_m = 0, radius_m = 0;
  std::size_t balloon = 0;  ///< in Piece::balloons
  std::string name;         ///< "#5", "f3": of its cluster, or as which of the stretch's fillers
  std::string side;         ///< see print_straight_side(); "behind", "behind above" where it is not seen
  bool seen = true;         ///< enough of it for a name, from the front
};

/// The balloons that belong to a stretch, farthest first.
struct StraightPile {
  double from_m = 0, to_m = 0;
  std::vector<StraightBalloon> balloons;
};

std::vector<StraightPile> straight_piles(const BuildSubject& subject, const std::vector<MakingStretch>& stretches);

/// A pile as it is drawn, in millimetres from its upper left corner; `width` is the room that it may take.
struct PilePicture {
  double width = 0, height = 0;
  double left = 0, middle = 0;  ///< where the line begins
  std::vector<PileName> names;
};

/// Every balloon that is seen has a name there. `scale` is that of the drawing.
PilePicture picture_of(const StraightPile& pile, const BuildSubject& subject, const Setting& setting, double scale,
                       double width);

/// Whether nothing of it, the line aside, is in the box, which is measured as the picture is.
bool is_clear(const StraightPile& pile, const PilePicture& picture, double scale, const Rect& box);

/// Draws it with its upper left corner at `at`.
void add_pile(Marks& marks, const StraightPile& pile, const PilePicture& picture, const BuildSubject& subject,
              const Setting& setting, double scale, Point2 at);

}  // namespace quadrille
