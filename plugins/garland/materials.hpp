// What a garland takes: supplies, work, supports, tie points, and how it must be secured.
#pragma once

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// Frame nodes with supports along the line, tie points, supplies, work and anchoring rules; balloons and clusters are in.
void add_materials(Piece& piece, const Request& request, const Curve& line);

}  // namespace quadrille::garland
