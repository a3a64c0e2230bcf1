// Small steps of handles, and where a handle goes with its value.
#include "studio/arrange/handle_steps.hpp"

#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

Parameter measure(Kind kind, double gain, std::uint32_t decimals) {
  Parameter p;
  p.key = "m", p.label = "Measure", p.kind = kind;
  p.hard_min = 0, p.hard_max = 6, p.decimals = decimals, p.handle_gain = gain;
  return p;
}

DragHandle handle_of(const Parameter& p, int axis, double sign, double from) {
  return {"p", p.key, p.label, Vec3(2, 0, 1), axis, 0, sign, Value::of_number(p.kind, from)};
}

double step(const Parameter& p, const DragHandle& handle, int right, int up, Units units) {
  return stepped(handle, p, right, up, units).value.number;
}

DragHandle point_handle(const Parameter& p, std::size_t point) {
  DragHandle handle{"p", "path", "Path", Vec3(3, 0, 1), -1, point, 1, p.standard};
  return handle;
}

Parameter path() {
  Parameter p;
  p.key = "path", p.label = "Path", p.kind = Kind::path;
  p.hard_min = -5, p.hard_max = 5;
  p.standard = Value::of_list(Kind::path, {0, 0, 0, 1, 0, 1, 4, 0, 1});
  return p;
}

}  // namespace

TEST_CASE("one key changes the value by one step of what is worth showing, whatever the handle's gain") {
  const Parameter span = measure(Kind::length, 2, 2);
  CHECK(step(span, handle_of(span, 0, 1, 2.4), 1, 0, Units::metric) == 2.41);
  CHECK(step(span, handle_of(span, 0, 1, 2.4), -10, 0, Units::metric) == 2.3);
  // At the left end what goes left grows.
  CHECK(step(span, handle_of(span, 0, -1, 2.4), -1, 0, Units::metric) == 2.41);
  // By hand: half inches; 2.4 m is 188.98 of 12.7 mm, one more is nearest to 190 of them.
  CHECK(step(span, handle_of(span, 0, 1, 2.4), 1, 0, Units::feet) == doctest::Approx(190 * 0.0127));
  // What does not lie along the axis does not count.
  CHECK(step(span, handle_of(span, 0, 1, 2.4), 0, 5, Units::metric) == 2.4);
  const Parameter height = measure(Kind::length, 1, 1);
  CHECK(step(height, handle_of(height, 2, 1, 2), 0, 1, Units::metric) == 2.1);
  const Parameter clusters = measure(Kind::count, 3, 0);
  CHECK(step(clusters, handle_of(clusters, 2, 1, 4), 0, 1, Units::feet) == 5);
  CHECK(step(clusters, handle_of(clusters, 2, 1, 6), 0, 1, Units::feet) == 6);  // the most
  const Parameter deep = measure(Kind::length, 1, 2);
  CHECK(step(deep, handle_of(deep, 1, 1, 2), 1, 1, Units::metric) == 2);
  CHECK(!shows_in_elevation(handle_of(deep, 1, 1, 2)));
  CHECK(shows_in_elevation(handle_of(height, 2, 1, 2)));
}

TEST_CASE("a point goes by a centimetre or an inch in both directions at once") {
  const Parameter p = path();
  const Value metric = stepped(point_handle(p, 1), p, 1, -2, Units::metric).value;
  CHECK(metric.list == std::vector<double>{0, 0, 0, 1.01, 0, 0.98, 4, 0, 1});
  const Value feet = stepped(point_handle(p, 1), p, -1, 0, Units::feet).value;
  CHECK(feet.list[3] == doctest::Approx(0.975));  // by hand: 1 m less 25.4 mm, to the millimetre
}

TEST_CASE("a handle goes along its axis as far as its value says") {
  rc::check("dragging to a place and asking where the value puts it leads back, to half a step", [] {
    const double gain = any(0.5, 3) * (any(0, 1) < 0.5 ? -1 : 1), sign = any(0, 1) < 0.5 ? -1 : 1;
    const Parameter p = measure(Kind::length, gain, 2);
    const DragHandle handle = handle_of(p, any(0, 1) < 0.5 ? 0 : 2, sign, 3);
    Vec3 to = handle.at;
    to[handle.axis] += any(-0.9, 0.9);
    const Vec3 back = place_with(handle, p, dragged_to(handle, p, to, Units::metric).value);
    RC_ASSERT((back - to).norm() <= 0.005 / std::abs(gain) + 1e-9);
  });
  const Parameter p = path();
  const DragHandle handle = point_handle(p, 2);
  const Vec3 to = handle.at + Vec3(-0.5, 0, 0.25);
  CHECK(place_with(handle, p, dragged_to(handle, p, to, Units::metric).value).isApprox(to));
}

TEST_CASE("the longest stretch of a path is found") {
  CHECK(before_longest_stretch(path().standard) == 1u);  // 3 m against 1.41 m
  CHECK(!before_longest_stretch(Value::of_list(Kind::path, {0, 0, 0})));
}
