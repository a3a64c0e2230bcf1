// The dressed piece with its clusters numbered.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "studio/build_sheet/build_picture.hpp"
#include "studio/drawing/room.hpp"
#include "studio/making/hand.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

/// The piece alone, at its own origin, as the elevation draws it.
Marks piece_marks(const BuildSubject& subject, const BuildPicture& picture, const Setting& setting) {
  PlacedPiece placed = subject.placed();
  placed.x_m = placed.y_m = 0;
  Area alone;
  alone.pieces.push_back(placed);
  const Scene scene = scene_of(alone, {{placed.id, subject.built}}, setting.input.palettes);
  SceneLook look;
  look.letters = true, look.letter_radius = 1.3, look.figure = false, look.line = ink_text;
  Marks all = scene_marks(scene, picture.placement, look, picture.room.x + 4, picture.room.right() - 2), marks;
  for (Mark& mark : all)
    if (mark.part != Part::floor || picture.shows_floor) marks.push_back(std::move(mark));
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
  for (const std::size_t step : std::array<std::size_t, 5>{1, 2, 5, 10, 20})
    if (apart * static_cast<double>(step) >= 5.2) return step;
  return 50;
}

/// A name on white, so that neither a line nor a dark balloon behind it hides it.
void add_name(Marks& marks, const Rect& box, const std::string& name, const TextStyle& style) {
  const Rect behind{box.x - 0.2, box.y + 0.3, box.width + 0.4, box.height - 0.6};
  marks.push_back(filled_mark(Part::drawing, rect_path(behind), ink_paper));
  marks.push_back(text_mark(Part::dimension, box, name, style));
}

void add_numbers(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, std::vector<Rect>& taken) {
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre, Down::middle);
  const auto reaches = reaches_of(subject.piece());
  const std::size_t step = number_step(subject, picture);
  const auto& clusters = subject.piece().clusters;
  for (std::size_t i = 0; i < clusters.size(); ++i) {
    const bool end = i == 0 || i + 1 == clusters.size();
    if (!end && clusters[i].number % step != 0) continue;
    const std::string number = std::to_string(clusters[i].number);
    const auto reach = reaches.find(clusters[i].number);
    const double off = 0.6 + (reach == reaches.end() ? 0 : picture.placement.length(reach->second));
    Rect box;
    const PicturePlace place = place_on(picture, clusters[i].centre, clusters[i].axis);
    if (find_room_for_label(picture, place, text_width(number, style), 3.5, off, taken, box))
      add_name(marks, box, number, style);
  }
}

/// Names of toppers and collars beside them; fillers are too many for a picture of the whole.
void add_loose_names(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, std::vector<Rect>& taken) {
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre, Down::middle);
  for (const LooseBalloon& loose : subject.loose) {
    const Balloon& balloon = subject.piece().balloons[loose.balloon];
    if (balloon.role != Role::topper && balloon.role != Role::collar) continue;
    if (balloon.role == Role::collar && balloon.centre.y() > balloon.neck.y()) continue;  // behind: not seen
    PicturePlace place{picture.placement.on_page(balloon.centre.x(), balloon.centre.z()), {1, 0}};
    if (balloon.centre.x() < balloon.neck.x() - 0.001) place.outward = {-1, 0};
    Rect box;
    const double off = picture.placement.length(balloon.diameter_m / 2) + 0.6;
    if (find_room_for_label(picture, place, text_width(loose.name, style), 3.5, off, taken, box))
      add_name(marks, box, loose.name, style);
  }
}

/// An arrow through `middle` along (x, y), white about a dark line, so that it is seen on any colour.
void add_arrow(Marks& marks, Point2 middle, double x, double y, double length) {
  const double size = std::hypot(x, y), dx = x / size, dy = y / size, head = 3.2;
  const Point2 tail{middle.x - dx * length / 2, middle.y - dy * length / 2};
  const Point2 tip{middle.x + dx * length / 2, middle.y + dy * length / 2};
  const Point2 neck{tip.x - dx * head, tip.y - dy * head};
  const std::vector<Point2> point{tip,
                                  {neck.x - dy * head * 0.45, neck.y + dx * head * 0.45},
                                  {neck.x + dy * head * 0.45, neck.y - dx * head * 0.45}};
  Mark shaft = stroked_mark(Part::drawing, line_path(tail, neck), {ink_paper, 1.9, {}, false});
  std::get<PathMark>(shaft.shape).stroke.push_back({ink_text, 0.8, {}, false});
  Mark arrow = shape_mark(Part::drawing, polygon_path(point), ink_text, {ink_paper, 0.45, {}, false});
  marks.push_back(std::move(shaft));
  marks.push_back(std::move(arrow));
}

/// Which runs bear an arrow: the middle of each stretch that is turned to one side, eight stretches at most; of a long
/// one, a place near either end.
std::vector<std::size_t> arrow_places(const std::vector<FrontRun>& runs) {
  constexpr std::size_t most = 8;
  std::vector<std::size_t> places;
  for (std::size_t from = 0; from < runs.size() && places.size() < most;) {
    std::size_t to = from;
    while (to + 1 < runs.size() && (runs[to + 1].climb == Climb::neither) == (runs[from].climb == Climb::neither) &&
           (to - from < 1 || (runs[to + 1].climb == runs[to].climb)))
      ++to;
    const std::size_t count = to - from + 1;
    if (runs[from].climb != Climb::neither) {
      if (count >= 12) {
        places.push_back(from + count / 5);
        places.push_back(to - count / 5);
      } else {
        places.push_back(from + count / 2);
      }
    }
    from = to + 1;
  }
  return places;
}

void add_arrows(Marks& marks, const BuildSubject& subject, const BuildPicture& picture) {
  if (!shows_turns(subject.chart)) return;
  std::map<std::uint32_t, Vec3> centres;
  for (const Cluster& cluster : subject.piece().clusters) centres.emplace(cluster.number, cluster.centre);
  const std::vector<FrontRun> runs = front_runs(subject.piece(), subject.chart);
  for (const std::size_t index : arrow_places(runs)) {
    const FrontRun& run = runs[index];
    const Vec3 middle = (centres[run.from] + centres[run.to]) / 2;
    const double length = std::clamp(picture.placement.length(2.4 * std::hypot(run.x_m, run.z_m)), 7.0, 24.0);
    add_arrow(marks, picture.placement.on_page(middle.x(), middle.z()), run.x_m, -run.z_m, length);
  }
}

}  // namespace

void add_cluster_picture(Marks& marks, const BuildSubject& subject, const BuildPicture& picture,
                         const Setting& setting) {
  add_picture_caption(marks, picture, "Clusters", setting.units);
  Marks drawn = piece_marks(subject, picture, setting);
  std::move(drawn.begin(), drawn.end(), std::back_inserter(marks));
  add_arrows(marks, subject, picture);
  std::vector<Rect> taken;
  add_numbers(marks, subject, picture, taken);
  add_loose_names(marks, subject, picture, taken);
}

}  // namespace quadrille
