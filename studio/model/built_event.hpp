// The built pieces of an event: made by the host, read by takeoff, standing and drawing.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/hidden.hpp"

namespace quadrille {

/// Outer measures of a piece's balloons and frame, in the piece's frame [m].
struct Box {
  Vec3 least = Vec3::Zero(), most = Vec3::Zero();
  double width_m() const { return most.x() - least.x(); }
  double depth_m() const { return most.y() - least.y(); }
  double height_m() const { return most.z() - least.z(); }
  bool operator==(const Box&) const = default;
};

struct BuiltPiece {
  Status status = Status::internal;
  Piece piece;  ///< where status is not ok: why, and perhaps what it would be; it may be shown, but is never counted
  Box box;
  double spine_m = 0;         ///< length of the spine
  double hidden_share = 0;    ///< share of the spine that balloons hide in the elevation, 0 to 1
  std::vector<Stretch> bare;  ///< where the spine shows, in order
};

/// By the id of the placed piece. A piece whose type is not available has no entry.
using BuiltEvent = std::map<std::string, std::shared_ptr<const BuiltPiece>, std::less<>>;

}  // namespace quadrille
