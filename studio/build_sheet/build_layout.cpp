#include "studio/build_sheet/build_layout.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "studio/paper/page_frame.hpp"

namespace quadrille {
namespace {

constexpr double gap = 7;
/// A page less, of all that the sheet takes, is worth pictures so much smaller: both by a fifth.
constexpr double page_cost = 0.45;

struct Wanted {
  Extent frame, clusters;
  double frame_beneath;  ///< mm
  Units units;
  BuildPicture frame_in(const Rect& room) const { return picture_in(room, frame, units, frame_beneath); }
  BuildPicture clusters_in(const Rect& room) const { return picture_in(room, clusters, units, cluster_bottom); }
};

/// A layout with what it is judged by: the sum of the logarithms of its scales, and its pages.
struct Candidate {
  BuildLayout layout;
  double score = 0;
};

Candidate judged(BuildLayout layout, std::size_t pages) {
  double score = page_cost * static_cast<double>(pages);
  for (const BuildPage& page : layout.pages) {
    for (const BuildPicture& picture : page.frame) score += std::log(picture.scale);
    for (const BuildPicture& picture : page.clusters) score += std::log(picture.scale);
  }
  return {std::move(layout), score};
}

/// Pictures at the left, one column of lists at the right.
std::vector<BuildLayout> beside(const Rect& content, const Wanted& wanted, bool landscape) {
  const double column = std::max(build_column, content.width * 0.3), room = content.width - column - gap;
  const Rect lists{content.right() - column, content.y, column, content.height};
  const Rect whole{content.x, content.y, room, content.height};
  const Rect left{content.x, content.y, (room - 3) / 2, content.height},
      right{left.right() + 3, content.y, left.width, content.height};
  const Rect upper{content.x, content.y, room, (content.height - 3) / 2},
      lower{content.x, upper.bottom() + 3, room, upper.height};
  BuildLayout two{landscape, {}};
  two.pages.push_back({{wanted.frame_in(whole)}, {}, {lists}});
  two.pages.push_back({{}, {wanted.clusters_in(whole)}, {lists}});
  std::vector<BuildLayout> layouts{two};
  for (const auto& [first, second] : {std::pair(left, right), std::pair(upper, lower)})
    layouts.push_back({landscape, {{{wanted.frame_in(first)}, {wanted.clusters_in(second)}, {lists}}}});
  return layouts;
}

/// The picture drawn again in a room that is just high enough for it.
BuildPicture tight(const BuildPicture& loose, Units units) {
  Rect own = loose.room;
  own.height = std::min(own.height, picture_height(loose));
  BuildPicture picture = picture_in(own, loose.extent, units, loose.bottom);
  return picture.scale == loose.scale ? picture : loose;
}

Rect under(const Rect& content, double y) {
  return {content.x, y + gap, content.width, std::max(0.0, content.bottom() - y - gap)};
}

/// Both pictures over each other, the lists beneath; or each on a page of its own, as high as a share of it.
std::vector<BuildLayout> above(const Rect& content, const Wanted& wanted, bool landscape) {
  const Units units = wanted.units;
  std::vector<BuildLayout> layouts;
  for (const double share : {0.6, 0.45}) {
    Rect room = content;
    room.height = content.height * share;
    const BuildPicture frame = tight(wanted.frame_in(room), units), clusters = tight(wanted.clusters_in(room), units);
    layouts.push_back({landscape,
                       {{{frame}, {}, build_columns(under(content, frame.room.bottom()))},
                        {{}, {clusters}, build_columns(under(content, clusters.room.bottom()))}}});
  }
  // Side by side on a page of their own, as a column's are, and all lists after them.
  Rect left = content, right = content;
  left.width = right.width = (content.width - gap) / 2, right.x = left.right() + gap;
  layouts.push_back({landscape, {{{wanted.frame_in(left)}, {wanted.clusters_in(right)}, {}}}});
  Rect half = content;
  half.height = content.height * 0.36;
  const BuildPicture first = tight(wanted.frame_in(half), units);
  half.y = first.room.bottom() + 3;
  const BuildPicture second = tight(wanted.clusters_in(half), units);
  layouts.push_back({landscape, {{{first}, {second}, build_columns(under(content, second.room.bottom()))}}});
  return layouts;
}

}  // namespace

std::vector<Rect> build_columns(const Rect& room) {
  const double count = std::max(1.0, std::floor((room.width + 8) / (build_column + 8) + 1e-6));
  return columns_in(room, static_cast<std::size_t>(count));
}

BuildLayout build_layout(const BuildSubject& subject, const Setting& setting,
                         const std::function<std::size_t(const BuildLayout&)>& pages_of) {
  const Wanted wanted{frame_extent(subject), cluster_extent(subject), frame_bottom(subject), setting.units};
  const bool wide = wanted.clusters.width() > wanted.clusters.height();
  std::optional<Candidate> best;
  for (const bool landscape : {wide, !wide}) {
    const Rect content = content_of(blank_page(setting.paper, landscape), setting.input.event);
    for (const auto& layouts : {beside(content, wanted, landscape), above(content, wanted, landscape)})
      for (const BuildLayout& layout : layouts) {
        Candidate candidate = judged(layout, pages_of(layout));
        if (!best || candidate.score < best->score - 1e-9) best = std::move(candidate);
      }
  }
  return best->layout;
}

}  // namespace quadrille
