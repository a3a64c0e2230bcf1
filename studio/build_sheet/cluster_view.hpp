// One cluster as one looks along its rod: each balloon at its place, with its letter.
#pragma once

#include <cstddef>
#include <span>

#include "studio/build_sheet/build_subject.hpp"
#include "studio/model/palette.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// The cluster at `index` of the chart, seen from the spine's far end, the front at the bottom, within `radius` mm of
/// `centre`; the one before it shows behind in outline.
void add_cluster_view(Marks& marks, const BuildSubject& subject, std::span<const Palette> palettes, std::size_t index,
                      Point2 centre, double radius);

}  // namespace quadrille
