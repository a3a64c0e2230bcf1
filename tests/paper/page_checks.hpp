// What holds for every page, whichever sheet it belongs to.
#pragma once

#include <doctest/doctest.h>

#include "studio/paint/text.hpp"
#include "tests/paper/sheets.hpp"

namespace quadrille {

inline bool lie_over(const Rect& a, const Rect& b) {
  constexpr double touch = 0.02;
  return a.x + touch < b.right() && b.x + touch < a.right() && a.y + touch < b.bottom() && b.y + touch < a.bottom();
}

inline void check_text_fits(const TextMark& text) {
  CAPTURE(text.text);
  const SetText set = set_text(text);
  CHECK(set.ink.x >= text.box.x - 0.3);
  CHECK(set.ink.y >= text.box.y - 0.3);
  CHECK(set.ink.right() <= text.box.right() + 0.3);
  CHECK(set.ink.bottom() <= text.box.bottom() + 0.3);
  CHECK(set.lines >= 1);
}

inline void check_page(const Page& page) {
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

}  // namespace quadrille
