// One piece in one gust after another.
#include "studio/standing/gust_series.hpp"

#include <type_traits>

#include "case_pieces.hpp"
#include "studio/standing/piece_standing.hpp"

namespace quadrille {
namespace {

const auto never = [] { return false; };

PlacedPiece tied_front_and_back() {
  PlacedPiece placed;
  placed.id = "p1";
  placed.lines = {stake("front-1", 0, -1.8), stake("back-1", 0, 1.8)};
  return placed;
}

}  // namespace

TEST_CASE("a place is carried by the nearest place of the frame, by the lever rule") {
  Frame frame;
  frame.nodes = {{0, 0, 0}, {0, 0, 2}, {3, 0, 2}};
  frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.01, 0, 70e9, 1000, 1e8},
                   {1, 2, Joint::rigid, Rest::as_drawn, 0.01, 0, 70e9, 1000, 1e8}};
  // By hand: 0.5 m up a 2 m upright is a quarter of it; 0.75 m along a 3 m beam likewise; beyond its end counts the end.
  const OnFrame low = nearest_on_frame(frame, {0.3, 0.2, 0.5}), high = nearest_on_frame(frame, {0.75, 0, 2.4}),
                beyond = nearest_on_frame(frame, {4, 0, 2});
  CHECK(low.from == 0);
  CHECK(low.share == doctest::Approx(0.25));
  CHECK(high.from == 1);
  CHECK(high.share == doctest::Approx(0.25));
  CHECK(beyond.to == 2);
  CHECK(beyond.share == 1);
  frame.members.clear();
  CHECK(nearest_on_frame(frame, {2.5, 0, 2}).from == 2);
}

TEST_CASE("all round is the worst of every direction, as the standing check finds it, whatever was asked before") {
  const Event event;
  const Area area = lawn();
  const Piece arch = built_of("arch", {{"rod-diameter", length_of(0.012)}, {"ballast", mass_of(30)}});
  const PlacedPiece placed = tied_front_and_back();
  GustSeries series(event, area, placed, arch);
  StandingCase its(event, area, placed, arch);
  series.from(9, 0);
  for (const double gust : {3.0, 6.0, 1.5}) {
    const auto state = series.all_round(gust, never);
    REQUIRE(state);
    const StandingCase::AllRound round = its.all_round(gust);
    CHECK(state->checks == round.checks);
    CHECK(state->stands == round.stands);
    CHECK(state->all_round);
    for (const double direction : wind_directions()) {
      const GustState one = series.from(gust, direction);
      CHECK(one.utilisation() <= state->utilisation());
      if (direction == state->direction_deg) CHECK(one.utilisation() == state->utilisation());
    }
  }
}

TEST_CASE("balloons go where the frame goes: wind from the left moves crown and balloons to the right") {
  const Event event;
  const Area area = lawn();
  const Piece arch = built_of("arch", {{"rod-diameter", length_of(0.012)}, {"ballast", mass_of(30)}});
  const PlacedPiece placed = tied_front_and_back();
  GustSeries series(event, area, placed, arch);
  const GustState still = series.from(0, 0), blown = series.from(5, 0);
  REQUIRE(blown.stands);
  REQUIRE(blown.deflected.size() == arch.frame.nodes.size());
  REQUIRE(blown.balloons.size() == arch.balloons.size());
  CHECK(blown.farthest_m.x() > 0.01);
  double highest_m = 0, moved_m = 0;
  for (std::size_t i = 0; i < arch.balloons.size(); ++i) {
    // No balloon moves farther than the frame that carries it.
    CHECK((blown.balloons[i] - arch.balloons[i].centre).norm() <= blown.farthest_m.norm() + 1e-9);
    if (arch.balloons[i].centre.z() <= highest_m) continue;
    highest_m = arch.balloons[i].centre.z();
    moved_m = blown.balloons[i].x() - still.balloons[i].x();
  }
  CHECK(moved_m > 0.01);
  // Mirror: from the right it goes as far to the left.
  CHECK(series.from(5, 180).farthest_m.x() == doctest::Approx(-blown.farthest_m.x()).epsilon(0.02));
}

TEST_CASE("a series stops between two directions when it is told to, and answers the next question all the same") {
  const Event event;
  const Area area = lawn();
  const Piece column = drum(0.3, 2, 0.5, 40);
  const PlacedPiece placed;
  GustSeries series(event, area, placed, column);
  int asked = 0;
  CHECK_FALSE(series.all_round(4, [&] { return ++asked == 3; }));
  CHECK(asked == 3);
  CHECK(series.all_round(4, never));
}

TEST_CASE("what refers to its own parts is neither copied nor moved") {
  CHECK_FALSE(std::is_copy_constructible_v<GustSeries>);
  CHECK_FALSE(std::is_move_constructible_v<GustSeries>);
  CHECK_FALSE(std::is_copy_constructible_v<StandingCase>);
  CHECK_FALSE(std::is_move_constructible_v<StandingCase>);
}

TEST_CASE("lines that cannot be counted on do not hold what the slider shows either") {
  Event event;
  event.assumptions["stake-hold-grass"] = 0;
  const Area area = lawn();
  const Piece column = built_of("column", {});
  PlacedPiece tied = tied_front_and_back(), alone;
  alone.id = tied.id;
  GustSeries with(event, area, tied, column), without(event, area, alone, column);
  CHECK(with.all_round(3, never)->checks == without.all_round(3, never)->checks);
}

}  // namespace quadrille
