// Ladders of steps, and labels.
#include "studio/window/canvas/ruler.hpp"

#include <array>
#include <cmath>
#include <span>

#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille {
namespace {

/// In centimetres or inches, so that the steps are whole numbers.
struct Rung {
  int step = 1, divisions = 1;
};
constexpr std::array<Rung, 16> metric{{{1, 2},
                                       {2, 2},
                                       {5, 5},
                                       {10, 10},
                                       {20, 4},
                                       {50, 5},
                                       {100, 10},
                                       {200, 4},
                                       {500, 5},
                                       {1000, 10},
                                       {2000, 4},
                                       {5000, 5},
                                       {10000, 10},
                                       {20000, 4},
                                       {50000, 5},
                                       {100000, 10}}};
constexpr std::array<Rung, 14> tape{{{1, 2},
                                     {2, 2},
                                     {3, 3},
                                     {6, 6},
                                     {12, 12},
                                     {24, 4},
                                     {60, 5},
                                     {120, 10},
                                     {240, 4},
                                     {600, 5},
                                     {1200, 10},
                                     {2400, 4},
                                     {6000, 5},
                                     {12000, 10}}};

double unit_m(Units units) { return units == Units::metric ? 0.01 : metres_per_inch; }

/// Divisions closer than this are a grey smear [px].
constexpr double least_division_px = 4;

}  // namespace

RulerStep ruler_step(double pixels_per_metre, Units units, double least_px) {
  const std::span<const Rung> rungs = units == Units::metric ? std::span<const Rung>(metric) : tape;
  const double unit_px = unit_m(units) * pixels_per_metre;
  for (const Rung& rung : rungs) {
    if (rung.step * unit_px < least_px) continue;
    const bool fine = rung.step * unit_px / rung.divisions >= least_division_px;
    return {rung.step * unit_m(units), fine ? rung.divisions : 1};
  }
  return {rungs.back().step * unit_m(units), 1};
}

std::string ruler_label(long index, const RulerStep& step, Units units) {
  const double metres = static_cast<double>(index) * step.step_m;
  if (index == 0) return "0";
  if (units == Units::feet) return print_feet_inches(metres);
  const long centimetres = std::lround(step.step_m * 100);
  return print_fixed(metres, centimetres % 100 == 0 ? 0 : centimetres % 10 == 0 ? 1 : 2);
}

std::string ruler_unit(Units units) { return units == Units::metric ? "m" : "ft"; }

double rounded_place(double metres, Units units) {
  const double step = units == Units::metric ? 0.01 : metres_per_inch / 2;
  // Four decimals hold both steps exactly as written, so that the file shows "1.905" rather than a long fraction.
  return std::round(std::round(metres / step) * step * 1e4) / 1e4;
}

double small_move(Units units) { return unit_m(units); }

}  // namespace quadrille
