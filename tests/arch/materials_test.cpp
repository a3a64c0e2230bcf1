// What an arch is put together from, and what is said about it.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "tests/arch/built_arch.hpp"

using namespace quadrille;

namespace {

std::vector<double> joints_of(const BuiltPiece& built) {
  std::vector<double> places;
  for (const FrameMember& member : built.piece.frame.members)
    if (member.joint_from == Joint::sleeve) places.push_back(built.piece.spine[member.from].at_m);
  return places;
}

const AnchoringRule& rule(const BuiltPiece& built, std::string_view key) {
  const auto found = std::ranges::find(built.piece.anchoring, key, &AnchoringRule::key);
  REQUIRE(found != built.piece.anchoring.end());
  return *found;
}

double work(const BuiltPiece& built, std::string_view key) {
  const auto found = std::ranges::find(built.piece.work, key, &Work::key);
  return found == built.piece.work.end() ? 0 : found->quantity;
}

}  // namespace

TEST_CASE("a square frame was cut through its elbows: now every leg is cut by itself and joined at the corners") {
  // Three legs of 2.4 m in sections of 1.5 m: 1.5 + 0.9 each, so 6 rods, 3 sleeves, 2 elbows. The far leg is cut from its
  // foot, at 7.2 - 1.5 = 5.7 m.
  const auto built = build({{"frame", choice_of("square")}, {"corner-radius", length_of(0)}});
  REQUIRE(built->status == Status::ok);
  CHECK(supplied(*built, "rod-") == 6);
  CHECK(supplied(*built, "sleeve-") == 3);
  CHECK(supplied(*built, "corner-") == 2);
  CHECK(work(*built, "join-rod") == 3 + 2 * 2);
  CHECK(supplied(*built, "joint-tape") == doctest::Approx(7 * 0.25));
  const std::vector<double> wanted{1.5, 2.4, 3.9, 4.8, 5.7};
  const auto joints = joints_of(*built);
  REQUIRE(joints.size() == wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) CHECK(joints[i] == doctest::Approx(wanted[i]));
}

TEST_CASE("with sections as long as the legs sleeves landed on the elbows: now there are none") {
  const auto built =
      build({{"frame", choice_of("square")}, {"corner-radius", length_of(0)}, {"rod-section", length_of(2.4)}});
  CHECK(supplied(*built, "rod-") == 3);
  CHECK(supplied(*built, "sleeve-") == 0);
  CHECK(joints_of(*built).size() == 2);
}

TEST_CASE("bent corners are no rod: the legs between them are cut, and joined at both ends of a corner") {
  // Legs 2.4 - 0.4 = 2.0 m and a beam of 2.4 - 0.8 = 1.6 m: two sections each; every corner has two joints.
  const auto built = build({{"frame", choice_of("square")}, {"corner-radius", length_of(0.4)}});
  CHECK(supplied(*built, "rod-") == 6);
  CHECK(supplied(*built, "sleeve-") == 3);
  CHECK(supplied(*built, "corner-") == 2);
  CHECK(joints_of(*built).size() == 3 + 4);
  // Corners that meet in the middle and reach to the floor leave no rod at all.
  const auto round = build({{"frame", choice_of("square")},
                            {"span", length_of(2)},
                            {"height", length_of(1)},
                            {"corner-radius", length_of(1)}});
  REQUIRE(round->status == Status::ok);
  CHECK(supplied(*round, "rod-") == 0);
  CHECK(supplied(*round, "sleeve-") == 0);
}

TEST_CASE("labels of supplies run as a sentence does, with lengths in metres and in feet and inches") {
  // "Elbow for Aluminium tube" and "section of 1.50 m" stood on the list. 1.5 m are 59.06 in, to the half inch 4' 11".
  const auto label = [](const BuiltPiece& built, std::string_view stem) {
    for (const Supply& supply : built.piece.supplies)
      if (std::string_view(supply.key).starts_with(stem)) return supply.label;
    return std::string();
  };
  ValueMap values{{"frame", choice_of("square")},
                  {"corner-radius", length_of(0)},
                  {"rod-material", choice_of("aluminium")},
                  {"rod-diameter", length_of(0.025)},
                  {"rod-wall", length_of(0.0015)}};
  const auto square = build(values);
  CHECK(label(*square, "rod-") == "Aluminium tube, 25 x 1.5 mm, section of 1.50 m (4' 11\")");
  CHECK(label(*square, "sleeve-") == "Sleeve joint for aluminium tube, 25 x 1.5 mm");
  CHECK(label(*square, "corner-") == "Elbow for aluminium tube, 25 x 1.5 mm");
  values["rod-material"] = choice_of("pvc");
  values["corner-radius"] = length_of(0.3048);
  CHECK(label(*build(values), "corner-") == "Bent corner, radius 0.30 m (1'), for PVC tube, 25 x 1.5 mm");
}

TEST_CASE("one rod without corners has a sleeve fewer than sections") {
  // 6 m in 1.5 m: 4 and 3; π 1.2 = 3.770 m of half circle on uprights of 1.2 m: 6.170 m, 5 and 4.
  const auto rod = build({});
  CHECK(supplied(*rod, "rod-") == 4);
  CHECK(supplied(*rod, "sleeve-") == 3);
  CHECK(joints_of(*rod).size() == 3);
  const auto circle = build({{"frame", choice_of("half-circle")}});
  CHECK(supplied(*circle, "rod-") == 5);
  CHECK(joints_of(*circle).size() == 4);
}

TEST_CASE("rigid frames and flat rods were told that the rod pushes the feet apart") {
  CHECK(rule(*build({}), "ballast-both-feet").reason.find("pushes its feet apart") != std::string::npos);
  for (const char* frame : {"half-circle", "half-ellipse", "square"}) {
    const auto built = build({{"frame", choice_of(frame)}});
    CHECK(rule(*built, "ballast-both-feet").reason.find("bent rod") == std::string::npos);
    CHECK(rule(*built, "tape-joints").text.find("bent") == std::string::npos);
  }
  // Beyond a span of 2/π of the length, 3.82 m of 6 m, the feet are pulled together: the elastica's thrust is negative.
  CHECK(rule(*build({{"span", length_of(3.7)}}), "ballast-both-feet").reason.find("apart") != std::string::npos);
  CHECK(rule(*build({{"span", length_of(3.9)}}), "ballast-both-feet").reason.find("together") != std::string::npos);
}

TEST_CASE("every third cluster and the first and the last were to be tied, but line was counted for a third") {
  // Of 1 … 7: 1, 2 (1 and 2), 2 (1 and 3), 2 (1, 4), 3 (1, 4, 5), 3 (1, 4, 6), 3 (1, 4, 7).
  const double wanted[] = {1, 2, 2, 2, 3, 3, 3};
  for (int clusters = 1; clusters <= 7; ++clusters) {
    const auto built = build({{"clusters", count_of(clusters)}});
    REQUIRE(built->status == Status::ok);
    CHECK(work(*built, "tie-to-frame") == wanted[clusters - 1]);
    CHECK(supplied(*built, "cluster-line") == doctest::Approx(0.6 * wanted[clusters - 1]));
  }
}

TEST_CASE("without a plate the ballast asked for was dropped in silence") {
  const auto mass = [](double kg) { return Value::of_number(Kind::mass, kg); };
  const auto asked = build({{"plate-width", length_of(0)}, {"ballast", mass(25)}});
  CHECK(warns(*asked, "ballast"));
  // Nobody may have asked for the standard ballast: that is a note.
  const auto standard = build({{"plate-width", length_of(0)}});
  CHECK_FALSE(warns(*standard, "ballast"));
  CHECK(text_of(*standard, "ballast").find("none is counted") != std::string::npos);
  CHECK(text_of(*build({{"plate-width", length_of(0)}, {"ballast", mass(0)}}), "ballast").empty());
}

TEST_CASE(
    "tightness was blamed wherever the frame shows: now snugness and the corner's radius where they are at fault") {
  CHECK(warns(*build({{"snug", ratio_of(1.3)}}), "snug"));
  CHECK(warns(*build({{"tightness", ratio_of(1.6)}}), "tightness"));
  const auto square =
      build({{"frame", choice_of("square")}, {"corner-radius", length_of(0)}, {"cluster-size", count_of(2)}});
  REQUIRE(square->status == Status::ok);
  CHECK_FALSE(warns(*square, "tightness"));
  const auto text = text_of(*build({{"bare-ends", length_of(0.5)}}), "bare-ends");
  CHECK(text.find(" m (") != std::string::npos);
  CHECK(text.find("\")") != std::string::npos);
}

TEST_CASE("more clusters were laid than can be asked for: now as many as fit are as many as may be asked for") {
  const ValueMap values{
      {"rod-length", length_of(40)}, {"span", length_of(12)}, {"balloon", Value::of_number(Kind::balloon, 1)}};
  const auto built = build(values);
  REQUIRE(built->status == Status::ok);
  ValueMap asked = values;
  asked["clusters"] = count_of(static_cast<double>(built->piece.clusters.size()));
  CHECK(build(asked)->status == Status::ok);
  // 40 x 20 m of half ellipse is 61 m or more, at 0.00635 m inflated and a spacing of 0.0053 m over 11,000 clusters.
  CHECK(refused_key({{"frame", choice_of("half-ellipse")},
                     {"span", length_of(40)},
                     {"height", length_of(20)},
                     {"balloon", Value::of_number(Kind::balloon, 1)},
                     {"inflated", length_of(0.0064)}}) == "inflated");
}
