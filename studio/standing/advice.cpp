#include "studio/standing/advice.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/standing/ballast.hpp"
#include "studio/standing/dead_load.hpp"
#include "studio/standing/gust_limit.hpp"
#include "studio/standing/line_sets.hpp"
#include "studio/standing/share_out.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {
namespace {

std::optional<std::size_t> tie_of(const Piece& piece, const LineWay& way) {
  std::size_t number = 0;
  for (std::size_t i = 0; i < piece.tie_points.size(); ++i)
    if (piece.tie_points[i].purpose == way.purpose && number++ == way.number) return i;
  return std::nullopt;
}

class Advisor {
 public:
  Advisor(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built, double gust_m_s)
      : event_(event),
        area_(area),
        placed_(placed),
        built_(built),
        figures_(event),
        gust_m_s_(gust_m_s),
        loads_(std::make_shared<const PieceLoads>(built, area.site, figures_)) {}

  /// The set of `count` lines that bears the most, where one bears more than `above_m_s`; with more ballast on the feet
  /// where the lines alone do not make it fine.
  std::optional<LineAdvice> best_of(std::size_t count, double above_m_s) const {
    std::optional<LineAdvice> best = best_with(built_, count, above_m_s);
    const double room = ballast_room_kg(built_);
    if ((best && best->reaches == Reaching::fine) || !(gust_m_s_ > 0) || room <= ballast_on(built_)) return best;
    const Piece full = with_ballast(built_, room);
    auto loaded = best_with(full, count, best ? 1.02 * best->limit_gust_m_s : above_m_s);
    if (!loaded || (best && loaded->reaches <= best->reaches)) return best;
    lighten(full, *loaded);
    return loaded;
  }

 private:
  /// A set that bears no more than a fiftieth above an earlier one does not take its place; most are given up at the first
  /// wind in which they fail.
  std::optional<LineAdvice> best_with(const Piece& piece, std::size_t count, double above_m_s) const {
    std::optional<LineAdvice> best;
    const double usual = figures_["stake-away"];
    double expected_deg = wind_directions().front();
    for (const LineSet& set : line_sets()) {
      if (set.ways.size() != count) continue;
      for (const double away : {usual, 1.25 * usual}) {
        auto lines = lines_of(set, away);
        if (!lines) continue;
        PlacedPiece tried = placed_;
        tried.lines = std::move(*lines);
        if (is_hard(area_.site.ground)) weigh(piece, tried);
        const double above = std::max(above_m_s, best ? 1.02 * best->limit_gust_m_s : 0);
        StandingCase its(event_, area_, tried, piece, loads_);
        const GustLimit limit = limit_above(its, above, expected_deg);
        expected_deg = limit.governing.direction_deg;
        if (limit.gust_m_s <= above) continue;
        best = {std::move(tried.lines), limit.gust_m_s, std::to_string(count) + " lines: " + set.words};
        best->reaches = reached_by(limit.gust_m_s);
        if (&piece != &built_) best->ballast_kg = ballast_on(piece);
      }
    }
    return best;
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

  std::optional<std::vector<SecuringLine>> lines_of(const LineSet& set, double away_share) const {
    std::vector<SecuringLine> lines;
    for (const LineWay& way : set.ways) {
      const auto line = anchored(way, away_share);
      if (!line) return std::nullopt;
      lines.push_back(*line);
    }
    return lines;
  }

  std::optional<SecuringLine> anchored(const LineWay& way, double away_share) const {
    const auto tie = tie_of(built_, way);
    if (!tie) return std::nullopt;
    const Vec3 from = built_.tie_points[*tie].point;
    const Vec3 way_on_floor = to_picounit(Vec3(std::cos(way.angle), std::sin(way.angle), 0));
    SecuringLine line;
    line.tie = tie_key(built_, *tie);
    if (const auto tied = to_structure(from, way_on_floor)) {
      line.anchor = AnchorKind::structure;
      line.structure = tied->id;
      line.height_m = std::min(tied->height_m, from.z());
    } else {
      const Vec3 at = from + way_on_floor * away_share * from.z();
      line.anchor = is_hard(area_.site.ground) ? AnchorKind::dead_weight : AnchorKind::stake;
      line.x_m = std::nearbyint(at.x() * 100) / 100;
      line.y_m = std::nearbyint(at.y() * 100) / 100;
    }
    const auto run = run_of(line, placed_, built_, area_);
    if (!run || walkway_under(area_, placed_, run->from, run->to, figures_["headroom"]) != nullptr) return std::nullopt;
    return line;
  }

  /// An allowed structure that stands in the line's way, within 20° and no farther than three times the tie's height.
  const Structure* to_structure(const Vec3& from, const Vec3& way) const {
    for (const Structure& structure : area_.structures) {
      if (structure.allowed_by.empty()) continue;
      const Vec3 to(structure.x_m - placed_.x_m - from.x(), structure.y_m - placed_.y_m - from.y(), 0);
      if (to.norm() > 0.3 && to.norm() <= 3 * from.z() && to.dot(way) >= std::cos(pi / 9) * to.norm())
        return &structure;
    }
    return nullptr;
  }

  /// Makes the dead weights as heavy as it takes for the piece to be fine in its gust, or to stay up where that is past
  /// Beaufort 5, in steps of 5 kg.
  void weigh(const Piece& piece, PlacedPiece& tried) const {
    constexpr double most_kg = 100, step_kg = 5;
    const double watch = figures_["watch-share"], take_down = figures_["take-down-share"];
    const double limit = limit_for_m_s(gust_m_s_, watch, take_down).value_or(gust_m_s_ / take_down);
    const double asked = std::min(1.02 * limit, highest_gust_m_s);
    for (SecuringLine& line : tried.lines) line.mass_kg = most_kg;
    StandingCase heavy(event_, area_, tried, piece, loads_);
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
  }

  const Event& event_;
  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& built_;
  Assumptions figures_;
  double gust_m_s_;
  std::shared_ptr<const PieceLoads> loads_;
};

constexpr std::array<std::size_t, 3> counts{2, 3, 4};

/// What lines must bear more than to be of use: as much as the piece does, and where that stays up already, what falls
/// just short of making it fine.
double worth_advising_m_s(const Event& event, const PieceStanding& answer) {
  const Assumptions figures(event);
  if (answer.verdict != Verdict::watch) return answer.limit_gust_m_s;
  const auto fine = limit_for_m_s(answer.gust_m_s, figures["watch-share"], figures["take-down-share"]);
  return std::max(answer.limit_gust_m_s, fine ? 0.999 * *fine : highest_gust_m_s);
}

/// Takes out of `found` what was found for each of `counts`, from number `first` on.
std::vector<LineAdvice> gathered(std::vector<std::optional<LineAdvice>>& found, std::size_t first) {
  std::vector<LineAdvice> advice;
  for (std::size_t i = first; i < first + counts.size(); ++i)
    if (found[i]) advice.push_back(std::move(*found[i]));
  return advice;
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
  const Advisor advisor(event, area, placed, built, gust_m_s);
  std::vector<std::optional<LineAdvice>> found(counts.size());
  share_out(counts.size(), [&](std::size_t i) { found[i] = advisor.best_of(counts[i], above_m_s); });
  return gathered(found, 0);
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
  std::vector<std::optional<LineAdvice>> found(advisors.size() * counts.size());
  share_out(found.size(), [&](std::size_t job) {
    const std::size_t i = job / counts.size();
    found[job] = advisors[i]->best_of(counts[job % counts.size()], above_m_s[i]);
  });
  std::vector<std::vector<LineAdvice>> by_advisor;
  for (std::size_t i = 0; i < advisors.size(); ++i) by_advisor.push_back(gathered(found, i * counts.size()));
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
