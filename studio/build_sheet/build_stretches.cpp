// A garland by stretches: each drawn straight, balloon by balloon, and listed.
#include <algorithm>
#include <cmath>

#include "sdk/pattern.hpp"
#include "studio/build_sheet/build_chart.hpp"
#include "studio/build_sheet/build_layout.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/room.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/paint/balloon_look.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

/// A balloon where it lies once the spine is drawn straight, with the name by which it is found.
struct StraightBalloon {
  double along_m = 0, off_m = 0, away_m = 0, radius_m = 0;
  std::uint32_t slot = 0;
  std::string name;
  std::size_t stretch = 0;
};

std::string letter_of(std::uint32_t slot) { return slot < 26 ? std::string(1, slot_letter(slot)) : "?"; }

/// "f3": its kind and its number among those of the stretch, short enough to be written on it.
std::string name_in(const BuildSubject& subject, const MakingStretch& stretch, std::size_t place) {
  const auto initial = [&](std::size_t i) { return subject.loose[stretch.loose[i]].name.front(); };
  int number = 1;
  for (std::size_t i = 0; i < place; ++i) number += initial(i) == initial(place) ? 1 : 0;
  return std::string(1, initial(place)) + std::to_string(number);
}

StraightBalloon straight(const Piece& piece, const Balloon& balloon, double near_m, std::string name,
                         std::size_t stretch) {
  const double reach = (balloon.centre - balloon.neck).norm() + balloon.diameter_m;
  const SpinePlace place = place_along(piece, balloon.centre, near_m, reach);
  return {place.at_m, place.off_m, place.away_m, balloon.diameter_m / 2, balloon.slot, std::move(name), stretch};
}

/// All balloons, farthest first.
std::vector<StraightBalloon> straightened(const BuildSubject& subject, const std::vector<MakingStretch>& stretches) {
  const Piece& piece = subject.piece();
  std::vector<std::size_t> of_cluster(subject.chart.clusters.size());
  std::vector<StraightBalloon> all;
  for (std::size_t s = 0; s < stretches.size(); ++s) {
    for (std::size_t i = 0; i < stretches[s].loose.size(); ++i) {
      const LooseBalloon& loose = subject.loose[stretches[s].loose[i]];
      all.push_back(straight(piece, piece.balloons[loose.balloon], loose.at_m, name_in(subject, stretches[s], i), s));
    }
    for (const std::size_t index : stretches[s].clusters) {
      const ChartCluster& cluster = subject.chart.clusters[index];
      for (const Balloon& balloon : piece.balloons)
        if (balloon.cluster == cluster.number)
          all.push_back(straight(piece, balloon, cluster.at_m, std::to_string(cluster.number), s));
    }
  }
  std::ranges::stable_sort(all, std::ranges::greater{}, &StraightBalloon::away_m);
  return all;
}

/// Scale and height of the strips: the longest stretch with what stands out at its ends goes into the width.
struct StripPlan {
  double scale = 15, ends_m = 0, top_m = 0, bottom_m = 0, step_m = 0.5;
  double k() const { return 1000 / scale; }
  double height() const { return (top_m + bottom_m) * k() + 2; }
};

StripPlan plan_of(const std::vector<StraightBalloon>& balloons, const std::vector<MakingStretch>& stretches,
                  double width) {
  StripPlan plan;
  double largest = 0.02;
  plan.step_m = stretches.front().to_m - stretches.front().from_m;
  for (const StraightBalloon& b : balloons) {
    largest = std::max(largest, b.radius_m);
    const MakingStretch& stretch = stretches[b.stretch];
    plan.ends_m =
        std::max({plan.ends_m, stretch.from_m - b.along_m + b.radius_m, b.along_m - stretch.to_m + b.radius_m});
    plan.top_m = std::max(plan.top_m, b.off_m + b.radius_m),
    plan.bottom_m = std::max(plan.bottom_m, b.radius_m - b.off_m);
  }
  for (const double scale : {6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0}) {
    plan.scale = scale;
    if ((plan.step_m + 2 * plan.ends_m) * plan.k() <= width && plan.height() <= 38) break;
  }
  return plan;
}

/// The name is written on a balloon of which one sees enough for it: with its letter, else without.
void add_name(Marks& marks, const StraightBalloon& balloon, Point2 at, double radius, const Ink& ink,
              std::span<const Rect> hidden_by, std::vector<Rect>& taken) {
  const TextStyle style = type(pt_caption, contrasting(ink), Face::bold, Across::centre, Down::middle);
  constexpr double height = 3.5;
  constexpr Point2 places[] = {{0, 0}, {0, -0.5}, {0, 0.5}, {-0.5, 0}, {0.5, 0}, {-0.4, -0.4}, {0.4, 0.4}};
  for (const std::string& text : {balloon.name + " " + letter_of(balloon.slot), balloon.name}) {
    const double width = text_width(text, style);
    for (const Point2& place : places) {
      const double aside = std::abs(place.x) * radius + width / 2,
                   along = std::abs(place.y) * radius + height / 2 - 0.6;
      if (std::hypot(aside, along) > radius) continue;
      const Rect box{at.x + place.x * radius - width / 2, at.y + place.y * radius - height / 2, width, height};
      if (meets_any(box, hidden_by) || meets_any(box, taken)) continue;
      taken.push_back(box);
      marks.push_back(text_mark(Part::key, box, text, style));
      return;
    }
  }
}

void add_strip(Marks& marks, const BuildSubject& subject, const Setting& setting,
               const std::vector<StraightBalloon>& balloons, const MakingStretch& stretch, std::size_t index,
               const StripPlan& plan, const Rect& at) {
  const double k = plan.k(), left = at.x + plan.ends_m * k, middle = at.y + 1 + plan.top_m * k;
  const auto on_page = [&](const StraightBalloon& b) {
    return Point2{left + (b.along_m - stretch.from_m) * k, middle - b.off_m * k};
  };
  std::vector<const StraightBalloon*> own;
  for (const StraightBalloon& b : balloons)
    if (b.stretch == index) own.push_back(&b);
  marks.push_back(
      line_mark(Part::key, {left, middle}, {left + (stretch.to_m - stretch.from_m) * k, middle}, mm_strong));
  std::vector<Rect> squares;
  std::vector<Ink> inks;
  for (const StraightBalloon* b : own) {
    const Colour* colour = slot_colour(subject.placed(), b->slot, setting.input.palettes);
    const Point2 p = on_page(*b);
    const double r = b->radius_m * k;
    BalloonMark mark;
    mark.centre = mark.neck = p, mark.radius = r, mark.ink = ink_of(colour);
    mark.finish = colour ? colour->finish : Finish::matte;
    Mark& drawn = marks.emplace_back();
    drawn.part = Part::key, drawn.shape = mark;
    marks.push_back(stroked_mark(Part::key, circle_path(p, r), {ink_quiet, mm_hair, {}, false}));
    // A nearer ball hides about the square within it.
    squares.push_back({p.x - r * 0.8, p.y - r * 0.8, r * 1.6, r * 1.6});
    inks.push_back(mark.ink);
  }
  std::vector<Rect> taken;
  for (std::size_t i = own.size(); i-- > 0;)
    add_name(marks, *own[i], on_page(*own[i]), own[i]->radius_m * k, inks[i], std::span(squares).subspan(i + 1), taken);
}

std::string describe(const ChartCluster& cluster) {
  std::string text;
  for (const ChartBalloon& balloon : cluster.balloons) {
    text += (text.empty() ? "" : ", ") + print_number(balloon.nominal_in) + " " + letter_of(balloon.slot);
    if (balloon.role == Role::accent) text += "*";
  }
  return text;
}

std::string describe(const BuildSubject& subject, const MakingStretch& stretch, std::size_t place) {
  const LooseBalloon& loose = subject.loose[stretch.loose[place]];
  const Balloon& balloon = subject.piece().balloons[loose.balloon];
  return name_in(subject, stretch, place) + ": " + print_number(balloon.nominal_in) + " " + letter_of(balloon.slot) +
         (balloon.role == Role::accent ? "*" : "") + " " + loose.side;
}

constexpr double number_room = 4.8;  // mm, of a cluster's number in a list

Row cluster_row(const ChartCluster& cluster, double width) {
  return cells_row({{std::to_string(cluster.number), number_room, Across::left, Face::bold}, {describe(cluster)}},
                   width);
}

/// A row of fillers from `first` on, as many as stand side by side, each as "f12: 5 B front".
Row filler_row(const BuildSubject& subject, const MakingStretch& stretch, std::size_t first, std::size_t columns,
               double width) {
  std::vector<RowCell> cells;
  for (std::size_t i = first; i < first + columns; ++i)
    cells.push_back({i < stretch.loose.size() ? describe(subject, stretch, i) : ""});
  return cells_row(cells, width);
}

/// What room the pictures of a garland leave beside them for lists: none where it would be too narrow for a filler.
struct SideRoom {
  double width = 0, height = 0;  ///< mm
  bool takes_clusters = false;   ///< each cluster of the garland goes into one line there
};

SideRoom side_room(const BuildSubject& subject, const StripPlan& plan, double width) {
  constexpr double least = 34, air = 2;
  SideRoom side{width - (plan.step_m + 2 * plan.ends_m) * plan.k() - air, plan.height(), true};
  if (side.width < least) return {};
  for (const ChartCluster& cluster : subject.chart.clusters)
    side.takes_clusters &= text_width(describe(cluster), table_body) <= side.width - number_room - 1.8;
  return side;
}

/// The clusters and fillers of a stretch: beside its picture as far as there is room, then beneath it.
struct StretchLists {
  std::vector<Row> beside, beneath;
};

StretchLists lists_of(const BuildSubject& subject, const MakingStretch& stretch, const SideRoom& side, double width) {
  StretchLists lists;
  double left = side.height;
  const auto goes_beside = [&](Row row) {
    if (row.height > left) return false;
    left -= row.height;
    lists.beside.push_back(std::move(row));
    return true;
  };
  for (const std::size_t index : stretch.clusters) {
    const ChartCluster& cluster = subject.chart.clusters[index];
    if (!side.takes_clusters || !goes_beside(cluster_row(cluster, side.width)))
      lists.beneath.push_back(cluster_row(cluster, width));
  }
  std::size_t filler = 0;
  while (filler < stretch.loose.size() && goes_beside(filler_row(subject, stretch, filler, 1, side.width))) ++filler;
  constexpr std::size_t columns = 2;
  for (; filler < stretch.loose.size(); filler += columns)
    lists.beneath.push_back(filler_row(subject, stretch, filler, columns, width));
  return lists;
}

void draw_beside(Marks& marks, const std::vector<Row>& rows, const Rect& at, double side) {
  double y = at.y;
  for (const Row& row : rows) {
    row.draw(marks, {at.right() - side, y, side, row.height});
    y += row.height;
  }
}

Row stretch_heading(const MakingStretch& stretch, LengthStyle lengths, double width) {
  const std::string text = print_length(stretch.from_m, lengths) + " to " + print_length(stretch.to_m, lengths);
  Row row = cells_row({{text, 0, Across::left, Face::bold}}, width);
  const auto draw = row.draw;
  row.height += 2;
  row.draw = [draw](Marks& marks, const Rect& at) { draw(marks, {at.x, at.y + 2, at.width, at.height - 2}); };
  return row;
}

}  // namespace

std::vector<Block> stretch_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  if (subject.chart.rings || (subject.chart.clusters.empty() && subject.loose.empty())) return {};
  const LengthStyle lengths = lengths_in(setting.units);
  const auto stretches = std::make_shared<const std::vector<MakingStretch>>(
      stretches_of(subject.piece(), subject.chart, subject.loose, running_step_m(setting.units)));
  const auto balloons = std::make_shared<const std::vector<StraightBalloon>>(straightened(subject, *stretches));
  const StripPlan plan = plan_of(*balloons, *stretches, build_column);
  Block how = table_block("How the stretches go", {}, width);
  how.rows.push_back(
      text_row("Counted from " + print_start(subject) +
                   ". Each stretch is drawn straight, seen from the front, at about 1:" + print_number(plan.scale) +
                   ", with what belongs to it alone: cluster number and colour on each balloon that is "
                   "seen, f and a number on fillers, counted anew in each stretch.",
               width));
  how.rows.push_back(
      text_row("By it stand the clusters with their balloons, nominal size in inches and colour, and the "
               "fillers with the side of the line on which they sit. A star is an accent.",
               width));
  Block block = table_block("Stretch by stretch", {}, width);
  const SideRoom side = side_room(subject, plan, width);
  for (std::size_t s = 0; s < stretches->size(); ++s) {
    const MakingStretch& stretch = (*stretches)[s];
    if (stretch.clusters.empty() && stretch.loose.empty()) continue;
    const StretchLists lists = lists_of(subject, stretch, side, width);
    block.rows.push_back(stretch_heading(stretch, lengths, width));
    const std::size_t first = block.rows.size();
    block.rows.push_back(
        picture_row(plan.height(), [&subject, &setting, stretches, balloons, s, plan, beside = lists.beside,
                                    side = side.width](Marks& marks, const Rect& at) {
          add_strip(marks, subject, setting, *balloons, (*stretches)[s], s, plan, at);
          draw_beside(marks, beside, at, side);
        }));
    block.rows.insert(block.rows.end(), lists.beneath.begin(), lists.beneath.end());
    // The names on the picture are read together with what is told of them, as far as a column of any paper holds it.
    constexpr double most_together = 105;
    double together = 0;
    for (std::size_t i = first; i < block.rows.size(); ++i) {
      together += block.rows[i].height;
      block.rows[i].with_before = together <= most_together;
    }
  }
  return {how, block};
}

}  // namespace quadrille
