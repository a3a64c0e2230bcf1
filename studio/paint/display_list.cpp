// The common shapes as paths.
#include "studio/paint/display_list.hpp"

#include <cstddef>
#include <utility>

namespace quadrille {
namespace {

PathStep move_to(Point2 to) { return {PathStep::Kind::move, to, {}, {}}; }
PathStep line_to(Point2 to) { return {PathStep::Kind::line, to, {}, {}}; }
PathStep close() { return {PathStep::Kind::close, {}, {}, {}}; }

}  // namespace

PathSteps line_path(Point2 from, Point2 to) { return {move_to(from), line_to(to)}; }

PathSteps polyline_path(const std::vector<Point2>& points) {
  PathSteps steps;
  for (std::size_t i = 0; i < points.size(); ++i) steps.push_back(i == 0 ? move_to(points[i]) : line_to(points[i]));
  return steps;
}

PathSteps polygon_path(const std::vector<Point2>& corners) {
  PathSteps steps = polyline_path(corners);
  if (!steps.empty()) steps.push_back(close());
  return steps;
}

PathSteps rect_path(const Rect& r) {
  return polygon_path({{r.x, r.y}, {r.right(), r.y}, {r.right(), r.bottom()}, {r.x, r.bottom()}});
}

PathSteps circle_path(Point2 c, double r) {
  // The usual four-arc approximation; 0.5523 keeps the radius within 0.03 %.
  const double k = 0.5522847498 * r;
  const auto arc = [](Point2 to, Point2 first, Point2 second) {
    return PathStep{PathStep::Kind::curve, to, first, second};
  };
  return {move_to({c.x + r, c.y}),
          arc({c.x, c.y + r}, {c.x + r, c.y + k}, {c.x + k, c.y + r}),
          arc({c.x - r, c.y}, {c.x - k, c.y + r}, {c.x - r, c.y + k}),
          arc({c.x, c.y - r}, {c.x - r, c.y - k}, {c.x - k, c.y - r}),
          arc({c.x + r, c.y}, {c.x + k, c.y - r}, {c.x + r, c.y - k}),
          close()};
}

Mark filled_mark(Part part, PathSteps steps, const Ink& fill) {
  PathMark path;
  path.steps = std::move(steps);
  path.fill.push_back(fill);
  return {part, std::move(path)};
}

Mark stroked_mark(Part part, PathSteps steps, const Pen& pen) {
  PathMark path;
  path.steps = std::move(steps);
  path.stroke.push_back(pen);
  return {part, std::move(path)};
}

Mark shape_mark(Part part, PathSteps steps, const Ink& fill, const Pen& pen) {
  Mark mark = filled_mark(part, std::move(steps), fill);
  std::get<PathMark>(mark.shape).stroke.push_back(pen);
  return mark;
}

}  // namespace quadrille
