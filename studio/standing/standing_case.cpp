#include "studio/standing/standing_case.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/standing/hanging.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

constexpr double first_gust_m_s = 2;      // where the search for the limit begins
constexpr double gust_growth = 1.35;      // between two gusts on the way up
constexpr int most_matrices = 400;        // for one gust; a gust next to a known one takes about five
constexpr double limit_precision = 0.01;  // of the limit gust, relative

std::vector<Push> grown(const std::vector<Push>& pushes, double factor) {
  std::vector<Push> result = pushes;
  for (Push& push : result) {
    push.force_n *= factor;
    push.moment_nm *= factor;
  }
  return result;
}

StandingCheck topples(double reached, double direction_deg, const std::string& reason) {
  const double part = std::clamp(reached, 1 / most_utilisation, 1.0);
  return {"topples", {}, std::max(1 / part, 1.001), direction_deg, 1, part, "of the load", reason};
}

}  // namespace

std::vector<double> wind_directions() {
  std::vector<double> directions{90, 270, 0, 180};
  for (int step = 1; step < 16; ++step)
    if (step % 4 != 0) directions.push_back(22.5 * step);
  return directions;
}

StandingCase::StandingCase(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece)
    : area_(area),
      placed_(placed),
      piece_(piece),
      assumptions_(event),
      loads_(piece, area.site, assumptions_),
      analysis_([&] {
        if (piece.frame.members.empty() && !placed.lines.empty())
          faults_.push_back(
              "It hangs on hooks or ties, and its lines are not reckoned with: each hook bears its part.");
        for (std::size_t i = 0; i < placed.lines.size(); ++i) {
          const SecuringLine& line = placed.lines[i];
          const Result<LineRun> run = run_of(line, placed, piece, area);
          const Cord* const cord = find_cord(line.cord);
          if (!run) faults_.push_back(run.error);
          if (cord == nullptr) faults_.push_back("No kind of cord is called \"" + line.cord + "\".");
          if (!run || cord == nullptr) continue;
          lines_.push_back({*run, *cord});
          line_numbers_.push_back(i);
        }
        return frame_of_piece(piece, lines_, assumptions_);
      }()) {}

const WindAnswer& StandingCase::at_rest() {
  if (!rest_) rest_ = answer(loads_.weight(), 0, nullptr, nullptr);
  return *rest_;
}

WindAnswer StandingCase::answer(const std::vector<Push>& pushes, double direction_deg, const WindAnswer* rest,
                                const FrameState* start) {
  WindAnswer result;
  SolveOptions options;
  options.most_iterations = most_matrices;
  options.past_loss = false;  // what buckles does not stand, wherever it would come to rest
  const bool framed = !piece_.frame.members.empty();
  result.state = framed ? analysis_.solve({pushes, {}}, options, start) : hung(piece_, pushes);
  result.stands = result.state.converged();
  if (!result.stands) {
    result.reason = result.state.reason;
    result.checks = {topples(result.state.reached, direction_deg, "no rest was found")};
    return result;
  }
  const Equilibrium& unloaded = rest == nullptr ? result.state : rest->state;
  result.checks = checks_of({piece_, placed_, area_, lines_, line_numbers_, assumptions_}, analysis_.model(),
                            result.state, unloaded, direction_deg);
  return result;
}

const std::vector<Push>& StandingCase::wind_from(double direction_deg) {
  for (const auto& [direction, pushes] : winds_)
    if (direction == direction_deg) return pushes;
  return winds_.emplace_back(direction_deg, loads_.wind_at_1_pa(direction_deg)).second;
}

WindAnswer StandingCase::in_wind(double gust_m_s, double direction_deg, const WindAnswer* near) {
  const WindAnswer& rest = at_rest();
  if (!rest.stands) return rest;
  std::vector<Push> pushes =
      grown(wind_from(direction_deg), velocity_pressure_pa(gust_m_s, assumptions_["air-density"]));
  pushes.insert(pushes.end(), loads_.weight().begin(), loads_.weight().end());
  const FrameState& start = near != nullptr && near->stands ? near->state.state : rest.state.state;
  return answer(pushes, direction_deg, &rest, &start);
}

WindAnswer StandingCase::pushed(double push_n, double height_m, double direction_deg) {
  const WindAnswer& rest = at_rest();
  if (!rest.stands) return rest;
  std::uint32_t nearest = 0;
  const auto& nodes = piece_.frame.nodes;
  for (std::uint32_t node = 0; node < nodes.size(); ++node)
    if (std::abs(nodes[node].z() - height_m) < std::abs(nodes[nearest].z() - height_m)) nearest = node;
  std::vector<Push> pushes = loads_.weight();
  pushes.push_back({nearest, push_n * wind_way(direction_deg)});
  return answer(pushes, direction_deg, &rest, &rest.state.state);
}

void StandingCase::needs(const WindAnswer& answer, AllRound& all) const {
  const double friction = assumptions_.friction(area_.site.ground), counted = assumptions_["ballast-share"];
  for (std::size_t i = 0; i < piece_.supports.size(); ++i) {
    const Support& foot = piece_.supports[i];
    if (foot.kind != SupportKind::plate) continue;
    const double needed = needed_on_plate_kg(foot, answer.state.supports[i], friction, counted);
    all.ballast_needed_kg = std::max(all.ballast_needed_kg, needed - foot.own_mass_kg);
  }
}

StandingCase::AllRound StandingCase::all_round(double gust_m_s) {
  AllRound all;
  all.worst = at_rest();
  for (const double direction : wind_directions()) {
    WindAnswer answer = in_wind(gust_m_s, direction);
    keep_worst(all.checks, answer.checks);
    if (all.stands && !answer.stands) all.reason = answer.reason;
    all.stands = all.stands && answer.stands;
    if (answer.stands) {
      needs(answer, all);
      for (std::size_t i = 0; i < answer.state.state.shifts.size(); ++i)
        all.farthest_m = std::max(all.farthest_m, (answer.state.state.shifts[i] - rest_->state.state.shifts[i]).norm());
    }
    if (direction == wind_directions().front() || answer.utilisation() > all.worst.utilisation()) {
      all.worst = std::move(answer);
      all.direction_deg = direction;
    }
  }
  return all;
}

GustLimit StandingCase::limit() {
  GustLimit limit{highest_gust_m_s, true, {}};
  const WindAnswer& rest = at_rest();
  if (rest.utilisation() > 1) return {0, false, *worst_of(rest.checks)};
  for (const double direction : wind_directions()) {
    // Upwards in steps until something fails; a direction that bears what the others bore is done.
    double bears = 0, fails = 0;
    WindAnswer last = rest, failed;
    for (double gust = first_gust_m_s; fails == 0; gust *= gust_growth) {
      gust = std::min(gust, limit.gust_m_s);
      WindAnswer next = in_wind(gust, direction, &last);
      if (next.utilisation() > 1) {
        fails = gust;
        failed = std::move(next);
      } else {
        last = std::move(next);
        bears = gust;
        if (gust >= limit.gust_m_s) break;
      }
    }
    if (fails == 0) continue;
    while (fails - bears > limit_precision * fails) {
      const double between = (bears + fails) / 2;
      WindAnswer next = in_wind(between, direction, &last);
      (next.utilisation() > 1 ? fails : bears) = between;
      (next.utilisation() > 1 ? failed : last) = std::move(next);
    }
    limit = {bears, false, *worst_of(failed.checks)};
  }
  return limit;
}

}  // namespace quadrille
