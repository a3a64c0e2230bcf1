// The light on a balloon. Every finish is the same few layers with other strengths, so that they read as one family.
#include "studio/paint/balloon_look.hpp"

#include <cairo.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <memory>

#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

struct Destroy {
  void operator()(cairo_pattern_t* pattern) const { cairo_pattern_destroy(pattern); }
};
using Pattern = std::unique_ptr<cairo_pattern_t, Destroy>;

struct Stop {
  double at = 0;
  Ink ink;
};

struct Disc {
  Point2 centre;
  double radius = 0;
};

Pattern radial(const Disc& inner, const Disc& outer, std::initializer_list<Stop> stops) {
  Pattern pattern(cairo_pattern_create_radial(inner.centre.x, inner.centre.y, inner.radius, outer.centre.x,
                                              outer.centre.y, outer.radius));
  for (const Stop& stop : stops)
    cairo_pattern_add_color_stop_rgba(pattern.get(), stop.at, stop.ink.red, stop.ink.green, stop.ink.blue,
                                      stop.ink.opacity);
  return pattern;
}

Ink with_opacity(Ink ink, double opacity) {
  ink.opacity = opacity;
  return ink;
}

constexpr Point2 light{-0.36, -0.40};  // where the light's mirror image sits on the unit ball

void fill_circle(cairo_t* cairo, double radius, const Pattern& pattern) {
  cairo_new_path(cairo);
  cairo_arc(cairo, 0, 0, radius, 0, 2 * 3.14159265358979323846);
  cairo_set_source(cairo, pattern.get());
  cairo_fill(cairo);
}

/// The mirror image of the light: an ellipse that lies along the ball's curve. `edge` is the share of it that is solid.
void paint_highlight(cairo_t* cairo, double length, double width, double strength, double edge) {
  const Ink white{1, 1, 1, strength};
  cairo_save(cairo);
  cairo_translate(cairo, light.x * 1.05, light.y * 1.05);
  cairo_rotate(cairo, -0.76);
  cairo_scale(cairo, length, width);
  fill_circle(cairo, 1, radial({{0, 0}, 0}, {{0, 0}, 1}, {{0, white}, {edge, white}, {1, with_opacity(white, 0)}}));
  cairo_restore(cairo);
}

/// Light thrown back from below and behind, seen as a faint sickle inside the lower right rim.
void paint_back_light(cairo_t* cairo, const Ink& ink, double strength) {
  const Ink glow = shaded(ink, 0.55);
  fill_circle(cairo, 0.985,
              radial({{-0.16, -0.18}, 0.80}, {{-0.06, -0.07}, 1.07},
                     {{0, with_opacity(glow, 0)}, {0.72, with_opacity(glow, strength)}, {1, with_opacity(glow, 0)}}));
}

void paint_contour(cairo_t* cairo, const Ink& ink, double darker, double opacity) {
  const Ink line = with_opacity(shaded(ink, darker), opacity);
  cairo_new_path(cairo);
  cairo_arc(cairo, 0, 0, 0.985, 0, 2 * 3.14159265358979323846);
  cairo_set_source_rgba(cairo, line.red, line.green, line.blue, line.opacity);
  cairo_set_line_width(cairo, 0.03);
  cairo_stroke(cairo);
}

Pattern body(std::initializer_list<Stop> stops) { return radial({light, 0}, {{0, 0}, 1}, stops); }

void paint_matte(cairo_t* cairo, const Ink& ink) {
  fill_circle(cairo, 1,
              body({{0, shaded(ink, 0.38)},
                    {0.28, shaded(ink, 0.18)},
                    {0.54, shaded(ink, 0.03)},
                    {0.76, shaded(ink, -0.10)},
                    {0.92, shaded(ink, -0.26)},
                    {1, shaded(ink, -0.33)}}));
  paint_back_light(cairo, ink, 0.18);
  paint_highlight(cairo, 0.32, 0.21, 0.38, 0);
  paint_contour(cairo, ink, -0.5, 0.55);
}

void paint_pearl(cairo_t* cairo, const Ink& ink) {
  fill_circle(cairo, 1,
              body({{0, shaded(ink, 0.48)},
                    {0.28, shaded(ink, 0.30)},
                    {0.52, shaded(ink, 0.06)},
                    {0.76, shaded(ink, -0.13)},
                    {0.90, shaded(ink, -0.10)},
                    {1, shaded(ink, 0.12)}}));
  paint_back_light(cairo, ink, 0.30);
  paint_highlight(cairo, 0.48, 0.30, 0.50, 0.05);
  paint_contour(cairo, ink, -0.42, 0.5);
}

void paint_metallic(cairo_t* cairo, const Ink& ink) {
  fill_circle(cairo, 1,
              body({{0, shaded(ink, 0.62)},
                    {0.18, shaded(ink, 0.40)},
                    {0.38, shaded(ink, 0.10)},
                    {0.60, shaded(ink, -0.09)},
                    {0.76, shaded(ink, 0.02)},
                    {0.90, shaded(ink, -0.27)},
                    {1, shaded(ink, -0.48)}}));
  paint_back_light(cairo, ink, 0.34);
  paint_highlight(cairo, 0.30, 0.15, 0.95, 0.38);
  paint_contour(cairo, ink, -0.68, 0.75);
}

void paint_clear(cairo_t* cairo, const Ink& ink) {
  const Ink tint = shaded(ink, 0.05), rim = shaded(ink, -0.25);
  fill_circle(cairo, 1,
              body({{0, with_opacity(tint, 0.22)},
                    {0.55, with_opacity(tint, 0.36)},
                    {0.82, with_opacity(tint, 0.52)},
                    {0.95, with_opacity(rim, 0.72)},
                    {1, with_opacity(rim, 0.85)}}));
  paint_back_light(cairo, ink, 0.35);
  paint_highlight(cairo, 0.26, 0.14, 0.92, 0.30);
  paint_contour(cairo, ink, -0.42, 0.65);
}

/// The soft shade that a balloon lays on what is behind it, which keeps neighbours of one colour apart.
void paint_contact_shade(cairo_t* cairo, double strength) {
  const Ink shade{0.05, 0.05, 0.10, strength};
  fill_circle(cairo, balloon_reach,
              radial({{0, 0}, 0.96}, {{0, 0}, balloon_reach}, {{0, shade}, {1, with_opacity(shade, 0)}}));
}

void paint_letter(cairo_t* cairo, const Ink& ink, char letter, double height) {
  const Ink text = contrasting(ink);
  cairo_new_path(cairo);
  letter_path(cairo, letter, height);
  cairo_set_source_rgba(cairo, text.red, text.green, text.blue, 0.66);
  cairo_fill(cairo);
}

double luminance(const Ink& ink) {
  const auto linear = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
  return 0.2126 * linear(ink.red) + 0.7152 * linear(ink.green) + 0.0722 * linear(ink.blue);
}

}  // namespace

Ink shaded(const Ink& ink, double share) {
  if (share >= 0) {
    // A dark skin throws back less light than a bright one.
    const double gain = share * (0.55 + 0.45 * std::max({ink.red, ink.green, ink.blue}));
    const auto lift = [gain](double v) { return v + (1 - v) * gain; };
    return {lift(ink.red), lift(ink.green), lift(ink.blue), ink.opacity};
  }
  // Shadows of a coloured skin stay coloured: the weaker channels lose more than the strong one.
  const double most = std::max({ink.red, ink.green, ink.blue, 1e-6});
  const auto drop = [share, most](double v) { return v * (1 + share * (1.25 - 0.35 * v / most)); };
  const auto kept = [&drop](double v) { return std::clamp(drop(v), 0.0, 1.0); };
  return {kept(ink.red), kept(ink.green), kept(ink.blue), ink.opacity};
}

Ink contrasting(const Ink& ink) {
  // The grey that has equal contrast to black and to white by the WCAG 2 formula: sqrt(1.05 * 0.05) - 0.05.
  return luminance(ink) > 0.179 ? Ink{0.08, 0.08, 0.10, 1} : Ink{1, 1, 1, 1};
}

void paint_ball(cairo_t* cairo, const Ink& ink, Finish finish, char letter, double letter_height) {
  cairo_save(cairo);
  if (finish != Finish::clear) paint_contact_shade(cairo, 0.16);
  switch (finish) {
    case Finish::matte:
      paint_matte(cairo, ink);
      break;
    case Finish::pearl:
      paint_pearl(cairo, ink);
      break;
    case Finish::metallic:
      paint_metallic(cairo, ink);
      break;
    case Finish::clear:
      paint_clear(cairo, ink);
      break;
  }
  if (letter != 0) paint_letter(cairo, ink, letter, letter_height);
  cairo_restore(cairo);
}

Ink taper_ink(const Ink& ink, Finish finish, double x, double y) {
  const double length = std::max(std::hypot(x, y), 1e-9);
  const double lit = -(x + y) / (length * std::sqrt(2.0));  // 1 towards the light, -1 away from it
  Ink tone = shaded(ink, -0.20 + 0.12 * lit);
  if (finish == Finish::clear) tone.opacity = 0.7;
  return tone;
}

}  // namespace quadrille
