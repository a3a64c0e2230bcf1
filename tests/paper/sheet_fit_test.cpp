// All that stands on a sheet stays where it belongs, on every paper and in hard cases.
#include <doctest/doctest.h>

#include "tests/paper/page_checks.hpp"

using namespace quadrille;

TEST_CASE("text stays in its box, boxes within the margins, and no text lies over another, on all papers") {
  for (const HardCase& hard : hard_cases())
    for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid})
      for (Units units : {Units::feet, Units::metric}) {
        CAPTURE(hard.name);
        CAPTURE(static_cast<int>(paper));
        CAPTURE(static_cast<int>(units));
        SheetOptions options;
        options.paper = paper, options.units = units;
        const std::vector<Page> pages = sheet(hard.job, options);
        REQUIRE_FALSE(pages.empty());
        for (const Page& page : pages) check_page(page);
      }
}

TEST_CASE("text on a sheet is at least 7.5 pt") {
  // The number of a hundredth piece was set in 5 pt to go into its ring.
  for (const HardCase& hard : hard_cases())
    for (const Page& page : sheet(hard.job))
      for (const Mark& mark : page.marks)
        if (const auto* text = std::get_if<TextMark>(&mark.shape)) CHECK(text->style.size_pt >= 7.5);
}
