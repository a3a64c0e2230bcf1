#include "studio/standing/gust_series.hpp"

#include <cmath>
#include <limits>
#include <map>
#include <memory>
#include <utility>

#include "studio/standing/counted_lines.hpp"

namespace quadrille {

namespace {

PlacedPiece counted_on(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece) {
  if (placed.lines.empty()) return placed;
  const auto loads = std::make_shared<const PieceLoads>(piece, area.site, Assumptions(event));
  return secured(event, area, placed, piece, loads).placed;
}

}  // namespace

GustSeries::GustSeries(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece)
    : placed_(counted_on(event, area, placed, piece)), case_(event, area, placed_, piece) {
  // Somebody may move the slider for an hour: each question has its own bound on the work.
  case_.bound_work(std::numeric_limits<int>::max());
  std::map<std::uint32_t, OnFrame> by_cluster;
  for (const Cluster& cluster : piece.clusters)
    by_cluster[cluster.number] = nearest_on_frame(piece.frame, cluster.centre);
  for (const Balloon& balloon : piece.balloons) {
    const auto held = by_cluster.find(balloon.cluster);
    carried_.push_back(held != by_cluster.end() ? held->second : nearest_on_frame(piece.frame, balloon.centre));
  }
}

GustState GustSeries::state_of(const WindAnswer& answer, double gust_m_s, double direction_deg) const {
  GustState state;
  state.gust_m_s = gust_m_s;
  state.direction_deg = direction_deg;
  state.stands = answer.stands;
  state.reason = answer.reason;
  state.checks = answer.checks;
  if (!answer.state.converged()) return state;
  const Piece& piece = case_.piece();
  const std::vector<Vec3>& shifts = answer.state.state.shifts;
  for (std::size_t node = 0; node < shifts.size(); ++node) {
    state.deflected.push_back(piece.frame.nodes[node] + shifts[node]);
    if (shifts[node].norm() > state.farthest_m.norm()) state.farthest_m = shifts[node];
  }
  for (std::size_t i = 0; i < carried_.size(); ++i) {
    const OnFrame& at = carried_[i];
    state.balloons.push_back(piece.balloons[i].centre + (1 - at.share) * shifts[at.from] + at.share * shifts[at.to]);
  }
  return state;
}

GustState GustSeries::from(double gust_m_s, double direction_deg) {
  return state_of(case_.in_wind(gust_m_s, direction_deg), gust_m_s, direction_deg);
}

std::optional<GustState> GustSeries::all_round(double gust_m_s, const std::function<bool()>& stop) {
  std::vector<StandingCheck> checks;
  std::optional<WindAnswer> worst;
  double worst_deg = 0;
  bool stands = true;
  std::string reason;
  for (const double direction : wind_directions()) {
    if (stop()) return std::nullopt;
    if (!stands && std::fmod(direction, 90) != 0) break;  // what topples squarely is not asked about on the slant
    WindAnswer answer = case_.in_wind(gust_m_s, direction);
    keep_worst(checks, answer.checks);
    if (stands && !answer.stands) reason = answer.reason;
    stands = stands && answer.stands;
    if (worst && answer.utilisation() <= worst->utilisation()) continue;
    worst = std::move(answer);
    worst_deg = direction;
  }
  GustState state = state_of(*worst, gust_m_s, worst_deg);
  state.all_round = true;
  state.checks = std::move(checks);
  state.stands = stands;
  state.reason = reason;
  return state;
}

}  // namespace quadrille
