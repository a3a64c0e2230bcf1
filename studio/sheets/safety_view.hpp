// What a safety picture shows, and to which scale: some neighbouring pieces from the front and from above.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "studio/drawing/elevation.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/drawing/site_marks.hpp"
#include "studio/sheets/safety_subject.hpp"

namespace quadrille {

/// Metres; in the plan x to the right, depth upwards.
struct SafetyView {
  std::vector<std::size_t> pieces;  ///< in subject.pieces
  Area area;                        ///< with these pieces alone
  Scene scene;
  Extent front, plan;  ///< with the same left and right
  double scale = 10;
};

/// Room about elevation and plan [mm]: caption, labels over the pieces, under the floor, between the two, under the plan.
inline constexpr double view_caption = 7, view_headroom = site_label_headroom + 4, view_under_floor = 12,
                        view_between = 2.5, view_front_label = 5, view_bar = scale_bar_height + 6;

/// Neighbours together for as long as 1:75 will do in a picture of this width and height [mm], a piece that is wider by
/// itself; never larger than 1:30. The first is drawn smaller where that lets it stand in `first_height` [mm]. Pieces more
/// than 100 km away are left out.
std::vector<SafetyView> safety_views(const SafetySubject& subject, const Setting& setting, double width, double height,
                                     double first_height);

/// Height of the picture [mm].
double picture_height(const SafetyView& view);

/// What a piece takes of the ground with its feet, its spine and its anchors, in the area's x and y; nothing where it has
/// none of them.
std::optional<Extent> ground_of(const SafetyPiece& piece);

/// Whether a piece that is drawn is wider than a picture of this width [mm] shows at 1:100.
bool has_wide_piece(const std::vector<SafetySubject>& subjects, double width_mm);

}  // namespace quadrille
