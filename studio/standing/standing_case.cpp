#include "studio/standing/standing_case.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/standing/dead_load.hpp"
#include "studio/standing/hanging.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

constexpr int most_matrices = 400;      // from one rung to the next; where little changes it takes about five
constexpr int most_at_rest = 1500;      // from nothing to rest under its own weight
constexpr int first_rung = 370;         // a gust of 2 m/s
constexpr int between_rungs = 30;       // each a third above the last
constexpr double nudge_share = 0.02;    // of the weight: sends a piece that falls by itself the other way
constexpr double least_fall_m = 0.001;  // of the crown: less has no side

std::vector<Push> grown(const std::vector<Push>& pushes, double factor) {
  std::vector<Push> result = pushes;
  for (Push& push : result) {
    push.force_n *= factor;
    push.moment_nm *= factor;
  }
  return result;
}

/// Code "topples", or "no-rest" where nothing was found within the bound on the work. `part`: of the load, that was borne.
StandingCheck does_not_stand(Outcome outcome, double part, double direction_deg) {
  const bool given_up = outcome == Outcome::out_of_steps || outcome == Outcome::bad_model;
  const double borne = std::clamp(part, 1 / most_utilisation, 1.0);
  return {given_up ? "no-rest" : "topples",
          {},
          std::max(1 / borne, 1.001),
          direction_deg,
          1,
          borne,
          "of the load",
          given_up ? "the work was given up" : "no stable shape was found"};
}

/// The highest node of the frame; the first of several.
std::size_t crown_of(const Frame& frame) {
  const auto highest = std::ranges::max_element(frame.nodes, {}, [](const Vec3& node) { return node.z(); });
  return static_cast<std::size_t>(highest - frame.nodes.begin());
}

}  // namespace

std::vector<double> wind_directions() {
  std::vector<double> directions{90, 270, 0, 180};
  for (int step = 1; step < 16; ++step)
    if (step % 4 != 0) directions.push_back(22.5 * step);
  return directions;
}

double gust_of_number(int number) { return std::min(highest_gust_m_s, 0.05 * std::pow(1.01, number)); }

StandingCase::StandingCase(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece,
                           std::shared_ptr<const PieceLoads> loads)
    : area_(area),
      placed_(placed),
      piece_(piece),
      assumptions_(event),
      loads_(loads ? std::move(loads) : std::make_shared<const PieceLoads>(piece, area.site, assumptions_)),
      analysis_([&] {
        const bool framed = !piece.frame.members.empty();
        if (!framed && !placed.lines.empty())
          faults_.push_back("It hangs on hooks or ties; its securing lines are not reckoned with.");
        for (std::size_t i = 0; framed && i < placed.lines.size(); ++i) {
          const SecuringLine& line = placed.lines[i];
          if (holds_nothing(line, area)) continue;
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
  if (rest_) return *rest_;
  WindAnswer rest = judged(rest_under(loads_->weight(), nullptr), 0, {});
  if (rest.stands && rest.state.lost_stability_at) {
    std::optional<WindAnswer> other = fallen_the_other_way(rest.state);
    if (other && other->utilisation() > rest.utilisation()) rest = std::move(*other);
  }
  return rest_.emplace(std::move(rest));
}

/// The rest to which a piece comes that is pushed, as it begins to fall, against the way it has fallen.
std::optional<WindAnswer> StandingCase::fallen_the_other_way(const Equilibrium& fallen) {
  const std::size_t crown = crown_of(piece_.frame);
  Vec3 way = fallen.state.shifts[crown];
  way.z() = 0;
  if (way.norm() < least_fall_m) return std::nullopt;
  double weight = 0;
  for (const Push& push : loads_->weight()) weight += push.force_n.norm();
  std::vector<Push> nudged = loads_->weight();
  nudged.push_back({static_cast<std::uint32_t>(crown), -nudge_share * weight * way.normalized()});
  Equilibrium other = rest_under(nudged, nullptr);
  if (other.converged()) other = rest_under(loads_->weight(), &other.state);
  other.lost_stability_at = fallen.lost_stability_at;
  return judged(std::move(other), 0, {});
}

Equilibrium StandingCase::rest_under(const std::vector<Push>& pushes, const FrameState* start) {
  if (piece_.frame.members.empty()) return hung(piece_, pushes, assumptions_["hook-slack"]);
  SolveOptions options;
  options.most_iterations = std::min(start == nullptr ? most_at_rest : most_matrices, most_work_ - work_);
  options.past_loss = !lines_.empty();  // only lines can catch what loses its stability
  if (options.most_iterations <= 0) {
    Equilibrium none;
    none.reason = "No rest was found within the bound on the work: treat the piece as not standing.";
    return none;
  }
  Equilibrium state = analysis_.solve({pushes, {}}, options, start);
  work_ += state.iterations;
  return state;
}

WindAnswer StandingCase::judged(Equilibrium state, double direction_deg, const Way& way) const {
  WindAnswer result;
  result.state = std::move(state);
  const auto not_standing = [&](StandingCheck check, std::string reason) {
    result.checks = {std::move(check)};
    result.reason = std::move(reason);
  };
  const Equilibrium& found = result.state;
  if (!found.converged()) {
    const double part = way.part(std::min(found.reached, found.lost_stability_at.value_or(1)));
    not_standing(does_not_stand(found.outcome, part, direction_deg), found.reason);
    return result;
  }
  result.checks =
      checks_of({piece_, placed_, area_, lines_, line_numbers_, assumptions_}, analysis_.model(), found, direction_deg);
  if (found.lost_stability_at) {
    const bool caught = std::ranges::any_of(found.cables, [](const auto& line) { return line.tension_n > 0; });
    if (!caught) {
      not_standing(does_not_stand(Outcome::unstable, way.part(*found.lost_stability_at), direction_deg),
                   "It does not keep its shape under this load, and no line catches it.");
      return result;
    }
    StandingCheck lean = *std::ranges::find(result.checks, "lean", &StandingCheck::code);
    lean.code = "topples";
    if (lean.utilisation > 1) {
      not_standing(std::move(lean), "It does not keep its shape under this load, and its lines catch it too late.");
      return result;
    }
  }
  result.stands = true;
  return result;
}

double StandingCase::pressure_pa(double gust_m_s) const {
  const double air = std::max(assumptions_["air-density"], air_at(area_.site).density_kg_m3);
  return assumptions_["swing-factor"] * velocity_pressure_pa(gust_m_s, air);
}

WindAnswer StandingCase::blown(double gust_m_s, double direction_deg, double from_m_s, const WindAnswer& from) {
  std::vector<Push> pushes = grown(loads_->wind_at_1_pa(direction_deg), pressure_pa(gust_m_s));
  pushes.insert(pushes.end(), loads_->weight().begin(), loads_->weight().end());
  const double whole = gust_m_s > 0 ? gust_m_s * gust_m_s : 1;
  return judged(rest_under(pushes, &from.state.state), direction_deg, {from_m_s * from_m_s, whole});
}

WindAnswer StandingCase::in_wind(double gust_m_s, double direction_deg) {
  const WindAnswer& rest = at_rest();
  if (!rest.stands) return rest;
  std::vector<WindAnswer>& rungs = rungs_[direction_deg];
  const auto height = [](std::size_t rung) {
    return gust_of_number(first_rung + between_rungs * static_cast<int>(rung));
  };
  std::size_t below = 0;
  for (; height(below) <= gust_m_s && height(below) < highest_gust_m_s; ++below) {
    if (below == rungs.size())
      rungs.push_back(
          blown(height(below), direction_deg, below > 0 ? height(below - 1) : 0, below > 0 ? rungs[below - 1] : rest));
    if (rungs[below].stands) continue;
    WindAnswer toppled = rungs[below];
    StandingCheck& check = toppled.checks.front();
    if (check.unit != "of the load") return toppled;
    const double less = height(below) / gust_m_s;
    check = does_not_stand(toppled.state.outcome, check.limit * less * less, direction_deg);
    return toppled;
  }
  if (below > 0 && height(below - 1) == gust_m_s) return rungs[below - 1];
  return blown(gust_m_s, direction_deg, below > 0 ? height(below - 1) : 0, below > 0 ? rungs[below - 1] : rest);
}

WindAnswer StandingCase::pushed(double push_n, double height_m, double direction_deg) {
  const WindAnswer& rest = at_rest();
  if (!rest.stands) return rest;
  std::uint32_t nearest = 0;
  const auto& nodes = piece_.frame.nodes;
  for (std::uint32_t node = 0; node < nodes.size(); ++node)
    if (std::abs(nodes[node].z() - height_m) < std::abs(nodes[nearest].z() - height_m)) nearest = node;
  std::vector<Push> pushes = loads_->weight();
  pushes.push_back({nearest, push_n * wind_way(direction_deg)});
  return judged(rest_under(pushes, &rest.state.state), direction_deg, {});
}

double StandingCase::ballast_needed_kg(const WindAnswer& answer) const {
  const double friction = assumptions_.friction(area_.site.ground), counted = assumptions_["ballast-share"];
  double most = 0;
  for (std::size_t i = 0; i < piece_.supports.size(); ++i) {
    const Support& foot = piece_.supports[i];
    if (foot.kind != SupportKind::plate) continue;
    const auto needed = needed_on_plate_kg(foot, answer.state.supports[i], friction, counted);
    most = std::max(most, needed ? *needed - foot.own_mass_kg : most_ballast_kg);
  }
  return std::min(most, most_ballast_kg);
}

StandingCase::AllRound StandingCase::all_round(double gust_m_s) {
  AllRound all;
  all.worst = at_rest();
  all.greatest_pulls.resize(lines_.size());
  for (const double direction : wind_directions()) {
    if (!all.stands && std::fmod(direction, 90) != 0) break;
    WindAnswer answer = in_wind(gust_m_s, direction);
    keep_worst(all.checks, answer.checks);
    if (all.stands && !answer.stands) all.reason = answer.reason;
    all.stands = all.stands && answer.stands;
    if (answer.stands) {
      all.ballast_needed_kg = std::max(all.ballast_needed_kg, ballast_needed_kg(answer));
      for (const Vec3& shift : answer.state.state.shifts) all.farthest_m = std::max(all.farthest_m, shift.norm());
      for (std::size_t i = 0; i < all.greatest_pulls.size() && i < answer.state.cables.size(); ++i)
        if (const double pull = answer.state.cables[i].tension_n; pull > all.greatest_pulls[i].tension_n)
          all.greatest_pulls[i] = {pull, direction};
    }
    if (direction == wind_directions().front() || answer.utilisation() > all.worst.utilisation()) {
      all.worst = std::move(answer);
      all.direction_deg = direction;
    }
  }
  return all;
}

}  // namespace quadrille
