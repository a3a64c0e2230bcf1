#include "studio/build_sheet/straight_pile.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <span>
#include <tuple>
#include <utility>

#include "sdk/pattern.hpp"
#include "sdk/vec.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/room.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/paint/balloon_look.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double name_height = 3.5;                 // mm, of the box
constexpr double ink_half = 1.15;                   // mm, half the height of its capitals with a little air
constexpr double least_seen_m = 0.007;              // of a balloon: half as wide as a finger
constexpr double golden_angle = 2.399963229728653;  // radians: spreads points evenly over a disc

/// "f3": its kind and its number among those of the stretch, short enough to be written on it.
std::string name_in(const BuildSubject& subject, const MakingStretch& stretch, std::size_t place) {
  const auto initial = [&](std::size_t i) { return subject.loose[stretch.loose[i]].name.front(); };
  int number = 1;
  for (std::size_t i = 0; i < place; ++i) number += initial(i) == initial(place) ? 1 : 0;
  return std::string(1, initial(place)) + std::to_string(number);
}

StraightBalloon straight(const Piece& piece, std::size_t index, double near_m, std::string name) {
  const Balloon& balloon = piece.balloons[index];
  const double reach = (balloon.centre - balloon.neck).norm() + balloon.diameter_m;
  const SpinePlace place = place_along(piece, balloon.centre, near_m, reach);
  return {place.at_m,
          place.off_m,
          place.away_m,
          balloon.diameter_m / 2,
          index,
          std::move(name),
          print_straight_side(place)};
}

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

struct Disc {
  Point2 centre;
  double radius = 0;
};

/// The largest patch of `own` that no `nearer` disc hides. Its radius is below 0 where there is none.
Disc free_patch(const Disc& own, std::span<const Disc> nearer) {
  static const std::vector<Point2> points = spread_over_disc(500);
  std::vector<Disc> hiding;
  std::ranges::copy_if(nearer, std::back_inserter(hiding),
                       [&](const Disc& disc) { return distance(disc.centre, own.centre) < disc.radius + own.radius; });
  Disc best{own.centre, -1};
  for (const Point2& off : points) {
    const Point2 p{own.centre.x + off.x * own.radius, own.centre.y + off.y * own.radius};
    double clear = own.radius * (1 - distance(off, {0, 0}));
    for (const Disc& disc : hiding) {
      if (clear <= best.radius) break;
      clear = std::min(clear, distance(p, disc.centre) - disc.radius);
    }
    if (clear > best.radius) best = {p, clear};
  }
  return best;
}

/// What is not seen is behind, whatever lies nearer; what is seen is never said to be.
void tell_seen(std::vector<StraightBalloon>& balloons) {
  std::vector<Disc> discs;
  for (const StraightBalloon& one : balloons) discs.push_back({{one.along_m, one.off_m}, one.radius_m});
  for (std::size_t i = 0; i < balloons.size(); ++i) {
    StraightBalloon& one = balloons[i];
    one.seen = free_patch(discs[i], std::span(discs).subspan(i + 1)).radius >= least_seen_m;
    const std::string lateral = one.off_m < 0 ? "below" : "above";
    if (!one.seen)
      one.side = std::abs(one.off_m) < one.radius_m ? "behind" : "behind " + lateral;
    else if (one.side.starts_with("behind"))
      one.side = lateral;
  }
}

double distance_to(const Rect& box, Point2 p) {
  return distance(p, {std::clamp(p.x, box.x, box.right()), std::clamp(p.y, box.y, box.bottom())});
}

bool touches(const Rect& box, const Disc& disc, double air) {
  return distance_to(box, disc.centre) < disc.radius + air;
}

/// Whether the way from `a` to `b` leads through the box.
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

bool cross(Point2 a, Point2 b, Point2 c, Point2 d) {
  const auto turn = [](Point2 p, Point2 q, Point2 r) { return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x); };
  return (turn(a, b, c) > 0) != (turn(a, b, d) > 0) && (turn(c, d, a) > 0) != (turn(c, d, b) > 0);
}

TextStyle name_style(const Ink& ink) { return type(pt_caption, ink, Face::bold, Across::centre, Down::middle); }

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

/// Finds places for the names of one pile: on what is seen of a balloon, otherwise beside the pile.
class NamePlacer {
 public:
  /// `line` is that of the garland: no name stands on it.
  NamePlacer(std::vector<Disc> discs, const Rect& line, double width)
      : discs_(std::move(discs)), line_(line), width_(width), top_(line.y), bottom_(line.bottom()) {
    for (const Disc& disc : discs_) {
      top_ = std::min(top_, disc.centre.y - disc.radius), bottom_ = std::max(bottom_, disc.centre.y + disc.radius);
    }
  }

  std::optional<Rect> on_balloon(std::size_t index, double text_wide);
  PileName beside(std::size_t index, double text_wide);
  const std::vector<Rect>& taken() const { return taken_; }

 private:
  std::span<const Disc> nearer(std::size_t index) const { return std::span(discs_).subspan(index + 1); }
  bool leader_is_free(Point2 from, Point2 to) const;

  std::vector<Disc> discs_;
  Rect line_;
  double width_, top_, bottom_;
  std::vector<Rect> taken_;
  std::vector<std::pair<Point2, Point2>> leaders_;
};

std::optional<Rect> NamePlacer::on_balloon(std::size_t index, double text_wide) {
  static const std::vector<Point2> places = spread_over_disc(60);
  const Disc& own = discs_[index];
  for (const Point2& off : places) {
    const Point2 at{own.centre.x + off.x * own.radius, own.centre.y + off.y * own.radius};
    const double aside = std::abs(at.x - own.centre.x) + text_wide / 2, up = std::abs(at.y - own.centre.y) + ink_half;
    if (distance({aside, up}, {0, 0}) > own.radius) continue;
    const Rect ink{at.x - text_wide / 2, at.y - ink_half, text_wide, 2 * ink_half};
    if (std::ranges::any_of(nearer(index), [&](const Disc& disc) { return touches(ink, disc, 0.1); })) continue;
    const Rect box{at.x - text_wide / 2, at.y - name_height / 2 + ink_rise(), text_wide, name_height};
    if (meets_any(box, taken_)) continue;
    taken_.push_back(box);
    return box;
  }
  return std::nullopt;
}

bool NamePlacer::leader_is_free(Point2 from, Point2 to) const {
  return std::ranges::none_of(taken_, [&](const Rect& box) { return crosses(from, to, box); }) &&
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
      if (std::ranges::any_of(discs_, [&](const Disc& disc) { return touches(box, disc, air); })) continue;
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

std::vector<Disc> discs_of(const StraightPile& pile, double k, Point2 start) {
  std::vector<Disc> discs;
  for (const StraightBalloon& one : pile.balloons)
    discs.push_back({{start.x + (one.along_m - pile.from_m) * k, start.y - one.off_m * k}, one.radius_m * k});
  return discs;
}

}  // namespace

std::string letter_of(std::uint32_t slot) { return slot < 26 ? std::string(1, slot_letter(slot)) : "?"; }

std::vector<StraightPile> straight_piles(const BuildSubject& subject, const std::vector<MakingStretch>& stretches) {
  const Piece& piece = subject.piece();
  std::vector<StraightPile> piles;
  for (const MakingStretch& stretch : stretches) {
    StraightPile& pile = piles.emplace_back();
    pile.from_m = stretch.from_m, pile.to_m = stretch.to_m;
    for (std::size_t i = 0; i < stretch.loose.size(); ++i) {
      const LooseBalloon& loose = subject.loose[stretch.loose[i]];
      pile.balloons.push_back(straight(piece, loose.balloon, loose.at_m, name_in(subject, stretch, i)));
    }
    for (const std::size_t index : stretch.clusters) {
      const ChartCluster& cluster = subject.chart.clusters[index];
      for (std::size_t i = 0; i < piece.balloons.size(); ++i)
        if (piece.balloons[i].cluster == cluster.number)
          pile.balloons.push_back(straight(piece, i, cluster.at_m, cluster_name(subject, cluster.number)));
    }
    std::ranges::stable_sort(pile.balloons, std::ranges::greater{}, &StraightBalloon::away_m);
    tell_seen(pile.balloons);
  }
  return piles;
}

PilePicture picture_of(const StraightPile& pile, const BuildSubject& subject, const Setting& setting, double scale,
                       double width) {
  const double k = 1000 / scale;
  double left_m = 0, right_m = pile.to_m - pile.from_m;
  for (const StraightBalloon& one : pile.balloons) {
    left_m = std::min(left_m, one.along_m - pile.from_m - one.radius_m);
    right_m = std::max(right_m, one.along_m - pile.from_m + one.radius_m);
  }
  PilePicture picture;
  picture.width = width;
  picture.left = width / 2 - (left_m + right_m) / 2 * k;
  NamePlacer placer(discs_of(pile, k, {picture.left, 0}), {picture.left, -0.5, (pile.to_m - pile.from_m) * k, 1},
                    width);
  const auto text_of = [&](const StraightBalloon& one) {
    const Balloon& balloon = subject.piece().balloons[one.balloon];
    return one.name + " " + letter_of(balloon.slot) + (balloon.role == Role::accent ? "*" : "");
  };
  std::vector<std::size_t> homeless;
  for (std::size_t i = pile.balloons.size(); i-- > 0;) {
    const StraightBalloon& one = pile.balloons[i];
    if (!one.seen) continue;
    const std::string text = text_of(one);
    const auto box = placer.on_balloon(i, text_width(text, name_style(ink_text)));
    if (!box) {
      homeless.push_back(i);
      continue;
    }
    const Colour* colour =
        slot_colour(subject.placed(), subject.piece().balloons[one.balloon].slot, setting.input.palettes);
    picture.names.push_back({*box, text, contrasting(ink_of(colour)), i, false, {}, {}});
  }
  for (const std::size_t i : homeless) {
    const std::string text = text_of(pile.balloons[i]);
    PileName name = placer.beside(i, text_width(text, name_style(ink_text)));
    name.text = text, name.ink = ink_text, name.balloon = i;
    picture.names.push_back(std::move(name));
  }
  double top = -0.5, bottom = 0.5;
  for (const StraightBalloon& one : pile.balloons) {
    top = std::min(top, -(one.off_m + one.radius_m * balloon_reach) * k);
    bottom = std::max(bottom, -(one.off_m - one.radius_m * balloon_reach) * k);
  }
  for (const Rect& box : placer.taken()) top = std::min(top, box.y), bottom = std::max(bottom, box.bottom());
  picture.middle = -top, picture.height = bottom - top;
  for (PileName& name : picture.names) name.box.y -= top, name.from.y -= top, name.to.y -= top;
  return picture;
}

bool is_clear(const StraightPile& pile, const PilePicture& picture, double scale, const Rect& box) {
  const auto discs = discs_of(pile, 1000 / scale, {picture.left, picture.middle});
  return std::ranges::none_of(discs, [&](const Disc& disc) { return touches(box, disc, 0.8); }) &&
         std::ranges::none_of(picture.names, [&](const PileName& name) {
           return overlap(box, name.box) || (name.beside && crosses(name.from, name.to, box));
         });
}

void add_pile(Marks& marks, const StraightPile& pile, const PilePicture& picture, const BuildSubject& subject,
              const Setting& setting, double scale, Point2 at) {
  const double k = 1000 / scale;
  const Point2 start{at.x + picture.left, at.y + picture.middle};
  marks.push_back(line_mark(Part::drawing, start, {start.x + (pile.to_m - pile.from_m) * k, start.y}, mm_strong));
  const std::vector<Disc> discs = discs_of(pile, k, start);
  for (std::size_t i = 0; i < discs.size(); ++i) {
    const std::uint32_t slot = subject.piece().balloons[pile.balloons[i].balloon].slot;
    const Colour* colour = slot_colour(subject.placed(), slot, setting.input.palettes);
    BalloonMark mark;
    mark.centre = mark.neck = discs[i].centre, mark.radius = discs[i].radius, mark.ink = ink_of(colour);
    mark.finish = colour ? colour->finish : Finish::matte;
    Mark& drawn = marks.emplace_back();
    drawn.part = Part::drawing, drawn.shape = mark;
    marks.push_back(
        stroked_mark(Part::drawing, circle_path(discs[i].centre, discs[i].radius), {ink_quiet, mm_hair, {}, false}));
  }
  const auto moved = [&](Point2 p) { return Point2{p.x + at.x, p.y + at.y}; };
  for (const PileName& name : picture.names) {
    if (name.beside) {
      // White about the leader, so that it is seen on any colour.
      Mark leader =
          stroked_mark(Part::drawing, line_path(moved(name.from), moved(name.to)), {ink_paper, 0.6, {}, false});
      std::get<PathMark>(leader.shape).stroke.push_back({ink_text, mm_line, {}, false});
      marks.push_back(std::move(leader));
      marks.push_back(
          shape_mark(Part::drawing, circle_path(moved(name.from), 0.45), ink_text, {ink_paper, mm_line, {}, false}));
    }
    marks.push_back(text_mark(Part::dimension, {name.box.x + at.x, name.box.y + at.y, name.box.width, name.box.height},
                              name.text, name_style(name.ink)));
  }
}

}  // namespace quadrille
