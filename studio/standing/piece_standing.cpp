#include "studio/standing/piece_standing.hpp"

#include <algorithm>
#include <atomic>
#include <memory>
#include <utility>

#include "studio/standing/ballast.hpp"
#include "studio/standing/counted_lines.hpp"
#include "studio/standing/share_out.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/standing/standing_watch.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

/// In a word or two: the table of forces has little room.
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
    const double tension_n = state.cables[i].tension_n;
    StandingCase::AllRound::Pull most{tension_n, round.direction_deg};
    if (i < round.greatest_pulls.size() && round.greatest_pulls[i].tension_n > tension_n)
      most = round.greatest_pulls[i];
    answer.lines.push_back({line.tie, name_of_anchor(line, its.area()), tension_n, most.tension_n, most.direction_deg});
  }
  for (std::size_t i = 0; i < state.state.shifts.size(); ++i)
    answer.deflected.push_back(its.piece().frame.nodes[i] + state.state.shifts[i]);
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
  // The search for the limit goes up in steps; what fails in the gust itself fails whatever it found.
  const bool fails = !answer.converged || (!answer.checks.empty() && worst_of(answer.checks)->utilisation > 1);
  if (!answer.outdoors && !answer.forecast_known) {
    if (fails) return Verdict::no;
    return answer.push_asked && answer.bears_push_n < answer.push_n ? Verdict::watch : Verdict::fine;
  }
  if (!answer.forecast_known) return Verdict::unknown;
  if (fails || answer.gust_m_s > answer.take_down_m_s) return Verdict::no;
  return answer.gust_m_s > answer.watch_m_s ? Verdict::watch : Verdict::fine;
}

/// What the piece bears with each line of `its` gone.
std::vector<WithoutLine> lose_each_line(const Event& event, const StandingCase& its, const Secured& counted) {
  std::vector<WithoutLine> without;
  for (std::size_t i = 0; i < its.lines().size(); ++i) {
    PlacedPiece fewer = counted.placed;
    fewer.lines.erase(fewer.lines.begin() + static_cast<std::ptrdiff_t>(its.number_of_line(i)));
    const SecuringLine& line = its.asked_line(i);
    // As its tension is called, less the word "line" that whoever prints this puts before it.
    const std::string name = name_of_line(counted.placed.lines, its.number_of_line(i)).substr(std::size("line ") - 1);
    without.push_back({name + " to " + anchor_in_words(line, its.area(), its.piece(), event.units),
                       secured(event, its.area(), fewer, its.piece(), its.loads()).limit.gust_m_s});
  }
  return without;
}

void take_limit(const Secured& counted, const StandingCase& its, const std::vector<SecuringLine>& lines, Units units,
                PieceStanding& answer) {
  const double watch = its.assumptions()["watch-share"], take_down = its.assumptions()["take-down-share"];
  answer.limit_gust_m_s = counted.limit.gust_m_s;
  answer.limit_beyond = counted.limit.beyond;
  answer.governing = counted.limit.governing;
  answer.fails_at_rest = counted.limit.at_rest;
  answer.watch_m_s = action_level_m_s(answer.limit_gust_m_s, watch, take_down);
  answer.take_down_m_s = action_level_m_s(answer.limit_gust_m_s, take_down, take_down);
  for (const LineNotCounted& line : counted.not_counted)
    answer.not_counted.push_back("The " + name_of_line(lines, line.line) + " to " +
                                 anchor_in_words(lines[line.line], its.area(), its.piece(), units) +
                                 " is not counted on: it or its anchor gives way by a gust of " +
                                 speed_words(line.gives_way_m_s) + ", and the piece bears more without it.");
}

struct Job {
  const Area* area;
  const PlacedPiece* placed;
  const Piece* piece;
};

/// Whether the two stand alike, wherever they are in their area.
bool alike(const Job& one, const Job& other) {
  const auto to_structure = [](const SecuringLine& line) { return line.anchor == AnchorKind::structure; };
  return one.area == other.area && one.placed->lines == other.placed->lines &&
         std::ranges::none_of(one.placed->lines, to_structure) &&
         (one.piece == other.piece || *one.piece == *other.piece);
}

}  // namespace

double action_level_m_s(double limit_gust_m_s, double share, double take_down_share) {
  return share * std::min(limit_gust_m_s, beaufort_5_top_m_s / take_down_share);
}

std::optional<double> limit_for_m_s(double gust_m_s, double share, double take_down_share) {
  if (gust_m_s > action_level_m_s(highest_gust_m_s, share, take_down_share)) return std::nullopt;
  return gust_m_s / share;
}

PieceStanding stand(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                    const StandingOptions& options) {
  PieceStanding answer;
  answer.area = area.id;
  answer.id = placed.id;
  answer.name = placed.name;
  answer.outdoors = area.site.surroundings == Surroundings::outdoors;
  const std::optional<double> gust = options.gust_m_s && answer.outdoors ? options.gust_m_s : area.site.gust_m_s;
  answer.forecast_known = gust.has_value();
  answer.gust_m_s = gust.value_or(0);
  if (built.frame.nodes.empty() || built.supports.empty()) {
    answer.reason = "The piece type says nothing of a frame and what holds it.";
    return answer;
  }
  const auto loads = std::make_shared<const PieceLoads>(built, area.site, Assumptions(event));
  const Secured counted = secured(event, area, placed, built, loads);
  StandingCase its(event, area, counted.placed, built, loads);
  answer.faults = its.faults();
  take_limit(counted, its, placed.lines, event.units, answer);
  const StandingCase::AllRound round = its.all_round(std::min(answer.gust_m_s, highest_gust_m_s));
  take_round(round, its, answer);
  answer.hangs = built.frame.members.empty();
  answer.push_n = answer.hangs ? 0 : its.assumptions()["push"];  // nobody leans on what hangs on hooks
  if (options.what_if && !answer.hangs) {
    answer.bears_push_n = push_borne(its, answer.push_n, its.assumptions()["push-height"]);
    answer.push_asked = true;
    answer.without = lose_each_line(event, its, counted);
  }
  answer.ballast = ballast_advice(event, area, placed, its, answer.gust_m_s, answer.push_n);
  answer.ballast_needed_kg = answer.ballast.stays_up_kg;
  answer.verdict = verdict_of(answer);
  return answer;
}

std::vector<PieceStanding> stand_all(const Event& event, const BuiltEvent& built, const StandingOptions& options,
                                     std::string_view area_id) {
  return *stand_all_watched(event, built, options, area_id, {});
}

std::optional<std::vector<PieceStanding>> stand_all_watched(const Event& event, const BuiltEvent& built,
                                                            const StandingOptions& options, std::string_view area_id,
                                                            const StandingWatch& watch) {
  std::vector<Job> jobs;
  for (const auto& area : event.areas) {
    if (!area_id.empty() && area->id != area_id) continue;
    for (const auto& placed : area->pieces) {
      const auto found = built.find(placed->id);
      if (found != built.end() && found->second->status == Status::ok)
        jobs.push_back({&*area, &*placed, &found->second->piece});
    }
  }
  std::vector<std::size_t> first(jobs.size());  // of each job: the first that is alike
  std::vector<std::size_t> asked;
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    const auto same = std::ranges::find_if(asked, [&](std::size_t j) { return alike(jobs[i], jobs[j]); });
    first[i] = same == asked.end() ? i : *same;
    if (first[i] == i) asked.push_back(i);
  }
  std::vector<PieceStanding> answers(jobs.size());
  std::atomic<std::size_t> done = 0;
  share_out(asked.size(), [&](std::size_t number) {
    if (watch.given_up && watch.given_up()) return;
    const Job& job = jobs[asked[number]];
    answers[asked[number]] = stand(event, *job.area, *job.placed, *job.piece, options);
    if (watch.told) watch.told(++done, asked.size());
  });
  if (watch.given_up && watch.given_up()) return std::nullopt;
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    if (first[i] != i) answers[i] = answers[first[i]];
    answers[i].id = jobs[i].placed->id;
    answers[i].name = jobs[i].placed->name;
  }
  return answers;
}

}  // namespace quadrille
