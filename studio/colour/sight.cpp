#include "studio/colour/sight.hpp"

#include <algorithm>

#include "studio/colour/difference.hpp"

namespace quadrille {
namespace {

using Matrix = std::array<std::array<double, 3>, 3>;

constexpr Matrix usual{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr Matrix protanopia{
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix deuteranopia{
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix tritanopia{
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

const Matrix& matrix_of(Sight sight) {
  switch (sight) {
    case Sight::protanopia:
      return protanopia;
    case Sight::deuteranopia:
      return deuteranopia;
    case Sight::tritanopia:
      return tritanopia;
    case Sight::usual:
      break;
  }
  return usual;
}

}  // namespace

LinearRgb seen_by(Sight sight, LinearRgb light) {
  const Matrix& matrix = matrix_of(sight);
  const auto part = [&](const std::array<double, 3>& row) {
    return std::clamp(row[0] * light.red + row[1] * light.green + row[2] * light.blue, 0.0, 1.0);
  };
  return {part(matrix[0]), part(matrix[1]), part(matrix[2])};
}

double difference_seen(Sight sight, Srgb one, Srgb other) {
  return ciede2000(lab_of(seen_by(sight, linear_of(one))), lab_of(seen_by(sight, linear_of(other))));
}

}  // namespace quadrille
