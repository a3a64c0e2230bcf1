#include "studio/standing/advice.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "sdk/number.hpp"
#include "studio/standing/dead_load.hpp"
#include "studio/standing/standing_case.hpp"

namespace quadrille {
namespace {

constexpr double pi_by_6 = pi / 6;

/// One line of a set, before it is known what it is anchored to: from a tie point, its way over the floor measured from
/// straight ahead of its purpose (front, back, left, right), towards the right as the audience sees it.
struct Way {
  TiePurpose purpose;
  std::size_t number;  ///< among the tie points of that purpose
  double angle;        ///< on the floor: 0 = to the right, π/2 = away from the audience
};

struct Set {
  const char* words;
  std::vector<Way> ways;
};

const std::vector<Set>& sets() {
  constexpr TiePurpose front = TiePurpose::front, back = TiePurpose::back, side = TiePurpose::side;
  constexpr double ahead = -pi / 2, behind = pi / 2, right = 0, left = pi;
  static const std::vector<Set> all{
      {"one to the front, one to the back", {{front, 0, ahead}, {back, 0, behind}}},
      {"two splayed to the front, one to the back",
       {{front, 0, ahead - pi_by_6}, {front, 0, ahead + pi_by_6}, {back, 0, behind}}},
      {"one to the front, two splayed to the back",
       {{front, 0, ahead}, {back, 0, behind - pi_by_6}, {back, 0, behind + pi_by_6}}},
      {"one to the back, two forward to the sides, a third of the way round from each other",
       {{back, 0, behind}, {front, 0, -pi_by_6}, {front, 0, left + pi_by_6}}},
      {"one to the front, two back to the sides, a third of the way round from each other",
       {{front, 0, ahead}, {back, 0, pi_by_6}, {back, 0, left - pi_by_6}}},
      {"two splayed to the front, two to the back",
       {{front, 0, ahead - pi_by_6},
        {front, 0, ahead + pi_by_6},
        {back, 0, behind - pi_by_6},
        {back, 0, behind + pi_by_6}}},
      {"two to the front and two to the back, splayed by 45°",
       {{front, 0, ahead - pi / 4},
        {front, 0, ahead + pi / 4},
        {back, 0, behind - pi / 4},
        {back, 0, behind + pi / 4}}},
      {"one from each leg to the front and one to the back, outwards",
       {{side, 0, -3 * pi / 4}, {side, 0, 3 * pi / 4}, {side, 1, -pi / 4}, {side, 1, pi / 4}}},
      {"one to the front, one to the back, one to each side",
       {{front, 0, ahead}, {back, 0, behind}, {side, 0, left}, {side, 1, right}}},
  };
  return all;
}

std::optional<std::size_t> tie_of(const Piece& piece, const Way& way) {
  std::size_t number = 0;
  for (std::size_t i = 0; i < piece.tie_points.size(); ++i)
    if (piece.tie_points[i].purpose == way.purpose && number++ == way.number) return i;
  return std::nullopt;
}

class Advisor {
 public:
  Advisor(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built, double gust_m_s)
      : event_(event), area_(area), placed_(placed), built_(built), figures_(event), gust_m_s_(gust_m_s) {}

  std::optional<LineAdvice> of(const Set& set, double away_share) const {
    LineAdvice advice;
    double farthest = 0;
    for (const Way& way : set.ways) {
      const auto line = anchored(way, away_share);
      if (!line) return std::nullopt;
      farthest = std::max(farthest, std::hypot(line->x_m, line->y_m));
      advice.lines.push_back(*line);
    }
    PlacedPiece tried = placed_;
    tried.lines = advice.lines;
    if (is_hard(area_.site.ground)) {
      weigh(tried);
      advice.lines = tried.lines;
    }
    advice.limit_gust_m_s = StandingCase(event_, area_, tried, built_).limit().gust_m_s;
    advice.words = std::to_string(set.ways.size()) + " lines: " + set.words;
    return advice;
  }

 private:
  std::optional<SecuringLine> anchored(const Way& way, double away_share) const {
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

  /// Makes the dead weights as heavy as the forecast asks, in steps of 5 kg.
  void weigh(PlacedPiece& tried) const {
    constexpr double most_kg = 100, step_kg = 5;
    for (SecuringLine& line : tried.lines) line.mass_kg = most_kg;
    StandingCase heavy(event_, area_, tried, built_);
    std::vector<double> needed(tried.lines.size(), step_kg);
    const double friction = figures_.friction(area_.site.ground);
    for (const double direction : wind_directions()) {
      const WindAnswer answer = heavy.in_wind(gust_m_s_, direction);
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
};

}  // namespace

std::vector<LineAdvice> best_lines(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                                   double gust_m_s) {
  std::vector<LineAdvice> best;
  if (built.frame.members.empty()) return best;
  const Advisor advisor(event, area, placed, built, gust_m_s);
  const double usual = Assumptions(event)["stake-away"];
  for (const Set& set : sets())
    for (const double away : {usual, 1.25 * usual}) {
      auto advice = advisor.of(set, away);
      if (!advice) continue;
      const auto alike = std::ranges::find_if(
          best, [&](const LineAdvice& other) { return other.lines.size() == advice->lines.size(); });
      if (alike == best.end())
        best.push_back(std::move(*advice));
      else if (advice->limit_gust_m_s > 1.02 * alike->limit_gust_m_s)
        *alike = std::move(*advice);
    }
  return best;
}

const Walkway* walkway_under(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                             double headroom_m) {
  const Vec3 place(placed.x_m, placed.y_m, 0);
  const Vec3 a = from + place, b = to + place;
  // The part of the line that hangs lower than the headroom: shares of it from `a`.
  const double fall = a.z() - b.z();
  double begin = 0, end = 1;
  if (a.z() > headroom_m) begin = fall > 0 ? (a.z() - headroom_m) / fall : 2;
  if (b.z() > headroom_m) end = fall < 0 ? (a.z() - headroom_m) / fall : -1;
  for (const Walkway& walkway : area.walkways) {
    double enter = begin, leave = end;
    const auto clip = [&](double start, double along, double least, double most) {
      if (std::abs(along) < 1e-12) {
        if (start < least || start > most) leave = enter - 1;
        return;
      }
      const double one = (least - start) / along, other = (most - start) / along;
      enter = std::max(enter, std::min(one, other));
      leave = std::min(leave, std::max(one, other));
    };
    clip(a.x(), b.x() - a.x(), walkway.x_m, walkway.x_m + walkway.width_m);
    clip(a.y(), b.y() - a.y(), walkway.y_m, walkway.y_m + walkway.depth_m);
    if (enter <= leave) return &walkway;
  }
  return nullptr;
}

}  // namespace quadrille
