// Mirror images: of places, values, lines and anchors.
#include "studio/arrange/mirroring.hpp"

#include "sdk/pattern_ring.hpp"
#include "studio/model/conditions.hpp"
#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

Parameter parameter(const char* key, Kind kind, Value standard) {
  Parameter p;
  p.key = p.label = key;
  p.kind = kind;
  p.hard_min = -50, p.hard_max = 50;
  p.standard = std::move(standard);
  return p;
}

ParameterTable handed_table() {
  ParameterTable table;
  table.push_back(parameter("pattern", Kind::choice, Value::of_text(Kind::choice, "spiral")));
  table.back().choices = {{"spiral", "Spiral"}, {"solid", "Solid"}, {"rows", "Rows"}};
  table.push_back(parameter("hand", Kind::choice, Value::of_text(Kind::choice, "right")));
  table.back().choices = {{"right", "Right"}, {"left", "Left"}};
  table.back().only_with = *parse_conditions("pattern=spiral|pattern=rows");
  table.push_back(parameter("rows", Kind::rows, Value::of_text(Kind::rows, "")));
  table.back().only_with = *parse_conditions("pattern=rows");
  table.push_back(parameter("path", Kind::path, Value::of_list(Kind::path, {-1, 0, 0, 2, 0.1, 2})));
  table.push_back(parameter("exit", Kind::choice, Value::of_text(Kind::choice, "left")));
  table.back().choices = {{"left", "Left"}, {"middle", "Middle"}};  // has no right: no hand
  return table;
}

Value choice(const char* key) { return Value::of_text(Kind::choice, key); }

}  // namespace

TEST_CASE("hands change sides, paths go to the other side, and what has no hand stays") {
  const ParameterTable table = handed_table();
  const ValueMap mirrored = mirrored_values(table, {});
  CHECK(mirrored.at("hand") == choice("left"));
  CHECK(mirrored.at("path").list == std::vector<double>{1, 0, 0, -2, 0.1, 2});
  CHECK(mirrored.size() == 2);
  // Solid looks the same to either hand: changing it would only earn a note that it has no effect.
  CHECK_FALSE(mirrored_values(table, {{"pattern", choice("solid")}}).contains("hand"));
  CHECK(mirrored_values(table, {{"exit", choice("middle")}}).at("exit") == choice("middle"));
}

TEST_CASE("typed rows are seen from the other side: each balloon where the mirror shows it") {
  // Independent of how rows are reversed: positions round the rod as the SDK lays them, p in half steps; the mirror image
  // of position p of 2n is -p.
  const ParameterTable table = handed_table();
  CHECK(rc::check("typed rows are seen", [&] {
    const int n = *rc::gen::inRange(2, 7), count = *rc::gen::inRange(1, 6);
    std::string text;
    for (int i = 0; i < count; ++i) {
      if (i > 0) text += ' ';
      for (int k = 0; k < n; ++k) text += static_cast<char>('A' + *rc::gen::inRange(0, 4));
    }
    const ValueMap values{{"pattern", choice("rows")}, {"rows", Value::of_text(Kind::rows, text)}};
    const ValueMap mirrored = mirrored_values(table, values);
    const auto laid = [&](const ValueMap& of) {
      PatternPlan plan;
      plan.kind = PatternKind::rows;
      plan.cluster_size = n, plan.slots = 6;
      plan.hand = value_of(of, *find_parameter(table, "hand")).text == "left" ? -1 : 1;
      plan.rows = *slot_rows(of.at("rows").text, n);
      return lay_pattern(plan, 3 * count);
    };
    const auto one = laid(values), other = laid(mirrored);
    for (std::size_t i = 0; i < one.size(); ++i) {
      const auto ring = pattern_detail::ring_of(one[i].slots, one[i].half_steps);
      const auto image = pattern_detail::ring_of(other[i].slots, other[i].half_steps);
      const std::size_t positions = ring.size();
      for (std::size_t p = 0; p < positions; ++p) RC_ASSERT(image[(positions - p) % positions] == ring[p]);
    }
    RC_ASSERT(mirrored_values(table, mirrored) == values);
  }));
}

TEST_CASE("mirrored twice is the same again") {
  const ParameterTable table = handed_table();
  const ParameterTables tables{{"block", &table}};
  CHECK(rc::check("mirrored twice is the", [&] {
    Venue venue = any_blocks(1, 5);
    for (const std::string& id : all_ids(venue)) {
      if (*rc::gen::arbitrary<bool>()) venue.event = with_value(venue.event, id, "hand", choice("left"));
      if (*rc::gen::arbitrary<bool>()) venue.event = with_value(venue.event, id, "pattern", choice("solid"));
      if (*rc::gen::arbitrary<bool>())
        venue.event = with_value(venue.event, id, "path", Value::of_list(Kind::path, {any(-5, 5), 0, 1, 3, 0, 1}));
      SecuringLine line;
      line.x_m = any(-3, 3);
      venue.event = with_line(venue.event, id, line);
    }
    const double axis = any(-10, 10);
    const Event once = mirrored(venue.event, all_ids(venue), axis, tables, venue.built);
    const Event twice = mirrored(once, all_ids(venue), axis, tables, venue.built);
    for (const auto& piece : venue.area().pieces) {
      const PlacedPiece &image = *find_piece(once, piece->id), &again = *find_piece(twice, piece->id);
      RC_ASSERT(std::abs(image.x_m - (2 * axis - piece->x_m)) < 1e-9);
      RC_ASSERT(image.lines[0].x_m == -piece->lines[0].x_m);
      RC_ASSERT(std::abs(again.x_m - piece->x_m) < 1e-9);
      RC_ASSERT(again.values == piece->values);
      RC_ASSERT(again.lines == piece->lines);
    }
  }));
}

TEST_CASE("lines go on from the tie point in the mirror, and structures stay where they are") {
  Venue venue;
  venue.block("p", 3, 2);
  auto made = std::make_shared<BuiltPiece>(*venue.built["p"]);
  made->piece.tie_points = {{0, TiePurpose::front, Vec3(0, 0, 2), "crown"},
                            {0, TiePurpose::side, Vec3(-1, 0, 1), "left"},
                            {0, TiePurpose::side, Vec3(1, 0, 1), "right"}};
  venue.built["p"] = made;
  SecuringLine crown, left, tree;
  crown.tie = "front-1", crown.y_m = -2;
  left.tie = "side-1", left.x_m = -3, left.anchor = AnchorKind::dead_weight, left.mass_kg = 20;
  tree.tie = "side-2", tree.anchor = AnchorKind::structure, tree.structure = "s1";
  venue.event = with_lines(venue.event, "p", {crown, left, tree});
  const ParameterTable table = {};
  const Event event = mirrored(venue.event, {"p"}, 5, {{"block", &table}}, venue.built);
  const PlacedPiece& piece = *find_piece(event, "p");
  CHECK(piece.x_m == 7);
  CHECK(piece.lines[0].tie == "front-1");
  CHECK(piece.lines[0].y_m == -2);
  CHECK(piece.lines[1].tie == "side-2");
  CHECK(piece.lines[1].x_m == 3);
  CHECK(piece.lines[1].mass_kg == 20);
  CHECK(piece.lines[2].tie == "side-1");
  CHECK(piece.lines[2].structure == "s1");
}

TEST_CASE("in place a piece keeps its room, locked ones stay, and the middle of several is that of their room") {
  Venue venue;
  venue.block("p", 3, 2).block("q", 8, 1);
  auto lopsided = std::make_shared<BuiltPiece>(*venue.built["p"]);
  lopsided->box.least.x() = -0.5, lopsided->box.most.x() = 2.5;  // from 2.5 to 5.5
  venue.built["p"] = lopsided;
  const ParameterTable table = handed_table();
  const ParameterTables tables{{"block", &table}};
  // The image's room is from -2.5 to 0.5 about its place: that place must be at 5 for it to be from 2.5 to 5.5.
  CHECK(find_piece(mirrored_in_place(venue.event, {"p"}, tables, venue.built), "p")->x_m == doctest::Approx(5));
  CHECK(*middle_of(venue.event, {"p", "q"}, venue.built) == doctest::Approx(5.5));  // from 2.5 to 8.5
  CHECK_FALSE(middle_of(venue.event, {}, venue.built));
  const Event locked = with_lock(venue.event, {"p"}, true);
  CHECK(mirrored(locked, {"p"}, 0, tables, venue.built) == locked);
}
