#include "studio/standing/advice.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/standing/anchor_spots.hpp"
#include "studio/standing/ballast.hpp"
#include "studio/standing/dead_load.hpp"
#include "studio/standing/gust_limit.hpp"
#include "studio/standing/line_search.hpp"
#include "studio/standing/share_out.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {
namespace {

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

  /// Of two, three and four lines each the set that bears the most, where one bears more than `above_m_s`; with more ballast
  /// on the feet where the lines alone do not make it fine.
  std::vector<LineAdvice> best(double above_m_s) const {
    const auto bare = best_of_each(built_, above_m_s, {});
    const double room = ballast_room_kg(built_);
    const bool more_helps = gust_m_s_ > 0 && room > ballast_on(built_);
    const bool all_fine = std::ranges::all_of(
        bare, [&](const auto& found) { return found && reached_by(found->limit_gust_m_s) == Reaching::fine; });
    std::vector<LineAdvice> advice;
    if (!more_helps || all_fine) {
      for (const auto& found : bare)
        if (found) advice.push_back(advised(*found));
      return advice;
    }
    const Piece full = with_ballast(built_, room);
    const auto loaded = best_of_each(full, above_m_s, bare);
    for (std::size_t i = 0; i < bare.size(); ++i)
      if (auto better = better_of(bare[i], full, loaded[i])) advice.push_back(std::move(*better));
    return advice;
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

  /// The lines alone, unless more ballast lets other lines reach more.
  std::optional<LineAdvice> better_of(const std::optional<FoundLines>& bare, const Piece& full,
                                      const std::optional<FoundLines>& loaded) const {
    std::optional<LineAdvice> alone;
    if (bare) alone = advised(*bare);
    if (!loaded) return alone;
    LineAdvice with_more = advised(*loaded);
    if (alone && with_more.reaches <= alone->reaches) return alone;
    with_more.ballast_kg = ballast_on(full);
    lighten(full, with_more);
    return with_more;
  }

  std::optional<FoundLines> search(const Piece& piece, std::size_t count, double above_m_s,
                                   const Beginnings& from) const {
    double expected_deg = wind_directions().front();
    const TryLines tried = [&](std::vector<SecuringLine> lines, double above) -> std::optional<TriedLines> {
      PlacedPiece so_tied = placed_;
      so_tied.lines = std::move(lines);
      if (is_hard(area_.site.ground) && !weigh(piece, so_tied, above, expected_deg)) return std::nullopt;
      StandingCase its(event_, area_, so_tied, piece, loads_);
      const GustLimit limit = limit_above(its, above, expected_deg);
      expected_deg = limit.governing.direction_deg;
      if (limit.gust_m_s <= above) return std::nullopt;
      return TriedLines{std::move(so_tied.lines), limit.gust_m_s};
    };
    return best_lines_of(count, spots_, built_, above_m_s, tried, from);
  }

  LineAdvice advised(const TriedLines& found) const {
    return {found.lines, found.limit_gust_m_s,
            std::to_string(found.lines.size()) + " lines: " + ways_in_words(found.lines, placed_, built_, area_),
            std::nullopt, reached_by(found.limit_gust_m_s)};
  }

  Reaching reached_by(double limit_m_s) const {
    const double watch = figures_["watch-share"], take_down = figures_["take-down-share"];
    if (gust_m_s_ <= action_level_m_s(limit_m_s, watch, take_down)) return Reaching::fine;
    return gust_m_s_ <= action_level_m_s(limit_m_s, take_down, take_down) ? Reaching::watched : Reaching::less;
  }

  /// Takes off the ballast that the advice does not need for what it reaches.
  void lighten(const Piece& full, LineAdvice& advice) const {
    PlacedPiece tried = placed_;
    tried.lines = advice.lines;
    if (advice.reaches != Reaching::less) {
      const double take_down = figures_["take-down-share"];
      const double share = advice.reaches == Reaching::fine ? figures_["watch-share"] : take_down;
      StandingCase heavy(event_, area_, tried, full, loads_);
      const auto kg = ballast_for(heavy, std::min(1.02 * gust_m_s_ / share, highest_gust_m_s));
      const double enough = kg ? std::max(ballast_on(built_), std::ceil(*kg)) : *advice.ballast_kg;
      if (enough < *advice.ballast_kg) {
        const Piece lighter = with_ballast(built_, enough);
        StandingCase its(event_, area_, tried, lighter, loads_);
        const GustLimit limit = limit_of(its);
        if (reached_by(limit.gust_m_s) == advice.reaches) {
          advice.ballast_kg = enough;
          advice.limit_gust_m_s = limit.gust_m_s;
        }
      }
    }
    if (*advice.ballast_kg <= ballast_on(built_)) advice.ballast_kg.reset();
  }

  /// Makes the dead weights as heavy as it takes for the piece to be fine in its gust, or to stay up where that is past
  /// Beaufort 5, in steps of 5 kg. False, without further work, where it fails in a gust of `above_m_s` from
  /// `expected_deg` even with the heaviest.
  bool weigh(const Piece& piece, PlacedPiece& tried, double above_m_s, double expected_deg) const {
    constexpr double most_kg = 100, step_kg = 5;
    const double watch = figures_["watch-share"], take_down = figures_["take-down-share"];
    const double limit = limit_for_m_s(gust_m_s_, watch, take_down).value_or(gust_m_s_ / take_down);
    const double asked = std::min(1.02 * limit, highest_gust_m_s);
    for (SecuringLine& line : tried.lines) line.mass_kg = most_kg;
    StandingCase heavy(event_, area_, tried, piece, loads_);
    if (heavy.in_wind(std::min(above_m_s, highest_gust_m_s), expected_deg).utilisation() > 1) return false;
    std::vector<double> needed(tried.lines.size(), step_kg);
    const double friction = figures_.friction(area_.site.ground);
    for (const double direction : wind_directions()) {
      const WindAnswer answer = heavy.in_wind(asked, direction);
      for (std::size_t i = 0; answer.stands && i < answer.state.cables.size(); ++i)
        needed[i] = std::max(needed[i], dead_weight_needed_n(answer.state.cables[i].pull_on_from, friction) /
                                            (gravity_m_s2 * figures_["ballast-share"]));
    }
    for (std::size_t i = 0; i < needed.size(); ++i)
      tried.lines[i].mass_kg = std::min(most_kg, std::ceil(needed[i] / step_kg) * step_kg);
    return true;
  }

  const Event& event_;
  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& built_;
  Assumptions figures_;
  double gust_m_s_;
  std::shared_ptr<const PieceLoads> loads_;
  AnchorSpots spots_;
};

/// What lines must bear more than to be of use: as much as the piece does, and where that stays up already, what falls
/// just short of making it fine.
double worth_advising_m_s(const Event& event, const PieceStanding& answer) {
  const Assumptions figures(event);
  if (answer.verdict != Verdict::watch) return answer.limit_gust_m_s;
  const auto fine = limit_for_m_s(answer.gust_m_s, figures["watch-share"], figures["take-down-share"]);
  return std::max(answer.limit_gust_m_s, fine ? 0.999 * *fine : highest_gust_m_s);
}

const Area& area_of(const Event& event, const std::string& id) {
  return **std::ranges::find_if(event.areas, [&](const auto& area) { return area->id == id; });
}

/// Whether the same lines are the best for both: nothing in the area makes one place differ from another.
bool advised_alike(const Event& event, const BuiltEvent& built, const PieceStanding& one, const PieceStanding& other) {
  if (one.area != other.area || one.gust_m_s != other.gust_m_s || one.limit_gust_m_s != other.limit_gust_m_s)
    return false;
  const Area& area = area_of(event, one.area);
  return area.walkways.empty() && area.structures.empty() &&
         built.find(one.id)->second->piece == built.find(other.id)->second->piece;
}

}  // namespace

std::vector<LineAdvice> best_lines(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                                   double gust_m_s, double above_m_s) {
  if (built.frame.members.empty()) return {};
  return Advisor(event, area, placed, built, gust_m_s).best(above_m_s);
}

std::vector<std::vector<LineAdvice>> advise_all(const Event& event, const BuiltEvent& built,
                                                const std::vector<PieceStanding>& answers) {
  constexpr std::size_t nobody = static_cast<std::size_t>(-1);
  std::vector<std::size_t> adviser(answers.size(), nobody);  // of each piece: its place among `advisors`
  std::vector<std::unique_ptr<Advisor>> advisors;
  std::vector<double> above_m_s;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    const PieceStanding& answer = answers[i];
    const auto found = built.find(answer.id);
    if (!answer.outdoors || answer.verdict == Verdict::fine || found == built.end()) continue;
    if (!answer.forecast_known && is_hard(area_of(event, answer.area).site.ground)) continue;
    if (found->second->piece.frame.members.empty() || found->second->piece.supports.empty()) continue;
    for (std::size_t j = 0; j < i && adviser[i] == nobody; ++j)
      if (adviser[j] != nobody && advised_alike(event, built, answer, answers[j])) adviser[i] = adviser[j];
    if (adviser[i] != nobody) continue;
    for (const auto& area : event.areas)
      for (const auto& placed : area->pieces) {
        if (placed->id != answer.id) continue;
        adviser[i] = advisors.size();
        advisors.push_back(std::make_unique<Advisor>(event, *area, *placed, found->second->piece, answer.gust_m_s));
        above_m_s.push_back(worth_advising_m_s(event, answer));
      }
  }
  std::vector<std::vector<LineAdvice>> by_advisor(advisors.size());
  share_out(advisors.size(), [&](std::size_t i) { by_advisor[i] = advisors[i]->best(above_m_s[i]); });
  std::vector<std::vector<LineAdvice>> all(answers.size());
  for (std::size_t i = 0; i < answers.size(); ++i)
    if (adviser[i] != nobody) all[i] = by_advisor[adviser[i]];
  return all;
}

std::string advice_in_words(const LineAdvice& advice, const Area& area, const Piece& piece, Units units) {
  std::string words = advice.words;
  for (const SecuringLine& line : advice.lines)
    words += (&line == &advice.lines.front() ? "; tie " : "; ") + line.tie + " to " +
             anchor_in_words(line, area, piece, units);
  if (advice.ballast_kg)
    words += "; with " + print_mass_needed(*advice.ballast_kg, units, 0) + " of ballast on each foot";
  return words;
}

}  // namespace quadrille
