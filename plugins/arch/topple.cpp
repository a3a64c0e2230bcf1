#include "plugins/arch/topple.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>

#include "plugins/arch/elastica.hpp"
#include "sdk/number.hpp"
#include "sdk/vec.hpp"

namespace quadrille::arch {
namespace {

using Unknowns = Eigen::Vector3d;  // curvature at the foot, thrust, weight per length; L = EI = 1
/// θ, θ', x; a free tilt β, β', ∫β; and a tilt under half a unit push, β, β', ∫β.
using State = std::array<double, 9>;

State slope_of(const State& y, double s, const Unknowns& u) {
  const double thrust = u[1], lever = u[2] * (0.5 - s);
  const double sine = std::sin(y[0]), cosine = std::cos(y[0]);
  const double stiffness = y[1] * y[1] + thrust * cosine + lever * sine;
  return {y[1], -thrust * sine + lever * cosine, cosine, y[4], -stiffness * y[3], y[3],
          y[7], -stiffness * y[6] - 0.5,         y[6]};
}

State stepped(const State& y, const State& slope, double by) {
  State next = y;
  for (std::size_t i = 0; i < y.size(); ++i) next[i] += by * slope[i];
  return next;
}

/// From the left foot to the crown by the classical Runge-Kutta rule.
State at_crown(const Unknowns& u) {
  constexpr int steps = 240;
  constexpr double h = 0.5 / steps;
  State y{pi / 2, -u[0], 0, 0, 1, 0, 0, 0, 0};
  for (int i = 0; i < steps; ++i) {
    const double s = i * h;
    const State a = slope_of(y, s, u), b = slope_of(stepped(y, a, h / 2), s + h / 2, u),
                c = slope_of(stepped(y, b, h / 2), s + h / 2, u), d = slope_of(stepped(y, c, h), s + h, u);
    for (std::size_t j = 0; j < y.size(); ++j) y[j] += h / 6 * (a[j] + 2 * b[j] + 2 * c[j] + d[j]);
  }
  return y;
}

/// What must vanish: the slope at the crown, the distance of the crown from the middle, and the sideways tilt there.
Eigen::Vector3d misses(const Unknowns& u, double span) {
  const State crown = at_crown(u);
  return {crown[0], crown[2] - span / 2, crown[3]};
}

Eigen::Matrix3d jacobian(const Unknowns& u, double span) {
  Eigen::Matrix3d matrix;
  for (int column = 0; column < 3; ++column) {
    const double by = 1e-5 * std::max(1.0, std::abs(u[column]));
    Unknowns more = u, less = u;
    more[column] += by;
    less[column] -= by;
    matrix.col(column) = (misses(more, span) - misses(less, span)) / (2 * by);
  }
  return matrix;
}

/// Shape under a given weight: Newton on the first two unknowns. False where it does not settle.
bool settle(Unknowns& u, double span) {
  for (int i = 0; i < 20; ++i) {
    const Eigen::Vector2d miss = misses(u, span).head<2>();
    if (miss.norm() < 1e-9) return true;
    u.head<2>() -= jacobian(u, span).topLeftCorner<2, 2>().partialPivLu().solve(miss);
    if (!u.allFinite()) return false;
  }
  return false;
}

/// All three unknowns at once, from nearby. False where it does not settle.
bool settle_at_limit(Unknowns& u, double span) {
  for (int i = 0; i < 20; ++i) {
    const Eigen::Vector3d miss = misses(u, span);
    u -= jacobian(u, span).partialPivLu().solve(miss);
    if (!u.allFinite()) return false;
    // The last step is taken too: it leaves less than the last digits in which machines differ.
    if (miss.norm() < 1e-9) return true;
  }
  return false;
}

/// To a millionth: hundreds of steps through sines and cosines amplify the digits in which machines differ.
double to_millionth(double limit) { return to_twelve_digits(std::nearbyint(limit * 1e6) / 1e6); }

/// The shape under no weight, from which weight is laid on in steps.
Unknowns weightless(double span) {
  const Elastica free(Feet::upright, span);
  return {free.foot_curvature(), free.thrust(), 0};
}

constexpr double weight_step = 5;

}  // namespace

std::optional<double> crown_give(double span, double weight) {
  Unknowns u = weightless(span);
  for (double laid = 0; laid < weight;) {
    laid = std::min(weight, laid + weight_step);
    u[2] = laid;
    if (!settle(u, span) || misses(u, span)[2] <= 0) return std::nullopt;
  }
  // The tilt under the push, and as much of the free one as makes it vanish at the crown too.
  const State crown = at_crown(u);
  const double give = crown[8] - crown[6] / crown[3] * crown[5];
  return to_twelve_digits(std::nearbyint(give * 1e8) / 1e8);
}

std::optional<double> sideways_limit(double span) {
  Unknowns u = weightless(span);
  // Weight is laid on in steps until the tilt returns to zero before the crown; from there Newton finds the limit.
  constexpr double step = weight_step, most = 1000;
  while (u[2] < most) {
    const double before = u[2];
    u[2] += step;
    if (!settle(u, span)) return std::nullopt;
    if (misses(u, span)[2] > 0) continue;
    const bool found = settle_at_limit(u, span) && u[2] > before - step && u[2] < before + 2 * step;
    return found ? std::optional(to_millionth(u[2])) : std::nullopt;
  }
  return std::nullopt;
}

}  // namespace quadrille::arch
