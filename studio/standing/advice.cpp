#include "studio/standing/advice.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <utility>

#include "studio/standing/anchor_spots.hpp"
#include "studio/standing/ballast.hpp"
#include "studio/standing/dead_load.hpp"
#include "studio/standing/gust_limit.hpp"
#include "studio/standing/line_search.hpp"
#include "studio/standing/share_out.hpp"
#include "studio/standing/sides_tied.hpp"

namespace quadrille {
namespace {

constexpr double plainly = 1.05;  // less more is not worth a line, or told as the work of one

class Advisor {
 public:
  Advisor(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built, double gust_m_s)
      : event_(event),
        area_(area),
        placed_(placed),
        built_(built),
        figures_(event),
        gust_m_s_(gust_m_s),
        loads_(std::make_shared<const PieceLoads>(built, area.site, figures_)),
        spots_(area, placed, built, figures_) {}

  /// Of two, three and four lines each the set that bears the most, where one bears more than `above_m_s` and plainly more
  /// than with fewer; with more ballast on the feet where the lines alone do not reach what can be reached.
  std::vector<LineAdvice> best(double above_m_s) const {
    const EachFound bare = best_of_each(built_, above_m_s, {});
    std::array<std::optional<LineAdvice>, bare.size()> advised;
    for (std::size_t i = 0; i < bare.size(); ++i)
      if (bare[i]) advised[i] = advised_on(built_, *bare[i], above_m_s);
    const double room = ballast_room_kg(built_);
    const Reaching most = reached_by(highest_gust_m_s);
    const bool all_done =
        std::ranges::all_of(advised, [&](const auto& advice) { return advice && advice->reaches == most; });
    if (most != Reaching::less && !all_done && room > ballast_on(built_)) {
      const Piece full = with_ballast(built_, room);
      const EachFound loaded = best_of_each(full, above_m_s, bare);
      for (std::size_t i = 0; i < bare.size(); ++i)
        if (loaded[i])
          if (auto better = with_ballast_better_than(advised[i], full, *loaded[i], above_m_s))
            advised[i] = std::move(better);
    }
    std::vector<LineAdvice> all;
    for (auto& advice : advised)
      if (advice && (all.empty() || is_worth_more_lines(*advice, all.back()))) all.push_back(std::move(*advice));
    return all;
  }

 private:
  using EachFound = std::array<std::optional<FoundLines>, 3>;  ///< of two, three and four lines

  /// `also`: sets to begin with, too.
  EachFound best_of_each(const Piece& piece, double above_m_s, const EachFound& also) const {
    EachFound found;
    Choices fewer;
    for (std::size_t i = 0; i < found.size(); ++i) {
      Beginnings from{std::move(fewer), also[i] ? also[i]->choices : Choices{}};
      found[i] = search(piece, i + 2, above_m_s, from);
      fewer = found[i] ? found[i]->choices : Choices{};
    }
    return found;
  }

  /// The best set with dead weights that nothing drags: what they must weigh is asked once it is found.
  std::optional<FoundLines> search(const Piece& piece, std::size_t count, double above_m_s,
                                   const Beginnings& from) const {
    double expected_deg = wind_directions().front();
    const TryLines tried = [&](std::vector<SecuringLine> lines, double above) -> std::optional<TriedLines> {
      if (!ties_as_asked(lines)) return std::nullopt;
      PlacedPiece so_tied = placed_;
      so_tied.lines = std::move(lines);
      for (SecuringLine& line : so_tied.lines)
        if (line.anchor == AnchorKind::dead_weight) line.mass_kg = heaviest_kg;
      StandingCase its(event_, area_, so_tied, piece, loads_);
      const GustLimit limit = limit_above(its, above, expected_deg);
      expected_deg = limit.governing.direction_deg;
      if (limit.gust_m_s <= above) return std::nullopt;
      return TriedLines{std::move(so_tied.lines), limit.gust_m_s};
    };
    return best_lines_of(count, spots_, above_m_s, tried, from);
  }

  /// Whether the lines go where the piece type wants them: what bears in the reckoning alone is not advised.
  bool ties_as_asked(const std::vector<SecuringLine>& lines) const {
    if (!asks_front_and_back(built_)) return true;
    const SidesTied sides = sides_tied(lines, placed_, built_, area_, figures_["line-level-share"]);
    return sides.front && sides.back;
  }

  LineAdvice advised_on(const Piece& piece, const TriedLines& found, double above_m_s) const {
    LineAdvice advice{
        found.lines, found.limit_gust_m_s,
        std::to_string(found.lines.size()) + " lines: " + ways_in_words(found.lines, placed_, built_, area_),
        std::nullopt, reached_by(found.limit_gust_m_s)};
    weigh(piece, advice, above_m_s);
    return advice;
  }

  /// The set that was found with all the ballast there is room for, and as little of that as it needs; nothing where it
  /// reaches no more than `alone` does, or no more, and bears hardly more, than by that ballast without lines.
  std::optional<LineAdvice> with_ballast_better_than(const std::optional<LineAdvice>& alone, const Piece& full,
                                                     const FoundLines& found, double above_m_s) const {
    LineAdvice advice = advised_on(full, found, above_m_s);
    if (alone && advice.reaches <= alone->reaches) return std::nullopt;
    advice.ballast_kg = ballast_on(full);
    lighten(full, advice);
    if (*advice.ballast_kg <= ballast_on(built_)) {
      advice.ballast_kg.reset();
      return advice;
    }
    const double by_ballast = limit_with({}, with_ballast(built_, *advice.ballast_kg));
    if (reached_by(by_ballast) >= advice.reaches && by_ballast * plainly >= advice.limit_gust_m_s) return std::nullopt;
    return advice;
  }

  /// Whether more lines than those of `fewer` let it reach or bear plainly more, or spare plainly some ballast.
  bool is_worth_more_lines(const LineAdvice& advice, const LineAdvice& fewer) const {
    const auto ballast_kg = [&](const LineAdvice& with) { return with.ballast_kg.value_or(ballast_on(built_)); };
    if (advice.reaches != fewer.reaches) return advice.reaches > fewer.reaches;
    return advice.limit_gust_m_s > plainly * fewer.limit_gust_m_s || plainly * ballast_kg(advice) < ballast_kg(fewer);
  }

  Reaching reached_by(double limit_m_s) const {
    if (!(gust_m_s_ > 0)) return Reaching::less;
    const double watch = figures_["watch-share"], take_down = figures_["take-down-share"];
    if (gust_m_s_ <= action_level_m_s(limit_m_s, watch, take_down)) return Reaching::fine;
    return gust_m_s_ <= action_level_m_s(limit_m_s, take_down, take_down) ? Reaching::watched : Reaching::less;
  }

  double limit_with(const std::vector<SecuringLine>& lines, const Piece& piece) const {
    PlacedPiece so_tied = placed_;
    so_tied.lines = lines;
    StandingCase its(event_, area_, so_tied, piece, loads_);
    return limit_of(its).gust_m_s;
  }

  /// Takes off the ballast that the advice does not need for what it reaches.
  void lighten(const Piece& full, LineAdvice& advice) const {
    if (advice.reaches == Reaching::less) return;
    PlacedPiece so_tied = placed_;
    so_tied.lines = advice.lines;
    StandingCase heavy(event_, area_, so_tied, full, loads_);
    const double share = figures_[advice.reaches == Reaching::fine ? "watch-share" : "take-down-share"];
    const auto kg = ballast_for_limit(heavy, std::min(gust_m_s_ / share, highest_gust_m_s));
    if (!kg) return;
    constexpr int most_trials = 4;
    double enough = std::max(ballast_on(built_), std::ceil(*kg));
    for (int trial = 0; trial < most_trials && enough < *advice.ballast_kg; ++trial) {
      const double limit = limit_with(advice.lines, with_ballast(built_, enough));
      if (reached_by(limit) == advice.reaches) {
        advice.ballast_kg = enough;
        advice.limit_gust_m_s = limit;
        return;
      }
      enough = std::ceil(1.05 * enough + 0.1);
    }
  }

  /// Makes the dead weights no heavier than it takes for the piece to be fine in its gust, or to stay up where that is past
  /// Beaufort 5, or for all that it bears with these lines where that is less.
  void weigh(const Piece& piece, LineAdvice& advice, double above_m_s) const {
    const auto is_weight = [](const SecuringLine& line) { return line.anchor == AnchorKind::dead_weight; };
    if (std::ranges::none_of(advice.lines, is_weight)) return;
    const double watch = figures_["watch-share"], take_down = figures_["take-down-share"];
    const double wanted = 1.02 * limit_for_m_s(gust_m_s_, watch, take_down).value_or(gust_m_s_ / take_down);
    const double asked = std::min(wanted, advice.limit_gust_m_s), friction = figures_.friction(area_.site.ground);
    PlacedPiece so_tied = placed_;
    so_tied.lines = advice.lines;
    StandingCase heavy(event_, area_, so_tied, piece, loads_);
    std::vector<double> needed_kg(advice.lines.size(), step_kg);
    for (const double direction : wind_directions()) {
      const WindAnswer answer = heavy.in_wind(asked, direction);
      for (std::size_t i = 0; i < answer.state.cables.size(); ++i) {
        const double newtons = dead_weight_needed_n(answer.state.cables[i].pull_on_from, friction);
        double& kg = needed_kg[heavy.number_of_line(i)];
        kg = std::max(kg, newtons / (gravity_m_s2 * figures_["ballast-share"]));
      }
    }
    std::vector<SecuringLine> lighter = advice.lines;
    for (std::size_t i = 0; i < lighter.size(); ++i)
      if (is_weight(lighter[i]))
        lighter[i].mass_kg = std::min(heaviest_kg, std::ceil(needed_kg[i] / step_kg) * step_kg);
    const double limit = limit_with(lighter, piece);
    if (limit <= above_m_s || reached_by(limit) < advice.reaches) return;
    advice.lines = std::move(lighter);
    advice.limit_gust_m_s = limit;
  }

  static constexpr double heaviest_kg = 100, step_kg = 5;  // of a dead weight: more is not carried to a piece of décor

  const Event& event_;
  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& built_;
  Assumptions figures_;
  double gust_m_s_;
  std::shared_ptr<const PieceLoads> loads_;
  AnchorSpots spots_;
};

/// What lines must bear more than to be of use: plainly more than the piece does, and where that stays up already, what
/// falls just short of making it fine.
double worth_advising_m_s(const Event& event, const PieceStanding& answer) {
  const Assumptions figures(event);
  if (answer.verdict != Verdict::watch) return plainly * answer.limit_gust_m_s;
  const auto fine = limit_for_m_s(answer.gust_m_s, figures["watch-share"], figures["take-down-share"]);
  return std::max(answer.limit_gust_m_s, fine ? 0.999 * *fine : highest_gust_m_s);
}

const Area& area_of(const Event& event, const std::string& id) {
  return **std::ranges::find_if(event.areas, [&](const auto& area) { return area->id == id; });
}

/// Whether the same lines are the best for both: nothing in the area makes one place differ from another.
bool advised_alike(const Event& event, const BuiltEvent& built, const PieceStanding& one, const PieceStanding& other) {
  if (one.area != other.area || one.gust_m_s != other.gust_m_s || one.verdict != other.verdict ||
      one.limit_gust_m_s != other.limit_gust_m_s)
    return false;
  const Area& area = area_of(event, one.area);
  return area.walkways.empty() && area.structures.empty() &&
         built.find(one.id)->second->piece == built.find(other.id)->second->piece;
}

/// Whether there are lines to advise for a piece that stands like this; see advise().
bool wants_advice(const Area& area, const Piece& built, const PieceStanding& answer) {
  if (!answer.outdoors || answer.verdict == Verdict::fine) return false;
  if (built.frame.members.empty() || built.supports.empty()) return false;
  return answer.gust_m_s > 0 || !is_hard(area.site.ground);
}

}  // namespace

std::vector<LineAdvice> best_lines(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                                   double gust_m_s, double above_m_s) {
  if (built.frame.members.empty() || built.supports.empty()) return {};
  if (!(gust_m_s > 0) && is_hard(area.site.ground)) return {};
  return Advisor(event, area, placed, built, gust_m_s).best(above_m_s);
}

std::vector<LineAdvice> advise(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                               const PieceStanding& answer) {
  if (!wants_advice(area, built, answer)) return {};
  return best_lines(event, area, placed, built, answer.gust_m_s, worth_advising_m_s(event, answer));
}

std::vector<std::vector<LineAdvice>> advise_all(const Event& event, const BuiltEvent& built,
                                                const std::vector<PieceStanding>& answers) {
  constexpr std::size_t nobody = static_cast<std::size_t>(-1);
  std::vector<std::size_t> adviser(answers.size(), nobody);  // of each piece: its place among `jobs`
  struct Job {
    const Area* area;
    const PlacedPiece* placed;
    const PieceStanding* answer;
  };
  std::vector<Job> jobs;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    const PieceStanding& answer = answers[i];
    const auto found = built.find(answer.id);
    if (found == built.end()) continue;
    const Area& area = area_of(event, answer.area);
    if (!wants_advice(area, found->second->piece, answer)) continue;
    for (std::size_t j = 0; j < i && adviser[i] == nobody; ++j)
      if (adviser[j] != nobody && advised_alike(event, built, answer, answers[j])) adviser[i] = adviser[j];
    if (adviser[i] != nobody) continue;
    const auto placed = std::ranges::find_if(area.pieces, [&](const auto& piece) { return piece->id == answer.id; });
    if (placed == area.pieces.end()) continue;
    adviser[i] = jobs.size();
    jobs.push_back({&area, &**placed, &answer});
  }
  std::vector<std::vector<LineAdvice>> by_job(jobs.size());
  share_out(jobs.size(), [&](std::size_t i) {
    const Job& job = jobs[i];
    by_job[i] = advise(event, *job.area, *job.placed, built.find(job.answer->id)->second->piece, *job.answer);
  });
  std::vector<std::vector<LineAdvice>> all(answers.size());
  for (std::size_t i = 0; i < answers.size(); ++i)
    if (adviser[i] != nobody) all[i] = by_job[adviser[i]];
  return all;
}

}  // namespace quadrille
