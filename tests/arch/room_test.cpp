// Whether an arch's balloons find room: above the floor, between the legs, beside bare ends.
#include <doctest/doctest.h>

#include <cmath>

#include "plugins/arch/room.hpp"
#include "tests/arch/built_arch.hpp"

using namespace quadrille;

namespace {

double lowest_m(const BuiltPiece& built) {
  double lowest = 0;
  for (const Balloon& balloon : built.piece.balloons)
    lowest = std::min(lowest, balloon.centre.z() - balloon.diameter_m / 2);
  return lowest;
}

double press(const BuiltPiece& built) { return arch::press_of_legs({built.piece.clusters, built.piece.balloons, 0}); }

}  // namespace

TEST_CASE("corner clusters hung inside the bare ends: now nothing does") {
  for (const double bare : {0.4, 0.9, 1.0, 1.05, 1.5, 2.0})
    for (const double corner : {0.0, 0.2}) {
      CAPTURE(bare);
      CAPTURE(corner);
      const auto built = build({{"frame", choice_of("square")},
                                {"height", length_of(1)},
                                {"corner-radius", length_of(corner)},
                                {"bare-ends", length_of(bare)}});
      REQUIRE(built->status == Status::ok);
      REQUIRE(!built->piece.clusters.empty());
      for (const Cluster& cluster : built->piece.clusters) {
        CHECK(cluster.at_m >= bare);
        CHECK(cluster.at_m <= fact(*built, "rod_length_m") - bare);
      }
    }
}

TEST_CASE("legs pressed into each other above a quarter of the frame and nothing said so: now the span is blamed") {
  // Two legs 0.3 m apart all the way up cannot be cured by bare ends: 11 in balloons of 0.2286 m in a ring of radius
  // 0.88 x 0.2286/√2 = 0.142 m take 0.5 m.
  for (const double height : {2.0, 3.0}) {
    const auto built = build({{"frame", choice_of("square")}, {"span", length_of(0.3)}, {"height", length_of(height)}});
    REQUIRE(built->status == Status::ok);
    CHECK(press(*built) > 0.3);
    CHECK(warns(*built, "span"));
    CHECK(text_of(*built, "bare-ends").find("legs") == std::string::npos);
  }
}

TEST_CASE("bare ends that were advised left the legs in each other: what is advised now holds when obeyed") {
  int advised = 0;
  for (const char* frame : {"flexible-rod", "half-circle", "half-ellipse", "square"})
    for (const double span : {0.2, 0.3, 0.45, 0.6})
      for (const double size : {5.0, 11.0, 16.0}) {
        ValueMap values{{"frame", choice_of(frame)}, {"span", length_of(span)}, {"balloon", balloon_of(size)}};
        const auto built = build(values);
        if (built->status != Status::ok) continue;
        CAPTURE(frame);
        CAPTURE(span);
        CAPTURE(size);
        const std::string text = text_of(*built, "bare-ends");
        const bool told = warns(*built, "span") || text.find("legs") != std::string::npos;
        CHECK((press(*built) > 0.3) == told);
        if (text.find("legs") == std::string::npos) continue;
        ++advised;
        values["bare-ends"] = length_of(advised_m(text, "bare ends of "));
        const auto obeyed = build(values);
        REQUIRE(obeyed->status == Status::ok);
        CHECK(press(*obeyed) <= 0.3);
      }
  CHECK(advised > 0);
}

TEST_CASE("as many clusters as are advised leave the legs apart") {
  ValueMap values{{"span", length_of(0.3)}, {"clusters", count_of(30)}};
  const auto built = build(values);
  REQUIRE(built->status == Status::ok);
  REQUIRE(warns(*built, "clusters"));
  values["clusters"] = count_of(std::floor(advised_m(text_of(*built, "clusters"), "mount ")));
  const auto obeyed = build(values);
  REQUIRE(obeyed->status == Status::ok);
  CHECK(press(*obeyed) <= 0.3);
  for (const Message& message : obeyed->piece.messages) CHECK(message.text.find("legs") == std::string::npos);
}

TEST_CASE("balloons reached half a metre below the floor and the arch was called good: now it is refused") {
  const auto low = build({{"frame", choice_of("square")},
                          {"height", length_of(0.6)},
                          {"balloon", balloon_of(36)},
                          {"cluster-size", count_of(6)}});
  CHECK(low->status == Status::infeasible);
  CHECK(refused_key({{"frame", choice_of("half-ellipse")},
                     {"span", length_of(4)},
                     {"height", length_of(0.6)},
                     {"balloon", balloon_of(36)}}) != "");
}

TEST_CASE("balloons a few centimetres below the floor passed without a word: now they are warned of, with a cure") {
  ValueMap values{{"frame", choice_of("half-circle")}, {"height", length_of(1.2)}, {"balloon", balloon_of(24)}};
  const auto built = build(values);
  REQUIRE(built->status == Status::ok);
  REQUIRE(lowest_m(*built) < -0.01);
  REQUIRE(warns(*built, "bare-ends"));
  const std::string text = text_of(*built, "bare-ends");
  CHECK(text.find("below the floor") != std::string::npos);
  values["bare-ends"] = length_of(advised_m(text, "bare ends of "));
  const auto obeyed = build(values);
  REQUIRE(obeyed->status == Status::ok);
  CHECK(lowest_m(*obeyed) >= -0.01);
}

TEST_CASE("what stands is at most a quarter of a balloon below the floor, and is warned of from a centimetre on") {
  for (const char* frame : {"flexible-rod", "half-circle", "half-ellipse", "square"})
    for (const double height : {0.6, 1.2, 2.4})
      for (const double size : {5.0, 11.0, 24.0, 36.0})
        for (int n = 2; n <= 6; ++n) {
          const auto built = build({{"frame", choice_of(frame)},
                                    {"span", length_of(1.2)},
                                    {"height", length_of(height)},
                                    {"balloon", balloon_of(size)},
                                    {"cluster-size", count_of(n)}});
          if (built->status != Status::ok) continue;
          CAPTURE(frame);
          CAPTURE(height);
          CAPTURE(size);
          CAPTURE(n);
          CHECK(lowest_m(*built) > -built->piece.balloons.front().diameter_m / 4 - 1e-9);
          bool told = false;
          for (const Message& message : built->piece.messages)
            told = told || message.text.find("below the floor") != std::string::npos;
          CHECK(told == (lowest_m(*built) < -0.01));
        }
}

TEST_CASE("bare ends over all of the rod gave an arch without balloons: now they are refused, and the bound holds") {
  CHECK(refused_key({{"bare-ends", length_of(3)}}) == "bare-ends");
  const auto refused = build({{"bare-ends", length_of(3)}});
  const double most = advised_m(text_of(*refused, "bare-ends"), "leave at most ");
  const auto obeyed = build({{"bare-ends", length_of(most)}});
  CHECK(obeyed->status == Status::ok);
  CHECK(obeyed->piece.clusters.size() == 1);
  CHECK(refused_key({{"frame", choice_of("square")},
                     {"span", length_of(0.2)},
                     {"height", length_of(0.2)},
                     {"bare-ends", length_of(0)},
                     {"inflated", length_of(1.1)},
                     {"balloon", balloon_of(48)}}) == "inflated");
}
