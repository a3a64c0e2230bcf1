#include "plugins/arch/elastica.hpp"

#include <algorithm>
#include <boost/math/policies/policy.hpp>
#include <boost/math/special_functions/ellint_rd.hpp>
#include <boost/math/special_functions/ellint_rf.hpp>
#include <boost/math/tools/roots.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <utility>

#include "sdk/vec.hpp"

namespace quadrille::arch {
namespace {

/// In double throughout: what long double is differs between machines.
using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

/// Legendre's F and D = ∫ sin²/Δ for amplitudes of at most 90°, where Δ² = 1 − m sin²; m may be any number for which Δ
/// stays real. DLMF 19.25.5 and 19.25.9.
struct Integrals {
  double F = 0, D = 0;
  double E(double m) const { return F - m * D; }
};

Integrals integrals_by(double sine, double cosine2, double delta2) {
  return {sine * boost::math::ellint_rf(cosine2, delta2, 1.0, InDouble()),
          sine * sine * sine / 3 * boost::math::ellint_rd(cosine2, delta2, 1.0, InDouble())};
}

Integrals integrals(double sine, double cosine2, double m) {
  return integrals_by(sine, cosine2, std::max(0.0, 1 - m * sine * sine));
}

/// The same beyond 90°, up to 180°.
Integrals integrals_of_amplitude(double amplitude, double m) {
  const double sine = std::sin(amplitude), cosine = std::cos(amplitude);
  const Integrals acute = integrals(sine, cosine * cosine, m);
  if (amplitude <= pi / 2) return acute;
  const Integrals complete = integrals(1, 0, m);
  return {2 * complete.F - acute.F, 2 * complete.D - acute.D};
}

template <class Function>
double root(Function function, double least, double most) {
  std::uintmax_t steps = 200;
  const auto close = [](double a, double b) { return std::abs(a - b) <= 4e-16 * (std::abs(a) + std::abs(b)); };
  const auto bracket = boost::math::tools::toms748_solve(function, least, most, close, steps);
  return (bracket.first + bracket.second) / 2;
}

constexpr double sine2_of_foot = 0.5;  // half the angle from crown to an upright foot is 45°

/// Δ² at an upright foot, 1 − m/2, by a measure that is 0 where the foot moment is and in which the span is smooth:
/// Δ runs from 0 to infinity as the arch flattens.
double delta2_at(double measure) { return std::expm1(measure * measure) / 2; }

Integrals falling_integrals(double measure) {
  return integrals_by(std::sqrt(sine2_of_foot), 1 - sine2_of_foot, delta2_at(measure));
}

double falling_span(double measure) {
  const Integrals at_foot = falling_integrals(measure);
  return 1 - 2 * at_foot.D / at_foot.F;
}

/// Span of the overhanging branch by the amplitude at the foot, 90° (no foot moment) and more; k sinφ = sin 45° there.
double modulus2_at(double amplitude) { return sine2_of_foot / std::pow(std::sin(amplitude), 2); }

double overhanging_span(double amplitude) {
  const double k2 = modulus2_at(amplitude);
  const Integrals at_foot = integrals_of_amplitude(amplitude, k2);
  return 2 * at_foot.E(k2) / at_foot.F - 1;
}

const double span_without_foot_moment = falling_span(0);

}  // namespace

bool Elastica::span_is_valid(Feet feet, double span) {
  return span >= (feet == Feet::pinned ? 0.02 : 0.0) && span <= most_span;
}

Elastica::Elastica(Feet feet, double span) : span_(span) {
  if (feet == Feet::pinned)
    solve_pinned(span);
  else if (span >= span_without_foot_moment)
    solve_falling(span);
  else
    solve_overhanging(span);
}

void Elastica::solve_falling(double span) {
  branch_ = Branch::falling;
  const double measure = root([&](double x) { return falling_span(x) - span; }, 0.0, 17.0);
  const double delta = std::sqrt(delta2_at(measure)), m = 2 * (1 - delta2_at(measure));
  const Integrals at_foot = falling_integrals(measure);
  parameter_ = m;
  crown_curvature_ = 4 * at_foot.F;
  foot_curvature_ = crown_curvature_ * delta;
  thrust_ = m * crown_curvature_ * crown_curvature_ / 4;
  height_ = 4 / crown_curvature_ * sine2_of_foot / (1 + delta);
  energy_ = 2 * crown_curvature_ * at_foot.E(m);
  widest_ = span;
  widest_at_ = 0;
}

void Elastica::solve_overhanging(double span) {
  branch_ = Branch::overhanging;
  const double amplitude = root([&](double a) { return overhanging_span(a) - span; }, pi / 2, 2.3);
  const double k2 = modulus2_at(amplitude), k = std::sqrt(k2);
  const Integrals at_foot = integrals_of_amplitude(amplitude, k2);
  const double wave = 2 * at_foot.F;
  parameter_ = k2;
  thrust_ = wave * wave;
  crown_curvature_ = 2 * k * wave;
  foot_curvature_ = crown_curvature_ * std::cos(amplitude);
  height_ = 2 * k * (1 - std::cos(amplitude)) / wave;
  energy_ = 4 * wave * (at_foot.E(k2) - (1 - k2) * at_foot.F);
  // Vertical again on the way down at the supplementary amplitude: there it is widest.
  const double upright = pi - amplitude;
  const Integrals at_widest = integrals_of_amplitude(upright, k2);
  widest_ = 2 * (2 * at_widest.E(k2) - at_widest.F) / wave;
  widest_at_ = height_ - 2 * k * (1 - std::cos(upright)) / wave;
}

void Elastica::solve_pinned(double span) {
  branch_ = Branch::overhanging;
  // S/L = 2E/K − 1, written as 1 − 2k²D/K so that nearly straight rods keep their digits.
  const auto shortfall = [&](double k2) {
    const Integrals complete = integrals(1, 0, k2);
    return 2 * k2 * complete.D / complete.F - (1 - span);
  };
  const double k2 = root(shortfall, 1e-12, 0.999), k = std::sqrt(k2);
  const Integrals complete = integrals(1, 0, k2);
  const double wave = 2 * complete.F;
  parameter_ = k2;
  thrust_ = wave * wave;
  crown_curvature_ = 2 * k * wave;
  foot_curvature_ = 0;
  height_ = 2 * k / wave;
  energy_ = 4 * wave * (complete.E(k2) - (1 - k2) * complete.F);
  widest_ = span;
  if (k2 > sine2_of_foot) {
    const double upright = std::asin(std::sqrt(sine2_of_foot / k2));
    const Integrals at_widest = integrals_of_amplitude(upright, k2);
    widest_ = 2 * (2 * at_widest.E(k2) - at_widest.F) / wave;
    widest_at_ = height_ - 2 * k * (1 - std::cos(upright)) / wave;
  }
}

double Elastica::largest_curvature() const { return std::max(std::abs(crown_curvature_), std::abs(foot_curvature_)); }

ArchPoint Elastica::from_crown(double distance) const {
  const double m = parameter_;
  const double wanted = branch_ == Branch::falling ? crown_curvature_ * distance / 2 : std::sqrt(thrust_) * distance;
  const double most = branch_ == Branch::falling ? pi / 4 : pi;
  const auto error = [&](double amplitude) {
    const double sine = std::sin(amplitude);
    const double delta = std::sqrt(std::max(1e-300, 1 - m * sine * sine));
    return std::pair(integrals_of_amplitude(amplitude, m).F - wanted, 1 / delta);
  };
  const double pull = std::sqrt(std::max(0.0, -m));
  const double guess = pull > 1 ? std::sinh(std::min(pull * wanted, 700.0)) / pull : wanted;
  const double amplitude =
      distance <= 0 ? 0.0 : boost::math::tools::newton_raphson_iterate(error, std::min(guess, most), 0.0, most, 52);
  const Integrals here = integrals_of_amplitude(amplitude, m);
  const double sine = std::sin(amplitude), cosine = std::cos(amplitude);
  const double delta = std::sqrt(std::max(0.0, 1 - m * sine * sine));
  if (branch_ == Branch::falling)
    return {2 / crown_curvature_ * (here.F - 2 * here.D), height_ - 4 / crown_curvature_ * sine * sine / (1 + delta),
            -2 * amplitude, crown_curvature_ * delta};
  const double wave = std::sqrt(thrust_), k = std::sqrt(m);
  return {(2 * here.E(m) - here.F) / wave, height_ - 2 * k * (1 - cosine) / wave, -2 * std::asin(k * sine),
          crown_curvature_ * cosine};
}

ArchPoint Elastica::point(double at) const {
  const double distance = std::clamp(at, 0.0, 1.0) - 0.5;
  ArchPoint point = from_crown(std::min(std::abs(distance), 0.5));
  if (distance < 0) {
    point.x = -point.x;
    point.slope = -point.slope;
  }
  return point;
}

}  // namespace quadrille::arch
