// The colours that were chosen last.
#include "studio/window/recent_colours.hpp"

#include "scratch.hpp"

namespace quadrille {

TEST_CASE("colours that were chosen are known at the next start, the last one first and each once") {
  ScratchFolder folder;
  const auto memory = folder / "state" / "recent-colours";
  const ColourReference coral{"house", "coral"}, white{"house", "white"}, mint{"pastel", "mint"};
  {
    RecentColours colours(memory);
    CHECK(colours.colours().empty());
    for (const ColourReference& one : {coral, white, mint, coral}) colours.chosen(one);
    colours.chosen({});                 // no colour
    colours.chosen({"house", "a\tb"});  // which the file could not hold
  }
  const RecentColours again(memory);
  CHECK(again.colours() == std::vector<ColourReference>{coral, mint, white});
}

TEST_CASE("so many colours are remembered, and what the file has besides is passed over") {
  ScratchFolder folder;
  const auto memory = folder / "recent-colours";
  put(memory, "no tab\n\nhouse\tcoral\nhouse\tcoral\nhouse\t\n");
  RecentColours colours(memory);
  CHECK(colours.colours() == std::vector<ColourReference>{{"house", "coral"}});
  for (std::size_t i = 0; i < RecentColours::most; ++i) colours.chosen({"house", "shade " + std::to_string(i)});
  CHECK(colours.colours().size() == RecentColours::most);
  CHECK(colours.colours().back().colour == "shade 0");
  CHECK(RecentColours(memory).colours() == colours.colours());
  RecentColours forgetful{std::filesystem::path()};
  forgetful.chosen({"house", "coral"});
  CHECK(forgetful.colours().size() == 1);
}

}  // namespace quadrille
