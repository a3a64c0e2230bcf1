// One piece in its area with its lines, ready to be asked how it stands in a wind.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "studio/standing/checks.hpp"
#include "studio/standing/piece_loads.hpp"

namespace quadrille {

/// How the piece stands in one wind.
struct WindAnswer {
  bool stands = false;                ///< rest was found, and it is stable
  std::string reason;                 ///< why not
  std::vector<StandingCheck> checks;  ///< "topples" alone where no rest was found
  Equilibrium state;
  double utilisation() const { return checks.empty() ? 0 : worst_of(checks)->utilisation; }
};

/// The gust at which the first check fails.
struct GustLimit {
  double gust_m_s = 0;
  bool beyond = false;      ///< nothing fails up to the highest gust that is looked at
  StandingCheck governing;  ///< of the first check that fails; empty code where `beyond`
};

/// Wind directions that are looked at, in degrees: every 22.5°, front and back first.
std::vector<double> wind_directions();

/// No gust above this is looked at [m/s]: the top of the Beaufort scale.
inline constexpr double highest_gust_m_s = 32.7;

/// Belongs to one thread. What it is made from outlives it.
class StandingCase {
 public:
  /// Lines of the piece that do not run (no such tie point…) are left out; `faults()` says which and why.
  StandingCase(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece);

  const std::vector<std::string>& faults() const { return faults_; }
  const std::vector<RiggedLine>& lines() const { return lines_; }
  /// What the event says of the rigged line with this place in lines().
  const SecuringLine& asked_line(std::size_t rigged) const { return placed_.lines[line_numbers_[rigged]]; }
  const Piece& piece() const { return piece_; }
  const Assumptions& assumptions() const { return assumptions_; }
  const Area& area() const { return area_; }

  /// Without any wind, under its own weight.
  const WindAnswer& at_rest();
  /// In a gust of 0 to highest_gust_m_s from one direction; `near` is the answer for a smaller gust from there, if known.
  WindAnswer in_wind(double gust_m_s, double direction_deg, const WindAnswer* near = nullptr);
  /// Under a level push of `push_n` at `height_m`, in the worst of the directions: what people do who lean on it.
  WindAnswer pushed(double push_n, double height_m, double direction_deg);
  /// The worst place and direction of each check in this gust; and the answer of the direction that governs.
  struct AllRound {
    std::vector<StandingCheck> checks;
    WindAnswer worst;
    double direction_deg = 0;
    double ballast_needed_kg = 0;  ///< on each foot, beside its plate's own mass, to keep all plates down and still
    bool stands = true;
    std::string reason;     ///< why not, from the first direction in which it does not
    double farthest_m = 0;  ///< how far any point of the frame moves, in any direction
  };
  AllRound all_round(double gust_m_s);
  /// To one part in a hundred.
  GustLimit limit();

 private:
  /// `rest` is null for the answer at rest itself.
  WindAnswer answer(const std::vector<Push>& pushes, double direction_deg, const WindAnswer* rest,
                    const FrameState* start);
  const std::vector<Push>& wind_from(double direction_deg);
  void needs(const WindAnswer& answer, AllRound& all) const;

  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& piece_;
  Assumptions assumptions_;
  std::vector<RiggedLine> lines_;
  std::vector<std::size_t> line_numbers_;
  std::vector<std::string> faults_;
  PieceLoads loads_;
  FrameAnalysis analysis_;
  std::optional<WindAnswer> rest_;
  std::vector<std::pair<double, std::vector<Push>>> winds_;  ///< at 1 Pa, by direction
};

}  // namespace quadrille
