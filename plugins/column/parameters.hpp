// The column's parameter table: the only place where its parameters exist.
#pragma once

#include "sdk/base.hpp"
#include "sdk/dressing.hpp"
#include "sdk/piece.hpp"
#include "sdk/rod.hpp"

namespace quadrille::column {

inline constexpr quadrille_choice pole_sizes[] = {{"typed", "Diameter and wall as typed"},
                                                  {"pipe-1-2", "Pipe 1/2 in"},
                                                  {"pipe-3-4", "Pipe 3/4 in"},
                                                  {"pipe-1", "Pipe 1 in"},
                                                  {"pipe-1-1-4", "Pipe 1 1/4 in"},
                                                  {"pipe-1-1-2", "Pipe 1 1/2 in"},
                                                  {"pipe-2", "Pipe 2 in"}};
inline constexpr quadrille_choice toppers[] = {{"none", "None"},
                                               {"round-16", "One 16 in balloon"},
                                               {"round-24", "One 24 in balloon"},
                                               {"round-36", "One 36 in balloon"},
                                               {"cluster", "A crown of balloons"}};
inline constexpr quadrille_choice collars[] = {
    {"none", "None"}, {"foot", "At the foot"}, {"topper", "Below the topper"}, {"both", "At both"}};

inline constexpr quadrille_parameter pole_parameters[] = {
    length("height", "Height", "From the floor to the top of the clusters; a topper comes on top of it.", "Pole")
        .range(0.3, 8)
        .display(0.9, 4)
        .standard(1.98)
        .decimals(2)
        .handle(QUADRILLE_HANDLE_TOP, 2),
    choice("pole-size", "Pole size", "A pipe of a published schedule 40 size, or as typed.", "Pole", pole_sizes),
    length("pole-diameter", "Pole diameter", "Outer diameter, where the size is as typed.", "Pole")
        .range(0.005, 0.15)
        .display(0.015, 0.06)
        .standard(0.025)
        .decimals(4)
        .only_with("pole-size=typed")
        .advanced(),
    length("pole-wall", "Wall thickness", "Of the tube, where the size is as typed; 0 for a solid pole.", "Pole")
        .range(0, 0.02)
        .standard(0.0015)
        .decimals(4)
        .only_with("pole-size=typed")
        .advanced(),
    choice("pole-material", "Pole material", "What the pole is made of.", "Pole", rod_materials)
        .standard_text("aluminium")
        .advanced(),
    length("pole-section", "Section length", "The lengths in which the pole is carried and joined.", "Pole")
        .range(0.3, 6)
        .display(0.5, 3)
        .standard(1.2)
        .decimals(2)
        .advanced(),
    length("bare-foot", "Bare foot", "From the floor to the lowest balloon.", "Balloons")
        .range(0, 2)
        .display(0, 0.5)
        .standard(0)
        .decimals(3)
        .advanced(),
    ratio("taper", "Taper", "Diameter of the topmost balloons as a share of the lowest.", "Balloons")
        .range(0.4, 1.5)
        .display(0.5, 1.2)
        .standard(1),
};
inline constexpr quadrille_parameter crown_parameters[] = {
    choice("topper", "Topper", "What sits on the top cluster.", "Topper and collar", toppers),
    count("topper-slot", "Topper's colour", "Number of its colour slot: 1 for A, 2 for B…", "Topper and collar")
        .range(1, 6)
        .standard(1)
        .only_with("topper!=none"),
    choice("collar", "Collar", "A ring of small balloons in the creases.", "Topper and collar", collars),
    balloon("collar-balloon", "Collar balloon", "Nominal size of the collar's balloons.", "Topper and collar")
        .range(2, 24)
        .display(5, 11)
        .standard(5)
        .only_with("collar!=none|topper=cluster"),
    count("collar-slot", "Collar's colour", "Number of its colour slot: 1 for A, 2 for B…", "Topper and collar")
        .range(1, 6)
        .standard(2)
        .only_with("collar!=none"),
};

inline constexpr auto parameters = joined(pole_parameters, dressing_parameters, crown_parameters, base_parameters);

}  // namespace quadrille::column
