// A piece's securing lines as one lays them: how long, how steep, and where the anchor stands from the nearest foot.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sdk/units.hpp"
#include "studio/model/event.hpp"
#include "studio/model/securing.hpp"

namespace quadrille {

struct AnchoredLine {
  std::size_t line = 0;            ///< in placed.lines
  LineRun run;                     ///< in the piece's frame
  double length_m = 0;             ///< from tie point to anchor, straight
  double cut_m = 0;                ///< to cut for it: see line_to_cut_m
  double to_ground_rad = 0;        ///< angle to the ground, 0 to 90°
  std::string foot;                ///< name of the foot nearest to the anchor; empty where the piece has none
  double right_m = 0, away_m = 0;  ///< of the anchor from that foot, or from the piece's place
};

/// The lines that can run, in order.
std::vector<AnchoredLine> anchored_lines(const PlacedPiece& placed, const Piece& piece, const Area& area);

/// A place from where one stands, seen from the front: "2.60 m out in front, 0.40 m to the left"; what is under half a
/// centimetre is left out, and "right there" is all that is left then.
std::string print_way(double right_m, double away_m, LengthStyle lengths);

/// What a line is anchored to: "stake", "dead weight, 20.0 kg", "Gate post, left, 1.60 m up".
std::string print_anchor(const SecuringLine& line, const Area& area, LengthStyle lengths);

}  // namespace quadrille
