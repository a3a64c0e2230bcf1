#include "plugins/column/request.hpp"

#include <cmath>
#include <string>
#include <string_view>
#include <utility>

namespace quadrille::column {
namespace {

/// Outer diameter and least wall of schedule 40 pipe, inches. Source: ASTM D1785 (PVC), as printed in makers' pipe data;
/// steel pipe of ASME B36.10 has the same outer diameters and nominal walls (from memory).
struct PipeSize {
  std::string_view key;
  double outer_in, wall_in;
};
constexpr PipeSize pipe_sizes[] = {{"pipe-1-2", 0.840, 0.109},   {"pipe-3-4", 1.050, 0.113},
                                   {"pipe-1", 1.315, 0.133},     {"pipe-1-1-4", 1.660, 0.140},
                                   {"pipe-1-1-2", 1.900, 0.145}, {"pipe-2", 2.375, 0.154}};

Rod read_pole(const Values& values) {
  for (const PipeSize& pipe : pipe_sizes) {
    if (values.text("pole-size") != pipe.key) continue;
    const double outer = pipe.outer_in * metres_per_inch;
    return {{outer, outer - 2 * pipe.wall_in * metres_per_inch},
            find_material(values.text("pole-material")),
            values.number("pole-section")};
  }
  return read_rod(values, "pole");
}

/// The slot that a parameter names by number; it must be one of the piece's slots.
std::uint32_t read_slot(const Values& values, const char* key, int slots) {
  const int number = values.whole(key);
  if (number > slots)
    throw BadParameter(key,
                       "Colour slot " + std::to_string(number) + " (" +
                           slot_letter(static_cast<std::uint32_t>(number - 1)) + ") is not among the piece's " +
                           std::to_string(slots) + " colour slots: set slots to " + std::to_string(number) +
                           " or more.",
                       "slots=" + std::to_string(number));
  return static_cast<std::uint32_t>(number - 1);
}

void read_crown(const Values& values, Request& request) {
  const std::string_view topper = values.text("topper"), collar = values.text("collar");
  const int slots = request.dressing.pattern.slots;
  if (topper == "cluster") request.topper = Topper::crown;
  if (topper == "round-16") request.topper_nominal_in = 16;
  if (topper == "round-24") request.topper_nominal_in = 24;
  if (topper == "round-36") request.topper_nominal_in = 36;
  if (request.topper_nominal_in > 0) request.topper = Topper::round;
  if (request.topper != Topper::none) request.topper_slot = read_slot(values, "topper-slot", slots);
  request.collar_at_foot = collar == "foot" || collar == "both";
  request.collar_at_topper = collar == "topper" || collar == "both";
  request.collar_nominal_in = values.number("collar-balloon");
  if (collar != "none") request.collar_slot = read_slot(values, "collar-slot", slots);
  if (request.collar_at_topper && request.topper != Topper::round)
    throw BadParameter(
        "collar",
        "A collar below the topper needs a topper of one round balloon: choose a topper, or the collar 'foot'.",
        "collar=foot");
}

}  // namespace

Request read_request(const Values& values) {
  Request request;
  request.height_m = values.number("height");
  request.bare_foot_m = values.number("bare-foot");
  request.pole = read_pole(values);
  request.pole_as_typed = values.text("pole-size") == "typed";
  request.base = read_base(values);
  request.dressing = read_dressing(values);
  request.taper = values.number("taper");
  const ClusterMake& make = request.dressing.make;
  const std::string most_taper =
      print_fixed(std::floor(100 * make.nominal_in * metres_per_inch / make.inflated_m) / 100, 2);
  if (make.inflated_m * request.taper > 1.02 * make.nominal_in * metres_per_inch)
    throw BadParameter("taper",
                       "Topmost balloons of " + print_both(make.inflated_m * request.taper) +
                           " are larger than their nominal size of " + print_number(make.nominal_in) +
                           " in: take a larger balloon, or a taper of at most " + most_taper + ".",
                       "taper=" + most_taper);
  read_crown(values, request);
  return request;
}

}  // namespace quadrille::column
