// Duplicates, arrays, copy and paste.
#include "studio/arrange/copies.hpp"

#include <set>

#include "studio/arrange/cut_out.hpp"
#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

std::size_t ids_in(const Event& event) {
  std::set<std::string> ids;
  std::size_t count = 0;
  for (const auto& area : event.areas) {
    ids.insert(area->id), ++count;
    for (const auto& piece : area->pieces) ids.insert(piece->id), ++count;
    for (const auto& structure : area->structures) ids.insert(structure.id), ++count;
  }
  CHECK(ids.size() == count);
  return ids.size();
}

/// An event with an oak in area "a" and a column that is tied to it and to a stake.
Venue tied_column() {
  Venue venue;
  Area area = venue.area();
  Structure oak;
  oak.id = "s1", oak.name = "Oak", oak.kind = StructureKind::tree, oak.height_m = 6;
  area.structures = {oak};
  venue.event.areas[0] = area;
  venue.block("p1", 2, 0.4);
  SecuringLine to_oak, to_stake;
  to_oak.tie = "back-1", to_oak.anchor = AnchorKind::structure, to_oak.structure = "s1", to_oak.height_m = 2;
  to_stake.tie = "front-1", to_stake.x_m = 1, to_stake.y_m = -1;
  venue.event = with_lines(venue.event, "p1", {to_oak, to_stake});
  venue.event = with_colour(venue.event, "p1", 0, {"garden", "fern"});
  venue.event = with_price(venue.event, "p1", 9900);
  venue.event.palettes = {"garden"};
  return venue;
}

}  // namespace

TEST_CASE("a duplicate is the same piece elsewhere, with an id and a name of its own, free to move") {
  Venue venue = tied_column();
  venue.event = with_lock(venue.event, {"p1"}, true);
  const Copies copies = duplicated(venue.event, {"p1"}, 0.5, 0.2);
  REQUIRE(copies.ids.size() == 1);
  PlacedPiece copy = *find_piece(copies.event, copies.ids[0]);
  CHECK(copy.name == "Piece p1 2");
  CHECK(copy.x_m == 2.5);
  CHECK(copy.y_m == 0.2);
  CHECK_FALSE(copy.locked);
  CHECK(copy.lines == venue.piece("p1").lines);
  copy.id = "p1", copy.name = "Piece p1", copy.x_m = 2, copy.y_m = 0, copy.locked = true;
  CHECK(copy == venue.piece("p1"));
  CHECK(*find_piece(copies.event, "p1") == venue.piece("p1"));
}

TEST_CASE("steps end where they are asked to, and within a length as many are made as fit") {
  CHECK(steps_of(4, 1.5).over_m == 4.5);
  CHECK(steps_within(5, 2).count == 3);
  CHECK(steps_within(5, 2).over_m == 4);
  CHECK(steps_within(1.2, 0.1).count == 13);  // 1.2 / 0.1 is 11.999… in doubles
  CHECK(steps_within(-5, 2).over_m == -4);
  CHECK(steps_within(5, 0).count == 1);
  CHECK(rc::check("steps end where they", [] {
    Venue venue;
    venue.block("p", any(-5, 5), 0.4);
    const int count = *rc::gen::inRange(2, 30);
    const double over = any(-40, 40);
    const Copies row = arrayed(venue.event, {"p"}, {{count, over}, {}});
    RC_ASSERT(row.ids.size() == static_cast<std::size_t>(count - 1));
    const double start = venue.piece("p").x_m;
    RC_ASSERT(std::abs(find_piece(row.event, row.ids.back())->x_m - (start + over)) < 1e-9);
    for (std::size_t i = 0; i < row.ids.size(); ++i) {
      const double place = start + over * static_cast<double>(i + 1) / (count - 1);
      RC_ASSERT(std::abs(find_piece(row.event, row.ids[i])->x_m - place) < 1e-9);
    }
  }));
}

TEST_CASE("columns along an aisle stand in pairs, and the right ones can face the left ones") {
  Venue venue;
  venue.block("p", 1, 0.4);
  PieceIds faced;
  const auto mirror = [&](Event event, const PieceIds& ids) {
    faced.insert(faced.end(), ids.begin(), ids.end());
    return event;
  };
  const ArrayPlan aisle{{2, 1.8}, steps_of(3, 2.5), true};
  const Copies pairs = arrayed(venue.event, {"p"}, aisle, mirror);
  REQUIRE(pairs.ids.size() == 5);
  const double places[][2] = {{2.8, 0}, {1, 2.5}, {2.8, 2.5}, {1, 5}, {2.8, 5}};
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(find_piece(pairs.event, pairs.ids[i])->x_m == doctest::Approx(places[i][0]));
    CHECK(find_piece(pairs.event, pairs.ids[i])->y_m == doctest::Approx(places[i][1]));
  }
  CHECK(faced == PieceIds{pairs.ids[0], pairs.ids[2], pairs.ids[4]});
  CHECK(ids_in(pairs.event) == 8);
  CHECK(arrayed(venue.event, {"p"}, {{1, 0}, {1, 0}}).event == venue.event);
}

TEST_CASE("what is pasted into its own area is tied to the same structures") {
  const Venue venue = tied_column();
  const CutOut cut = cut_out(venue.event, {"p1"});
  CHECK(cut.palettes == std::vector<std::string>{"garden"});
  REQUIRE(cut.structures.size() == 1);
  const Pasted pasted = with_pasted(venue.event, "a", cut, FloorPlace{5, 1});
  CHECK(pasted.findings.empty());
  REQUIRE(pasted.ids.size() == 1);
  const PlacedPiece& copy = *find_piece(pasted.event, pasted.ids[0]);
  CHECK(copy.x_m == 5);
  CHECK(copy.y_m == 1);
  CHECK(copy.lines == venue.piece("p1").lines);
  CHECK(copy.price_minor == 9900);
}

TEST_CASE("where the structure is not, its line is left out and that is said") {
  const Venue venue = tied_column();
  const CutOut cut = cut_out(venue.event, {"p1"});
  const Pasted other_area = with_pasted(venue.event, "b", cut);
  REQUIRE(other_area.findings.size() == 1);
  CHECK(other_area.findings[0].code == "line-left-out");
  CHECK(other_area.findings[0].piece == other_area.ids[0]);
  CHECK(other_area.findings[0].text.find("'Oak'") != std::string::npos);
  const PlacedPiece& copy = *find_piece(other_area.event, other_area.ids[0]);
  REQUIRE(copy.lines.size() == 1);
  CHECK(copy.lines[0].anchor == AnchorKind::stake);
  CHECK(copy.x_m == 2);  // nothing stands there in the other area

  // Another event may well have a structure of the same id: it is another thing.
  Venue elsewhere;
  Area area = elsewhere.area();
  Structure rail;
  rail.id = "s1", rail.name = "Railing", rail.kind = StructureKind::railing, rail.height_m = 1;
  area.structures = {rail};
  elsewhere.event.areas[0] = area;
  elsewhere.event.currency = "EUR";
  const Pasted other_event = with_pasted(elsewhere.event, "a", cut);
  REQUIRE(other_event.findings.size() == 2);
  CHECK(other_event.findings[0].code == "line-left-out");
  CHECK(other_event.findings[1].code == "price-left-out");
  CHECK_FALSE(find_piece(other_event.event, other_event.ids[0])->price_minor);
  CHECK(other_event.event.palettes == std::vector<std::string>{"garden"});
}

TEST_CASE("pasted without a place, pieces step aside of those that stand there") {
  const Venue venue = tied_column();
  const CutOut cut = cut_out(venue.event, {"p1"});
  const Pasted once = with_pasted(venue.event, "a", cut);
  CHECK(find_piece(once.event, once.ids[0])->x_m == doctest::Approx(2.3));
  const Pasted twice = with_pasted(once.event, "a", cut);
  CHECK(find_piece(twice.event, twice.ids[0])->x_m == doctest::Approx(2.6));
  CHECK(with_pasted(venue.event, "nowhere", cut).event == venue.event);
  CHECK(with_pasted(venue.event, "a", cut_out(venue.event, {})).event == venue.event);
}

TEST_CASE(
    "however often and wherever one pastes, every id is borne once and the pieces keep their places to each other") {
  CHECK(rc::check("pasting", [] {
    const Venue venue = any_blocks(1, 6);
    const CutOut cut = cut_out(venue.event, all_ids(venue));
    Event event = venue.event;
    std::size_t count = venue.area().pieces.size();
    const int times = *rc::gen::inRange(1, 5);
    for (int i = 0; i < times; ++i) {
      const bool with_place = *rc::gen::arbitrary<bool>();
      const auto where = with_place ? std::optional(FloorPlace{any(-9, 9), any(-9, 9)}) : std::nullopt;
      const Pasted pasted = with_pasted(event, *rc::gen::arbitrary<bool>() ? "a" : "b", cut, where);
      RC_ASSERT(pasted.ids.size() == cut.pieces.size());
      const PlacedPiece& first = *find_piece(pasted.event, pasted.ids[0]);
      for (std::size_t k = 0; k < cut.pieces.size(); ++k) {
        const PlacedPiece& piece = *find_piece(pasted.event, pasted.ids[k]);
        RC_ASSERT(std::abs((piece.x_m - first.x_m) - (cut.pieces[k].x_m - cut.pieces[0].x_m)) < 1e-9);
      }
      event = pasted.event;
      count += cut.pieces.size();
    }
    RC_ASSERT(ids_in(event) == count + 2);
    std::set<std::string> names;
    for (const auto& area : event.areas)
      for (const auto& piece : area->pieces) names.insert(piece->name);
    RC_ASSERT(names.size() == count);
  }));
}

TEST_CASE("what was cut out is a small event, and comes back from it") {
  Venue venue = tied_column();
  venue.block("a1", 4, 1, 0, 0.4, 2, "b");  // an id that the small event's own area must not bear
  venue.event.currency = "EUR";
  const CutOut cut = cut_out(venue.event, {"p1", "a1"});
  const Event small = event_of(cut, Units::feet);
  CHECK(small.areas.size() == 1);
  CHECK(small.currency == "EUR");
  CHECK(ids_in(small) == 4);
  CHECK(event_cut_out(small) == cut);
  CHECK(event_cut_out(event_of({}, Units::feet)).pieces.empty());
  CHECK(middle_of(cut).x_m == 3);  // between 2 and 4
}
