// The arch's parameter table: the only place where its parameters exist.
#pragma once

#include "sdk/base.hpp"
#include "sdk/dressing.hpp"
#include "sdk/piece.hpp"
#include "sdk/rod.hpp"

namespace quadrille::arch {

inline constexpr quadrille_choice frames[] = {{"flexible-rod", "Flexible rod"},
                                              {"half-circle", "Half circle"},
                                              {"half-ellipse", "Half ellipse"},
                                              {"square", "Square"}};
inline constexpr quadrille_choice feet[] = {{"upright", "Held upright"}, {"pinned", "Free to turn"}};
inline constexpr quadrille_parameter frame_parameters[] = {
    choice("frame", "Frame", "What the arch is built on: a straight rod that bends, or a rigid frame.", "Frame",
           frames),
    length("rod-length", "Rod length", "Length of the flexible rod, joints included; rigid frames have their own.",
           "Frame")
        .range(0.5, 40)
        .display(2, 12)
        .standard(6)
        .decimals(2)
        .only_with("frame=flexible-rod")
        // Of what a rod is longer each leg takes half.
        .handle(QUADRILLE_HANDLE_TOP, 2, 2),
    length("span", "Span", "From foot to foot, measured at the rod.", "Frame")
        .range(0, 40)
        .display(0.5, 8)
        .standard(2.4)
        .decimals(2)
        .handle(QUADRILLE_HANDLE_RIGHT, 0, 2),
    length("height", "Height", "From the floor to the top of a rigid frame; a flexible rod finds its own.", "Frame")
        .range(0.2, 20)
        .display(1, 5)
        .standard(2.4)
        .decimals(2)
        .only_with("frame!=flexible-rod")
        .handle(QUADRILLE_HANDLE_TOP, 2),
    length("corner-radius", "Corner radius", "Of a square frame's bent corners; 0 for elbows.", "Frame")
        .range(0, 5)
        .display(0, 1)
        .standard(0.4)
        .decimals(2)
        .only_with("frame=square"),
    choice("feet", "Feet", "Whether the sockets hold the rod upright or let it turn.", "Frame", feet),
    length("rod-diameter", "Rod diameter", "Outer diameter of the rod or tube.", "Frame")
        .range(0.002, 0.15)
        .display(0.004, 0.06)
        .standard(0.014)
        .decimals(4)
        .advanced(),
    length("rod-wall", "Wall thickness", "Of a tube; 0 for a solid rod.", "Frame")
        .range(0, 0.02)
        .standard(0)
        .decimals(4)
        .advanced(),
    choice("rod-material", "Rod material", "What the rod or tube is made of.", "Frame", rod_materials).advanced(),
    length("rod-section", "Section length", "The lengths in which the rod is carried and joined.", "Frame")
        .range(0.3, 6)
        .display(0.5, 3)
        .standard(1.5)
        .decimals(2)
        .advanced(),
    length("bare-ends", "Bare ends", "Length of rod left undressed at each foot.", "Balloons")
        .range(0, 5)
        .display(0, 1)
        .standard(0.05)
        .decimals(3),
};

inline constexpr auto parameters = joined(frame_parameters, dressing_parameters, base_parameters);

}  // namespace quadrille::arch
