// Rulers: which marks to draw for a zoom, and how to write them. Knows no toolkit.
#pragma once

#include <string>

#include "studio/model/event.hpp"

namespace quadrille {

/// A labelled mark every `step_m` metres, each step divided into `divisions` by small marks.
struct RulerStep {
  double step_m = 1;
  int divisions = 10;
};

/// The closest step that leaves labels at least `least_px` apart: metric 1, 2, 5 times a power of ten from 1 cm to
/// 1 km, feet from 1 in to 1000 ft in the divisions of a tape measure. `pixels_per_metre` is above 0; beyond the
/// last step it is the last.
RulerStep ruler_step(double pixels_per_metre, Units units, double least_px);

/// The label `index` steps from zero: "2.5" (metres, as many decimals as the step needs), "8' 6\"" or "8'".
std::string ruler_label(long index, const RulerStep& step, Units units);

/// What the bare numbers of a ruler are in: "m", "ft".
std::string ruler_unit(Units units);

/// `metres` to what the units are shown to: whole centimetres, or half inches. What is dragged lands on these.
double rounded_place(double metres, Units units);

/// The smallest move that the keyboard makes [m]: 1 cm, or 1 in.
double small_move(Units units);

}  // namespace quadrille
