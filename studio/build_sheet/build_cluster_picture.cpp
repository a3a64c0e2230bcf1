// The dressed piece with its clusters numbered.
#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>
#include <vector>

#include "studio/build_sheet/build_picture.hpp"
#include "studio/drawing/room.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

/// Takes the letter off each balloon whose middle lies behind another: one in front that is clear would show both. `whole`:
/// also where a part of the letter does.
void drop_hidden_letters(Marks& marks, bool whole) {
  std::vector<BalloonMark*> balloons;
  for (Mark& mark : marks)
    if (auto* balloon = std::get_if<BalloonMark>(&mark.shape)) balloons.push_back(balloon);
  for (std::size_t i = 0; i < balloons.size(); ++i)
    for (std::size_t j = i + 1; j < balloons.size(); ++j) {
      const Point2 a = balloons[i]->centre, b = balloons[j]->centre;
      const double letter = whole ? balloons[i]->radius * balloons[i]->letter_share / 2 : 0;
      if (std::hypot(a.x - b.x, a.y - b.y) < balloons[j]->radius + letter) balloons[i]->letter = 0;
    }
}

/// The piece alone, at its own origin, as the elevation draws it; without its lines, which the frame's picture has: their
/// anchors may stand far aside.
Marks piece_marks(const BuildSubject& subject, const BuildPicture& picture, const Setting& setting) {
  PlacedPiece placed = subject.placed();
  placed.x_m = placed.y_m = 0;
  placed.lines.clear();
  Area alone;
  alone.pieces.push_back(placed);
  const Scene scene = scene_of(alone, {{placed.id, subject.built}}, setting.input.palettes);
  SceneLook look;
  // A garland's stretches have all letters: here none that is below five points.
  look.letters = true, look.letter_radius = subject.chart.rings ? 1.3 : 2.1;
  look.figure = false, look.line = ink_text;
  Marks all = scene_marks(scene, picture.placement, look, picture.room.x + 4, picture.room.right() - 2), marks;
  for (Mark& mark : all)
    if (mark.part != Part::floor || picture.shows_floor) marks.push_back(std::move(mark));
  drop_hidden_letters(marks, !subject.chart.rings);
  return marks;
}

/// How far the balloons of each cluster reach from its centre in the elevation [m].
std::map<std::uint32_t, double> reaches_of(const Piece& piece) {
  std::map<std::uint32_t, Vec3> centres;
  for (const Cluster& cluster : piece.clusters) centres.emplace(cluster.number, cluster.centre);
  std::map<std::uint32_t, double> reaches;
  for (const Balloon& balloon : piece.balloons) {
    const auto centre = centres.find(balloon.cluster);
    if (centre == centres.end()) continue;
    const Vec3 off = balloon.centre - centre->second;
    double& reach = reaches[balloon.cluster];
    reach = std::max(reach, std::hypot(off.x(), off.z()) + balloon.diameter_m / 2);
  }
  return reaches;
}

/// Every how many clusters there is room for a number.
std::size_t number_step(const BuildSubject& subject, const BuildPicture& picture) {
  const auto& clusters = subject.piece().clusters;
  if (clusters.size() < 2) return 1;
  double run = 0;
  for (std::size_t i = 1; i < clusters.size(); ++i) run += (clusters[i].centre - clusters[i - 1].centre).norm();
  const double apart = picture.placement.length(run / static_cast<double>(clusters.size() - 1));
  const double needed = subject.chart.rings ? 5.2 : 7;
  for (const std::size_t step : std::array<std::size_t, 5>{1, 2, 5, 10, 20})
    if (apart * static_cast<double>(step) >= needed) return step;
  return 50;
}

/// A name on white, so that neither a line nor a dark balloon behind it hides it.
void add_name(Marks& marks, const Rect& box, const std::string& name, const TextStyle& style) {
  const Rect behind{box.x - 0.2, box.y + 0.3, box.width + 0.4, box.height - 0.6};
  marks.push_back(filled_mark(Part::drawing, rect_path(behind), ink_paper));
  marks.push_back(text_mark(Part::dimension, box, name, style));
}

/// About each balloon of the piece, its corners aside.
std::vector<Rect> rooms_of_balloons(const BuildSubject& subject, const BuildPicture& picture) {
  std::vector<Rect> rooms;
  for (const Balloon& balloon : subject.piece().balloons) {
    const double half = 0.85 * picture.placement.length(balloon.diameter_m / 2);
    const Point2 p = picture.placement.on_page(balloon.centre.x(), balloon.centre.z());
    rooms.push_back({p.x - half, p.y - half, 2 * half, 2 * half});
  }
  return rooms;
}

void add_numbers(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, std::vector<Rect>& taken) {
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre, Down::middle);
  const auto reaches = reaches_of(subject.piece());
  const std::size_t step = number_step(subject, picture);
  // The numbers of a garland's clusters keep off its balloons, which do not lie in rings.
  if (!subject.chart.rings) std::ranges::move(rooms_of_balloons(subject, picture), std::back_inserter(taken));
  const auto& clusters = subject.piece().clusters;
  for (std::size_t i = 0; i < clusters.size(); ++i) {
    const bool end = i == 0 || i + 1 == clusters.size();
    if (!end && clusters[i].number % step != 0) continue;
    const std::string number = cluster_name(subject, clusters[i].number);
    const auto reach = reaches.find(clusters[i].number);
    const double off = 0.6 + (reach == reaches.end() ? 0 : picture.placement.length(reach->second));
    Rect box;
    const PicturePlace place = place_on(picture, clusters[i].centre, clusters[i].axis);
    if (find_room_for_label(picture, place, text_width(number, style), 3.5, off, taken, box))
      add_name(marks, box, number, style);
  }
}

/// How far the piece reaches to the right within `half_m` of a height [m], beyond `x_m` at least.
double right_of(const Piece& piece, double x_m, double z_m, double half_m) {
  for (const Balloon& balloon : piece.balloons) {
    const double off = std::max(0.0, std::abs(balloon.centre.z() - z_m) - half_m), radius = balloon.diameter_m / 2;
    if (off < radius) x_m = std::max(x_m, balloon.centre.x() + std::sqrt(radius * radius - off * off));
  }
  return x_m;
}

/// Names of toppers and collars beside the piece, at the height of the rightmost of each group; fillers are too many for
/// a picture of the whole.
void add_loose_names(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, std::vector<Rect>& taken) {
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre, Down::middle);
  constexpr double height = 3.5;
  for (const LooseGroup& group : loose_groups(subject)) {
    const auto balloon_of = [&](const LooseBalloon* one) -> const Balloon& {
      return subject.piece().balloons[one->balloon];
    };
    const Balloon* balloon = &balloon_of(group.all.front());
    if (balloon->role != Role::topper && balloon->role != Role::collar) continue;
    for (const LooseBalloon* one : group.all)
      if (balloon_of(one).centre.x() > balloon->centre.x()) balloon = &balloon_of(one);
    const double z = balloon->centre.z(), half = height / 2 / picture.placement.mm_per_metre;
    const double edge = right_of(subject.piece(), balloon->centre.x(), z, half);
    const PicturePlace place{picture.placement.on_page(edge, z), {1, 0}};
    Rect box;
    if (find_room_for_label(picture, place, text_width(group.name, style), height, 0.9, taken, box, LabelReach::aside))
      add_name(marks, box, group.name, style);
  }
}

}  // namespace

void add_cluster_picture(Marks& marks, const BuildSubject& subject, const BuildPicture& picture,
                         const Setting& setting) {
  add_picture_caption(marks, picture, "Clusters", setting.units);
  Marks drawn = piece_marks(subject, picture, setting);
  std::move(drawn.begin(), drawn.end(), std::back_inserter(marks));
  std::vector<Rect> taken;
  add_run_arrows(marks, subject, picture, taken);
  add_loose_names(marks, subject, picture, taken);
  add_numbers(marks, subject, picture, taken);
}

}  // namespace quadrille
