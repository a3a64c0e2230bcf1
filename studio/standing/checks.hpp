// What must hold for a piece to stand, each as a utilisation: what is asked of it by what it bears.
#pragma once

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
                     ///< "topples"
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

/// The worst place of each check in this state, in a fixed order; `rest` is the state without wind, from which the lean
/// counts. Both have converged.
std::vector<StandingCheck> checks_of(const CheckedPiece& checked, const FrameModel& model, const Equilibrium& state,
                                     const Equilibrium& rest, double direction_deg);

/// What a base plate must weigh [kg], with all that is on it, so that it neither tips nor slides nor lifts under what the
/// frame does to it; `reaction` is what the ground exerts on the frame there.
double needed_on_plate_kg(const Support& plate, const Reaction& reaction, double friction, double counted_share);

/// The weight [N] that a dead weight must have so that a line does not drag it: the level part of the pull by the friction
/// of what the upright part leaves on the ground. `pull_on_piece_n` is what the line does to the piece; `friction` above 0.
double dead_weight_needed_n(const Vec3& pull_on_piece_n, double friction);

/// Keeps of each code the worse of both lists; `into` keeps its order, new codes come last.
void keep_worst(std::vector<StandingCheck>& into, const std::vector<StandingCheck>& others);

/// The check with the highest utilisation, or null where there is none.
const StandingCheck* worst_of(const std::vector<StandingCheck>& checks);

/// "left foot", "foot 3 from the left", "hook 2": how a support is called.
std::string name_of_support(const Piece& piece, std::size_t support);

}  // namespace quadrille
