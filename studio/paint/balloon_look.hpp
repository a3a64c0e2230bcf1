// How one balloon looks: a lit ball in its colour and finish.
#pragma once

#include "studio/paint/display_list.hpp"

typedef struct _cairo cairo_t;

namespace quadrille {

/// Lighter (`share` 0…1: towards white, the less far the darker the ink) or darker (-1…0: to black, the hue kept
/// alive).
Ink shaded(const Ink& ink, double share);

/// Black or white, whichever stands out on `ink`.
Ink contrasting(const Ink& ink);

/// How far the paint of a ball reaches beyond its radius, as a share of the radius.
inline constexpr double balloon_reach = 1.08;

/// Paints a ball of radius 1 about the origin; nothing is painted beyond `balloon_reach`. The light comes from the
/// upper left (y down). Matte: one soft light; pearl: a broad sheen and a lighter rim; metallic: strong contrast, a
/// dark edge and a crisp light; clear: one sees through it, more at the middle than at the rim. `letter` (0 = none)
/// stands in the middle, `letter_height` high.
void paint_ball(cairo_t* cairo, const Ink& ink, Finish finish, char letter, double letter_height);

/// The colour of the taper between ball and neck, whose direction from the centre is (x, y), y down.
Ink taper_ink(const Ink& ink, Finish finish, double x, double y);

}  // namespace quadrille
