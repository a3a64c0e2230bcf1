// CIEDE2000, step by step as Sharma, Wu and Dalal number their equations.
#include "studio/colour/difference.hpp"

#include <cmath>
#include <numbers>

namespace quadrille {
namespace {

constexpr double degree = std::numbers::pi / 180;

/// C⁷ ÷ (C⁷ + 25⁷) under a root.
double chroma_weight(double chroma) {
  const double seventh = std::pow(chroma, 7);
  return std::sqrt(seventh / (seventh + 6103515625.0));
}

/// Hue in degrees, 0 to 360; 0 for a grey (equation 7).
double hue_of(double a, double b) {
  if (a == 0 && b == 0) return 0;
  const double hue = std::atan2(b, a) / degree;
  return hue < 0 ? hue + 360 : hue;
}

/// From the first hue to the second the short way round, in degrees (equation 10).
double hue_step(double from, double to, bool grey) {
  if (grey) return 0;
  const double step = to - from;
  if (step > 180) return step - 360;
  if (step < -180) return step + 360;
  return step;
}

/// Between the two hues (equation 14).
double mean_hue(double one, double other, bool grey) {
  if (grey) return one + other;
  if (std::abs(one - other) <= 180) return (one + other) / 2;
  return one + other < 360 ? (one + other + 360) / 2 : (one + other - 360) / 2;
}

double cosine(double degrees) { return std::cos(degrees * degree); }

}  // namespace

double ciede2000(const Lab& one, const Lab& other) {
  const double stretch = 1 + 0.5 * (1 - chroma_weight((std::hypot(one.a, one.b) + std::hypot(other.a, other.b)) / 2));
  const double a1 = stretch * one.a, a2 = stretch * other.a;
  const double c1 = std::hypot(a1, one.b), c2 = std::hypot(a2, other.b);
  const double h1 = hue_of(a1, one.b), h2 = hue_of(a2, other.b);
  const bool grey = c1 * c2 == 0;

  const double lightness_step = other.lightness - one.lightness, chroma_step = c2 - c1;
  const double hue_distance = 2 * std::sqrt(c1 * c2) * std::sin(hue_step(h1, h2, grey) / 2 * degree);

  const double lightness = (one.lightness + other.lightness) / 2, chroma = (c1 + c2) / 2;
  const double hue = mean_hue(h1, h2, grey);
  const double t =
      1 - 0.17 * cosine(hue - 30) + 0.24 * cosine(2 * hue) + 0.32 * cosine(3 * hue + 6) - 0.20 * cosine(4 * hue - 63);
  const double from_middle = (lightness - 50) * (lightness - 50);
  const double lightness_scale = 1 + 0.015 * from_middle / std::sqrt(20 + from_middle);
  const double chroma_scale = 1 + 0.045 * chroma, hue_scale = 1 + 0.015 * chroma * t;
  const double turn = 30 * std::exp(-((hue - 275) / 25) * ((hue - 275) / 25));
  const double rotation = -std::sin(2 * turn * degree) * 2 * chroma_weight(chroma);

  const double l = lightness_step / lightness_scale, c = chroma_step / chroma_scale, h = hue_distance / hue_scale;
  return std::sqrt(l * l + c * c + h * h + rotation * c * h);
}

double ciede2000(Srgb one, Srgb other) { return ciede2000(lab_of(one), lab_of(other)); }

std::string_view difference_in_words(double ciede2000) {
  if (ciede2000 < 1) return "the same to the eye";
  if (ciede2000 < 2.5) return "hardly to be told apart";
  if (ciede2000 < apart_across_a_room) return "nearly alike";
  return ciede2000 < 15 ? "related" : "another colour";
}

}  // namespace quadrille
