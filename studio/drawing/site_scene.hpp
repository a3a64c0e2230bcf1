// What the site has beside the pieces: structures that stand there and walkways.
#pragma once

#include "studio/drawing/elevation.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// Adds the area's structures and walkways to a scene that has its wall, pieces and figure, and widens its extent by
/// the structures. What lies more than 2 m to the side goes to Scene::far_off; what rises more than 1 m above all else
/// is broken off. What has numbers that are not finite is left out.
void add_site(const Area& area, Scene& scene);

}  // namespace quadrille
