// A piece as the wind bends it, drawn over the elevation: its frame and the outline of its balloons, in true scale.
#pragma once

#include <span>
#include <vector>

#include "sdk/built.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/drawing/view.hpp"

namespace quadrille {

/// In the area's x and z [m].
struct Deflection {
  std::vector<std::vector<Point2>> frame_m;    ///< runs of the frame, bent
  std::vector<std::vector<Point2>> outline_m;  ///< the common outline of the balloons, in arcs
};

struct Disc {
  Point2 centre;
  double radius = 0;
};

/// The common outline of discs as runs of points, at most 6° of a disc apart; what lies inside another disc is left out,
/// and so are arcs of less than 15°.
/// Of equal discs at one place one counts. Discs without a finite place and a radius above 0 are left out.
std::vector<std::vector<Point2>> outline_of(const std::vector<Disc>& discs);

/// The piece standing at `x_m`, with its frame's nodes and its balloons' centres at the places given, one for each (in
/// the piece's frame, m); where there are fewer, the rest is left out.
Deflection deflection_of(double x_m, const Piece& piece, std::span<const Vec3> nodes, std::span<const Vec3> balloons);

/// Lines that show on every colour: each with a light edge.
Marks deflection_marks(const Deflection& deflection, const Placement& at);

/// As paint_scene().
void paint_deflection(cairo_t* cairo, const Deflection& deflection, const View& view, BalloonStamps& stamps);

}  // namespace quadrille
