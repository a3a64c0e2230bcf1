// The pictures on a build sheet: the frame and the clusters, each to its own scale in a room of the page.
#pragma once

#include <string>
#include <vector>

#include "studio/build_sheet/build_subject.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// A picture's scale and place. `shows_floor`: the floor is in it, and is drawn.
struct BuildPicture {
  Rect room;
  Extent extent;  ///< what is to be seen [m]
  double scale = 10;
  Placement placement;
  bool shows_floor = true;
  double bottom = 20;  ///< mm kept free beneath what is drawn
};

/// What the pictures have to hold [m]: frame with feet, anchors and tie points; balloons.
Extent frame_extent(const BuildSubject& subject);
Extent cluster_extent(const BuildSubject& subject);

/// Room about a picture for its caption, dimensions and labels [mm].
inline constexpr double picture_left = 16, picture_right = 12, picture_top = 14;

/// What it keeps free beneath: room for the dimension between two feet, or for labels alone.
double frame_bottom(const BuildSubject& subject);
inline constexpr double cluster_bottom = 7;

/// The largest scale at which the extent fits into the room with what stands about it, in its middle.
BuildPicture picture_in(const Rect& room, const Extent& extent, Units units, double bottom);

/// Height of a room [mm] that just holds a picture of this scale.
double picture_height(const BuildPicture& picture);

/// "Frame, 1:20" at the room's top.
void add_picture_caption(Marks& marks, const BuildPicture& picture, const std::string& name, Units units);

/// A line of the spine or the frame at a place: where it is on the page, and outward from the middle of the picture.
struct PicturePlace {
  Point2 at, outward;
};
PicturePlace place_on(const BuildPicture& picture, const Vec3& point, const Vec3& tangent);

/// How far from its place a label may stand: right beside it on the outward side, farther off on that side too, or on
/// either side and farther off.
enum class LabelReach { beside, aside, around };

/// A label of this size beside `at`: outward, inward, farther out; the first of these that keeps clear of `taken` and
/// within the picture's room. It is added to `taken`. False where there is none.
bool find_room_for_label(const BuildPicture& picture, const PicturePlace& at, double width, double height, double off,
                         std::vector<Rect>& taken, Rect& label, LabelReach reach = LabelReach::around);

/// The frame: sections, joints, feet with their ballast, hooks, tie points, lines and anchors, marks along it.
void add_frame_picture(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, Units units);

/// The dressed piece with the numbers of its clusters, and arrows along the colours' run where it shows.
void add_cluster_picture(Marks& marks, const BuildSubject& subject, const BuildPicture& picture,
                         const Setting& setting);

/// Thin arrows in the creases along runs of one colour, upwards, where colours run on aslant from cluster to cluster, and
/// beneath what they mean. They keep off the letters among `marks` and off each other; what they cover and what tells of
/// them is added to `taken`. None where it makes no difference to which side the clusters are turned.
void add_run_arrows(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, std::vector<Rect>& taken);

/// Seen from above: feet, anchors and lines, the audience below. Height for a column of this width, 0 where there is
/// nothing to be seen.
double plan_height(const BuildSubject& subject, double width, Units units);
void add_plan(Marks& marks, const BuildSubject& subject, const Rect& room, Units units);

/// The distance of running marks: a foot or half a metre.
constexpr double running_step_m(Units units) { return units == Units::feet ? metres_per_foot : 0.5; }

/// "S1": the section's name on the frame's picture and in the table; a number alone would read as a piece's.
inline std::string section_name(std::size_t index) { return "S" + std::to_string(index + 1); }

/// "L1": the line's name on the pictures and in the table.
inline std::string line_name(std::size_t index) { return "L" + std::to_string(index + 1); }

}  // namespace quadrille
