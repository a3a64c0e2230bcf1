// The frame as it is carried and put together: sections between joints.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

/// A section between two joints, or between a joint and an end.
struct FrameSection {
  std::vector<std::uint32_t> nodes;  ///< along it
  double length_m = 0;
  double outer_m = 0, inner_m = 0;
  bool bent = false;     ///< it is carried bent: as drawn and not straight
  bool springs = false;  ///< it is carried straight and bent on the place
};

/// Where a section begins that is joined to what comes before.
struct FrameNodeJoint {
  std::uint32_t node = 0;
  Joint kind = Joint::sleeve;
};

struct FrameSections {
  std::vector<FrameSection> sections;  ///< in the order of the frame
  std::vector<FrameNodeJoint> joints;
};

/// A section ends at a sleeve or hinge, where the rod changes, and where the frame branches off. Node numbers that the
/// frame does not have end it too.
FrameSections frame_sections(const Frame& frame);

/// Its diameter, and the wall of a tube, to a tenth of a millimetre: "8 mm", "25 x 1.5 mm".
std::string print_tube(const FrameSection& section);

}  // namespace quadrille
