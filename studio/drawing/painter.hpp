// The one painter: a display list on any Cairo context, for the screen, PDF, SVG and PNG alike.
#pragma once

#include "studio/drawing/balloon_stamps.hpp"
#include "studio/drawing/display_list.hpp"

typedef struct _cairo cairo_t;

namespace quadrille {

/// Paints the marks in their order. One unit of the context is one millimetre; its matrix is kept. `stamps` may be used
/// again for the next painting on a target of the same kind.
void paint_marks(cairo_t* cairo, const Marks& marks, BalloonStamps& stamps);

/// White paper and the page's marks.
void paint_page(cairo_t* cairo, const Page& page, BalloonStamps& stamps);

}  // namespace quadrille
