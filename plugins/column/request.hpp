// What is asked of a column, read from the parameter values once.
#pragma once

#include "sdk/base.hpp"
#include "sdk/dressing.hpp"
#include "sdk/rod.hpp"

namespace quadrille::column {

enum class Topper { none, round, crown };

struct Request {
  double height_m = 0, bare_foot_m = 0;
  Rod pole;
  bool pole_as_typed = true;  ///< rather than a pipe of a published size
  BaseValues base;
  DressingValues dressing;
  double taper = 1;  ///< diameter at `height_m` as a share of that at the floor
  Topper topper = Topper::none;
  double topper_nominal_in = 0;
  std::uint32_t topper_slot = 0;
  bool collar_at_foot = false, collar_at_topper = false;
  double collar_nominal_in = 5;
  std::uint32_t collar_slot = 0;
};

/// Throws BadParameter for a value that cannot be used.
Request read_request(const Values& values);

}  // namespace quadrille::column
