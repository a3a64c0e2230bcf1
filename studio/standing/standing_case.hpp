// One piece in its area with its lines, ready to be asked how it stands in a wind.
//
// What counts as toppling. A piece that keeps its shape under a load is judged by its checks. One that loses its stability
// on the way there, by its own weight or in a gust, moves to another shape, and then it
//  - topples where no rest is found, and where no line pulls in the shape it comes to: nothing has caught it, and what
//    buckles under a gust may as well do so again with the next;
//  - topples where lines have caught it later than the lean allows;
//  - is judged by its checks at the rest it came to, like any other, where lines have caught it before that.
// The lean counts from the drawn shape, so that the way to the catch is in it. A piece that falls under its own weight
// may fall either way: both are tried, and the worse one counts. The jerk of the catch is left to the factors on lines
// and anchors: hand-tight lines let it fall by a few centimetres.
//
// A gust is reached from rest over the rungs of a ladder of smaller gusts, each found from the one below: a limp piece is
// followed in small steps, and what has toppled on a rung does not stand in any gust above. Where no rest is found within
// the bound on the work, the check is "no-rest" and nothing is said of toppling.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studio/standing/checks.hpp"
#include "studio/standing/piece_loads.hpp"

namespace quadrille {

/// How the piece stands in one wind.
struct WindAnswer {
  bool stands = false;                ///< rest was found, it is stable, and the piece has not toppled into it
  std::string reason;                 ///< why not
  std::vector<StandingCheck> checks;  ///< "topples" or "no-rest" alone where it does not stand
  Equilibrium state;
  double utilisation() const { return checks.empty() ? 0 : worst_of(checks)->utilisation; }
};

/// Wind directions that are looked at, in degrees: every 22.5°, front and back first.
std::vector<double> wind_directions();

/// The gust [m/s] with this number: 0.05 m/s × 1.01^number, at most highest_gust_m_s. Limits are among them, so that two
/// pieces of which one bears whatever the other bears are asked about the same gusts.
double gust_of_number(int number);
inline constexpr int top_gust_number = 652;  ///< of highest_gust_m_s

/// No gust above this is looked at [m/s]: the top of the Beaufort scale.
inline constexpr double highest_gust_m_s = 32.7;

inline constexpr double most_ballast_kg = 10'000;

/// Belongs to one thread. What it is made from outlives it. Its answers depend on what is asked alone, not on what was
/// asked before, until the work of all questions comes to its bound: every further one is answered with "no rest was found
/// within the bound on the work".
class StandingCase {
 public:
  /// Lines of the piece that do not run (no such tie point…) are left out, as are all of a piece that has no frame; see
  /// `faults()` for which and why; those that hold nothing as well, and without a fault. `loads` are those of the piece in
  /// this area, where another case of it, with other lines, has them already.
  StandingCase(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece,
               std::shared_ptr<const PieceLoads> loads = nullptr);
  StandingCase(const StandingCase&) = delete;  // its parts refer to each other
  StandingCase& operator=(const StandingCase&) = delete;

  const std::vector<std::string>& faults() const { return faults_; }
  const std::vector<RiggedLine>& lines() const { return lines_; }
  /// The place in PlacedPiece::lines of the rigged line with this place in lines().
  std::size_t number_of_line(std::size_t rigged) const { return line_numbers_[rigged]; }
  /// What the event says of that line.
  const SecuringLine& asked_line(std::size_t rigged) const { return placed_.lines[line_numbers_[rigged]]; }
  const Piece& piece() const { return piece_; }
  const Assumptions& assumptions() const { return assumptions_; }
  const Area& area() const { return area_; }
  const std::shared_ptr<const PieceLoads>& loads() const { return loads_; }
  int work() const { return work_; }  ///< matrices factorised so far
  /// Bounds the work of all questions to about this many matrices instead of 60,000; an ordinary piece takes 1,000 to
  /// 5,000 for all that is asked about it.
  void bound_work(int most_matrices) { most_work_ = most_matrices; }

  /// Without any wind, under its own weight.
  const WindAnswer& at_rest();
  /// In a gust of 0 to highest_gust_m_s from one direction. Where the piece has toppled on a rung below, its state is the
  /// one there.
  WindAnswer in_wind(double gust_m_s, double direction_deg);
  /// What the wind pushes with at that gust [Pa]: ½ρv² of the air there, by the factor for what swings.
  double pressure_pa(double gust_m_s) const;
  /// Under a level push of `push_n` at `height_m`, in the worst of the directions: what people do who lean on it.
  WindAnswer pushed(double push_n, double height_m, double direction_deg);
  /// The worst place and direction of each check in this gust; and the answer of the direction that governs. What topples
  /// from the front, from behind or from a side is not looked at from the slants as well.
  struct AllRound {
    std::vector<StandingCheck> checks;
    WindAnswer worst;
    double direction_deg = 0;
    /// On each foot, beside its plate's own mass, to keep all plates down and still; at most most_ballast_kg, which is
    /// more than any plate takes.
    double ballast_needed_kg = 0;
    bool stands = true;
    std::string reason;     ///< why not, from the first direction in which it does not
    double farthest_m = 0;  ///< how far any point of the frame is from where it is drawn, in any direction
    /// Of each rigged line the greatest pull [N] and the wind in which it has it, of directions in which it stands.
    struct Pull {
      double tension_n = 0, direction_deg = 0;
    };
    std::vector<Pull> greatest_pulls;
  };
  AllRound all_round(double gust_m_s);
  /// The ballast of AllRound for one answer that stands.
  double ballast_needed_kg(const WindAnswer& answer) const;

 private:
  /// The loads that a state is sought on the way between, as parts of all of it.
  struct Way {
    double from = 0, to = 1;
    double part(double reached) const { return (from + reached * (to - from)) / to; }
  };
  Equilibrium rest_under(const std::vector<Push>& pushes, const FrameState* start);
  WindAnswer judged(Equilibrium state, double direction_deg, const Way& way) const;
  WindAnswer blown(double gust_m_s, double direction_deg, double from_m_s, const WindAnswer& from);
  std::optional<WindAnswer> fallen_the_other_way(const Equilibrium& fallen);

  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& piece_;
  Assumptions assumptions_;
  std::vector<RiggedLine> lines_;
  std::vector<std::size_t> line_numbers_;
  std::vector<std::string> faults_;
  std::shared_ptr<const PieceLoads> loads_;
  FrameAnalysis analysis_;
  std::optional<WindAnswer> rest_;
  std::map<double, std::vector<WindAnswer>> rungs_;  ///< by direction, from the lowest; none above one that topples
  int work_ = 0, most_work_ = 60'000;
};

}  // namespace quadrille
