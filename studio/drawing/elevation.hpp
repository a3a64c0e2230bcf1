// The elevation of one area as a scene in metres: what stands there, in the order in which it is to be painted.
// Frame: x along the area's front line to the right, z up from the floor; depth grows away from the audience.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/palette.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/takeoff/opening.hpp"

namespace quadrille {

/// A rectangle in the elevation [m].
struct Extent {
  double left = 0, right = 0, floor = 0, top = 0;
  double width() const { return right - left; }
  double height() const { return top - floor; }
  bool operator==(const Extent&) const = default;
};

/// The smallest extent around both.
Extent around(const Extent& a, const Extent& b);

/// In the scene's balloons, rods and plates `piece` is an index into Scene::pieces.
struct SceneBalloon {
  double x_m = 0, z_m = 0, radius_m = 0;
  double neck_x_m = 0, neck_z_m = 0;
  Ink ink;
  Finish finish = Finish::matte;
  std::uint32_t slot = 0, cluster = 0;
  std::size_t piece = 0;
};

/// A rod or pole of the frame in its true width, as one run of points (x, z).
struct SceneRod {
  std::vector<Point2> points_m;
  double width_m = 0;
  std::size_t piece = 0;
};

/// A base plate as seen from the front, standing on the floor.
struct ScenePlate {
  double x_m = 0, z_m = 0, width_m = 0;
  std::size_t piece = 0;
};

/// The box that stands for a piece that could not be built.
struct SceneBox {
  std::size_t piece = 0;
};

/// Something of the site that stands there; `structure` is an index into Scene::structures.
struct SceneStanding {
  std::size_t structure = 0;
};

/// A securing line from its tie point to its anchor.
struct SceneLine {
  Point2 from_m, to_m;  ///< (x, z)
  AnchorKind anchor = AnchorKind::stake;
  bool in_plane = true;  ///< false where the anchor lies before or behind the tie point
  bool cut_off = false;  ///< it ends where the drawing does, short of its anchor
  std::size_t piece = 0;
};

struct SceneItem {
  double depth_m = 0;  ///< of its centre
  std::variant<SceneBalloon, SceneRod, ScenePlate, SceneBox, SceneStanding, SceneLine> shape;
};

/// How far a piece could be drawn.
enum class Shown {
  built,    ///< from its real geometry
  missing,  ///< its type is not available: a hatched box of its last size
  refused   ///< its type refused its values: a dashed box
};

struct ScenePiece {
  std::string id, name;
  Shown shown = Shown::built;
  Extent extent;                               ///< of balloons and frame, or of the box
  bool size_known = true;                      ///< false where a box stands for a piece that was never built
  std::string note;                            ///< why it is not shown as built, one sentence
  std::optional<Extent> plates = {};           ///< around its base plates; nothing where it has none
  std::optional<Opening> opening = {};         ///< in the area's x
  double crown_left_m = 0, crown_right_m = 0;  ///< the outermost places at which it reaches its height
  double depth_m = 0;                          ///< of its place, from the front line
  double underside_m = 0,
         lowest_x_m = 0;  ///< how high over the floor it hangs, and where it does so lowest; 0 = it stands
  bool hangs() const { return underside_m > 0; }
  Extent body() const;            ///< standing(), but from the underside of what hangs
  Extent standing() const;        ///< around balloons, frame and plates
  bool plates_stand_out() const;  ///< by half a centimetre or more, to the left or the right
};

/// A structure of the site. It is as wide as the event says, or by eye where that says nothing.
struct SceneStructure {
  std::string name;
  StructureKind kind = StructureKind::other;
  double x_m = 0, half_width_m = 0;
  double height_m = 0;        ///< 0 = not known
  double drawn_height_m = 0;  ///< less than the height where it is broken off to keep the drawing small
  bool width_known = false;
  bool is_broken_off() const { return drawn_height_m != height_m; }
  double beam_depth_m() const { return kind == StructureKind::beam ? 0.15 : 0; }  ///< above its height, by eye
  Extent extent() const { return {x_m - half_width_m, x_m + half_width_m, 0, drawn_height_m + beam_depth_m()}; }
};

/// Where a walkway crosses the front line or leads up to it.
struct SceneWalkway {
  std::string name;
  double left_m = 0, right_m = 0;
};

/// What lies too far to the side to be drawn: by so much beyond what is drawn, to the right (positive) or left.
struct SceneFarOff {
  std::string name;
  double beyond_m = 0;
};

/// The photo behind everything; it may reach beyond the scene's extent.
struct SceneBackdrop {
  Shared<StoredPicture> picture;
  Extent extent;
  double fade = 0;  ///< towards white paper, 0 to 1
};

struct Scene {
  std::vector<ScenePiece> pieces;         ///< those not hidden, in the order of the area
  std::vector<SceneItem> items;           ///< far to near
  std::optional<SceneBackdrop> backdrop;  ///< unless the area has none, or it is hidden
  std::optional<Extent> wall;
  std::optional<Extent> pieces_extent;  ///< around all pieces of known size and their plates; nothing without one
  std::vector<SceneStructure> structures;
  std::vector<SceneWalkway> walkways;
  std::vector<SceneFarOff> far_off;
  double figure_x_m = 0;  ///< where the standing figure stands, beside the pieces
  Extent extent;          ///< around everything, the figure too; of the photo no more than surroundings of the rest
};

/// Height of the standing figure [m].
inline constexpr double figure_height_m = 1.75;
/// Thickness at which a base plate is drawn [m]; by eye, since the contract gives a plate none.
inline constexpr double plate_thickness_m = 0.012;
/// How much of the photo beside and above what stands there belongs to the drawing [m].
inline constexpr double photo_surroundings_m = 0.6;
/// Room that the figure takes along the wall [m].
inline constexpr double figure_width_m = 0.52;

/// "1", "2"… as drawing and key call the piece with this index; empty where it is the only one.
std::string piece_number(const Scene& scene, std::size_t index);

/// The scene of `area`. A slot without a colour, or with one that no palette has, is shown in a light grey. Numbers in
/// `built` that are not finite leave out what they belong to.
Scene scene_of(const Area& area, const BuiltEvent& built, std::span<const Palette> palettes);

/// The colour of a slot of a piece, or null.
const Colour* slot_colour(const PlacedPiece& piece, std::size_t slot, std::span<const Palette> palettes);

/// sRGB of a colour; a light grey for null.
Ink ink_of(const Colour* colour);

}  // namespace quadrille
