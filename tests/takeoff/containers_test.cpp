// Ballast containers and tools: what is filled is what is ordered, and tools follow what the job asks for.
#include "studio/takeoff/containers.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "studio/takeoff/tools.hpp"
#include "tests/drawing/sample.hpp"

using namespace quadrille;

namespace {

double ordered(const EventCount& count, std::string_view key) {
  double sum = 0;
  for (const SupplyLine& line : count.supplies)
    if (line.key == key) sum += line.quantity;
  return sum;
}

sample::Job with_ballast(double left_kg, double right_kg) {
  sample::Job job = sample::one_arch();
  Piece piece = sample::arch(1.2, 19, 0.23);
  piece.supports[0].ballast_kg = left_kg, piece.supports[1].ballast_kg = right_kg;
  job.built["p1"] = sample::built(piece);
  return job;
}

bool has_tool(const std::vector<Tool>& tools, std::string_view key) {
  return std::ranges::count(tools, key, &Tool::key) > 0;
}

}  // namespace

TEST_CASE("ballast is shared equally over as few containers as hold it") {
  // 25 kg in containers of 10 litres of water: three, 8.333 kg each; 10 kg: one.
  const sample::Job job = with_ballast(25, 10);
  const auto filled = containers_to_fill(job.event, job.built, standard_house());
  REQUIRE(filled.size() == 2);
  CHECK(filled[0] == FilledContainers{10, 1, {{"p1", 1, 1}}});
  CHECK(filled[1] == FilledContainers{8.333, 3, {{"p1", 0, 3}}});
}

TEST_CASE("containers and filling are those that are ordered") {
  for (const double kg : {0.0, 0.4, 10.0, 20.0, 33.3})
    for (const double litres : {4.0, 10.0, 25.0}) {
      CAPTURE(kg);
      CAPTURE(litres);
      sample::Job job = with_ballast(kg, 12);
      House house = standard_house();
      house.container_l = litres;
      const EventCount count = count_event(job.event, job.built, job.palettes, house);
      double containers = 0, mass = 0;
      for (const FilledContainers& filled : containers_to_fill(job.event, job.built, house)) {
        std::int64_t placed = 0;
        for (const ContainerPlace& place : filled.places) placed += place.containers;
        CHECK(placed == filled.containers);
        containers += static_cast<double>(filled.containers);
        mass += filled.each_kg * static_cast<double>(filled.containers);
      }
      CHECK(containers == ordered(count, "ballast-container"));
      CHECK(mass == doctest::Approx(ordered(count, "ballast-water")).epsilon(1e-3));
    }
}

TEST_CASE("pieces that are hidden or refused have nothing filled for them") {
  sample::Job job = with_ballast(25, 10);
  job.event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& p) { p.hidden = true; }); });
  CHECK(containers_to_fill(job.event, job.built, standard_house()).empty());
}

TEST_CASE("tools follow what the job asks for") {
  sample::Job job = sample::one_arch();
  const House house = standard_house();
  const auto tools = [&] {
    const EventCount count = count_event(job.event, job.built, job.palettes, house);
    return tools_of(job.event, job.built, count, house, power_of(job.event, air_of(job.event, count, house), house));
  };
  for (const char* usual : {"tool-inflator", "tool-sizer", "tool-scissors", "tool-battery", "tool-first-aid"})
    CHECK(has_tool(tools(), usual));
  for (const char* outside : {"tool-anemometer", "tool-ground-fault", "tool-mallet", "tool-cord", "tool-ladder"})
    CHECK_FALSE(has_tool(tools(), outside));
  job.event.areas[0].edit([](Area& area) { area.site.surroundings = Surroundings::outdoors, area.site.outlet_m = 10; });
  job.built["p1"] = sample::built(sample::arch(2, 30, 0.23));
  for (const char* outside : {"tool-anemometer", "tool-ground-fault", "tool-cord", "tool-ladder"})
    CHECK(has_tool(tools(), outside));
  CHECK_FALSE(has_tool(tools(), "tool-battery"));
  // A lawn with a walkway on which nothing is built asked for all of it.
  Area lawn = *job.event.areas[0];
  lawn.id = "a2", lawn.pieces.clear(), lawn.walkways.emplace_back();
  job.event.areas.push_back(lawn);
  job.event.areas[0].edit([](Area& area) { area.site.surroundings = Surroundings::indoors; });
  for (const char* outside : {"tool-anemometer", "tool-ground-fault", "tool-cord-cover"})
    CHECK_FALSE(has_tool(tools(), outside));
  job.event.areas.pop_back();
  job.event.areas[0].edit([](Area& area) { area.pieces.clear(); });
  CHECK(tools().empty());
}
