// Lining up, spreading evenly, and the order in depth.
#include "studio/arrange/aligning.hpp"

#include <algorithm>

#include "studio/arrange/depth_order.hpp"
#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

PieceBox box_in(const Event& event, const Venue& venue, const std::string& id) {
  return box_of(*find_piece(event, id), venue.built);
}

}  // namespace

TEST_CASE("edges and middles come to those of the outermost") {
  Venue venue;
  venue.block("p", 0, 1).block("q", 3, 2).block("r", 9, 0.5, 0.8);  // from -0.5, 2, 8.75 to 0.5, 4, 9.25
  const PieceIds all{"p", "q", "r"};
  const auto box = [&](Alignment alignment, const char* id) {
    return box_in(aligned(venue.event, all, venue.built, alignment), venue, id);
  };
  for (const char* id : {"p", "q", "r"}) {
    CHECK(box(Alignment::left, id).left == doctest::Approx(-0.5));
    CHECK(box(Alignment::right, id).right == doctest::Approx(9.25));
    CHECK(box(Alignment::centre, id).middle_x() == doctest::Approx(4.375));  // between -0.5 and 9.25
  }
  const auto depth = [&](Alignment alignment, const char* id) {
    return find_piece(aligned(venue.event, all, venue.built, alignment), id)->y_m;
  };
  CHECK(depth(Alignment::front, "r") == 0);
  CHECK(depth(Alignment::back, "p") == 0.8);
  CHECK(depth(Alignment::front_line, "r") == 0);
}

TEST_CASE("a locked piece stays, and the others come to it") {
  Venue venue;
  venue.block("p", 0, 1).block("q", 3, 1);
  venue.event = with_lock(venue.event, {"p"}, true);
  const Event left = aligned(venue.event, {"p", "q"}, venue.built, Alignment::left);
  CHECK(find_piece(left, "q")->x_m == 0);
  CHECK(aligned(venue.event, {"p", "q"}, venue.built, Alignment::right) == venue.event);
}

TEST_CASE("spreading evenly gives equal gaps or equal steps, and the outermost stay") {
  CHECK(rc::check("spreading evenly gives equal", [] {
    const Venue venue = any_blocks(3, 9);
    const bool along = *rc::gen::arbitrary<bool>();
    const FloorAxis axis = along ? FloorAxis::along : FloorAxis::depth;
    for (const Spacing spacing : {Spacing::gaps, Spacing::centres}) {
      const auto spread = distributed(venue.event, all_ids(venue), venue.built, spacing, axis);
      RC_ASSERT(bool(spread));
      std::vector<std::pair<double, double>> before, after;
      for (const std::string& id : all_ids(venue)) {
        const auto room = [&](const Event& event) {
          const PieceBox box = box_in(event, venue, id);
          return along ? std::pair(box.left, box.right) : std::pair(box.front, box.back);
        };
        before.push_back(room(venue.event));
        after.push_back(room(*spread));
        const PlacedPiece &was = venue.piece(id), &is = *find_piece(*spread, id);
        RC_ASSERT((along ? was.y_m == is.y_m : was.x_m == is.x_m));
      }
      const auto middle = [](const auto& room) { return (room.first + room.second) / 2; };
      const auto by_middle = [&](const auto& a, const auto& b) { return middle(a) < middle(b); };
      // Spread pieces keep their order of before: each stays in its own place in the list.
      std::vector<std::size_t> order(before.size());
      for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
      std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) { return by_middle(before[a], before[b]); });
      RC_ASSERT(std::abs(after[order.front()].first - before[order.front()].first) < 1e-9);
      RC_ASSERT(std::abs(after[order.back()].first - before[order.back()].first) < 1e-9);
      const auto step = [&](std::size_t i) {
        const auto &a = after[order[i]], &b = after[order[i + 1]];
        return spacing == Spacing::gaps ? b.first - a.second : middle(b) - middle(a);
      };
      for (std::size_t i = 0; i + 1 < order.size(); ++i) RC_ASSERT(std::abs(step(i) - step(0)) < 1e-9);
    }
  }));
}

TEST_CASE("what cannot be spread is said") {
  Venue venue;
  venue.block("p", 0, 1).block("q", 3, 1).block("r", 9, 1).block("s", 1, 1, 0, 0.4, 2, "b");
  const auto spread = [&](const PieceIds& ids) {
    return distributed(venue.event, ids, venue.built, Spacing::gaps).error;
  };
  CHECK(spread({"p", "q"}) == "Three pieces or more can be spread evenly: select more.");
  CHECK(spread({}) == "Three pieces or more can be spread evenly: select more.");
  CHECK(spread({"p", "q", "s"}).find("several areas") != std::string::npos);
  CHECK(spread({"p", "q", "r"}).empty());
  venue.event = with_lock(venue.event, {"q"}, true);
  CHECK(spread({"p", "q", "r"}) == "'Piece q' is locked: unlock it, or leave it out of the selection.");
  venue.event = with_lock(with_lock(venue.event, {"q"}, false), {"p", "r"}, true);
  CHECK(spread({"p", "q", "r"}).empty());  // the outermost stay anyhow
}

TEST_CASE("a piece passes one other or all of them, and takes the depth of the one it passes") {
  Venue venue;
  venue.block("back", 0, 1, 1).block("one", 0, 1).block("two", 0, 1).block("front", 0, 1, -1);
  const auto order = [&](const char* id, DepthStep step) {
    return back_to_front(*in_depth(venue.event, id, step).areas[0]);
  };
  CHECK(back_to_front(venue.area()) == PieceIds{"back", "one", "two", "front"});
  CHECK(order("one", DepthStep::forward) == PieceIds{"back", "two", "one", "front"});
  CHECK(order("one", DepthStep::to_front) == PieceIds{"back", "two", "front", "one"});
  CHECK(order("two", DepthStep::backward) == PieceIds{"back", "two", "one", "front"});
  CHECK(order("front", DepthStep::to_back) == PieceIds{"front", "back", "one", "two"});
  CHECK(find_piece(in_depth(venue.event, "one", DepthStep::forward), "one")->y_m == 0);
  CHECK(find_piece(in_depth(venue.event, "one", DepthStep::to_front), "one")->y_m == -1);
  CHECK(find_piece(in_depth(venue.event, "front", DepthStep::backward), "front")->y_m == 0);
  CHECK(in_depth(venue.event, "front", DepthStep::forward) == venue.event);
  CHECK(in_depth(venue.event, "back", DepthStep::to_back) == venue.event);
  CHECK(in_depth(venue.event, "nobody", DepthStep::to_back) == venue.event);
}

TEST_CASE("hidden pieces are passed without a step, locked ones do not move") {
  Venue venue;
  venue.block("one", 0, 1).block("unseen", 0, 1).block("two", 0, 1);
  venue.event = with_hidden(venue.event, {"unseen"}, true);
  const Event after = in_depth(venue.event, "one", DepthStep::forward);
  CHECK(back_to_front(*after.areas[0]) == PieceIds{"unseen", "two", "one"});
  const Event locked = with_lock(venue.event, {"one"}, true);
  CHECK(in_depth(locked, "one", DepthStep::forward) == locked);
}

TEST_CASE("several pieces pass the others and keep their order among themselves") {
  Venue venue;
  venue.block("a", 0, 1, 2).block("b", 0, 1, 1).block("c", 0, 1).block("d", 0, 1, -1);
  const auto order = [&](PieceIds ids, DepthStep step) {
    return back_to_front(*in_depth(venue.event, ids, step).areas[0]);
  };
  CHECK(order({"a", "c"}, DepthStep::to_front) == PieceIds{"b", "d", "a", "c"});
  CHECK(order({"c", "a"}, DepthStep::to_front) == PieceIds{"b", "d", "a", "c"});  // however they were picked
  CHECK(order({"b", "d"}, DepthStep::to_back) == PieceIds{"b", "d", "a", "c"});
  CHECK(order({"a", "b"}, DepthStep::forward) == PieceIds{"c", "a", "b", "d"});
  CHECK(order({"c", "d"}, DepthStep::backward) == PieceIds{"a", "c", "d", "b"});
  CHECK(order({"a", "d"}, DepthStep::forward) == PieceIds{"b", "a", "c", "d"});  // d has nothing before it
  CHECK(in_depth(venue.event, PieceIds{"c", "d"}, DepthStep::to_front) == venue.event);
  const Event locked = with_lock(venue.event, {"c"}, true);
  CHECK(back_to_front(*in_depth(locked, PieceIds{"a", "c"}, DepthStep::to_front).areas[0]) ==
        PieceIds{"b", "c", "d", "a"});
}

TEST_CASE("whatever is put in front stands before all others, and nobody else changes places") {
  CHECK(rc::check("put in front", [] {
    const Venue venue = any_blocks(2, 8);
    PieceIds some;
    for (const std::string& id : all_ids(venue))
      if (*rc::gen::arbitrary<bool>()) some.push_back(id);
    const bool front = *rc::gen::arbitrary<bool>();
    const Event after = in_depth(venue.event, some, front ? DepthStep::to_front : DepthStep::to_back);
    PieceIds expected = back_to_front(venue.area());
    // By the definition of a stable partition: those that go stand at one end, each group in its old order.
    std::ranges::stable_partition(
        expected, [&](const std::string& id) { return (std::ranges::find(some, id) == some.end()) == front; });
    RC_ASSERT(back_to_front(*after.areas[0]) == expected);
  }));
}
