// The arch's parameter table: the only place where its parameters exist.
#pragma once

#include "sdk/piece.hpp"

namespace quadrille::arch {

inline constexpr quadrille_choice frames[] = {{"flexible-rod", "Flexible rod"},
                                              {"half-circle", "Half circle"},
                                              {"half-ellipse", "Half ellipse"},
                                              {"square", "Square"}};
inline constexpr quadrille_choice feet[] = {{"upright", "Held upright"}, {"pinned", "Free to turn"}};
inline constexpr quadrille_choice rod_materials[] = {
    {"glass-fibre", "Glass fibre"}, {"pvc", "PVC"}, {"aluminium", "Aluminium"}, {"steel", "Steel"}};
inline constexpr quadrille_choice patterns[] = {{"spiral", "Spiral"},   {"solid", "Solid"},
                                                {"zigzag", "Zigzag"},   {"stripes", "Stripes"},
                                                {"diamond", "Diamond"}, {"rows", "Rows as typed"}};
inline constexpr quadrille_choice hands[] = {{"right", "Right"}, {"left", "Left"}};

inline constexpr quadrille_parameter parameters[] = {
    choice("frame", "Frame", "What the arch is built on: a straight rod that bends, or a rigid frame.", "Frame",
           frames),
    length("rod-length", "Rod length", "Length of the flexible rod, joints included; rigid frames have their own.",
           "Frame")
        .range(0.5, 40)
        .display(2, 12)
        .standard(6)
        .decimals(2),
    length("span", "Span", "From foot to foot, measured at the rod.", "Frame")
        .range(0, 40)
        .display(0.5, 8)
        .standard(2.4)
        .decimals(2)
        .handle(QUADRILLE_HANDLE_RIGHT, 0),
    length("height", "Height", "From the floor to the top of a rigid frame; a flexible rod finds its own.", "Frame")
        .range(0.2, 20)
        .display(1, 5)
        .standard(2.4)
        .decimals(2)
        .handle(QUADRILLE_HANDLE_TOP, 2),
    length("corner-radius", "Corner radius", "Of a square frame's corners; 0 for sharp ones.", "Frame")
        .range(0, 5)
        .display(0, 1)
        .standard(0)
        .decimals(2),
    choice("feet", "Feet", "Whether the sockets hold the rod upright or let it turn.", "Frame", feet),
    length("rod-diameter", "Rod diameter", "Outer diameter of the rod or tube.", "Frame")
        .range(0.002, 0.15)
        .display(0.004, 0.06)
        .standard(0.008)
        .decimals(4),
    length("rod-wall", "Wall thickness", "Of a tube; 0 for a solid rod.", "Frame")
        .range(0, 0.02)
        .standard(0)
        .decimals(4),
    choice("rod-material", "Rod material", "What the rod or tube is made of.", "Frame", rod_materials),
    length("rod-section", "Section length", "The lengths in which the rod is carried and joined.", "Frame")
        .range(0.3, 6)
        .display(0.5, 3)
        .standard(1.5)
        .decimals(2),
    length("bare-ends", "Bare ends", "Length of rod left undressed at each foot.", "Balloons")
        .range(0, 5)
        .display(0, 1)
        .standard(0.05)
        .decimals(3),
    count("cluster-size", "Balloons per cluster", "2 duplet, 3 triplet, 4 quad, 5, 6.", "Balloons")
        .range(2, 6)
        .standard(4),
    balloon("balloon", "Balloon", "Nominal size.", "Balloons"),
    length("inflated", "Inflated to", "Diameter on the sizer; 0 for what is usual for the nominal size.", "Balloons")
        .range(0, 1.2)
        .display(0.08, 0.6)
        .standard(0)
        .decimals(3),
    ratio("tightness", "Tightness", "Spacing of the clusters: 1 as spheres nest, 0.85 forced, 1.2 loose.", "Balloons")
        .range(0.6, 2)
        .display(0.8, 1.3)
        .standard(1),
    ratio("snug", "Snugness", "How far twisting the necks draws a cluster in: 1 as spheres touch.", "Balloons")
        .range(0.75, 1.3)
        .display(0.8, 1.1)
        .standard(0.88),
    count("clusters", "Clusters", "How many to mount; 0 for as many as fit.", "Balloons")
        .range(0, 1000)
        .display(0, 100)
        .standard(0),
    choice("pattern", "Pattern", "How the colours run.", "Pattern", patterns),
    rows("rows", "Rows", "With the pattern \"rows as typed\": slot letters of each cluster, such as AABB ABBA.",
         "Pattern"),
    choice("hand", "Hand",
           "Which way every cluster is turned to the one before, seen from the end you build towards: right is "
           "anticlockwise.",
           "Pattern", hands),
    count("band", "Clusters per band", "Stripes: clusters in a stripe. Zigzag: clusters until the hand changes.",
          "Pattern")
        .range(1, 50)
        .display(1, 12)
        .standard(4),
    slots("slots", "Colour slots", "How many colours the pattern uses.", "Pattern"),
    length("plate-width", "Plate width", "Side of the square base plate at each foot; 0 for none.", "Base")
        .range(0, 2)
        .display(0, 1)
        .standard(0.45)
        .decimals(2),
    mass("plate-mass", "Plate mass", "Of one base plate.", "Base").range(0, 200).display(0, 30).standard(8),
    mass("ballast", "Ballast", "Put on each base plate, beyond its own mass.", "Base")
        .range(0, 500)
        .display(0, 60)
        .standard(10),
};

}  // namespace quadrille::arch
