// What must hold for a piece to stand, each as a utilisation: what is asked of it by what it bears.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/assumptions.hpp"
#include "studio/standing/piece_frame.hpp"
#include "studio/statics/equilibrium.hpp"

namespace quadrille {

/// One check at one place under one wind.
struct StandingCheck {
  std::string code;  ///< stable: "tips", "slides", "lifts", "socket", "rod", "joint", "line", "anchor", "hook", "lean",
                     ///< "topples", "no-rest" (none was found within the bound on the work)
  std::string where;            ///< for people: "foot 1 from the left", "line front-1"; empty = the piece as a whole
  double utilisation = 0;       ///< 0 or more; above 1 it fails; never above most_utilisation
  double direction_deg = 0;     ///< of the wind that asks the most
  double value = 0, limit = 0;  ///< what is asked and borne, in `unit`
  std::string unit;
  std::string source;  ///< where the limit comes from
  bool operator==(const StandingCheck&) const = default;
};

/// Stands for all that is beyond measure, so that every figure is finite.
inline constexpr double most_utilisation = 1000;

/// What the checks of one piece need to know besides the state of its frame.
struct CheckedPiece {
  const Piece& piece;
  const PlacedPiece& placed;
  const Area& area;
  const std::vector<RiggedLine>& lines;
  const std::vector<std::size_t>& line_numbers;  ///< of each rigged line: its place in placed.lines
  const Assumptions& assumptions;
};

/// The worst place of each check in this state, which has converged; in a fixed order. The lean is how far the highest
/// point is from where it is drawn: what the piece's own weight does to it counts; what swings from hooks has none.
/// Not checked: the plate's own bending and how the rod sits in it (what is sold together is made for each other), and
/// soft ground under the plate's edge (a plate of 16 kg presses less than a foot does). A plate counts as tipping when it
/// begins to rock, also where lines would then hold the piece: they are let do no more than keep it from leaning.
std::vector<StandingCheck> checks_of(const CheckedPiece& checked, const FrameModel& model, const Equilibrium& state,
                                     double direction_deg);

/// What the frame does to a base plate, as it turns it over, drags, turns and lifts it: what the plate must do against
/// that, and what weight does for it.
struct PlateDemand {
  double down_n = 0, up_n = 0;          ///< what the frame presses it down with, or pulls it up
  double over_x_nm = 0, over_y_nm = 0;  ///< about its edges across the depth and across the width
  /// The level pull and, for a plate that is turned on the ground, as much as turns it by the same friction.
  double drag_n = 0;
};
/// `reaction` is what the ground exerts on the frame there. Twist counts by the mean distance of a square's points from its
/// middle, 0.3826 of its side (by integration), of the shorter side.
PlateDemand plate_demand(const Support& plate, const Reaction& reaction);

/// What a base plate must weigh [kg], with all that is on it, so that it neither tips nor slides nor lifts; nothing where
/// no weight will do, as on a plate without width.
std::optional<double> needed_on_plate_kg(const Support& plate, const Reaction& reaction, double friction,
                                         double counted_share);

/// What a stake holds [N] in a pull of this direction, by what it holds in a level pull: less, the steeper it is pulled;
/// `steep_share` of it straight up. Between them by the square of the pull's rise over its length.
double stake_hold_n(const Vec3& pull_n, double level_hold_n, double steep_share);

/// Whether the line's anchor cannot hold at all: a stake in hard ground, a structure that nobody has allowed.
bool holds_nothing(const SecuringLine& line, const Area& area);

/// Whether a line runs nearly straight down, with less level run than `level_share` of its height: it holds to no side.
bool is_steep(const LineRun& run, double level_share);

/// The assumption that says what a hook of the piece bears: by what its supplies hang it with.
const char* hook_assumption(const Piece& piece);

/// The weight [N] that a dead weight must have so that a line does not drag it: the level part of the pull by the friction
/// of what the upright part leaves on the ground. `pull_on_piece_n` is what the line does to the piece; `friction` above 0.
double dead_weight_needed_n(const Vec3& pull_on_piece_n, double friction);

/// Keeps of each code the worse of both lists; `into` keeps its order, new codes come last.
void keep_worst(std::vector<StandingCheck>& into, const std::vector<StandingCheck>& others);

/// The check with the highest utilisation, or null where there is none.
const StandingCheck* worst_of(const std::vector<StandingCheck>& checks);

/// "line front-1", or "line front-1 (2)" where several begin there: how lines[line] is called; the number counts them in
/// the order of the piece's lines.
std::string name_of_line(const std::vector<SecuringLine>& lines, std::size_t line);

/// "left foot", "foot 3 from the left", "hook 2": how a support is called.
std::string name_of_support(const Piece& piece, std::size_t support);

}  // namespace quadrille
