// Do pieces stand in each other?
#pragma once

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// Deeper than this share of its diameter a balloon is not pressed by hand, and no piece type packs its own; what
/// touches or is pushed together less is meant. Common practice, no source.
inline constexpr double clash_press = 0.18;
/// So many balloons pressed deeper are still let pass: one cluster leant against another.
inline constexpr int clash_balloons = 4;

/// A warning "pieces-clash" for every two pieces of an area of which more than `clash_balloons` balloons together press
/// deeper than `clash_press` into one of the other piece. It stands under each of the two, names the other, and
/// says how many balloons, how deep, and which way and how far to move the piece so that nothing touches. Balloons count
/// as spheres, frames and plates are not looked at. Pieces that are hidden, refused or of a missing type are passed
/// over; of more than ten pairs in one area the rest is told as a number.
Findings check_clashes(const Event& event, const BuiltEvent& built);

}  // namespace quadrille
