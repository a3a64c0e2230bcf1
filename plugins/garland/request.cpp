// Reads what is asked of a garland.
#include <algorithm>
#include <cmath>
#include <string>

#include "plugins/garland/ball.hpp"
#include "sdk/dressing.hpp"

namespace quadrille::garland {
namespace {

/// The least and the most that balloons of diameter d, necks on the line, reach from it: from pressed to the line to
/// hanging out on their necks.
constexpr double least_reach = 0.9, most_reach = 1.2;

std::vector<MixEntry> read_mix(const Values& values) {
  std::vector<MixEntry> mix = values.mix("mix");
  double total = 0;
  for (const MixEntry& entry : mix) {
    if (entry.nominal_in < 1 || entry.nominal_in > 48 || entry.share <= 0)
      throw BadParameter("mix", "Every size of the mix needs a nominal size from 1 to 48 in and a share above 0 %.");
    inflated_diameter(entry.nominal_in, entry.inflated_m, "mix");
    total += entry.share;
  }
  if (mix.empty() || mix.size() > 8)
    throw BadParameter("mix", "A mix has one to eight sizes, such as 5in 0.1m 40%; 11in 0.24m 60%.");
  for (MixEntry& entry : mix) {
    entry.share /= total;
    if (entry.inflated_m == 0) entry.inflated_m = usual_inflated_m(entry.nominal_in);
  }
  std::ranges::stable_sort(mix, [](const MixEntry& a, const MixEntry& b) { return a.inflated_m > b.inflated_m; });
  return mix;
}

/// Twice the largest balloons, necks on the line; where those are too few to carry the outline, the next ones carry it
/// and the largest just fit in. `mix` is largest first.
double usual_thickness(const std::vector<MixEntry>& mix) {
  constexpr double enough_to_carry = 0.08, for_those_that_carry = 2.06, for_the_largest = 1.1;
  double share = 0;
  for (const MixEntry& entry : mix) {
    share += entry.share;
    if (share >= enough_to_carry)
      return std::max(for_those_that_carry * entry.inflated_m, for_the_largest * mix.front().inflated_m);
  }
  return for_those_that_carry * mix.back().inflated_m;
}

void read_thickness(const Values& values, Request& request) {
  const double usual = usual_thickness(request.mix);
  request.thickness = values.number("thickness") == 0 ? usual : values.number("thickness");
  request.thickness_end = values.number("thickness-end") == 0 ? request.thickness : values.number("thickness-end");
  const auto check = [&](const char* key, double thickness) {
    const double least = 2 * least_reach * request.mix.back().inflated_m, most = 2 * most_reach * request.largest();
    if (thickness < least || thickness > most)
      throw BadParameter(key, "The balloons of the mix make a garland from " + print_both(least) + " to " +
                                  print_both(most) + " thick, not " + print_both(thickness) +
                                  ": change the thickness or the mix.");
  };
  check("thickness", request.thickness);
  check("thickness-end", request.thickness_end);
  const double thickest = std::max(request.thickness, request.thickness_end);
  if (request.largest() > thickest)
    throw BadParameter("thickness", "Balloons of " + print_both(request.largest()) +
                                        " do not fit into a garland that is nowhere more than " + print_both(thickest) +
                                        " thick: make it thicker or take them out of the mix.");
}

}  // namespace

Request read_request(const Values& values) {
  Request request;
  request.points = values.path("path");
  if (request.points.size() < 2)
    throw BadParameter("path", "The line of a garland needs two points or more, and the path has " +
                                   std::to_string(request.points.size()) + ".");
  for (std::size_t i = 1; i < request.points.size(); ++i)
    if ((request.points[i] - request.points[i - 1]).norm() < 1e-3)
      throw BadParameter(
          "path", "Point " + std::to_string(i + 1) + " of the path lies on the one before it: points must be apart.");
  request.straight = values.text("course") == "straight";
  request.hanging = values.text("course") == "hanging";
  request.slack = values.number("slack");
  const auto backing = values.text("backing");
  request.backing = backing == "line"    ? Backing::line
                    : backing == "hooks" ? Backing::hooks
                    : backing == "frame" ? Backing::frame
                                         : Backing::strip;
  request.wall = values.flag("wall") || request.backing == Backing::hooks;
  request.wall_y = values.number("wall-y");
  request.mix = read_mix(values);
  read_thickness(values, request);
  request.core = values.whole("core");
  request.tightness = values.number("tightness");
  request.filler = values.number("filler");
  const auto flow = values.text("flow");
  request.flow = flow == "drifting" ? Flow::drifting : flow == "blocks" ? Flow::blocks : Flow::scattered;
  request.slots = values.whole("slots");
  request.accents = values.number("accents");
  request.accent_slot = static_cast<std::uint32_t>(values.whole("accent-slot") - 1);
  if (request.accents > 0 && values.whole("accent-slot") > request.slots)
    throw BadParameter("accent-slot", "The accents' colour slot is not among the piece's " +
                                          std::to_string(request.slots) + " colour slots.");
  request.seed = values.seed("seed");
  double deepest = -1e300;
  for (const Vec3& point : request.points) deepest = std::max(deepest, point.y());
  request.wall_room = request.wall_y - deepest;
  if (request.wall && request.wall_room < 0)
    throw BadParameter("wall-y", "The wall plane at a depth of " + print_both(request.wall_y) +
                                     " lies in front of a point of the path: move the wall back or the path forward.");
  return request;
}

}  // namespace quadrille::garland
