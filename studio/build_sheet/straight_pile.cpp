#include "studio/build_sheet/straight_pile.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/room.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/paint/balloon_look.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double least_seen_m = 0.007;  // of a balloon: half as wide as a finger

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

/// What is not seen is behind, whatever lies nearer; what is seen is never said to be.
void tell_seen(std::vector<StraightBalloon>& balloons) {
  std::vector<PileDisc> discs;
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

std::vector<PileDisc> discs_of(const StraightPile& pile, double k, Point2 start) {
  std::vector<PileDisc> discs;
  for (const StraightBalloon& one : pile.balloons)
    discs.push_back({{start.x + (one.along_m - pile.from_m) * k, start.y - one.off_m * k}, one.radius_m * k});
  return discs;
}

}  // namespace

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
  placer.keep_free(homeless);
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
  return std::ranges::none_of(discs, [&](const PileDisc& disc) { return touches(box, disc, 0.8); }) &&
         std::ranges::none_of(picture.names, [&](const PileName& name) {
           return overlap(box, name.box) || (name.beside && crosses(name.from, name.to, box));
         });
}

void add_pile(Marks& marks, const StraightPile& pile, const PilePicture& picture, const BuildSubject& subject,
              const Setting& setting, double scale, Point2 at) {
  const double k = 1000 / scale;
  const Point2 start{at.x + picture.left, at.y + picture.middle};
  marks.push_back(line_mark(Part::drawing, start, {start.x + (pile.to_m - pile.from_m) * k, start.y}, mm_strong));
  const std::vector<PileDisc> discs = discs_of(pile, k, start);
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
    if (!name.beside) continue;
    // White about the leader, so that it is seen on any colour.
    Mark leader = stroked_mark(Part::drawing, line_path(moved(name.from), moved(name.to)), {ink_paper, 0.6, {}, false});
    std::get<PathMark>(leader.shape).stroke.push_back({ink_text, mm_line, {}, false});
    marks.push_back(std::move(leader));
  }
  // After all leaders: the white about one would hide another's end.
  for (const PileName& name : picture.names) {
    if (name.beside)
      marks.push_back(
          shape_mark(Part::drawing, circle_path(moved(name.from), 0.45), ink_text, {ink_paper, mm_line, {}, false}));
    marks.push_back(text_mark(Part::dimension, {name.box.x + at.x, name.box.y + at.y, name.box.width, name.box.height},
                              name.text, name_style(name.ink)));
  }
}

}  // namespace quadrille
