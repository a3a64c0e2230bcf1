// The garland's parameter table: the only place where its parameters exist.
#pragma once

#include "sdk/piece.hpp"

namespace quadrille::garland {

inline constexpr quadrille_choice courses[] = {{"smooth", "Smooth through the points"},
                                               {"straight", "Straight from point to point"},
                                               {"hanging", "Hanging from the first point to the last"}};
inline constexpr quadrille_choice backings[] = {
    {"strip", "Balloon strip"}, {"line", "Line"}, {"hooks", "Hooks on a wall"}, {"frame", "Ties to a frame"}};
inline constexpr quadrille_choice flows[] = {
    {"scattered", "Scattered"}, {"drifting", "Drifting from end to end"}, {"blocks", "In blocks"}};

inline constexpr quadrille_parameter parameters[] = {
    path("path", "Path", "Points of the line, from end to end: x along the wall, y away from the audience, z up.",
         "Path")
        .range(-60, 60)
        .standard_text("-1.6 0 0.5; -1.35 0 1.5; -0.5 0 2.2; 0.6 0 2.3; 1.5 0 1.75; 1.9 0 1.15"),
    choice("course", "Course", "How the line runs between the points.", "Path", courses),
    ratio("slack", "Slack", "Hanging: length of the line as a share of the straight distance.", "Path")
        .range(1.001, 4)
        .display(1.01, 2)
        .standard(1.15)
        .decimals(3)
        .only_with("course=hanging"),
    choice("backing", "Backing", "What carries the garland.", "Path", backings),
    flag("wall", "Against a wall", "Keeps every balloon in front of the wall plane.", "Path"),
    length("wall-y", "Wall plane",
           "Depth of the wall plane behind the piece's place; balloons behind the line hold it off the wall.", "Path")
        .range(-60, 60)
        .display(-2, 2)
        .standard(0.16)
        .decimals(3)
        .only_with("wall=yes|backing=hooks"),
    length("thickness", "Thickness", "Across the garland where it begins; 0 for what suits the mix.", "Body")
        .range(0, 3)
        .display(0.2, 1.2)
        .standard(0)
        .decimals(2)
        .handle(QUADRILLE_HANDLE_TOP, 2, 2),
    length("thickness-end", "Thickness at the end", "Across the garland where it ends; 0 for the same.", "Body")
        .range(0, 3)
        .display(0.2, 1.2)
        .standard(0)
        .decimals(2),
    mix("mix", "Mix", "Nominal sizes, what they are inflated to, and their shares by count.", "Body")
        .standard_text("5in 0.1m 52%; 11in 0.24m 36%; 16in 0.33m 12%"),
    count("core", "Balloons per cluster", "2 to 4, tied together and threaded on the line.", "Body")
        .range(2, 4)
        .standard(4)
        .advanced(),
    ratio("tightness", "Tightness", "Spacing of the clusters on the line: 1 as they nest, more for a looser garland.",
          "Body")
        .range(0.7, 3)
        .display(0.8, 2)
        .standard(1)
        .advanced(),
    ratio("filler", "Fillers", "Share of the balloons that are glued into creases rather than threaded on the line.",
          "Body")
        .range(0, 0.6)
        .standard(0.5)
        .advanced(),
    choice("flow", "Colour flow", "How the colours run along it.", "Colours", flows),
    slots("slots", "Colour slots", "How many colours it mixes.", "Colours").standard(4),
    ratio("accents", "Accents", "Share of the balloons that are accents in a colour of their own.", "Colours")
        .range(0, 0.3)
        .standard(0),
    count("accent-slot", "Accents' colour", "Number of their colour slot: 1 for A, 2 for B…", "Colours")
        .range(1, 6)
        .standard(1)
        .only_with("accents>0"),
    seed("seed", "Seed", "Another number gives another garland of the same kind.", "Body"),
};

}  // namespace quadrille::garland
