// Built pieces set into their area and sorted by depth.
#include "studio/drawing/elevation.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

#include "studio/drawing/line_scene.hpp"
#include "studio/drawing/site_scene.hpp"

namespace quadrille {
namespace {

/// Depths that differ by less than a micrometre are equal, so that the last bits of a sum never change the picture.
double comparable(double depth_m) { return std::round(depth_m * 1e6); }

bool is_finite(const Vec3& v) { return v.allFinite(); }

struct Placing {
  double x_m, y_m;
  std::size_t piece;
};

void add_balloons(const Piece& built, const PlacedPiece& placed, const Placing& at, std::span<const Palette> palettes,
                  std::vector<SceneItem>& items) {
  std::vector<const Colour*> colours;
  for (const Balloon& b : built.balloons) {
    if (!is_finite(b.centre) || !is_finite(b.neck) || !(b.diameter_m > 0) || !std::isfinite(b.diameter_m)) continue;
    const std::size_t slot = std::min<std::size_t>(b.slot, 1000);
    while (colours.size() <= slot) colours.push_back(slot_colour(placed, colours.size(), palettes));
    SceneBalloon balloon;
    balloon.x_m = at.x_m + b.centre.x(), balloon.z_m = b.centre.z(), balloon.radius_m = b.diameter_m / 2;
    balloon.neck_x_m = at.x_m + b.neck.x(), balloon.neck_z_m = b.neck.z();
    balloon.ink = ink_of(colours[slot]);
    balloon.finish = colours[slot] ? colours[slot]->finish : Finish::matte;
    balloon.slot = b.slot, balloon.cluster = b.cluster, balloon.piece = at.piece;
    items.push_back({at.y_m + b.centre.y(), balloon});
  }
}

bool joins(const FrameMember& before, const FrameMember& next) {
  return before.to == next.from && before.outer_m == next.outer_m;
}

/// Members that follow each other at one depth become one run, so that no joint shows where there is none.
void add_frame(const Frame& frame, const Placing& at, std::vector<SceneItem>& items) {
  const auto node = [&](std::uint32_t i) { return frame.nodes[i]; };
  const auto flat = [&](std::uint32_t i) { return Point2{at.x_m + node(i).x(), node(i).z()}; };
  const FrameMember* before = nullptr;
  for (const FrameMember& member : frame.members) {
    const std::size_t count = frame.nodes.size();
    if (member.from >= count || member.to >= count || !is_finite(node(member.from)) || !is_finite(node(member.to)) ||
        !(member.outer_m > 0) || !std::isfinite(member.outer_m)) {
      before = nullptr;
      continue;
    }
    const double depth = at.y_m + (node(member.from).y() + node(member.to).y()) / 2;
    if (before && joins(*before, member) && comparable(items.back().depth_m) == comparable(depth)) {
      std::get<SceneRod>(items.back().shape).points_m.push_back(flat(member.to));
    } else {
      items.push_back({depth, SceneRod{{flat(member.from), flat(member.to)}, member.outer_m, at.piece}});
    }
    before = &member;
  }
}

void add_plates(const Piece& built, const Placing& at, std::vector<SceneItem>& items) {
  for (const Support& support : built.supports) {
    if (support.kind != SupportKind::plate || support.node >= built.frame.nodes.size()) continue;
    const Vec3& node = built.frame.nodes[support.node];
    if (!is_finite(node) || !(support.width_m > 0) || !std::isfinite(support.width_m)) continue;
    items.push_back(
        {at.y_m + node.y(), ScenePlate{at.x_m + node.x(), std::max(0.0, node.z()), support.width_m, at.piece}});
  }
}

/// Where the piece's base plates stand; nothing where it has none.
std::optional<Extent> plates_of(const Piece& built, double x_m) {
  std::optional<Extent> all;
  for (const Support& support : built.supports) {
    if (support.kind != SupportKind::plate || support.node >= built.frame.nodes.size()) continue;
    const Vec3& node = built.frame.nodes[support.node];
    if (!is_finite(node) || !(support.width_m > 0) || !std::isfinite(support.width_m)) continue;
    const double x = x_m + node.x(), half = support.width_m / 2;
    const Extent plate{x - half, x + half, 0, std::max(0.0, node.z()) + plate_thickness_m};
    all = all ? around(*all, plate) : plate;
  }
  return all;
}

/// The outermost places at which balloons or frame reach within `slack` of the top.
void find_crown(const Piece& built, double x_m, ScenePiece& piece) {
  constexpr double slack = 0.005;
  double left = 1e300, right = -1e300;
  const auto add = [&](double x, double top) {
    if (top < piece.extent.top - slack || !std::isfinite(x)) return;
    left = std::min(left, x_m + x), right = std::max(right, x_m + x);
  };
  for (const Balloon& b : built.balloons) add(b.centre.x(), b.centre.z() + b.diameter_m / 2);
  for (const Vec3& node : built.frame.nodes) add(node.x(), node.z());
  const double middle = (piece.extent.left + piece.extent.right) / 2;
  piece.crown_left_m = left <= right ? left : middle, piece.crown_right_m = left <= right ? right : middle;
}

/// What hangs higher than this is not standing; lower, it is a foot without a plate.
constexpr double least_underside_m = 0.3;

/// How high over the floor balloons, frame and feet begin, and where.
void find_underside(const Piece& built, double x_m, ScenePiece& piece) {
  double lowest = 1e300, at = 0;
  const auto add = [&](double x, double z) {
    if (std::isfinite(x) && std::isfinite(z) && z < lowest) lowest = z, at = x_m + x;
  };
  for (const Balloon& b : built.balloons) add(b.centre.x(), b.centre.z() - b.diameter_m / 2);
  for (const Vec3& node : built.frame.nodes) add(node.x(), node.z());
  if (lowest < 1e300 && lowest > least_underside_m) piece.underside_m = lowest, piece.lowest_x_m = at;
}

std::optional<Opening> placed_opening(const Piece& built, double x_m) {
  auto opening = opening_of(built);
  if (!opening || !std::isfinite(x_m)) return std::nullopt;
  for (double* x : {&opening->left_m, &opening->right_m, &opening->plates_left_m, &opening->plates_right_m}) *x += x_m;
  return opening;
}

Extent box_of(const PlacedPiece& placed, bool& known) {
  known = placed.last_built && placed.last_built->width_m > 0 && placed.last_built->height_m > 0;
  // A piece that was never built has no size: a box of one metre says where it is meant to stand, nothing more.
  const double width = known ? placed.last_built->width_m : 1, height = known ? placed.last_built->height_m : 1;
  return {placed.x_m - width / 2, placed.x_m + width / 2, 0, height};
}

std::string refusal_of(const Piece& built) {
  for (const Message& message : built.messages)
    if (message.severity == Severity::refusal) return message.text;
  return "Its piece type could not build it.";
}

ScenePiece piece_of(const PlacedPiece& placed, const BuiltPiece* built) {
  ScenePiece piece{placed.id, placed.name, Shown::built, {}, true, {}};
  piece.depth_m = placed.y_m;
  if (built && built->status == Status::ok) {
    const Box& box = built->box;
    piece.extent = {placed.x_m + box.least.x(), placed.x_m + box.most.x(), std::min(0.0, box.least.z()), box.most.z()};
    piece.plates = plates_of(built->piece, placed.x_m);
    piece.opening = placed_opening(built->piece, placed.x_m);
    find_crown(built->piece, placed.x_m, piece);
    find_underside(built->piece, placed.x_m, piece);
    return piece;
  }
  piece.extent = box_of(placed, piece.size_known);
  piece.crown_left_m = piece.extent.left, piece.crown_right_m = piece.extent.right;
  piece.shown = built ? Shown::refused : Shown::missing;
  piece.note = built ? "Not built: " + refusal_of(built->piece)
                     : "The piece type \"" + placed.type + "\" is not available; " +
                           (placed.last_built ? "shown as last calculated." : "the piece was never calculated.");
  return piece;
}

constexpr Extent room_for_first_piece{0, 5, 0, 3};  ///< what is seen of an area that holds nothing yet [m]

/// The figure stands to the right of the pieces, or to the left where the wall leaves room only there.
double figure_place(const Scene& scene, const std::optional<Extent>& pieces) {
  const double gap = 0.22 + figure_width_m / 2;
  if (!pieces) return scene.wall ? scene.wall->right - gap : 0;
  const double right = pieces->right + gap, left = pieces->left - gap;
  if (!scene.wall) return right;
  const double room_right = scene.wall->right - right, room_left = left - scene.wall->left;
  return room_right < figure_width_m / 2 && room_left > figure_width_m / 2 ? left : right;
}

/// Whether a line passes through where the figure stands, or close to it.
bool figure_is_in_a_line(const Scene& scene) {
  const double half = figure_width_m / 2 + 0.05, left = scene.figure_x_m - half, right = scene.figure_x_m + half;
  return std::ranges::any_of(scene.items, [&](const SceneItem& item) {
    const auto* const line = std::get_if<SceneLine>(&item.shape);
    if (line == nullptr) return false;
    const auto& [low, high] =
        line->from_m.x < line->to_m.x ? std::pair{line->from_m, line->to_m} : std::pair{line->to_m, line->from_m};
    if (high.x < left || low.x > right) return false;
    // How high it is where it enters and leaves the figure's width: a line that slopes is lowest at one of them.
    const auto height_at = [&](double x) {
      const double share = high.x > low.x ? std::clamp((x - low.x) / (high.x - low.x), 0.0, 1.0) : 0;
      return low.y + share * (high.y - low.y);
    };
    return std::min(height_at(left), height_at(right)) < figure_height_m;
  });
}

/// Where the figure at `x_m` clears all narrow structures, moved `way` (1 to the right, -1 to the left).
double off_posts(const Scene& scene, double x_m, int way) {
  const double half = figure_width_m / 2, apart = 0.1;
  for (std::size_t tries = 0; tries < scene.structures.size(); ++tries)
    for (const SceneStructure& s : scene.structures) {
      const Extent e = s.extent();
      if (e.width() >= 2 * figure_width_m || e.right <= x_m - half || e.left >= x_m + half) continue;
      x_m = way > 0 ? e.right + apart + half : e.left - apart - half;
    }
  return x_m;
}

/// Whether a balloon of any piece comes nearer to a figure at `x_m` than `apart_m`.
bool meets_balloons(const Scene& scene, double x_m, double apart_m) {
  const double half = figure_width_m / 2;
  return std::ranges::any_of(scene.items, [&](const SceneItem& item) {
    const auto* const balloon = std::get_if<SceneBalloon>(&item.shape);
    if (balloon == nullptr) return false;
    const double aside = std::max(0.0, std::abs(balloon->x_m - x_m) - half);
    return std::hypot(aside, std::max(0.0, balloon->z_m - figure_height_m)) < balloon->radius_m + apart_m;
  });
}

/// Beside the middle of an opening, clear of all balloons: as if about to go through.
std::optional<double> place_in_opening(const Scene& scene) {
  constexpr double apart = 0.1;  // m, from balloons and from the middle, which dimensions take
  for (const ScenePiece& piece : scene.pieces) {
    if (!piece.opening) continue;
    const double middle = piece.opening->middle_m(), half = piece.opening->width_m() / 2;
    for (double share = 0.5; share > 0.15; share -= 0.05) {
      const double x_m = middle + share * half;
      if (x_m - figure_width_m / 2 > middle + apart && !meets_balloons(scene, x_m, apart)) return x_m;
    }
  }
  return std::nullopt;
}

/// Moves the figure where it would stand in a line: beyond the ends of all lines, or into an opening where it would widen
/// the drawing out there.
void move_figure_off_lines(Scene& scene, std::optional<Extent> taken) {
  if (!figure_is_in_a_line(scene)) return;
  const double pieces_left = taken ? taken->left : 0;
  for (const SceneItem& item : scene.items)
    if (const auto* const line = std::get_if<SceneLine>(&item.shape)) {
      const auto [left, right] = std::minmax(line->from_m.x, line->to_m.x);
      const Extent run{left, right, 0, 0};
      taken = taken ? around(*taken, run) : run;
    }
  const double half = figure_width_m / 2, gap = 0.22 + half;
  if (!taken) return;
  // Not on a post that stands just there; within the wall, and where that makes the drawing less wide.
  const double right = off_posts(scene, taken->right + gap, 1), left = off_posts(scene, taken->left - gap, -1);
  const auto is_within = [&](double x) {
    return !scene.wall || (x - half >= scene.wall->left && x + half <= scene.wall->right);
  };
  const double wider_right = right + half - scene.extent.right, wider_left = scene.extent.left - (left - half);
  const bool has_lines_at_left = taken->left < pieces_left - 0.01;
  const bool as_wide = std::abs(wider_left - wider_right) < 0.01;
  bool goes_left = as_wide ? !has_lines_at_left : wider_left < wider_right;
  if (is_within(left) != is_within(right)) goes_left = is_within(left);
  const double wider = goes_left ? wider_left : wider_right;
  const auto inside = wider > 0 ? place_in_opening(scene) : std::nullopt;
  const double x_m = inside.value_or(goes_left ? left : right);
  scene.figure_x_m = x_m;
  scene.extent = around(scene.extent, {x_m - half, x_m + half, 0, figure_height_m});
}

/// Sets the photo behind the scene, which grows by a part of it. Alone in its area it is all that there is to see.
void add_backdrop(const Backdrop& backdrop, bool alone, Scene& scene) {
  const double right = backdrop.x_m + backdrop.width_m(), top = backdrop.z_m + backdrop.height_m();
  if (backdrop.hidden || !std::isfinite(right) || !std::isfinite(top)) return;
  scene.backdrop = {backdrop.picture, {backdrop.x_m, right, backdrop.z_m, top}, backdrop.fade};
  if (alone) {
    scene.extent = around(scene.extent, scene.backdrop->extent);
    return;
  }
  const Extent rest = scene.extent, photo = scene.backdrop->extent;
  scene.extent.left = std::min(rest.left, std::max(photo.left, rest.left - photo_surroundings_m));
  scene.extent.right = std::max(rest.right, std::min(photo.right, rest.right + photo_surroundings_m));
  scene.extent.top = std::max(rest.top, std::min(photo.top, rest.top + photo_surroundings_m));
}

}  // namespace

Extent around(const Extent& a, const Extent& b) {
  return {std::min(a.left, b.left), std::max(a.right, b.right), std::min(a.floor, b.floor), std::max(a.top, b.top)};
}

Extent ScenePiece::standing() const { return plates ? around(extent, *plates) : extent; }

Extent ScenePiece::body() const {
  Extent e = standing();
  if (hangs()) e.floor = underside_m;
  return e;
}

bool ScenePiece::plates_stand_out() const {
  constexpr double least = 0.005;
  return plates && (plates->left < extent.left - least || plates->right > extent.right + least);
}

const Colour* slot_colour(const PlacedPiece& piece, std::size_t slot, std::span<const Palette> palettes) {
  return slot < piece.colours.size() ? find_colour(palettes, piece.colours[slot]) : nullptr;
}

Ink ink_of(const Colour* colour) {
  if (!colour) return {0.86, 0.86, 0.87, 1};
  return {colour->red / 255.0, colour->green / 255.0, colour->blue / 255.0, 1};
}

std::string piece_number(const Scene& scene, std::size_t index) {
  return scene.pieces.size() > 1 ? std::to_string(index + 1) : std::string();
}

Scene scene_of(const Area& area, const BuiltEvent& built, std::span<const Palette> palettes) {
  Scene scene;
  if (area.wall_width_m && area.wall_height_m && *area.wall_width_m > 0 && *area.wall_height_m > 0)
    scene.wall = Extent{0, *area.wall_width_m, 0, *area.wall_height_m};
  std::optional<Extent> all;  // with the boxes that stand for pieces of unknown size
  for (const auto& placed : area.pieces) {
    if (placed->hidden) continue;
    const auto found = built.find(placed->id);
    const BuiltPiece* made = found == built.end() ? nullptr : found->second.get();
    const Placing at{placed->x_m, placed->y_m, scene.pieces.size()};
    scene.pieces.push_back(piece_of(*placed, made));
    if (scene.pieces.back().shown == Shown::built) {
      add_plates(made->piece, at, scene.items);
      add_frame(made->piece.frame, at, scene.items);
      add_balloons(made->piece, *placed, at, palettes, scene.items);
    }
    const ScenePiece& piece = scene.pieces.back();
    if (piece.shown != Shown::built) scene.items.push_back({at.y_m, SceneBox{at.piece}});
    const Extent standing = piece.standing();
    const auto widen = [&](std::optional<Extent>& e) { e = e ? around(*e, standing) : standing; };
    widen(all);
    if (piece.size_known) widen(scene.pieces_extent);
  }
  scene.figure_x_m = figure_place(scene, all);
  scene.extent = {scene.figure_x_m - figure_width_m / 2, scene.figure_x_m + figure_width_m / 2, 0, figure_height_m};
  if (scene.wall) scene.extent = around(scene.extent, *scene.wall);
  if (all) scene.extent = around(scene.extent, *all);
  if (!all && !scene.wall && !area.backdrop) scene.extent = around(scene.extent, room_for_first_piece);
  add_site(area, scene);
  add_lines(area, built, scene);
  move_figure_off_lines(scene, all);
  if (area.backdrop) add_backdrop(*area.backdrop, scene.pieces.empty() && !scene.wall, scene);
  std::stable_sort(scene.items.begin(), scene.items.end(), [](const SceneItem& a, const SceneItem& b) {
    return comparable(a.depth_m) > comparable(b.depth_m);
  });
  return scene;
}

}  // namespace quadrille
