#include "studio/standing/piece_standing.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <thread>
#include <utility>

#include "studio/standing/standing_case.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

std::string name_of_anchor(const SecuringLine& line, const Area& area) {
  if (line.anchor == AnchorKind::stake) return "stake";
  if (line.anchor == AnchorKind::dead_weight) return "dead weight";
  for (const Structure& structure : area.structures)
    if (structure.id == line.structure) return structure.name.empty() ? structure.id : structure.name;
  return "structure";
}

void take_round(const StandingCase::AllRound& round, const StandingCase& its, PieceStanding& answer) {
  answer.checks = round.checks;
  std::ranges::sort(answer.checks, std::ranges::greater{}, &StandingCheck::utilisation);
  answer.direction_deg = round.direction_deg;
  answer.converged = round.stands;
  answer.reason = round.reason;
  answer.top_displacement_m = round.farthest_m;
  const Equilibrium& state = round.worst.state;
  for (std::size_t i = 0; i < state.supports.size(); ++i)
    answer.reactions.push_back(
        {name_of_support(its.piece(), i), state.supports[i].force_n, state.supports[i].moment_nm});
  for (std::size_t i = 0; i < state.cables.size(); ++i) {
    const SecuringLine& line = its.asked_line(i);
    answer.lines.push_back({line.tie, name_of_anchor(line, its.area()), state.cables[i].tension_n});
  }
  for (std::size_t i = 0; i < state.state.shifts.size(); ++i)
    answer.deflected.push_back(its.piece().frame.nodes[i] + state.state.shifts[i]);
}

/// Nothing where there is no plate, or where more than the plates fails.
std::optional<double> ballast_needed(const StandingCase::AllRound& round, const Piece& piece) {
  const auto is_plate = [](const Support& support) { return support.kind == SupportKind::plate; };
  if (std::ranges::none_of(piece.supports, is_plate) || !round.stands) return std::nullopt;
  for (const StandingCheck& check : round.checks)
    if (check.utilisation > 1 && check.code != "tips" && check.code != "slides" && check.code != "lifts")
      return std::nullopt;
  return round.ballast_needed_kg;
}

/// The largest push at hand height that fails no check from any of four sides, up to ten times the one asked for.
double push_borne(StandingCase& its, double push_n, double height_m) {
  if (!its.at_rest().stands) return 0;
  double least = 10 * push_n;
  for (const double direction : {90.0, 270.0, 0.0, 180.0}) {
    double bears = 0, fails = least;
    if (its.pushed(fails, height_m, direction).utilisation() <= 1) continue;
    while (fails - bears > 0.02 * fails && fails > 0.1) {
      const double between = (bears + fails) / 2;
      (its.pushed(between, height_m, direction).utilisation() > 1 ? fails : bears) = between;
    }
    least = bears;
  }
  return least;
}

Verdict verdict_of(const PieceStanding& answer) {
  if (!answer.outdoors && !answer.forecast_known) {
    if (!answer.converged) return Verdict::no;
    return answer.bears_push_n >= answer.push_n ? Verdict::fine : Verdict::watch;
  }
  if (!answer.forecast_known) return Verdict::unknown;
  // The search for the limit goes up in steps; what fails in the gust itself fails whatever it found.
  const bool fails = !answer.checks.empty() && worst_of(answer.checks)->utilisation > 1;
  if (!answer.converged || fails || answer.gust_m_s > answer.take_down_m_s) return Verdict::no;
  return answer.gust_m_s > answer.watch_m_s ? Verdict::watch : Verdict::fine;
}

void lose_each_line(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                    PieceStanding& answer) {
  for (std::size_t i = 0; i < placed.lines.size(); ++i) {
    PlacedPiece fewer = placed;
    fewer.lines.erase(fewer.lines.begin() + static_cast<std::ptrdiff_t>(i));
    StandingCase without(event, area, fewer, built);
    answer.without.push_back(
        {placed.lines[i].tie + " to " + name_of_anchor(placed.lines[i], area), without.limit().gust_m_s});
  }
}

}  // namespace

double action_level_m_s(double limit_gust_m_s, double share) {
  return std::min(share * limit_gust_m_s, beaufort_5_top_m_s);
}

PieceStanding stand(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                    const StandingOptions& options) {
  PieceStanding answer;
  answer.area = area.id;
  answer.id = placed.id;
  answer.name = placed.name;
  answer.outdoors = area.site.surroundings == Surroundings::outdoors;
  const std::optional<double> gust = options.gust_m_s ? options.gust_m_s : area.site.gust_m_s;
  answer.forecast_known = gust.has_value();
  answer.gust_m_s = gust.value_or(0);
  if (built.frame.nodes.empty() || built.supports.empty()) {
    answer.reason = "The piece type says nothing of a frame and what holds it.";
    return answer;
  }
  StandingCase its(event, area, placed, built);
  answer.faults = its.faults();
  const GustLimit limit = its.limit();
  answer.limit_gust_m_s = limit.gust_m_s;
  answer.limit_beyond = limit.beyond;
  answer.governing = limit.governing;
  answer.watch_m_s = action_level_m_s(limit.gust_m_s, its.assumptions()["watch-share"]);
  answer.take_down_m_s = action_level_m_s(limit.gust_m_s, its.assumptions()["take-down-share"]);
  const StandingCase::AllRound round = its.all_round(std::min(answer.gust_m_s, highest_gust_m_s));
  take_round(round, its, answer);
  answer.ballast_needed_kg = ballast_needed(round, built);
  const bool leaned_on = !built.frame.members.empty();  // nobody leans on what hangs on hooks
  answer.push_n = leaned_on ? its.assumptions()["push"] : 0;
  if (options.what_if && leaned_on) {
    answer.bears_push_n = push_borne(its, answer.push_n, its.assumptions()["push-height"]);
    lose_each_line(event, area, placed, built, answer);
  }
  answer.verdict = verdict_of(answer);
  return answer;
}

std::vector<PieceStanding> stand_all(const Event& event, const BuiltEvent& built, const StandingOptions& options,
                                     std::string_view area_id) {
  struct Job {
    const Area* area;
    const PlacedPiece* placed;
    const Piece* piece;
  };
  std::vector<Job> jobs;
  for (const auto& area : event.areas) {
    if (!area_id.empty() && area->id != area_id) continue;
    for (const auto& placed : area->pieces) {
      const auto found = built.find(placed->id);
      if (found != built.end() && found->second->status == Status::ok)
        jobs.push_back({&*area, &*placed, &found->second->piece});
    }
  }
  std::vector<PieceStanding> answers(jobs.size());
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < jobs.size(); i = next++)
      answers[i] = stand(event, *jobs[i].area, *jobs[i].placed, *jobs[i].piece, options);
  };
  const std::size_t hands = std::clamp<std::size_t>(std::thread::hardware_concurrency(), 1, 8);
  {
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < std::min(hands, jobs.size()); ++i) others.emplace_back(work);
    work();
  }
  return answers;
}

}  // namespace quadrille
