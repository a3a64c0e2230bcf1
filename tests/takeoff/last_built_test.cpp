// What was built is kept with the event, and counts the same when the type is missing.
#include "studio/takeoff/last_built.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <memory>

#include "studio/model/edits.hpp"
#include "studio/takeoff/count.hpp"

using namespace quadrille;

namespace {

PlacedPiece placed(const char* id) {
  PlacedPiece piece;
  piece.id = id;
  piece.type = "arch";
  piece.values["span"] = Value::of_number(Kind::length, 3);
  return piece;
}

Event three_pieces() {
  Area area;
  area.id = "a1";
  area.pieces = {placed("p1"), placed("p2"), placed("p3")};
  return with_area(Event{}, area);
}

std::shared_ptr<BuiltPiece> built_piece() {
  auto built = std::make_shared<BuiltPiece>();
  built->status = Status::ok;
  built->box.least = {-1, -0.2, 0};
  built->box.most = {1.2344, 0.2, 2.0006};
  built->piece.clusters.resize(2);
  for (const std::uint32_t slot : {0u, 1u, 1u, 0u, 1u}) {
    Balloon& balloon = built->piece.balloons.emplace_back();
    balloon.slot = slot;
    balloon.nominal_in = 11;
    balloon.diameter_m = 0.2304;
  }
  return built;
}

}  // namespace

// Nothing set the last build: a saved piece whose plugin went missing counted 0.
TEST_CASE("a piece that was built counts the same where its type is missing") {
  const Event event = three_pieces();
  const BuiltEvent built{{"p1", built_piece()}};
  const Event kept = with_last_built(event, built);
  REQUIRE(find_piece(kept, "p1")->last_built);
  const LastBuilt& last = *find_piece(kept, "p1")->last_built;
  CHECK(last.width_m == 2.234);  // 2.2344 and the others to the nearest millimetre, by hand
  CHECK(last.depth_m == 0.4);
  CHECK(last.height_m == 2.001);
  CHECK(last.clusters == 2);
  CHECK(last.counts == std::vector<LastBuilt::Count>{{11, 0.23, 0, 2}, {11, 0.23, 1, 3}});

  const EventCount with_type = count_event(event, built, {}), without = count_event(kept, {}, {});
  CHECK(with_type.total_balloons == 5);
  CHECK(without.total_balloons == 5);
  CHECK(without.balloons == with_type.balloons);
  CHECK(without.pieces[0].as_last_calculated);
}

TEST_CASE("pieces that were refused or not built keep what they have") {
  Event event = three_pieces();
  const LastBuilt before{1, 2, 3, 4, {{5, 0.1, 0, 9}}};
  event.areas[0].edit([&](Area& area) {
    for (auto& piece : area.pieces) piece.edit([&](PlacedPiece& p) { p.last_built = before; });
  });
  const auto refused = built_piece();
  refused->status = Status::infeasible;
  const auto monstrous = built_piece();  // no event file could hold it
  monstrous->piece.balloons[0].nominal_in = 5000;
  const Event kept = with_last_built(event, {{"p1", refused}, {"p2", monstrous}, {"stranger", built_piece()}});
  CHECK(kept == event);
  CHECK(find_piece(with_last_built(event, {{"p3", built_piece()}}), "p3")->last_built->clusters == 2);
}

TEST_CASE("an event whose last builds are true already shares everything with the new one") {
  const BuiltEvent built{{"p1", built_piece()}};
  const Event once = with_last_built(three_pieces(), built), twice = with_last_built(once, built);
  CHECK(twice.areas[0].shares_with(once.areas[0]));
}

TEST_CASE("what was built of other values is not true any more; a move changes nothing") {
  const Event studied = three_pieces();
  const BuiltEvent built{{"p1", built_piece()}, {"p2", built_piece()}, {"p3", built_piece()}};
  Event event = moved(studied, "p1", 5, 5);
  event = with_value(event, "p2", "span", Value::of_number(Kind::length, 4));
  event = without_piece(event, "p3");
  const BuiltEvent now = still_true(built, studied, event);
  CHECK(now.size() == 1);
  CHECK(now.contains("p1"));
  CHECK(still_true(built, studied, studied).size() == 3);
  CHECK(still_true(built, Event{}, event).empty());
}
