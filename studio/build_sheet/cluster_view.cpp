#include "studio/build_sheet/cluster_view.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/cluster.hpp"
#include "sdk/pattern.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/paint/balloon_look.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

/// A balloon about the rod: right and towards the front [m].
struct AboutRod {
  double right = 0, front = 0, radius = 0;
  const Balloon* balloon = nullptr;
};

std::vector<AboutRod> about_rod(const Piece& piece, std::uint32_t number) {
  std::vector<AboutRod> found;
  for (const Cluster& cluster : piece.clusters) {
    if (cluster.number != number) continue;
    const Vec3 front = direction_about(cluster.axis, 0), right = direction_about(cluster.axis, pi / 2);
    for (const Balloon& balloon : piece.balloons) {
      if (balloon.cluster != number) continue;
      const Vec3 out = balloon.centre - cluster.centre;
      found.push_back({out.dot(right), out.dot(front), balloon.diameter_m / 2, &balloon});
    }
  }
  return found;
}

double reach_of(const std::vector<AboutRod>& balloons) {
  double reach = 0.01;
  for (const AboutRod& b : balloons) reach = std::max(reach, std::hypot(b.right, b.front) + b.radius);
  return reach;
}

}  // namespace

void add_cluster_view(Marks& marks, const BuildSubject& subject, std::span<const Palette> palettes, std::size_t index,
                      Point2 centre, double radius) {
  const auto& clusters = subject.chart.clusters;
  const auto own = about_rod(subject.piece(), clusters[index].number);
  const double k = radius / std::max(reach_of(own),
                                     index == 0 ? 0 : reach_of(about_rod(subject.piece(), clusters[index - 1].number)));
  const auto on_page = [&](const AboutRod& b) { return Point2{centre.x + b.right * k, centre.y + b.front * k}; };
  if (index > 0)
    for (const AboutRod& b : about_rod(subject.piece(), clusters[index - 1].number))
      marks.push_back(
          stroked_mark(Part::key, circle_path(on_page(b), b.radius * k), {ink_quiet, mm_line, {0.9, 0.7}, false}));
  const TextStyle number_style = type(pt_caption, ink_text, Face::regular, Across::centre, Down::middle);
  for (const AboutRod& b : own) {
    const Colour* colour = slot_colour(subject.placed(), b.balloon->slot, palettes);
    const Ink ink = ink_of(colour);
    const Point2 p = on_page(b);
    marks.push_back(shape_mark(Part::key, circle_path(p, b.radius * k), ink, {ink_text, mm_line, {}, false}));
    const bool has_letter = b.balloon->slot < std::uint32_t{most_slots};
    const std::string text =
        std::to_string(b.balloon->place + 1) + " " + (has_letter ? std::string(1, slot_letter(b.balloon->slot)) : "?");
    TextStyle style = number_style;
    style.ink = contrasting(ink), style.face = Face::bold, style.size_pt = pt_body;
    const double wide = text_width(text, style);
    marks.push_back(text_mark(Part::key, {p.x - wide / 2, p.y - 2.2, wide, 4.4}, text, style));
  }
  marks.push_back(filled_mark(Part::key, circle_path(centre, 0.7), ink_text));
}

}  // namespace quadrille
