// Handles on the elevation, and what dragging them does.
#include "studio/arrange/handles.hpp"

#include "studio/model/conditions.hpp"
#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

Parameter length_handle(const char* key, const char* label, double standard, std::uint32_t end, int axis, double gain) {
  Parameter p;
  p.key = key, p.label = label;
  p.kind = Kind::length;
  p.hard_min = 0.2, p.hard_max = 6;
  p.decimals = 2;
  p.standard = Value::of_number(Kind::length, standard);
  p.handle_end = end, p.handle_axis = static_cast<std::uint32_t>(axis), p.handle_gain = gain;
  return p;
}

ParameterTable dragged_table() {
  ParameterTable table;
  table.push_back(length_handle("span", "Span", 2, QUADRILLE_HANDLE_RIGHT, 0, 2));
  table.push_back(length_handle("height", "Height", 2, QUADRILLE_HANDLE_TOP, 2, 1));
  table.push_back(length_handle("start", "Start", 1, QUADRILLE_HANDLE_LEFT, 0, 1));
  table.push_back(length_handle("thickness", "Thickness", 0, QUADRILLE_HANDLE_TOP, 2, 2));
  table.back().hard_min = 0;
  Parameter path;
  path.key = "path", path.label = "Path", path.kind = Kind::path;
  path.hard_min = -5, path.hard_max = 5;
  path.handle_end = QUADRILLE_HANDLE_POINTS;
  path.standard = Value::of_list(Kind::path, {-1, 0.3, 0, 1, 0.3, 2});
  table.push_back(path);
  return table;
}

const DragHandle& handle(const std::vector<DragHandle>& handles, const char* key, std::size_t point = 0) {
  for (const DragHandle& one : handles)
    if (one.key == key && one.point == point) return one;
  FAIL("no handle " << key);
  return handles.front();
}

}  // namespace

TEST_CASE("handles sit at the sides of the box, side by side where there are several, and at the points of a path") {
  Venue venue;
  venue.block("p", 4, 2, 1);  // from 3 to 5, 2 m high
  const ParameterTable table = dragged_table();
  const auto handles = handles_of(venue.piece("p"), table, venue.built);
  CHECK(handles.size() == 6);
  CHECK(handle(handles, "span").at == Vec3(5, 1, 1));
  CHECK(handle(handles, "start").at == Vec3(3, 1, 1));
  CHECK(handle(handles, "height").at.isApprox(Vec3(3 + 2.0 / 3, 1, 2)));
  CHECK(handle(handles, "thickness").at.isApprox(Vec3(3 + 4.0 / 3, 1, 2)));
  CHECK(handle(handles, "path", 1).at == Vec3(5, 1.3, 2));
  CHECK(handle(handles, "path", 1).label == "Path, point 2");
  CHECK(handles_of(venue.piece("p"), {}, venue.built).empty());
  venue.event = with_lock(venue.event, {"p"}, true);
  CHECK(handles_of(venue.piece("p"), table, venue.built).empty());
}

TEST_CASE("a handle that does not matter is not there") {
  Venue venue;
  venue.block("p", 4, 2);
  ParameterTable table = dragged_table();
  table[1].only_with = *parse_conditions("thickness>0");
  const auto count = [&] { return handles_of(venue.piece("p"), table, venue.built).size(); };
  CHECK(count() == 5);
  venue.event = with_value(venue.event, "p", "thickness", Value::of_number(Kind::length, 0.5));
  CHECK(count() == 6);
}

TEST_CASE("the value follows the pointer by the handle's gain, within its range, and says so") {
  Venue venue;
  venue.block("p", 4, 2);
  const ParameterTable table = dragged_table();
  const auto handles = handles_of(venue.piece("p"), table, venue.built);
  const auto drag = [&](const char* key, const Vec3& by, Units units = Units::metric) {
    const DragHandle& one = handle(handles, key);
    return dragged_to(one, *find_parameter(table, key), one.at + by, units);
  };
  // Both feet of a span move apart: 0.3 m at one end are 0.6 m.
  CHECK(drag("span", {0.3, 0, 0}).value == Value::of_number(Kind::length, 2.6));
  CHECK(drag("span", {0.3, 0, 0}).text == "Span 2.60 m");
  CHECK(drag("span", {0, 0, 1}).value.number == 2);  // height does not count
  CHECK(drag("height", {0, 0, 0.4}).value.number == 2.4);
  CHECK(drag("start", {-0.5, 0, 0}).value.number == 1.5);  // outward is to the left
  CHECK(drag("height", {0, 0, 0.123456}).value.number == 2.12);
  const HandleDrag most = drag("height", {0, 0, 9});
  CHECK(most.value.number == 6);
  CHECK(most.at_limit);
  CHECK(most.text == "Height 6.00 m, the most");
  CHECK(drag("height", {0, 0, -9}).text == "Height 0.20 m, the least");
  // 2 m and 0.1 m are 82.68 in; the nearest half inch is 82.5 in, which is 6' 10 1/2".
  CHECK(drag("height", {0, 0, 0.1}, Units::feet).text == "Height 6' 10 1/2\"");
  CHECK(drag("height", {0, 0, 0.1}, Units::feet).value.number == doctest::Approx(82.5 * 0.0254).epsilon(1e-12));
}

TEST_CASE("a value that suits itself is dragged from what it came to") {
  Venue venue;
  venue.block("p", 4, 2);
  auto made = std::make_shared<BuiltPiece>(*venue.built["p"]);
  made->piece.facts = {{"thickness_m", 0.6}};
  venue.built["p"] = made;
  const ParameterTable table = dragged_table();
  const auto handles = handles_of(venue.piece("p"), table, venue.built);
  const DragHandle& one = handle(handles, "thickness");
  CHECK(one.from.number == 0.6);
  CHECK(dragged_to(one, *find_parameter(table, "thickness"), one.at + Vec3(0, 0, 0.1), Units::metric).value.number ==
        doctest::Approx(0.8));
}

TEST_CASE("a point of a path is dragged along and up, within the range, and keeps its depth") {
  Venue venue;
  venue.block("p", 4, 2);
  const ParameterTable table = dragged_table();
  const auto handles = handles_of(venue.piece("p"), table, venue.built);
  const DragHandle& one = handle(handles, "path", 1);
  const Parameter& path = *find_parameter(table, "path");
  const HandleDrag moved = dragged_to(one, path, one.at + Vec3(0.25, 9, -0.5), Units::metric);
  CHECK(moved.value.list == std::vector<double>{-1, 0.3, 0, 1.25, 0.3, 1.5});
  CHECK(moved.text == "Path, point 2: 1.25 m along, 1.50 m up");
  CHECK(dragged_to(one, path, one.at + Vec3(0, 0, 9), Units::metric).value.list.back() == 5);
  CHECK(dragged_to(one, path, one.at + Vec3(0, 0, 9), Units::metric).at_limit);
}

TEST_CASE("points are added halfway or beyond the end, and taken away down to two") {
  const Value path = Value::of_list(Kind::path, {0, 0, 0, 2, 0, 4});
  CHECK(with_point_after(path, 0).list == std::vector<double>{0, 0, 0, 1, 0, 2, 2, 0, 4});
  CHECK(with_point_after(path, 1).list == std::vector<double>{0, 0, 0, 2, 0, 4, 4, 0, 8});
  CHECK(with_point_after(path, 2) == path);
  CHECK(without_point(with_point_after(path, 0), 1) == path);
  CHECK(without_point(path, 0) == path);
}
