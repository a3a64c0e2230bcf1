// What hangs: by what it is held, how high and how wide its line is, and what it weighs.
#include <doctest/doctest.h>

#include <set>
#include <string>

#include "tests/build_sheet/build_pages.hpp"
#include "tests/build_sheet/garlands.hpp"
#include "tests/paper/page_checks.hpp"

using namespace quadrille;

namespace {

/// A line between two supports 6 m apart, 5 m up at the left and 4.8 m at the right, 2 m lower where it is lowest: at a
/// third of its run, by two straight parts.
Piece swag(const char* supply) {
  Piece piece = garland(6);
  const Vec3 from(0, 0, 5), low(2, 0, 3), to(6, 0, 4.8);
  const double first = (low - from).norm(), second = (to - low).norm();
  piece.spine = {{0, from}, {first, low}, {first + second, to}};
  piece.frame.nodes = {from, to};
  piece.supports = {{SupportKind::hook, 0, true, 0, 0, 0, 0, 0}, {SupportKind::hook, 1, true, 0, 0, 0, 0, 0}};
  piece.tie_points = {{0, TiePurpose::side, from, "first end"}, {1, TiePurpose::side, to, "last end"}};
  piece.facts.push_back({"mass_kg", 1.34});
  if (*supply != 0) piece.supplies.push_back({supply, "A thing", "piece", 2});
  return piece;
}

/// Figures of dimension lines; those of running marks are smaller.
std::multiset<std::string> dimensions_of(const std::vector<Page>& pages) {
  std::multiset<std::string> texts;
  for (const Page& page : pages)
    for (const Mark& mark : page.marks)
      if (const auto* text = std::get_if<TextMark>(&mark.shape);
          text && mark.part == Part::dimension && text->style.size_pt > 8)
        texts.insert(text->text);
  return texts;
}

}  // namespace

// What was tied to a frame was said to hang on hooks.
TEST_CASE("what holds a piece that hangs is called by what it is") {
  for (const auto& [supply, heading, caption, name] :
       {std::tuple{"hook", "Hooks\n", "Line and hooks, 1:", "H2\n"},
        std::tuple{"cable-tie", "Ties\n", "Line and ties, 1:", "T2\n"},
        std::tuple{"", "Hanging points\n", "Line and hanging points, 1:", "P2\n"}}) {
    const std::string text = all_text(build(with_piece(swag(supply)), in_metres()));
    for (const char* wanted : {heading, caption, name}) CHECK_MESSAGE(has(text, wanted), wanted);
  }
}

// Hooks and the tie points at the same places were listed twice, both as open circles.
TEST_CASE("a tie point at a hook is told with the hooks alone") {
  const std::string text = all_text(build(with_piece(swag("hook")), in_metres()));
  CHECK_FALSE(has(text, "Tie points"));
  CHECK(has(text, "Securing lines may be tied where a dot has a circle about it: H1, H2."));
  Piece apart = swag("hook");
  apart.tie_points.push_back({0, TiePurpose::side, Vec3(2, 0, 3), "lowest place"});
  CHECK(has(all_text(build(with_piece(apart), in_metres())), "Tie points (open circles)\n"));
}

// Neither the width between hooks 16 m apart nor a height was anywhere.
TEST_CASE("a line that hangs is told with its width, its heights over the floor, its sag and the balloons' weight") {
  const std::vector<Page> pages = build(with_piece(swag("hook")), in_metres());
  for (const Page& page : pages) check_page(page);
  const auto drawn = dimensions_of(pages);
  CHECK(drawn == std::multiset<std::string>{"6.00 m", "5.00 m", "4.80 m", "3.00 m"});
  // sqrt(2² + 2²) = 2.83 m to the lowest place and sqrt(4² + 1.8²) = 4.39 m from there.
  CHECK(has(all_text(pages),
            "The line is 7.21 m long; it is lowest 2.83 m along it, 3.00 m over the floor, 2.00 m and 1.80 m below its "
            "ends. All balloons weigh 1.3 kg."));
  SheetOptions feet = in_metres();
  feet.units = Units::feet;
  CHECK(
      has(all_text(build(with_piece(swag("hook")), feet)), "All balloons weigh 3.0 lb."));  // 1.34 / 0.45359237 = 2.95
}
