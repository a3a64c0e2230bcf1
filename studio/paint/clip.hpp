// What may be painted on a context.
#pragma once

#include <vector>

#include "studio/paint/display_list.hpp"

typedef struct _cairo cairo_t;

namespace quadrille {

/// The rectangles that the context's clip is made of, in its units. Empty where it is anything else, or more than 64 of
/// them: then all may have to be painted.
std::vector<Rect> clip_rectangles(cairo_t* cairo);

}  // namespace quadrille
