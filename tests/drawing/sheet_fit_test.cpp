// All that stands on a sheet stays where it belongs, on every paper and in hard cases.
#include <doctest/doctest.h>

#include "studio/paint/text.hpp"
#include "tests/drawing/sheets.hpp"

using namespace quadrille;

namespace {

bool lie_over(const Rect& a, const Rect& b) {
  constexpr double touch = 0.02;
  return a.x + touch < b.right() && b.x + touch < a.right() && a.y + touch < b.bottom() && b.y + touch < a.bottom();
}

void check_text_fits(const TextMark& text) {
  CAPTURE(text.text);
  const SetText set = set_text(text);
  CHECK(set.ink.x >= text.box.x - 0.3);
  CHECK(set.ink.y >= text.box.y - 0.3);
  CHECK(set.ink.right() <= text.box.right() + 0.3);
  CHECK(set.ink.bottom() <= text.box.bottom() + 0.3);
  CHECK(set.lines >= 1);
}

void check_page(const Page& page) {
  const double slack = 0.01;
  std::vector<const TextMark*> texts;
  for (const Mark& mark : page.marks) {
    const Rect r = bounds(mark);
    CAPTURE(static_cast<int>(mark.part));
    CHECK(r.x >= page.margin - slack);
    CHECK(r.y >= page.margin - slack);
    CHECK(r.right() <= page.width - page.margin + slack);
    CHECK(r.bottom() <= page.height - page.margin + slack);
    if (const auto* text = std::get_if<TextMark>(&mark.shape)) texts.push_back(text), check_text_fits(*text);
  }
  for (std::size_t i = 0; i < texts.size(); ++i)
    for (std::size_t j = i + 1; j < texts.size(); ++j)
      CHECK_MESSAGE(!lie_over(texts[i]->box, texts[j]->box), "\"", texts[i]->text, "\" lies over \"", texts[j]->text,
                    "\"");
}

}  // namespace

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
