// Lines from tie points to anchors.
#include "studio/model/securing.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

Piece two_fronts_and_a_side() {
  Piece piece;
  piece.frame.nodes = {{0, 0, 2}, {1, 0, 1}};
  piece.tie_points = {{0, TiePurpose::front, {0, 0, 2}, "crown, to the front"},
                      {1, TiePurpose::side, {1, 0, 1}, "leg"},
                      {1, TiePurpose::front, {1, 0, 1}, "leg, to the front"}};
  return piece;
}

SecuringLine line_of(const char* tie, AnchorKind anchor) {
  SecuringLine line;
  line.tie = tie;
  line.anchor = anchor;
  return line;
}

TEST_CASE("tie points are called by purpose and number, and found by that") {
  const Piece piece = two_fronts_and_a_side();
  CHECK(tie_key(piece, 0) == "front-1");
  CHECK(tie_key(piece, 1) == "side-1");
  CHECK(tie_key(piece, 2) == "front-2");
  CHECK(find_tie_point(piece, "front-2") == std::size_t{2});
  CHECK_FALSE(find_tie_point(piece, "back-1").has_value());
}

TEST_CASE("a stake goes with the piece, and a structure stays where it is") {
  const Piece piece = two_fronts_and_a_side();
  Area area;
  area.structures.push_back({"s1", "Post", StructureKind::post, 5, 1, 3, "", {}});
  PlacedPiece placed;
  placed.x_m = 2;
  SecuringLine stake = line_of("front-1", AnchorKind::stake);
  stake.x_m = 0.5;
  stake.y_m = -1;
  SecuringLine tied = line_of("front-2", AnchorKind::structure);
  tied.structure = "s1";
  tied.height_m = 2.5;
  CHECK(run_of(stake, placed, piece, area)->to == Vec3(0.5, -1, 0));
  CHECK(run_of(tied, placed, piece, area)->to == Vec3(3, 1, 2.5));
  placed.x_m = 4;
  CHECK(run_of(stake, placed, piece, area)->to == Vec3(0.5, -1, 0));
  CHECK(run_of(tied, placed, piece, area)->to == Vec3(1, 1, 2.5));
}

TEST_CASE("a line that cannot run says what it lacks") {
  const Piece piece = two_fronts_and_a_side();
  Area area;
  area.structures.push_back({"s1", "Post", StructureKind::post, 0, 0, 1.5, "", {}});
  const PlacedPiece placed;
  const auto error_of = [&](const SecuringLine& line) { return run_of(line, placed, piece, area).error; };
  CHECK(error_of(line_of("back-1", AnchorKind::stake)).find("side-1 (leg)") != std::string::npos);
  SecuringLine tied = line_of("front-1", AnchorKind::structure);
  tied.structure = "s9";
  CHECK(error_of(tied).find("no structure \"s9\"") != std::string::npos);
  tied.structure = "s1";
  tied.height_m = 2;
  CHECK(error_of(tied).find("higher than the structure") != std::string::npos);
  Piece low = piece;
  low.tie_points[0].point = Vec3::Zero();
  CHECK(run_of(line_of("front-1", AnchorKind::stake), placed, low, area).error.find("no length") != std::string::npos);
}

TEST_CASE("an empty key names the standard cord, an unknown one none") {
  REQUIRE(find_cord("") != nullptr);
  CHECK(find_cord("") == &cords.front());
  CHECK(find_cord("nylon-100lb")->strength_n == 445);  // MIL-C-5040H type I, 100 lb, second-hand
  CHECK(find_cord("steel") == nullptr);
}

}  // namespace
}  // namespace quadrille
