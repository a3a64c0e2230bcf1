// Building events: what is built, how often, and that it is the same on any number of threads.
#include "studio/host/builder.hpp"

#include <array>
#include <atomic>
#include <new>
#include <thread>

#include "studio/host/fingerprint.hpp"
#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

PieceTypes types() {
  PieceTypes found;
  found.types.push_back(type_of("post"));
  found.types.push_back(type_of("plain"));
  return found;
}

ValueMap height(double metres) { return {{"height", Value::of_number(Kind::length, metres)}}; }

}  // namespace

TEST_CASE("a built piece has its measures") {
  // Seven layers of 0.28 m fit 2 m; four balloons of 0.28 m touch around: ring radius 0.28/(2 sin 45°).
  const auto built = build_piece(type_of("post"), {});
  REQUIRE(built->status == Status::ok);
  CHECK(built->piece.clusters.size() == 7);
  CHECK(built->piece.balloons.size() == 28);
  CHECK(built->spine_m == 2);
  CHECK(built->box.height_m() == doctest::Approx(2));
  CHECK(built->box.width_m() == doctest::Approx(2 * (0.14 / std::sin(pi / 4)) + 0.28));
  CHECK(built->box.least.z() == 0);
  CHECK(built->piece.messages.at(0).text == "Höhe noted.");
  // The balloons reach up to 7 × 0.28 = 1.96 m; from there to 2 m the post shows.
  REQUIRE_FALSE(built->bare.empty());
  CHECK(built->bare.back().to_m == doctest::Approx(2));
  CHECK(built->bare.back().from_m == doctest::Approx(1.96).epsilon(0.01));
  double bare = 0;
  for (const Stretch& stretch : built->bare) bare += stretch.to_m - stretch.from_m;
  CHECK(built->hidden_share == doctest::Approx(1 - bare / 2).epsilon(0.001));
}

TEST_CASE("a value that cannot be is refused without calling the plugin, one that the plugin refuses by its key") {
  const PieceType post = type_of("post");
  const auto outside = build_piece(post, height(99));
  CHECK(outside->status == Status::bad_parameter);
  REQUIRE(outside->piece.messages.size() == 1);
  CHECK(outside->piece.messages[0].key == "height");
  const auto leaning = build_piece(post, {{"lean", Value::of_number(Kind::angle, 0.45)}});
  CHECK(leaning->status == Status::infeasible);
  REQUIRE(leaning->piece.messages.size() == 1);
  CHECK(leaning->piece.messages[0].key == "lean");
  const auto pathless = build_piece(post, {{"path", Value::of_list(Kind::path, {0, 0, 0})}});
  CHECK(pathless->status == Status::bad_parameter);
  CHECK(pathless->piece.messages.at(0).key == "path");
  CHECK(pathless->piece.balloons.empty());
}

TEST_CASE("equal pieces build once, moving and renaming builds nothing, a changed value builds one") {
  const PieceTypes found = types();
  EventBuilder builder(found);
  Event event = event_of({placed("a", "post"), placed("b", "post", height(2)), placed("c", "post", height(3)),
                          placed("d", "plain"), placed("e", "unknown"), placed("f", "post", height(99))});
  const BuiltEvent first = builder.build(event);
  CHECK(builder.builds() == 3);  // a and b stand at the same values, e has no type, f is refused beforehand
  CHECK(first.size() == 5);
  CHECK(first.at("a") == first.at("b"));
  CHECK(first.at("a") != first.at("c"));
  CHECK(first.at("f")->status == Status::bad_parameter);
  CHECK_FALSE(first.contains("e"));

  event.areas[0].edit([](Area& area) {
    area.pieces[0].edit([](PlacedPiece& piece) {
      piece.x_m = 4;
      piece.name = "Another name";
    });
  });
  CHECK(builder.build(event).at("a") == first.at("a"));
  CHECK(builder.builds() == 3);
  event.areas[0].edit([](Area& area) { area.pieces[2].edit([](PlacedPiece& piece) { piece.values = height(2.5); }); });
  CHECK(builder.build(event).at("c")->spine_m == 2.5);
  CHECK(builder.builds() == 4);
}

TEST_CASE("what was not used for a while is built anew, what is in use stays") {
  const PieceTypes found = types();
  EventBuilder builder(found);
  const auto build_one = [&](double metres) {
    return builder.build(event_of({placed("always", "plain"), placed("a", "post", height(metres))}));
  };
  const auto kept = build_one(1).at("always");
  build_one(2);
  CHECK(build_one(1).at("always") == kept);
  CHECK(builder.builds() == 3);
  for (int round = 0; round < 10; ++round) CHECK(build_one(3).at("always") == kept);
  CHECK(builder.builds() == 4);
  build_one(1);
  CHECK(builder.builds() == 5);
}

TEST_CASE("a piece that failed inside is tried again with the next event") {
  // One build that found the memory full was kept, and refreshed by every event that asked for it: the piece stayed
  // broken until the program ended.
  static std::atomic<int> calls;
  calls = 0;
  PieceTypes found;
  found.types.push_back(type_of("plain"));
  found.types[0].build = [](const quadrille_value*, std::uint32_t, const quadrille_sink*) -> std::int32_t {
    if (++calls == 1) throw std::bad_alloc();
    return QUADRILLE_OK;
  };
  EventBuilder builder(found);
  const Event event = event_of({placed("a", "plain")});
  CHECK(builder.build(event).at("a")->status == Status::internal);
  CHECK(builder.build(event).at("a")->status == Status::ok);
  CHECK(builder.build(event).at("a")->status == Status::ok);
  CHECK(calls == 2);
}

TEST_CASE("an event of many pieces builds the same bytes in parallel, again and from several threads at once") {
  const PieceTypes found = types();
  std::vector<PlacedPiece> pieces;
  for (int i = 0; i < 60; ++i) pieces.push_back(placed("p" + std::to_string(i), "post", height(1 + i * 0.05)));
  const Event event = event_of(pieces);
  const auto bytes = [](const BuiltEvent& built) {
    std::string all;
    for (const auto& [id, piece] : built) all += id + bytes_of(piece->piece);
    return all;
  };
  std::string one_by_one;
  BuiltEvent by_hand;
  for (const PlacedPiece& piece : pieces) by_hand[piece.id] = build_piece(found.types[0], piece.values);
  one_by_one = bytes(by_hand);

  EventBuilder builder(found);
  std::array<std::string, 4> results;
  {
    std::vector<std::jthread> threads;
    for (std::string& result : results) threads.emplace_back([&] { result = bytes(builder.build(event)); });
  }
  for (const std::string& result : results) CHECK(result == one_by_one);
  CHECK(bytes(EventBuilder(found).build(event)) == one_by_one);
}

TEST_CASE("an event without pieces builds to nothing") {
  const PieceTypes none;
  CHECK(EventBuilder(none).build(Event{}).empty());
}
