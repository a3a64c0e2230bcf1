#include "plugins/arch/request.hpp"

#include <algorithm>
#include <string_view>

#include "sdk/balloon_size.hpp"
#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

FrameKind frame_of(std::string_view key) {
  if (key == "half-circle") return FrameKind::half_circle;
  if (key == "half-ellipse") return FrameKind::half_ellipse;
  return key == "square" ? FrameKind::square : FrameKind::flexible_rod;
}

void check_rigid(const Request& request) {
  if (request.frame == FrameKind::flexible_rod) return;
  if (request.span_m < 0.2)
    throw BadParameter("span", "A rigid frame needs a span of at least " + print_at_least(0.2) + ".", "span=0.2m");
  if (request.frame == FrameKind::half_circle && request.height_m < request.span_m / 2)
    throw BadParameter("height",
                       "A half circle over " + print_both(request.span_m) + " is " +
                           print_at_least(request.span_m / 2) + " high: the height must be that or more.",
                       "height=" + print_number(up_to_centimetre(request.span_m / 2)) + "m");
  if (request.frame == FrameKind::square && request.corner_m > widest_corner_m(request))
    throw BadParameter(
        "corner-radius",
        "The corners take more room than the frame has: at most " + print_at_most(widest_corner_m(request)) + ".",
        "corner-radius=" + print_number(std::floor(widest_corner_m(request) * 100) / 100) + "m");
}

}  // namespace

double widest_corner_m(const Request& request) { return std::min(request.span_m / 2, request.height_m); }

Request read_request(const Values& values) {
  Request request;
  request.frame = frame_of(values.text("frame"));
  request.feet = values.text("feet") == "pinned" ? Feet::pinned : Feet::upright;
  request.rod_length_m = values.number("rod-length");
  request.span_m = values.number("span");
  request.height_m = values.number("height");
  request.corner_m = values.number("corner-radius");
  // Nobody may have asked for the standard radius: a frame without room for it has elbows.
  if (values.is_standard("corner-radius") && request.corner_m > widest_corner_m(request)) request.corner_m = 0;
  request.rod = read_rod(values, "rod");
  request.base = read_base(values);
  request.dressing = {read_dressing(values), values.number("bare-ends")};
  check_rigid(request);
  return request;
}

}  // namespace quadrille::arch
