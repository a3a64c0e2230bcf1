// The packing of a garland, looked at by brute force on what the studio gets.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "tests/garland/built_garland.hpp"

using namespace quadrille;

namespace {

struct Looked {
  double deepest_core = 0, deepest = 0, mean = 0;
  int loose = 0;
};

/// Every pair, one by one.
Looked look(const Piece& piece) {
  Looked looked;
  double total = 0;
  long touching = 0;
  const auto& balls = piece.balloons;
  std::vector<int> touches(balls.size());
  for (std::size_t i = 0; i < balls.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const double depth = (balls[i].diameter_m + balls[j].diameter_m) / 2 - (balls[i].centre - balls[j].centre).norm();
      if (depth <= 0) continue;
      const double share = depth / std::min(balls[i].diameter_m, balls[j].diameter_m);
      ++touches[i], ++touches[j], ++touching;
      total += share;
      looked.deepest = std::max(looked.deepest, share);
      if (balls[i].cluster != 0 && balls[j].cluster != 0) looked.deepest_core = std::max(looked.deepest_core, share);
    }
  looked.mean = total / static_cast<double>(touching);
  for (std::size_t i = 0; i < balls.size(); ++i) looked.loose += balls[i].cluster == 0 && touches[i] < 2;
  return looked;
}

}  // namespace

TEST_CASE("no balloon presses too deep, all are held, and the line is hidden, whatever the seed") {
  for (const double s : {1.0, 2.0, 3.0, 17.0}) {
    CAPTURE(s);
    const auto built = build({{"seed", seed(s)}});
    const Looked looked = look(built->piece);
    CHECK(looked.deepest_core <= 0.12);
    CHECK(looked.deepest <= 0.18);
    CHECK(looked.mean < 0.05);
    CHECK(looked.loose == 0);
    CHECK(built->hidden_share >= 0.99);
    CHECK(fact(*built, "deepest_overlap") == doctest::Approx(looked.deepest).epsilon(1e-9));
    CHECK(fact(*built, "mean_overlap") == doctest::Approx(looked.mean).epsilon(1e-9));
  }
}

TEST_CASE("a full garland of the standard mix comes to ten to sixteen balloons a foot, a thin one to four to seven") {
  // Common practice, no source beyond pages for decorators ("How to design balloon garland").
  const auto full = build({{"path", wave(600)}});
  CHECK(fact(*full, "balloons_per_ft") >= 10);
  CHECK(fact(*full, "balloons_per_ft") <= 16);
  const auto thin = build(
      {{"path", wave(300)}, {"mix", Value::of_list(Kind::mix, {11, 0.24, 1})}, {"filler", number(Kind::ratio, 0)}});
  CHECK(fact(*thin, "balloons_per_ft") >= 4);
  CHECK(fact(*thin, "balloons_per_ft") <= 7);
}

TEST_CASE("the sizes come in the shares that are asked, within two percentage points") {
  const auto built = build({{"path", wave(700)}});
  REQUIRE(built->piece.balloons.size() >= 300);
  const std::map<double, double> asked{{5, 0.52}, {11, 0.36}, {16, 0.12}};
  for (const auto& [nominal, share] : asked) {
    const auto count = std::ranges::count(built->piece.balloons, nominal, &Balloon::nominal_in);
    CAPTURE(nominal);
    CHECK(std::abs(static_cast<double>(count) / static_cast<double>(built->piece.balloons.size()) - share) <= 0.02);
  }
}

TEST_CASE("the same seed gives the same garland, another seed another one of the same count") {
  const auto first = build({{"path", wave(500)}}), again = build({{"path", wave(500)}}),
             other = build({{"path", wave(500)}, {"seed", seed(2)}});
  CHECK(first->piece == again->piece);
  CHECK(first->piece.balloons != other->piece.balloons);
  const auto n = static_cast<double>(first->piece.balloons.size());
  CHECK(std::abs(static_cast<double>(other->piece.balloons.size()) / n - 1) <= 0.03);
}

TEST_CASE("colours flow as asked") {
  const auto slots_of = [](const BuiltPiece& built, double from, double to) {
    std::map<std::uint32_t, int> counts;
    for (const Balloon& balloon : built.piece.balloons)
      if (balloon.centre.x() >= from && balloon.centre.x() < to) ++counts[balloon.slot];
    return counts;
  };
  const auto scattered = build({{"path", wave(600)}});
  const auto all = slots_of(*scattered, -1e9, 1e9);
  for (const auto& [slot, count] : all)
    CHECK(count == doctest::Approx(static_cast<double>(scattered->piece.balloons.size()) / 4).epsilon(0.05));

  const auto drifting = build({{"path", wave(600)}, {"flow", Value::of_text(Kind::choice, "drifting")}});
  const double width = drifting->box.width_m();
  CHECK(slots_of(*drifting, 0, width / 8)[0] >
        0.7 * static_cast<double>(slots_of(*drifting, 0, width / 8)[1] + slots_of(*drifting, 0, width / 8)[0]));
  CHECK(slots_of(*drifting, 0, width / 8)[3] == 0);
  CHECK(slots_of(*drifting, 7 * width / 8, width)[0] == 0);

  const auto blocks = build({{"path", wave(600)}, {"flow", Value::of_text(Kind::choice, "blocks")}});
  CHECK(slots_of(*blocks, 0.02 * width, 0.18 * width).size() == 1);
  CHECK(slots_of(*blocks, 0.30 * width, 0.42 * width).size() == 1);
}

TEST_CASE("accents come in their share, in their colour, in front") {
  const auto built =
      build({{"path", wave(600)}, {"accents", number(Kind::ratio, 0.1)}, {"accent-slot", number(Kind::count, 4)}});
  int accents = 0;
  for (const Balloon& balloon : built->piece.balloons) {
    if (balloon.role != Role::accent) continue;
    ++accents;
    CHECK(balloon.slot == 3);
  }
  CHECK(accents == doctest::Approx(0.1 * static_cast<double>(built->piece.balloons.size())).epsilon(0.1));
}

TEST_CASE("what cannot be is refused with the parameter to blame") {
  const auto refused = [](const ValueMap& values) {
    const auto built = build_piece(garland_type(), values);
    REQUIRE(built->status != Status::ok);
    for (const Message& message : built->piece.messages)
      if (message.severity == Severity::refusal) return message.key;
    return std::string("no refusal");
  };
  CHECK(refused({{"thickness", number(Kind::length, 2.5)}}) == "thickness");
  CHECK(refused({{"thickness-end", number(Kind::length, 0.05)}}) == "thickness-end");
  CHECK(refused({{"thickness", number(Kind::length, 0.3)}}) == "thickness");  // less than its largest balloon
  CHECK(refused({{"path", Value::of_list(Kind::path, {0, 0, 1})}}) == "path");
  CHECK(refused({{"path", Value::of_list(Kind::path, {0, 0, 1, 0, 0, 1})}}) == "path");
  CHECK(refused({{"path", Value::of_list(Kind::path, {0, 0, 1, 0.1, 0, 1})}}) == "path");
  CHECK(refused({{"wall", number(Kind::flag, 1)}, {"wall-y", number(Kind::length, -1)}}) == "wall-y");
  CHECK(refused({{"mix", Value::of_list(Kind::mix, {11, 0.5, 1})}}) == "mix");
  CHECK(refused({{"accents", number(Kind::ratio, 0.1)}, {"accent-slot", number(Kind::count, 6)}}) == "accent-slot");
  CHECK(refused({{"course", Value::of_text(Kind::choice, "hanging")},
                 {"path", Value::of_list(Kind::path, {0, 0, 1, 0, 0, 3})}}) == "course");
  CHECK(refused({{"path", Value::of_list(Kind::path, {0, 0, -1, 2, 0, 1})}}) == "path");  // below the floor
  CHECK(refused({{"course", Value::of_text(Kind::choice, "hanging")},
                 {"slack", number(Kind::ratio, 4)},
                 {"path", Value::of_list(Kind::path, {0, 0, 2, 3, 0, 2})}}) == "slack");
}
