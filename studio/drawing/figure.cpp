// A quiet silhouette: head, and a body with the arms at its sides, symmetrical about the vertical.
#include "studio/drawing/figure.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace quadrille {
namespace {

// Right half of the body, from the neck down and back up between the legs, in metres for a height of 1.75 m. Drawn by
// eye on common proportions (head an eighth of the height); no source.
constexpr std::array<Point2, 36> half{
    {{0.000, 1.600}, {0.046, 1.590}, {0.050, 1.510}, {0.070, 1.470}, {0.140, 1.442}, {0.188, 1.405},
     {0.206, 1.330}, {0.214, 1.200}, {0.226, 1.060}, {0.236, 0.920}, {0.240, 0.800}, {0.230, 0.738},
     {0.212, 0.745}, {0.206, 0.830}, {0.200, 0.940}, {0.190, 1.060}, {0.176, 1.180}, {0.163, 1.235},
     {0.147, 1.160}, {0.140, 1.080}, {0.152, 0.980}, {0.164, 0.880}, {0.162, 0.760}, {0.146, 0.620},
     {0.122, 0.490}, {0.122, 0.380}, {0.104, 0.220}, {0.086, 0.090}, {0.106, 0.024}, {0.098, 0.000},
     {0.040, 0.000}, {0.034, 0.060}, {0.036, 0.250}, {0.030, 0.450}, {0.020, 0.640}, {0.000, 0.790}}};
constexpr double design_height = 1.75, head_half_width = 0.078, head_centre = 1.641;

}  // namespace

PathSteps figure_path(double x, double floor, double height) {
  const double scale = height / design_height;
  const auto on_page = [&](double px, double pz) { return Point2{x + px * scale, floor - pz * scale}; };
  std::vector<Point2> outline;
  for (const Point2& p : half) outline.push_back(on_page(p.x, p.y));
  for (std::size_t i = half.size() - 1; i > 0; --i) outline.push_back(on_page(-half[i].x, half[i].y));

  // A closed Catmull-Rom curve through the points, as Bézier pieces.
  const std::size_t n = outline.size();
  PathSteps steps{{PathStep::Kind::move, outline[0], {}, {}}};
  for (std::size_t i = 0; i < n; ++i) {
    const Point2 &a = outline[(i + n - 1) % n], &b = outline[i], &c = outline[(i + 1) % n], &d = outline[(i + 2) % n];
    steps.push_back({PathStep::Kind::curve,
                     c,
                     {b.x + (c.x - a.x) / 6, b.y + (c.y - a.y) / 6},
                     {c.x - (d.x - b.x) / 6, c.y - (d.y - b.y) / 6}});
  }
  steps.push_back({PathStep::Kind::close, {}, {}, {}});

  // The head is a little higher than wide: its top is the figure's height.
  PathSteps head = circle_path({0, 0}, 1);
  const double high = (design_height - head_centre) * scale, wide = head_half_width * scale;
  const Point2 centre = on_page(0, head_centre);
  for (PathStep& s : head) {
    for (Point2* p : {&s.to, &s.first, &s.second}) *p = {centre.x + p->x * wide, centre.y + p->y * high};
    steps.push_back(s);
  }
  return steps;
}

}  // namespace quadrille
