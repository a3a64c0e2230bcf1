// How a build sheet's pictures and lists share its first pages.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_subject.hpp"

namespace quadrille {

/// A page with a picture or both, and columns for lists beside or beneath, if any.
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

/// Whichever of lying and upright, lists beside or beneath gives the larger pictures on the fewer pages. `pages_of` tells
/// how many pages a layout takes with all its lists.
BuildLayout build_layout(const BuildSubject& subject, const Setting& setting,
                         const std::function<std::size_t(const BuildLayout&)>& pages_of);

/// As many equal columns as go into the room.
std::vector<Rect> build_columns(const Rect& room);

}  // namespace quadrille
