#include "studio/colour/lab.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace quadrille {
namespace {

using Triple = std::array<double, 3>;
using Matrix = std::array<Triple, 3>;

constexpr Matrix to_xyz{{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}};
constexpr Triple white{0.9505, 1.0, 1.0890};

// CIE 15: the cube root above (6/29)³, a straight line below.
constexpr double edge = 6.0 / 29.0;

double compressed(double part) {
  return part > edge * edge * edge ? std::cbrt(part) : part / (3 * edge * edge) + 4.0 / 29.0;
}

double expanded(double value) { return value > edge ? value * value * value : 3 * edge * edge * (value - 4.0 / 29.0); }

constexpr Matrix inverse(const Matrix& m) {
  Matrix result{};
  const double determinant = m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) -
                             m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0]) +
                             m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t column = 0; column < 3; ++column) {
      const std::size_t r1 = (column + 1) % 3, r2 = (column + 2) % 3, c1 = (row + 1) % 3, c2 = (row + 2) % 3;
      result[row][column] = (m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]) / determinant;
    }
  return result;
}

constexpr Matrix from_xyz = inverse(to_xyz);

Triple times(const Matrix& matrix, const Triple& vector) {
  Triple result{};
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t column = 0; column < 3; ++column) result[row] += matrix[row][column] * vector[column];
  return result;
}

/// Channel of sRGB, 0 to 1, of a part of light; also outside.
double channel_of(double light) {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
}

Triple channels_of(const Lab& colour) {
  const double y = (colour.lightness + 16) / 116, x = y + colour.a / 500, z = y - colour.b / 200;
  Triple channels = times(from_xyz, {white[0] * expanded(x), white[1] * expanded(y), white[2] * expanded(z)});
  for (double& channel : channels) channel = channel_of(channel);
  return channels;
}

std::optional<int> hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return std::nullopt;
}

}  // namespace

double linear_of(double channel) {
  const double part = channel / 255;
  return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
}

LinearRgb linear_of(Srgb colour) {
  return {linear_of(double{1} * colour.red), linear_of(double{1} * colour.green), linear_of(double{1} * colour.blue)};
}

Lab lab_of(LinearRgb light) {
  const Triple xyz = times(to_xyz, {light.red, light.green, light.blue});
  const double x = compressed(xyz[0] / white[0]), y = compressed(xyz[1] / white[1]), z = compressed(xyz[2] / white[2]);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

Lab lab_of(Srgb colour) { return lab_of(linear_of(colour)); }

Srgb srgb_of(const Lab& colour) {
  const Triple channels = channels_of(colour);
  const auto bits = [](double channel) {
    return static_cast<std::uint8_t>(std::lround(255 * std::clamp(channel, 0.0, 1.0)));
  };
  return {bits(channels[0]), bits(channels[1]), bits(channels[2])};
}

bool is_in_srgb(const Lab& colour) {
  return std::ranges::all_of(channels_of(colour), [](double part) { return part >= -0.001 && part <= 1.001; });
}

std::optional<Srgb> parse_srgb(std::string_view text) {
  if (text.starts_with('#')) text.remove_prefix(1);
  if (text.size() != 6 && text.size() != 3) return std::nullopt;
  std::array<std::uint8_t, 3> channels{};
  const std::size_t digits = text.size() / 3;
  for (std::size_t i = 0; i < 3; ++i) {
    const auto high = hex_digit(text[i * digits]), low = hex_digit(text[i * digits + digits - 1]);
    if (!high || !low) return std::nullopt;
    channels[i] = static_cast<std::uint8_t>(16 * *high + *low);
  }
  return Srgb{channels[0], channels[1], channels[2]};
}

}  // namespace quadrille
