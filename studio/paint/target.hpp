// What a Cairo context paints on.
#pragma once

typedef struct _cairo cairo_t;

namespace quadrille {

/// True where what is painted keeps its shape at every size: PDF, SVG, PostScript, a recording.
bool is_vector(cairo_t* cairo);

/// Pixels of the device that a unit of the context is long.
double pixels_per_unit(cairo_t* cairo);

}  // namespace quadrille
