// Scale series and scale bars.
#include "studio/drawing/scale.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/drawing/sheet_style.hpp"
#include "studio/drawing/text.hpp"

namespace quadrille {
namespace {

struct FeetScale {
  double scale;
  const char* text;
};
constexpr std::array<FeetScale, 15> feet_scales{{{8, "1 1/2\" = 1'"},
                                                 {12, "1\" = 1'"},
                                                 {16, "3/4\" = 1'"},
                                                 {24, "1/2\" = 1'"},
                                                 {32, "3/8\" = 1'"},
                                                 {48, "1/4\" = 1'"},
                                                 {64, "3/16\" = 1'"},
                                                 {96, "1/8\" = 1'"},
                                                 {128, "3/32\" = 1'"},
                                                 {192, "1/16\" = 1'"},
                                                 {240, "1\" = 20'"},
                                                 {360, "1\" = 30'"},
                                                 {480, "1\" = 40'"},
                                                 {600, "1\" = 50'"},
                                                 {720, "1\" = 60'"}}};
constexpr std::array<double, 6> metric_scales{10, 20, 25, 50, 75, 100};
constexpr std::array<double, 5> metric_steps{1.25, 2, 2.5, 5, 10};

double feet_scale(double needed) {
  for (const FeetScale& s : feet_scales)
    if (s.scale >= needed) return s.scale;
  for (double ten = 1200;; ten *= 10)
    for (double step : {1.0, 2.0, 5.0})
      if (ten * step >= needed) return ten * step;
}

double metric_scale(double needed) {
  for (double s : metric_scales)
    if (s >= needed) return s;
  for (double ten = 100;; ten *= 10)
    for (double step : metric_steps)
      if (ten * step >= needed) return ten * step;
}

void add_segments(ScaleBar& bar, Point2 corner, int segments) {
  constexpr double height = 1.5, w = mm_hair;
  // The stroke lies inside, so that the bar is as long in ink as it says.
  const Rect outline{corner.x + w / 2, corner.y + w / 2, bar.length_mm - w, height - w};
  bar.marks.push_back(shape_mark(Part::scale_bar, rect_path(outline), ink_paper, {ink_text, w, {}, false}));
  const double step = bar.length_mm / segments;
  for (int i = 0; i < segments; i += 2) {
    const Rect segment{corner.x + i * step, corner.y, step, height};
    bar.marks.push_back(filled_mark(Part::scale_bar, rect_path(segment), ink_text));
  }
}

void add_figure(ScaleBar& bar, double x, double top, const std::string& text, double room) {
  const TextStyle style = type(pt_caption, ink_text, Face::regular, Across::centre, Down::top);
  const double width = std::min(text_width(text, style), room);
  bar.marks.push_back(text_mark(Part::scale_bar, {x - width / 2, top, width, 4.2}, text, style));
}

}  // namespace

double fitting_scale(double width_m, double height_m, double width_mm, double height_mm, Units units) {
  const double needed = std::max(width_m * 1000 / width_mm, height_m * 1000 / height_mm) * (1 - 1e-9);
  return units == Units::feet ? feet_scale(needed) : metric_scale(needed);
}

std::string print_scale(double scale, Units units) {
  const std::string ratio = "1:" + print_number(scale);
  if (units == Units::metric) return ratio;
  for (const FeetScale& s : feet_scales)
    if (s.scale == scale) return std::string(s.text) + "  (" + ratio + ")";
  return "1\" = " + print_number(scale / 12) + "'  (" + ratio + ")";
}

ScaleBar scale_bar(double scale, Units units, Point2 corner, double most_mm) {
  const double unit_m = units == Units::feet ? 5 * metres_per_foot : 1;
  const double unit_mm = unit_m * 1000 / scale;
  double count = 1;
  for (double ten = 1; count * unit_mm < 22 && ten < 1e9; ten *= 10)
    for (double step : {1.0, 2.0, 5.0})
      if (count * unit_mm < 22 && ten * step * unit_mm <= most_mm) count = ten * step;
  ScaleBar bar{count * unit_m, count * unit_mm, {}};
  // One unit is divided into its feet or quarters, two into halves; more show five or ten whole units.
  int segments = units == Units::feet ? 5 : 4;
  if (count == 2) segments = 4;
  if (count > 2) segments = 5;
  add_segments(bar, corner, segments);
  const double top = corner.y + 2.1;
  const auto figure = [&](double units_along) {
    const double value = units_along * (units == Units::feet ? 5 : 1);
    return print_number(value) + (units == Units::feet ? " ft" : " m");
  };
  add_figure(bar, corner.x + 1.2, top, "0", 6);
  add_figure(bar, corner.x + bar.length_mm, top, figure(count), 24);
  if (count >= 2)
    add_figure(bar, corner.x + bar.length_mm / (count > 2 ? 5 : 2), top,
               print_number((count > 2 ? count / 5 : 1) * (units == Units::feet ? 5 : 1)), 8);
  return bar;
}

}  // namespace quadrille
