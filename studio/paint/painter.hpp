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

}  // namespace quadrille
