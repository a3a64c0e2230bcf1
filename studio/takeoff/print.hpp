// The lines of the lists in words, the same at the terminal, in the window and on paper.
#pragma once

#include <string>

#include "studio/model/lengths.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// The name of a balloon's size: "11 in".
std::string print_nominal(double inches);

/// What a balloon is inflated to, to a tenth: "9.0 in" or "22.9 cm".
std::string print_inflated(double metres, LengthStyle lengths);

/// How much of a supply: "7", "14' 9\"" or "4.50 m", "22.0 lb" or "10.0 kg", "2.50 l".
std::string print_quantity(const SupplyLine& line, LengthStyle lengths);

/// "2 × 100 + 1 × 50"; "from the packs above", "no colour chosen", "not sold in this size" where nothing is bought.
std::string print_packs(const BalloonLine& line);

/// How its counts are to be taken: "as last calculated", "not built", or empty where they are those of its build.
std::string print_state(const PieceCount& piece);

}  // namespace quadrille
