// What lies under a point, and what a rubber band takes.
#include "studio/arrange/picking.hpp"

#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

TEST_CASE("a click takes a balloon, a rod or a plate, not the room between them") {
  Venue venue;
  venue.ring("r", 5);
  const auto under = [&](double x, double height) { return pieces_under(venue.area(), venue.built, x, height, 0.01); };
  CHECK(under(6, 1.5) == PieceIds{"r"});      // the balloon to the right
  CHECK(under(6.149, 1.5) == PieceIds{"r"});  // its radius is 0.15 m
  CHECK(under(6.151, 1.5).empty());
  CHECK(under(5, 1.5).empty());               // through the ring
  CHECK(under(5, 0.3) == PieceIds{"r"});      // the post, 20 mm thick
  CHECK(under(5.019, 0.3) == PieceIds{"r"});  // 10 mm and the reach
  CHECK(under(5.021, 0.3).empty());
}

TEST_CASE("the frontmost is taken first, and further clicks go down through what lies below") {
  Venue venue;
  venue.ring("back", 5, 1).ring("front", 5, -1).ring("middle", 5, 0).ring("middle-later", 5, 0);
  const PieceIds under = pieces_under(venue.area(), venue.built, 6, 1.5, 0);
  CHECK(under == PieceIds{"front", "middle-later", "middle", "back"});
  CHECK(next_under(under, "") == "front");
  CHECK(next_under(under, "front") == "middle-later");
  CHECK(next_under(under, "middle") == "back");
  CHECK(next_under(under, "back") == "front");
  CHECK(next_under({}, "back").empty());
}

TEST_CASE("hidden pieces are not there, and one that is not built is taken by its box") {
  Venue venue;
  venue.ring("r", 5).ring("lost", 8);
  venue.built.erase("lost");
  const auto under = [&](double x, double height) { return pieces_under(venue.area(), venue.built, x, height, 0); };
  CHECK(under(8.4, 0.9) == PieceIds{"lost"});  // never built: a metre each way
  CHECK(under(8.6, 0.9).empty());
  venue.event = with_hidden(venue.event, {"r", "lost"}, true);
  CHECK(under(6, 1.5).empty());
  CHECK(under(8.4, 0.9).empty());
}

TEST_CASE("a locked piece can be clicked, but no rubber band takes it") {
  Venue venue;
  venue.ring("r", 5);
  venue.event = with_lock(venue.event, {"r"}, true);
  CHECK(pieces_under(venue.area(), venue.built, 6, 1.5, 0) == PieceIds{"r"});
  CHECK(pieces_in(venue.area(), venue.built, {0, 0, 10, 10}, BandTakes::what_it_touches).empty());
}

TEST_CASE("a rubber band takes what lies inside, or what it touches") {
  Venue venue;
  venue.ring("r", 5).ring("s", 9);
  const auto inside = [&](const Band& band) {
    return pieces_in(venue.area(), venue.built, band, BandTakes::what_lies_inside);
  };
  const auto touched = [&](const Band& band) {
    return pieces_in(venue.area(), venue.built, band, BandTakes::what_it_touches);
  };
  CHECK(inside({3.8, 0, 6.2, 2.7}) == PieceIds{"r"});
  CHECK(inside({6.2, 2.7, 3.8, 0}) == PieceIds{"r"});  // drawn the other way
  CHECK(inside({3.8, 0, 6.0, 2.7}).empty());
  CHECK(touched({3.8, 0, 6.0, 2.7}) == PieceIds{"r"});
  CHECK(touched({4.6, 1.1, 5.4, 1.9}).empty());  // wholly within the ring's opening
  CHECK(touched({5.8, 1.4, 8.1, 1.6}) == PieceIds{"r", "s"});
  CHECK(touched({4.9, 0.2, 5.1, 0.3}) == PieceIds{"r"});  // only the post
}
