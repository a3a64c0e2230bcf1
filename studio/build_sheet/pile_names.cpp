#include "studio/build_sheet/pile_names.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <tuple>

#include "sdk/vec.hpp"
#include "studio/drawing/room.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double name_height = 3.5;                 // mm, of the box
constexpr double ink_half = 1.15;                   // mm, half the height of its capitals with a little air
constexpr double golden_angle = 2.399963229728653;  // radians: spreads points evenly over a disc

/// Points spread evenly over a disc of radius 1, from its middle outward.
std::vector<Point2> spread_over_disc(int count) {
  std::vector<Point2> points{{0, 0}};
  for (int i = 1; i < count; ++i) {
    const double r = std::sqrt((i + 0.5) / count), turn = golden_angle * i;
    points.push_back({to_picounit(r * std::cos(turn)), to_picounit(r * std::sin(turn))});
  }
  return points;
}

double distance(Point2 a, Point2 b) { return std::sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y)); }

double distance_to(const Rect& box, Point2 p) {
  return distance(p, {std::clamp(p.x, box.x, box.right()), std::clamp(p.y, box.y, box.bottom())});
}

bool cross(Point2 a, Point2 b, Point2 c, Point2 d) {
  const auto turn = [](Point2 p, Point2 q, Point2 r) { return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x); };
  return (turn(a, b, c) > 0) != (turn(a, b, d) > 0) && (turn(c, d, a) > 0) != (turn(c, d, b) > 0);
}

/// How far above the middle of its box the middle of a name's ink lies [mm].
double ink_rise() {
  static const double rise = [] {
    const TextMark name{{0, 0, 30, name_height}, "#8 B", name_style(ink_text)};
    return name_height / 2 - set_text(name).ink.middle().y;
  }();
  return rise;
}

/// A little short of `to`, so that a leader does not read as a dash before its name.
Point2 short_of(Point2 to, Point2 from) {
  constexpr double gap = 0.6;
  const double length = distance(from, to), share = length > 2 * gap ? gap / length : 0;
  return {to.x + (from.x - to.x) * share, to.y + (from.y - to.y) * share};
}

}  // namespace

PileDisc free_patch(const PileDisc& own, std::span<const PileDisc> nearer) {
  static const std::vector<Point2> points = spread_over_disc(500);
  std::vector<PileDisc> hiding;
  std::ranges::copy_if(nearer, std::back_inserter(hiding), [&](const PileDisc& disc) {
    return distance(disc.centre, own.centre) < disc.radius + own.radius;
  });
  PileDisc best{own.centre, -1};
  for (const Point2& off : points) {
    const Point2 p{own.centre.x + off.x * own.radius, own.centre.y + off.y * own.radius};
    double clear = own.radius * (1 - distance(off, {0, 0}));
    for (const PileDisc& disc : hiding) {
      if (clear <= best.radius) break;
      clear = std::min(clear, distance(p, disc.centre) - disc.radius);
    }
    if (clear > best.radius) best = {p, clear};
  }
  return best;
}

bool touches(const Rect& box, const PileDisc& disc, double air) {
  return distance_to(box, disc.centre) < disc.radius + air;
}

bool crosses(Point2 a, Point2 b, const Rect& box) {
  double from = 0, to = 1;
  for (const auto& [start, run, low, high] :
       {std::tuple{a.x, b.x - a.x, box.x, box.right()}, std::tuple{a.y, b.y - a.y, box.y, box.bottom()}}) {
    if (std::abs(run) < 1e-9) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const double one = (low - start) / run, other = (high - start) / run;
    from = std::max(from, std::min(one, other)), to = std::min(to, std::max(one, other));
  }
  return from < to;
}

TextStyle name_style(const Ink& ink) { return type(pt_caption, ink, Face::bold, Across::centre, Down::middle); }

std::optional<Rect> NamePlacer::on_balloon(std::size_t index, double text_wide) {
  static const std::vector<Point2> places = spread_over_disc(60);
  const PileDisc& own = discs_[index];
  for (const Point2& off : places) {
    const Point2 at{own.centre.x + off.x * own.radius, own.centre.y + off.y * own.radius};
    const double aside = std::abs(at.x - own.centre.x) + text_wide / 2, up = std::abs(at.y - own.centre.y) + ink_half;
    if (distance({aside, up}, {0, 0}) > own.radius) continue;
    const Rect ink{at.x - text_wide / 2, at.y - ink_half, text_wide, 2 * ink_half};
    if (std::ranges::any_of(nearer(index), [&](const PileDisc& disc) { return touches(ink, disc, 0.1); })) continue;
    const Rect box{at.x - text_wide / 2, at.y - name_height / 2 + ink_rise(), text_wide, name_height};
    if (meets_any(box, taken_)) continue;
    taken_.push_back(box);
    return box;
  }
  return std::nullopt;
}

void NamePlacer::keep_free(std::span<const std::size_t> indices) {
  for (const std::size_t index : indices) dots_.push_back(free_patch(discs_[index], nearer(index)).centre);
}

bool NamePlacer::leader_is_free(Point2 from, Point2 to) const {
  constexpr double least_apart = 1.3;  // mm, from another leader's dot, which would seem to be its own
  const auto is_near = [&](Point2 dot) {
    if (distance(dot, from) < 1e-9) return false;  // its own
    const double x = to.x - from.x, y = to.y - from.y, squared = x * x + y * y;
    const double share =
        squared > 0 ? std::clamp(((dot.x - from.x) * x + (dot.y - from.y) * y) / squared, 0.0, 1.0) : 0;
    return distance(dot, {from.x + share * x, from.y + share * y}) < least_apart;
  };
  return std::ranges::none_of(dots_, is_near) &&
         std::ranges::none_of(taken_, [&](const Rect& box) { return crosses(from, to, box); }) &&
         std::ranges::none_of(leaders_, [&](const auto& other) { return cross(from, to, other.first, other.second); });
}

/// The shortest leader that leads clear of other names; one that crosses something rather than none.
PileName NamePlacer::beside(std::size_t index, double text_wide) {
  constexpr double air = 0.5, farthest = 60, step = 0.5;
  constexpr int ways = 48;
  const Point2 from = free_patch(discs_[index], nearer(index)).centre;
  PileName best;
  double least = 1e300;
  for (int i = 0; i < ways; ++i) {
    const double turn = 2 * pi * i / ways, right = to_picounit(std::cos(turn)), down = to_picounit(std::sin(turn));
    for (double far = name_height / 2; far < farthest; far += step) {
      const Point2 middle{from.x + far * right, from.y + far * down};
      const Rect box{middle.x - text_wide / 2, middle.y - name_height / 2, text_wide, name_height};
      if (box.x < 0 || box.right() > width_) break;
      if (std::ranges::any_of(discs_, [&](const PileDisc& disc) { return touches(box, disc, air); })) continue;
      if (overlap(box, line_) || meets_any({box.x - air, box.y, box.width + 2 * air, box.height}, taken_)) continue;
      const Point2 to{std::clamp(from.x, box.x, box.right()), std::clamp(from.y, box.y + 0.8, box.bottom() - 0.8)};
      const bool in_the_way =
          std::ranges::any_of(leaders_, [&](const auto& leader) { return crosses(leader.first, leader.second, box); });
      // Room beside the pile is there anyway, room above and beneath makes the picture higher.
      const double higher = std::max({0.0, top_ - box.y, box.bottom() - bottom_});
      const double cost = distance(from, to) + 4 * higher + (in_the_way || !leader_is_free(from, to) ? 100 : 0);
      if (cost < least) {
        least = cost;
        best.box = box, best.from = from, best.to = short_of(to, from);
      }
      break;
    }
  }
  if (least == 1e300) {
    best.box = {std::clamp(from.x - text_wide / 2, 0.0, std::max(0.0, width_ - text_wide)), bottom_ + air, text_wide,
                name_height};
    while (meets_any(best.box, taken_)) best.box.y += name_height;
    best.from = from, best.to = {best.box.middle().x, best.box.y};
  }
  best.beside = true;
  taken_.push_back(best.box);
  leaders_.emplace_back(best.from, best.to);
  return best;
}

}  // namespace quadrille
