// The hoop's parameter table: the only place where its parameters exist.
#pragma once

#include "sdk/base.hpp"
#include "sdk/dressing.hpp"
#include "sdk/rod.hpp"

namespace hoop {

using namespace quadrille;

inline constexpr quadrille_parameter frame_parameters[] = {
    length("diameter", "Diameter", "Of the ring, measured at the tube.", "Hoop")
        .range(0.3, 6)
        .display(0.8, 3)
        .standard(2)
        .decimals(2)
        .handle(QUADRILLE_HANDLE_TOP, 2),
    length("lift", "Lift", "From the floor to the lowest point of the ring: the length of the stand.", "Hoop")
        .range(0, 3)
        .display(0, 1)
        .standard(0.35)
        .decimals(2),
    angle("from", "Dressed from", "Where the balloons begin, clockwise from the ring's foot.", "Hoop")
        .range(0, 2 * pi)
        .standard(0),
    angle("to", "Dressed to", "Where they end; a whole turn beyond the beginning dresses the whole ring.", "Hoop")
        .range(0, 4 * pi)
        .display(0, 2 * pi)
        .standard(2 * pi),
    length("tube-diameter", "Tube diameter", "Outer diameter of the tube of ring and stand.", "Tube")
        .range(0.005, 0.06)
        .display(0.01, 0.04)
        .standard(0.025)
        .decimals(4),
    length("tube-wall", "Wall thickness", "Of the tube; 0 for a solid rod.", "Tube")
        .range(0, 0.01)
        .standard(0.0015)
        .decimals(4),
    choice("tube-material", "Tube material", "What ring and stand are made of.", "Tube", rod_materials)
        .standard_text("aluminium"),
    length("tube-section", "Section length", "The lengths in which the ring is carried and joined.", "Tube")
        .range(0.3, 6)
        .display(0.5, 3)
        .standard(1.6)
        .decimals(2),
};

inline constexpr auto parameters = joined(frame_parameters, dressing_parameters, base_parameters);

}  // namespace hoop
