// One piece asked about one gust after another, as somebody does who moves a slider.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "studio/standing/on_frame.hpp"
#include "studio/standing/standing_case.hpp"

namespace quadrille {

/// A piece in one gust.
struct GustState {
  double gust_m_s = 0;
  bool all_round = false;             ///< every direction was looked at; otherwise `direction_deg` alone
  bool stands = false;                ///< it does not topple, from any direction that was looked at
  std::string reason;                 ///< why not
  std::vector<StandingCheck> checks;  ///< the worst place and direction of each, in a fixed order
  double direction_deg = 0;           ///< of the wind that asks the most: what follows is from there
  std::vector<Vec3> deflected;     ///< nodes of the frame at rest [m], in the piece's frame; empty where there is none
  std::vector<Vec3> balloons;      ///< centres of the balloons [m], likewise
  Vec3 farthest_m = Vec3::Zero();  ///< how the node that moved farthest moved from where it is drawn [m]
  double utilisation() const { return checks.empty() ? 0 : worst_of(checks)->utilisation; }
};

/// Belongs to one thread; remembers what does not change from gust to gust. What it is made from outlives it. `piece` has
/// a frame with nodes, and supports. Lines that cannot be counted on are left out, as in stand().
class GustSeries {
 public:
  GustSeries(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece);
  GustSeries(const GustSeries&) = delete;  // its case refers to its own piece
  GustSeries& operator=(const GustSeries&) = delete;

  /// In a gust of 0 to highest_gust_m_s from one direction [degrees, as wind_way()].
  GustState from(double gust_m_s, double direction_deg);
  /// From every direction; nothing where `stop` said so before all were looked at. The same checks as
  /// StandingCase::all_round().
  std::optional<GustState> all_round(double gust_m_s, const std::function<bool()>& stop);

 private:
  GustState state_of(const WindAnswer& answer, double gust_m_s, double direction_deg) const;

  PlacedPiece placed_;  ///< with the lines that count
  StandingCase case_;
  std::vector<OnFrame> carried_;  ///< by balloon: with its cluster, or where it is itself
};

}  // namespace quadrille
