// Structures and walkways as light marks with quiet labels.
#pragma once

#include "studio/drawing/scene_marks.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// Depth of the ground that is drawn beneath the floor line, and height of one row of labels beneath that [mm].
inline constexpr double ground_depth = 2.6, site_label_row = 4.0;

/// The stretch of the page that a drawing may use [mm].
struct Reach {
  double from = 0, to = 0;
};

/// A light shape of the structure's kind, by eye, as high as it is drawn; open at the top where it is broken off.
void add_structure(const SceneStructure& structure, const Placement& at, const SceneLook& look, Marks& marks);

/// A pale strip in the ground under each walkway.
void add_walkways(const Scene& scene, const Placement& at, const Reach& reach, Marks& marks);

/// Rows of labels that the walkways take beneath the ground.
std::size_t walkway_rows(const Scene& scene, const Placement& at, const SceneLook& look, const Reach& reach);

/// Names, with measures where `look` asks for them: walkways' beneath the ground, structures' over their top, beside
/// pieces and other labels, on white where they lie on a photo; where there is no room, a structure's label is left out.
void add_site_labels(const Scene& scene, const Placement& at, const SceneLook& look, const Reach& reach, Marks& marks);

/// Room over the scene that labels of structures may take [mm].
inline constexpr double site_label_headroom = 8;

}  // namespace quadrille
