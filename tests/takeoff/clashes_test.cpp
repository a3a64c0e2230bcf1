// Pieces that stand in each other, against depths worked out by hand.
#include "studio/takeoff/clashes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "studio/model/edits.hpp"

using namespace quadrille;

namespace {

PlacedPiece placed(const std::string& id, double x, double y) {
  PlacedPiece piece;
  piece.id = id;
  piece.name = "Piece " + id;
  piece.x_m = x, piece.y_m = y;
  return piece;
}

/// A row of `count` balloons along x from the piece's place, each touching the next, 1 m up.
std::shared_ptr<BuiltPiece> row(int count, double diameter = 0.25) {
  auto built = std::make_shared<BuiltPiece>();
  built->status = Status::ok;
  const double radius = diameter / 2;
  for (int i = 0; i < count; ++i) {
    Balloon& balloon = built->piece.balloons.emplace_back();
    balloon.centre = balloon.neck = {i * diameter, 0, 1};
    balloon.diameter_m = diameter;
  }
  built->box = {{-radius, -radius, 1 - radius}, {(count - 1) * diameter + radius, radius, 1 + radius}};
  return built;
}

Event event_of(const std::vector<PlacedPiece>& pieces) {
  Event event;
  event.units = Units::metric;
  Area area;
  area.id = "a1";
  event = with_area(event, area);
  for (const PlacedPiece& piece : pieces) event = with_piece(event, "a1", piece);
  return event;
}

/// Two rows of three balloons of 0.25 m, one `y` metres behind the other.
Findings two_rows(double y) {
  return check_clashes(event_of({placed("p1", 0, 0), placed("p2", 0, y)}), {{"p1", row(3)}, {"p2", row(3)}});
}

}  // namespace

// Two arches set through each other were drawn and counted without a word.
TEST_CASE("two pieces that stand in each other are a warning that names both, how deep, and how far to move one") {
  const Findings findings = two_rows(0.15);
  REQUIRE(findings.size() == 2);  // once only the first of the two was marked
  // Centres 0.15 m apart: each balloon presses 0.25 - 0.15 = 0.10 m into its partner, 40 % of its diameter. Its next
  // neighbour is sqrt(0.25² + 0.15²) = 0.2915 m away and not touched. The rows are 0.25 m deep: 0.10 m more and they
  // only touch. 0.10 m are 3.94 in.
  CHECK(findings[0] ==
        Finding{Weight::warning, "pieces-clash", "a1", "p1", "",
                "It stands in 'Piece p2': 6 balloons of the two press into each other deeper than they give, the worst "
                "by 0.10 m, 40 % of a diameter.",
                "Move it by 0.10 m (4\") to the front, or the other as far the other way, and nothing touches."});
  CHECK(findings[1].piece == "p2");
  CHECK(findings[1].text.starts_with("It stands in 'Piece p1': 6 balloons"));
  CHECK(findings[1].remedy.starts_with("Move it by 0.10 m (4\") to the back,"));
}

TEST_CASE("pieces that touch or lean against each other are no clash, nor are those behind one another") {
  // 18 % of 0.25 m are 0.045 m: the limit lies at 0.205 m.
  CHECK(two_rows(0.2049).size() == 2);
  CHECK(two_rows(0.2051).empty());
  CHECK(two_rows(0.25).empty());
  CHECK(two_rows(2).empty());
  CHECK(two_rows(-0.15).size() == 2);
  // Two and two balloons that lie in each other are let pass, as one cluster leant against another.
  CHECK(check_clashes(event_of({placed("p1", 0, 0), placed("p2", 0.25, 0)}), {{"p1", row(3)}, {"p2", row(3)}}).empty());
}

TEST_CASE("the remedy goes the shorter way") {
  // Five balloons along x and five more that begin 0.5 m further: three lie in three. Their boxes share 0.75 m along and
  // 0.25 m across.
  const auto findings =
      check_clashes(event_of({placed("p1", 0, 0), placed("p2", 0.5, 0)}), {{"p1", row(5)}, {"p2", row(5)}});
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].remedy.find("0.25 m (10\") to the back") != std::string::npos);
  // The same rows along y, side by side with their centres 0.15 m apart: 0.25 - 0.15 = 0.10 m are shared along x.
  auto deep = row(5);
  for (Balloon& balloon : deep->piece.balloons) std::swap(balloon.centre.x(), balloon.centre.y());
  std::swap(deep->box.least.x(), deep->box.least.y()), std::swap(deep->box.most.x(), deep->box.most.y());
  auto other = std::make_shared<BuiltPiece>(*deep);
  const auto aside =
      check_clashes(event_of({placed("p1", 0, 0), placed("p2", 0.15, 0)}), {{"p1", deep}, {"p2", other}});
  REQUIRE(aside.size() == 2);
  CHECK(aside[0].remedy.find("0.10 m (4\") to the left") != std::string::npos);
  CHECK(aside[1].remedy.find("0.10 m (4\") to the right") != std::string::npos);
}

TEST_CASE("a piece that is hidden, refused, or of a missing type stands in nobody's way") {
  Event event = event_of({placed("p1", 0, 0), placed("p2", 0, 0)});
  auto refused = row(3);
  refused->status = Status::infeasible;
  CHECK(check_clashes(event, {{"p1", row(3)}, {"p2", row(3)}}).size() == 2);
  CHECK(check_clashes(event, {{"p1", row(3)}, {"p2", refused}}).empty());
  CHECK(check_clashes(event, {{"p1", row(3)}}).empty());
  CHECK(check_clashes(event, {{"p1", row(3)}, {"p2", nullptr}}).empty());
  event.areas[0].edit([](Area& area) { area.pieces[1].edit([](PlacedPiece& piece) { piece.hidden = true; }); });
  CHECK(check_clashes(event, {{"p1", row(3)}, {"p2", row(3)}}).empty());
}

TEST_CASE("of many pairs ten are told, and how many more") {
  std::vector<PlacedPiece> pieces;
  BuiltEvent built;
  for (int i = 0; i < 6; ++i) {
    pieces.push_back(placed("p" + std::to_string(i), 0, 0.001 * i));
    built[pieces.back().id] = row(4);
  }
  const Findings findings = check_clashes(event_of(pieces), built);
  REQUIRE(findings.size() == 21);  // 6 · 5 ÷ 2 = 15 pairs, ten of them under both pieces
  CHECK(findings.back().text == "5 more pairs of pieces stand in each other.");
}

TEST_CASE("balloons of every size are found: the same as by trying all pairs") {
  std::srand(7);
  const auto random = [](double most) { return most * std::rand() / RAND_MAX; };
  for (int round = 0; round < 40; ++round) {
    std::shared_ptr<BuiltPiece> clouds[2];
    for (auto& cloud : clouds) {
      cloud = std::make_shared<BuiltPiece>();
      cloud->status = Status::ok;
      cloud->box = {{0, 0, 0}, {3, 3, 3}};
      for (int i = 0; i < 60; ++i) {
        Balloon& balloon = cloud->piece.balloons.emplace_back();
        balloon.diameter_m = 0.1 + random(0.4);
        const double radius = balloon.diameter_m / 2;
        for (int axis = 0; axis < 3; ++axis) balloon.centre[axis] = radius + random(3 - 2 * radius);
      }
    }
    double deepest = 0;
    std::vector<bool> pressed(120);
    for (std::size_t i = 0; i < 60; ++i)
      for (std::size_t k = 0; k < 60; ++k) {
        const Balloon &a = clouds[0]->piece.balloons[i], &b = clouds[1]->piece.balloons[k];
        const double depth = (a.diameter_m + b.diameter_m) / 2 - (a.centre - b.centre).norm();
        const double share = depth / std::min(a.diameter_m, b.diameter_m);
        if (share > 0.18) pressed[i] = pressed[60 + k] = true;
        deepest = std::max(deepest, share);
      }
    const auto count = std::ranges::count(pressed, true);
    const Findings findings =
        check_clashes(event_of({placed("p1", 1, 2), placed("p2", 1, 2)}), {{"p1", clouds[0]}, {"p2", clouds[1]}});
    REQUIRE(findings.size() == (count > 4 ? 2 : 0));
    if (findings.empty()) continue;
    CHECK(findings[0].text.find(": " + std::to_string(count) + " balloons") != std::string::npos);
    const std::string worst = deepest < 1 ? std::to_string(std::lround(100 * deepest)) + " % of a diameter"
                                          : "at least one is all inside another";
    CHECK(findings[0].text.find(worst) != std::string::npos);
  }
}
