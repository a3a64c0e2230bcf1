// Painted pixel by pixel, so that no picture file need be found.
#include "studio/window/toolkit/icon.hpp"

#include <wx/bitmap.h>
#include <wx/image.h>

#include <algorithm>
#include <cmath>

namespace quadrille {
namespace {

struct Ball {
  double x, y;  ///< of its centre, as a share of the side
  unsigned char red, green, blue;
};
constexpr Ball balls[] = {
    {0.27, 0.27, 224, 97, 82}, {0.73, 0.27, 39, 78, 132}, {0.73, 0.73, 224, 97, 82}, {0.27, 0.73, 39, 78, 132}};
constexpr double radius = 0.24;

/// `part` of a colour where the light from the upper left falls at `dx`, `dy` from the centre, in radii.
unsigned char lit(unsigned char part, double dx, double dy) {
  const double light = std::clamp(1.0 - std::hypot(dx + 0.35, dy + 0.4) * 1.1, -0.3, 0.8);
  const double shade = light > 0 ? part + (255 - part) * light : part * (1 + light);
  return static_cast<unsigned char>(std::lround(std::clamp(shade, 0.0, 255.0)));
}

}  // namespace

wxIcon make_icon(int side) {
  wxImage image(side, side);
  image.InitAlpha();
  std::fill_n(image.GetAlpha(), side * side, static_cast<unsigned char>(0));
  for (const Ball& ball : balls)
    for (int y = 0; y < side; ++y)
      for (int x = 0; x < side; ++x) {
        const double dx = ((x + 0.5) / side - ball.x) / radius, dy = ((y + 0.5) / side - ball.y) / radius;
        const double cover = std::clamp((1 - std::hypot(dx, dy)) * radius * side + 0.5, 0.0, 1.0);
        if (cover <= 0) continue;
        image.SetRGB(x, y, lit(ball.red, dx, dy), lit(ball.green, dx, dy), lit(ball.blue, dx, dy));
        image.SetAlpha(x, y, std::max(image.GetAlpha(x, y), static_cast<unsigned char>(std::lround(cover * 255))));
      }
  wxIcon icon;
  icon.CopyFromBitmap(wxBitmap(image));
  return icon;
}

}  // namespace quadrille
