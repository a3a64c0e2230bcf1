// Bookmarks of a PDF.
#pragma once

#include <span>

#include "studio/paint/display_list.hpp"

typedef struct _cairo_surface cairo_surface_t;

namespace quadrille {

/// Adds a bookmark for every stretch of pages with one name, under one for every stretch of pages of one sheet where
/// pages say which they belong to. Pages without a name have none. To be called before the surface is finished.
void add_outline(cairo_surface_t* pdf, std::span<const Page> pages);

}  // namespace quadrille
