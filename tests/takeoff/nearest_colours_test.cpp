// Which colours look most like one that was seen.
#include "studio/takeoff/nearest_colours.hpp"

#include <doctest/doctest.h>

#include "studio/colour/difference.hpp"

namespace quadrille {
namespace {

Colour colour(const char* key, std::uint8_t red, std::uint8_t green, std::uint8_t blue) {
  return {key, std::string("The ") + key, red, green, blue, Finish::matte, {}};
}

const std::vector<Palette> palettes{
    {"one",
     "Palette one",
     "USD",
     {colour("snow", 250, 250, 250), colour("poppy", 200, 30, 40), colour("fern", 40, 120, 60)}},
    {"two", "Palette two", "USD", {colour("coal", 20, 20, 20), colour("brick", 190, 40, 45)}}};

}  // namespace

TEST_CASE("the most alike comes first, and the same colour differs by nothing") {
  const auto near = nearest_colours({}, palettes, 200, 30, 40, 3);
  REQUIRE(near.size() == 3);
  CHECK(near[0].reference == ColourReference{"one", "poppy"});
  CHECK(near[0].name == "The poppy");
  CHECK(near[0].palette_name == "Palette one");
  CHECK(near[0].difference == 0);
  CHECK(near[1].reference == ColourReference{"two", "brick"});
  // Against the formula on its own, which studio/colour holds against published pairs.
  CHECK(near[1].difference == ciede2000(Srgb{200, 30, 40}, Srgb{190, 40, 45}));
  for (std::size_t i = 1; i < near.size(); ++i) CHECK(near[i - 1].difference <= near[i].difference);
}

TEST_CASE("only the event's palettes are looked in, unless none of them is there; as many as there are") {
  Event event;
  event.palettes = {"two"};
  const auto own = nearest_colours(event, palettes, 200, 30, 40, 10);
  REQUIRE(own.size() == 2);
  CHECK(own[0].reference == ColourReference{"two", "brick"});
  event.palettes = {"gone"};
  CHECK(nearest_colours(event, palettes, 200, 30, 40, 10).size() == 5);
  CHECK(nearest_colours(event, {}, 200, 30, 40, 10).empty());
  CHECK(nearest_colours(event, palettes, 200, 30, 40, 0).empty());
}

}  // namespace quadrille
