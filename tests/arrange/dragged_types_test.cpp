// The handles of the piece types of this build: dragged, the drawing follows the pointer.
#include "studio/arrange/handles.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "tests/places.hpp"
#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

const PieceTypes& types_here() {
  static const PieceTypes found = find_piece_types({{build_place("pieces")}, std::nullopt, false});
  return found;
}

struct Drawn {
  PlacedPiece piece;
  BuiltEvent built;
};

Drawn drawn(const char* type, ValueMap values) {
  Drawn one;
  one.piece.id = "p", one.piece.type = type, one.piece.values = std::move(values);
  one.built["p"] = build_piece(*types_here().find(type), one.piece.values);
  REQUIRE(one.built["p"]->status == Status::ok);
  return one;
}

/// How far the side of the box at which the handle of `key` sits goes when it is dragged by `by`.
double follows(const char* type, const char* key, const Vec3& by, ValueMap values = {}) {
  const Drawn before = drawn(type, values);
  const ParameterTable& table = types_here().find(type)->parameters;
  for (const DragHandle& handle : handles_of(before.piece, table, before.built)) {
    if (handle.key != key) continue;
    const HandleDrag drag = dragged_to(handle, *find_parameter(table, key), handle.at + by, Units::metric);
    values.insert_or_assign(key, drag.value);
    const Drawn after = drawn(type, values);
    const PieceBox was = box_of(before.piece, before.built), is = box_of(after.piece, after.built);
    return by.x() != 0 ? is.right - was.right : is.top - was.top;
  }
  FAIL(type << " has no handle " << key);
  return 0;
}

Value choice(const char* key) { return Value::of_text(Kind::choice, key); }

}  // namespace

TEST_CASE("the drawing follows the pointer that drags a handle") {
  const ValueMap square{{"frame", choice("square")}};
  CHECK(follows("arch", "height", {0, 0, 0.3}, square) == doctest::Approx(0.3).epsilon(0.05));
  CHECK(follows("arch", "span", {0.3, 0, 0}, square) == doctest::Approx(0.3).epsilon(0.05));
  // A bent rod only nearly so: of a longer rod the width takes its share, of a wider span the crown.
  CHECK(follows("arch", "rod-length", {0, 0, 0.3}) == doctest::Approx(0.3).epsilon(0.25));
  CHECK(follows("arch", "span", {0.3, 0, 0}) == doctest::Approx(0.3).epsilon(0.25));
  // Clusters come one by one: the top goes in their steps of a fifth of a metre.
  CHECK(std::abs(follows("column", "height", {0, 0, 1}) - 1) < 0.25);
  const ValueMap line{{"path", Value::of_list(Kind::path, {0, 0, 1.5, 2, 0, 1.5})}};
  CHECK(std::abs(follows("garland", "thickness", {0, 0, 0.05}, line) - 0.05) < 0.05);
}

TEST_CASE("every handle that a type declares is there where it matters, and only there") {
  const auto keys = [](const char* type, const ValueMap& values) {
    const Drawn one = drawn(type, values);
    std::vector<std::string> found;
    for (const DragHandle& handle : handles_of(one.piece, types_here().find(type)->parameters, one.built))
      if (found.empty() || found.back() != handle.key) found.push_back(handle.key);
    return found;
  };
  CHECK(keys("arch", {}) == std::vector<std::string>{"span", "rod-length"});
  CHECK(keys("arch", {{"frame", choice("square")}}) == std::vector<std::string>{"span", "height"});
  CHECK(keys("column", {}) == std::vector<std::string>{"height"});
  CHECK(keys("garland", {{"path", Value::of_list(Kind::path, {0, 0, 1.5, 2, 0, 1.5})}}) ==
        std::vector<std::string>{"path", "thickness"});
}
