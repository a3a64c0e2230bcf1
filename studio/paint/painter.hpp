// The one painter: a display list on any Cairo context, for the screen, PDF, SVG and PNG alike.
#pragma once

#include "studio/paint/balloon_stamps.hpp"
#include "studio/paint/display_list.hpp"

typedef struct _cairo cairo_t;

namespace quadrille {

/// Paints the marks in their order. A millimetre is `units_per_mm` (above 0) of the context's units; its matrix is kept.
/// `stamps` may be used again for the next painting on a target of the same kind.
void paint_marks(cairo_t* cairo, const Marks& marks, BalloonStamps& stamps, double units_per_mm = 1);

/// White paper and the page's marks. One unit of the context is one millimetre.
void paint_page(cairo_t* cairo, const Page& page, BalloonStamps& stamps);

/// The page as large as it fits into `room` (in the context's units), in the middle of it. The matrix is kept.
void paint_page_within(cairo_t* cairo, const Page& page, BalloonStamps& stamps, const Rect& room);

/// The page on paper that stands upright, for printers: a lying page is turned by a quarter, so that its top comes to the
/// left. A millimetre is `units_per_mm` (above 0) of the context's units; its matrix is kept.
void paint_upright(cairo_t* cairo, const Page& page, BalloonStamps& stamps, double units_per_mm);

}  // namespace quadrille
