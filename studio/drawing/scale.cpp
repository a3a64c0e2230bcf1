// Scale series and scale bars.
#include "studio/drawing/scale.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

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
constexpr std::array<double, 9> metric_steps{1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10};

double feet_scale(double needed) {
  for (const FeetScale& s : feet_scales)
    if (s.scale >= needed) return s.scale;
  for (double ten = 1200;; ten *= 10)
    for (double step : {1.0, 2.0, 5.0})
      if (ten * step >= needed) return ten * step;
}

double metric_scale(double needed) {
  for (double ten = 10;; ten *= 10)
    for (double step : metric_steps)
      if (ten * step >= needed) return ten * step;
}

/// A bar's length in metres or feet, and into how many parts it is divided.
struct BarLength {
  double units = 0;
  int parts = 0;
};
constexpr std::array<BarLength, 6> metre_lengths{{{0.1, 4}, {0.2, 4}, {0.5, 5}, {1, 4}, {2, 4}, {5, 5}}};
constexpr std::array<BarLength, 6> feet_lengths{{{1, 4}, {2, 4}, {5, 5}, {10, 5}, {25, 5}, {50, 5}}};

/// The first from the fourth (third of feet) on that is long enough to read by, or the longest that is not too long.
BarLength length_of(const std::array<BarLength, 6>& lengths, double unit_mm, double most_mm) {
  constexpr double handy_mm = 22;
  const double usual = lengths[3].units == 1 ? 1 : 5;
  BarLength chosen = lengths[0];
  for (double ten = 1; ten < 1e9; ten *= 10)
    for (const BarLength& length : lengths) {
      const BarLength next{length.units * ten, length.parts};
      if (next.units <= chosen.units || next.units * unit_mm > most_mm) continue;
      if (chosen.units >= usual && chosen.units * unit_mm >= handy_mm) return chosen;
      chosen = next;
    }
  return chosen;
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
  const bool feet = units == Units::feet;
  const double unit_m = feet ? metres_per_foot : 1;
  const BarLength bar_length = feet ? length_of(feet_lengths, unit_m * 1000 / scale, most_mm)
                                    : length_of(metre_lengths, unit_m * 1000 / scale, most_mm);
  ScaleBar bar{bar_length.units * unit_m, bar_length.units * unit_m * 1000 / scale, {}};
  add_segments(bar, corner, bar_length.parts);
  const double top = corner.y + 2.1, part = bar_length.units / bar_length.parts;
  add_figure(bar, corner.x + 1.2, top, "0", 6);
  add_figure(bar, corner.x + bar.length_mm, top, print_number(bar_length.units) + (feet ? " ft" : " m"), 24);
  // The first division is named where it has a round figure of its own and room for it.
  if (bar.length_mm / bar_length.parts >= 6 && part >= 1)
    add_figure(bar, corner.x + bar.length_mm / bar_length.parts, top, print_number(part), 8);
  return bar;
}

}  // namespace quadrille
