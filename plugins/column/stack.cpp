#include "plugins/column/stack.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille::column {
namespace {

/// cos(180°/n) by square roots alone; n is 2 to 6.
double cosine_of_half_step(int n) {
  const double sine = sine_of_half_step(n);
  return std::sqrt(std::max(0.0, 1 - sine * sine));
}

/// In the plane of the axis and a crease: balls of diameter c that touch both balloons beside the crease have their
/// centres on a circle about this point.
struct CreaseCircle {
  double centre_radius, radius2;
};

CreaseCircle crease_circle(int n, double d, double ring_radius, double c) {
  const double aside = ring_radius * sine_of_half_step(n), reach = (d + c) / 2;
  return {ring_radius * cosine_of_half_step(n), reach * reach - aside * aside};
}

/// A tapering column is sized in steps of the sizer: half an inch, so that a handful of sizes is blown (common practice,
/// no source).
constexpr double sizer_step_m = 0.5 * metres_per_inch;

double diameter_at(const Request& request, double height_m) {
  if (request.taper == 1) return request.dressing.make.inflated_m;
  const double share = std::clamp(height_m / request.height_m, 0.0, 1.0);
  const double even = request.dressing.make.inflated_m * (1 + (request.taper - 1) * share);
  return std::nearbyint(even / sizer_step_m) * sizer_step_m;
}

Layer next_layer(const Request& request, const Layer& below) {
  const int n = request.dressing.make.size;
  const auto seated = [&](double inflated_m) {
    return below.centre_m + request.dressing.tightness * crease_height(n, below.inflated_m, inflated_m);
  };
  // The diameter is that of the height where a cluster like the one below would sit; a step of the sizer moves it by less.
  const double inflated_m = diameter_at(request, seated(below.inflated_m));
  return {seated(inflated_m), inflated_m};
}

}  // namespace

double crease_height(int n, double d, double e) {
  const double r = hard_ring_radius(n, d), q = hard_ring_radius(n, e);
  const double apart2 = r * r + q * q - 2 * r * q * cosine_of_half_step(n), reach = (d + e) / 2;
  return std::sqrt(std::max(0.0, reach * reach - apart2));
}

Stack stack_of(const Request& request) {
  Stack stack;
  Layer layer;
  layer.inflated_m = diameter_at(request, request.bare_foot_m);
  layer.centre_m = request.bare_foot_m + layer.inflated_m / 2;
  const auto fits = [&](const Layer& l) { return l.centre_m + l.inflated_m / 2 <= request.height_m + 1e-9; };
  while (fits(layer)) {
    ++stack.most_layers;
    if (request.dressing.clusters == 0 || stack.most_layers <= request.dressing.clusters) stack.layers.push_back(layer);
    const Layer above = next_layer(request, layer);
    if (above.centre_m <= layer.centre_m) break;
    layer = above;
  }
  return stack;
}

double seat_height(double D, double d, double ring_radius) {
  const double reach = (D + d) / 2;
  return std::sqrt(std::max(0.0, reach * reach - ring_radius * ring_radius));
}

std::optional<CollarSeat> collar_below_topper(int n, double d, double ring_radius, double c, double D,
                                              double topper_height) {
  // Two circles in the plane of axis and crease: about the crease's point, and about the topper's centre on the axis.
  const CreaseCircle crease = crease_circle(n, d, ring_radius, c);
  const double reach2 = (D + c) * (D + c) / 4;
  const double apart2 = crease.centre_radius * crease.centre_radius + topper_height * topper_height;
  const double along = (apart2 + crease.radius2 - reach2) / (2 * apart2);
  const double across2 = crease.radius2 / apart2 - along * along;
  if (crease.radius2 <= 0 || apart2 <= 0 || across2 < 0) return std::nullopt;
  // From the crease's point towards the topper by `along`, then outward, square to that line.
  const double to_axis = -crease.centre_radius, across = std::sqrt(across2);
  const CollarSeat seat{crease.centre_radius + along * to_axis + across * topper_height,
                        along * topper_height - across * to_axis};
  if (seat.radius_m * 2 * sine_of_half_step(n) < c) return std::nullopt;
  return seat;
}

std::optional<CollarSeat> collar_at_foot(int n, double d, double ring_radius, double c, double ring_height) {
  const CreaseCircle crease = crease_circle(n, d, ring_radius, c);
  const double below = ring_height - c / 2;
  const double out2 = crease.radius2 - below * below;
  if (out2 < 0) return std::nullopt;
  const CollarSeat seat{crease.centre_radius + std::sqrt(out2), -below};
  if (seat.radius_m * 2 * sine_of_half_step(n) < c) return std::nullopt;
  return seat;
}

}  // namespace quadrille::column
