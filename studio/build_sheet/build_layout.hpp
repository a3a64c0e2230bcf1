// How a build sheet's pictures and lists share its first pages.
#pragma once

#include <vector>

#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_subject.hpp"

namespace quadrille {

/// A page with a picture or both, and columns for lists beside or beneath.
struct BuildPage {
  std::vector<BuildPicture> frame, clusters;  ///< one or none of each
  std::vector<Rect> columns;
};

struct BuildLayout {
  bool landscape = false;
  std::vector<BuildPage> pages;  ///< one where both pictures share a page, otherwise two
};

/// The narrowest column that the lists are set in [mm].
inline constexpr double build_column = 84;

/// Whichever of lying and upright, lists beside or beneath gives the larger pictures; with equal ones fewer pages.
BuildLayout build_layout(const BuildSubject& subject, const Setting& setting);

/// As many equal columns as go into the room.
std::vector<Rect> build_columns(const Rect& room);

}  // namespace quadrille
