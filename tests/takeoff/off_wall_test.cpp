// A piece that is larger than the wall behind it, or hangs off its end, is told.
#include "studio/takeoff/off_wall.hpp"

#include <doctest/doctest.h>

#include "tests/drawing/sample.hpp"

using namespace quadrille;

namespace {

/// A box of balloons from -1 m to 1 m, `high` metres high, in an area with a wall of 6 m by 3 m, at `x_m`.
Findings findings_at(double x_m, double high = 2, std::optional<double> wall_width = 6, double half_width = 1) {
  sample::Job job;
  job.event.units = Units::metric;
  Area area;
  area.id = "a1", area.wall_width_m = wall_width, area.wall_height_m = wall_width ? std::optional(3.0) : std::nullopt;
  area.pieces.push_back(sample::placed("p1", "Arch", x_m, {}));
  job.event.areas.push_back(area);
  BuiltPiece piece;
  piece.status = Status::ok;
  piece.box = {Vec3(-half_width, -0.2, 0), Vec3(half_width, 0.2, high)};
  job.built["p1"] = std::make_shared<BuiltPiece>(piece);
  return check_off_wall(job.event, job.built);
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a piece before its wall is not told, and one without a wall neither") {
  for (const double x : {1.0, 3.0, 5.0, 0.97, 5.04}) CHECK(findings_at(x).empty());
  CHECK(findings_at(-7, 9, std::nullopt).empty());
}

TEST_CASE("a piece off the wall's end says how far, and where it would stand before it") {
  // From 5.5 - 1 to 5.5 + 1 m before a wall of 6 m: 0.5 m beyond its right end; at 5 m it fits.
  const Findings right = findings_at(5.5);
  REQUIRE(right.size() == 1);
  CHECK(right[0].code == "beyond-wall");
  CHECK(right[0].weight == Weight::warning);
  CHECK(right[0].piece == "p1");
  CHECK(has(right[0].text, "0.50 m beyond the right end"));
  CHECK(has(right[0].remedy, "From 5.00 m back"));
  const Findings left = findings_at(0.25);
  REQUIRE(left.size() == 1);
  CHECK(has(left[0].text, "0.75 m beyond the left end"));
  CHECK(has(left[0].remedy, "From 1.00 m on"));
}

TEST_CASE("a piece wider or higher than its wall is told so") {
  const Findings wide = findings_at(3, 2, 6, 3.2);
  REQUIRE(wide.size() == 1);
  CHECK(has(wide[0].text, "6.40 m wide, and the wall is 6.00 m"));
  CHECK_FALSE(has(wide[0].text, "beyond the"));
  const Findings both = findings_at(5.5, 3.4);
  REQUIRE(both.size() == 1);
  CHECK(has(both[0].text, "beyond the right end"));
  CHECK(has(both[0].text, "reaches up to 3.40 m, and the wall is 3.00 m high"));
}
