// What lies under a point of the elevation, and what a rubber band takes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "studio/arrange/piece_box.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// The pieces that show at a point of the elevation, x and height [m], the frontmost first: where a balloon, a rod or a
/// plate is hit, not merely the box, so that one can click through an arch. Rods and plates are hit within `reach_m` of
/// them. A piece that is not built is hit within its box. Hidden pieces are not there; locked ones are: they can be
/// selected, but not moved.
PieceIds pieces_under(const Area& area, const BuiltEvent& built, double x_m, double height_m, double reach_m);

/// Which of `under`, as pieces_under lists them, a click selects while `selected` is: the one below it, after the last the
/// first again; the first where `selected` is not among them. Empty where nothing lies there.
std::string next_under(const PieceIds& under, std::string_view selected);

/// A rectangle of the elevation [m]; its corners may be given in any order.
struct Band {
  double x1_m = 0, height1_m = 0, x2_m = 0, height2_m = 0;
};
enum class BandTakes { what_lies_inside, what_it_touches };

/// The pieces that a rubber band takes, in the area's order: those whose box lies inside, or those of which it touches a
/// balloon, a rod or a plate (a piece that is not built: its box). Hidden and locked ones are left.
PieceIds pieces_in(const Area& area, const BuiltEvent& built, const Band& band, BandTakes takes);

}  // namespace quadrille
