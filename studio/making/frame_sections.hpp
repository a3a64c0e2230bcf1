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
  /// Of a bent one: its chord, and how far it rises over it.
  double chord_m = 0, rise_m = 0;
  /// Of one that is bent to one arc: its radius, and what is straight before and after the bend. A radius of 0: it is bent
  /// otherwise.
  double radius_m = 0, straight_before_m = 0, straight_after_m = 0;
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

/// Length in which the section's rod is carried before it is cut: that of the longest section of the same rod, and where
/// the supplies tell one ("rod-aluminium-25mmx1.5mm-1500mm"), that.
double stock_length_m(const Piece& piece, const FrameSections& frame, const FrameSection& section);

/// Its diameter, and the wall of a tube, to a tenth of a millimetre: "8 mm", "25 x 1.5 mm".
std::string print_tube(const FrameSection& section);

}  // namespace quadrille
