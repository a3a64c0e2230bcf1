#include "studio/drawing/deflection.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/paint/painter.hpp"

namespace quadrille {
namespace {

constexpr double turn = 2 * pi, most_step = pi / 30;
constexpr double least_arc = pi / 12;  // what shows between balloons through a smaller gap would be dots
constexpr Ink bent_ink{0.05, 0.23, 0.48, 1}, edge_ink{1, 1, 1, 0.8};

bool is_shown(const Disc& disc) {
  return std::isfinite(disc.centre.x) && std::isfinite(disc.centre.y) && std::isfinite(disc.radius) && disc.radius > 0;
}

struct Arc {
  double from = 0, to = 0;
};

/// Adds what `other` hides of the circle of `disc`; true where that is all of it. `first` settles which of two equals
/// counts.
bool hide(const Disc& disc, const Disc& other, bool first, std::vector<Arc>& hidden) {
  const double dx = other.centre.x - disc.centre.x, dy = other.centre.y - disc.centre.y, apart = std::hypot(dx, dy);
  if (apart >= disc.radius + other.radius) return false;
  if (apart + disc.radius <= other.radius) return apart > 0 || disc.radius < other.radius || !first;
  if (apart + other.radius <= disc.radius) return false;
  const double cosine =
      (disc.radius * disc.radius + apart * apart - other.radius * other.radius) / (2 * disc.radius * apart);
  const double half = std::acos(std::clamp(cosine, -1.0, 1.0)), middle = std::atan2(dy, dx);
  double from = std::fmod(middle - half + 2 * turn, turn);
  if (from + 2 * half <= turn) {
    hidden.push_back({from, from + 2 * half});
  } else {
    hidden.push_back({from, turn});
    hidden.push_back({0, from + 2 * half - turn});
  }
  return false;
}

std::vector<Point2> points_of(const Disc& disc, const Arc& arc) {
  const int steps = std::max(1, static_cast<int>(std::ceil((arc.to - arc.from) / most_step)));
  std::vector<Point2> points;
  for (int i = 0; i <= steps; ++i) {
    const double angle = arc.from + (arc.to - arc.from) * i / steps;
    points.push_back({disc.centre.x + disc.radius * std::cos(angle), disc.centre.y + disc.radius * std::sin(angle)});
  }
  return points;
}

void add_line(const std::vector<Point2>& run, const Placement& at, Pen edge, Pen line, Marks& marks) {
  std::vector<Point2> points;
  for (const Point2& point : run) points.push_back(at.on_page(point.x, point.y));
  Mark mark = stroked_mark(Part::drawing, polyline_path(points), std::move(edge));
  std::get<PathMark>(mark.shape).stroke.push_back(std::move(line));
  marks.push_back(std::move(mark));
}

}  // namespace

std::vector<std::vector<Point2>> outline_of(const std::vector<Disc>& discs) {
  std::vector<Disc> all;
  std::ranges::copy_if(discs, std::back_inserter(all), is_shown);
  // From left to right, so that only near ones are held against each other.
  std::ranges::stable_sort(all, {}, [](const Disc& disc) { return disc.centre.x; });
  double largest = 0;
  for (const Disc& disc : all) largest = std::max(largest, disc.radius);
  std::vector<std::vector<Point2>> runs;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double reach = all[i].radius + largest;
    std::size_t first = i, last = i;
    while (first > 0 && all[i].centre.x - all[first - 1].centre.x < reach) --first;
    while (last + 1 < all.size() && all[last + 1].centre.x - all[i].centre.x < reach) ++last;
    std::vector<Arc> hidden;
    bool gone = false;
    for (std::size_t j = first; j <= last && !gone; ++j) gone = j != i && hide(all[i], all[j], i < j, hidden);
    if (gone) continue;
    std::ranges::sort(hidden, {}, &Arc::from);
    double seen_from = 0;
    const auto add = [&](double to) {
      if (to > seen_from + least_arc) runs.push_back(points_of(all[i], {seen_from, to}));
    };
    for (const Arc& arc : hidden) {
      add(arc.from);
      seen_from = std::max(seen_from, arc.to);
    }
    add(turn);
  }
  return runs;
}

Deflection deflection_of(double x_m, const Piece& piece, std::span<const Vec3> nodes, std::span<const Vec3> balloons) {
  Deflection deflection;
  const FrameMember* before = nullptr;
  for (const FrameMember& member : piece.frame.members) {
    if (member.from >= nodes.size() || member.to >= nodes.size()) continue;
    const auto flat = [&](std::uint32_t node) { return Point2{x_m + nodes[node].x(), nodes[node].z()}; };
    if (before == nullptr || before->to != member.from) deflection.frame_m.push_back({flat(member.from)});
    deflection.frame_m.back().push_back(flat(member.to));
    before = &member;
  }
  std::vector<Disc> discs;
  for (std::size_t i = 0; i < std::min(balloons.size(), piece.balloons.size()); ++i)
    discs.push_back({{x_m + balloons[i].x(), balloons[i].z()}, piece.balloons[i].diameter_m / 2});
  deflection.outline_m = outline_of(discs);
  return deflection;
}

Marks deflection_marks(const Deflection& deflection, const Placement& at) {
  Marks marks;
  for (const auto& run : deflection.outline_m)
    add_line(run, at, {edge_ink, 0.6, {}, true}, {bent_ink, 0.25, {}, true}, marks);
  for (const auto& run : deflection.frame_m)
    add_line(run, at, {edge_ink, 1.3, {}, true}, {bent_ink, 0.7, {}, true}, marks);
  return marks;
}

void paint_deflection(cairo_t* cairo, const Deflection& deflection, const View& view, BalloonStamps& stamps) {
  paint_marks(cairo, deflection_marks(deflection, placement_of(view)), stamps, screen_pixels_per_mm);
}

}  // namespace quadrille
