// The pieces' numbers in the picture.
#pragma once

#include <span>

#include "studio/paper/elevation_panel.hpp"

namespace quadrille {

/// A ring with its number at every piece that is drawn as built, of pieces that lie over each other one for all: over its
/// top, beside it, or on it, where it meets neither other pieces nor `taken`; at last on it whatever else is there. A piece
/// that no ring has room at has none: the key tells it. None where the scene has one piece.
Marks piece_numbers(const Scene& scene, const PanelPlan& plan, std::span<const Rect> taken);

}  // namespace quadrille
