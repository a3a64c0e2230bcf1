// One piece alone, as a small page of its own: for lists of pieces.
#pragma once

#include <memory>
#include <span>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/palette.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// The piece as large as it fits into `width_mm` by `height_mm`, on the floor line, without figure or dimensions. `built`
/// null, or what could not be built: the box that the elevation draws for it.
Page piece_picture(const PlacedPiece& piece, const std::shared_ptr<const BuiltPiece>& built,
                   std::span<const Palette> palettes, double width_mm, double height_mm);

}  // namespace quadrille
