// Pieces that one dimension, or one number in the picture, can stand for.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include "studio/drawing/elevation.hpp"

namespace quadrille {

/// True where two pieces lie over each other in the elevation: all four sides within 10 cm.
bool lie_together(const ScenePiece& a, const ScenePiece& b);

/// Pieces, in rising order, that share a measure.
struct PieceGroup {
  std::vector<std::size_t> pieces;  ///< indices into Scene::pieces; at least one
  std::string text;  ///< "0.43 m", "0.43 m each" at several places, "16.50 m to 16.56 m" of several together
  std::string ring;  ///< their numbers, "1", "14–18"; empty where the scene has one piece
};

/// The pieces of known size that have the measure, in groups that print the same of it or lie together. As many share a
/// group as have room for their numbers in a ring of 20 mm. `measure_of` gives metres, or a number that is not above 0
/// for a piece without it. `nearly`: those that lie together, or in a scene of many differ by 3 cm at most, may share it
/// too; the text then has the least and the greatest.
std::vector<PieceGroup> groups_by(const Scene& scene, Units units, bool nearly,
                                  const std::function<double(const ScenePiece&)>& measure_of);

/// The numbers for the picture: of pieces that lie together one for all.
std::vector<PieceGroup> groups_together(const Scene& scene);

/// "1", "14–18"; empty where the scene has one piece.
std::string ring_of(const Scene& scene, const std::vector<std::size_t>& pieces);

}  // namespace quadrille
