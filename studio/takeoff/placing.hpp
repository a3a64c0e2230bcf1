// What it takes to place a piece where it stands, besides what its type says: lines and what they are tied to, and
// containers and filling for the ballast.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "studio/model/house.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// Supplies of one placed piece:
/// - "securing-line-<cord>" [m]: its securing lines, each cut as line_to_cut_m says;
/// - "stake", "dead-weight-<mass>kg" (piece): what they are tied to, where that is no structure;
/// - "clusters-together-line" [m]: clusters_together_m, where the piece asks for it at such a place;
/// - "ballast-container" (piece), and "ballast-water" [l] or "ballast-sand" [kg]: whole containers of the house's size on
///   each support, and what fills them to the ballast that its type counts as "ballast" [kg]. Ballast that no support
///   bears is taken as one more.
/// A line that cannot run is left out: the standing check says why.
std::vector<SupplyLine> placing_supplies(const PlacedPiece& placed, const Piece& piece, const Area& area,
                                         const House& house);

/// What a type counts as ballast on its supports; ordered as containers and filling, never by itself.
inline constexpr std::string_view ballast_key = "ballast";

/// What it is ordered as.
inline constexpr const char* ballast_container_key = "ballast-container";

/// Mass [kg] of what a ballast container of the house holds.
double container_kg(const House& house);

/// How many containers of the house hold this ballast [kg]; none for none, and at most a thousand million.
std::int64_t containers_holding(double kilograms, const House& house);

}  // namespace quadrille
