// The pictures of the frame and the clusters, and the lists that belong to them: what is on them is there.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sdk/number.hpp"
#include "tests/build_sheet/build_pages.hpp"
#include "tests/making/laid.hpp"

using namespace quadrille;

namespace {

/// Boxes of the letters on a page's balloons, and the dark shafts of the arrows over them.
struct LettersAndArrows {
  std::vector<Rect> letters;
  std::vector<PathSteps> arrows;
};

LettersAndArrows letters_and_arrows(const std::vector<Page>& pages) {
  LettersAndArrows found;
  for (const Page& page : pages)
    for (const Mark& mark : page.marks) {
      if (const auto* balloon = std::get_if<BalloonMark>(&mark.shape); balloon != nullptr && balloon->letter != 0) {
        const double half = balloon->radius * balloon->letter_share / 2;
        found.letters.push_back({balloon->centre.x - half, balloon->centre.y - half, 2 * half, 2 * half});
      }
      // A white edge and a dark line on it, over one path of two points: no other mark on the sheet has both.
      if (const auto* path = std::get_if<PathMark>(&mark.shape))
        if (path->steps.size() == 2 && path->stroke.size() == 2 && path->stroke[0].ink == Ink{1, 1, 1, 1})
          found.arrows.push_back(path->steps);
    }
  return found;
}

}  // namespace

// Fat arrows struck out the letters that a helper reads, and two crossed at the crown.
TEST_CASE("arrows on the clusters run over no letter, and only where a colour runs on aslant") {
  for (const PatternKind kind : {PatternKind::spiral, PatternKind::zigzag})
    for (const int hand : {1, -1}) {
      const PatternPlan plan = laid::plan_of(kind, 4, 2, hand, 3);
      const auto pages = build(with_piece(laid::half_circle(plan, 31)), in_metres());
      const LettersAndArrows found = letters_and_arrows(pages);
      REQUIRE(found.letters.size() > 50);
      REQUIRE_FALSE(found.arrows.empty());
      CHECK(has(all_text(pages), "Arrows: how one colour runs on from cluster to cluster\n"));
      for (const PathSteps& arrow : found.arrows) {
        CHECK(arrow[1].to.y < arrow[0].to.y + 0.2);  // up
        for (int i = 0; i <= 100; ++i) {
          const double x = arrow[0].to.x + (arrow[1].to.x - arrow[0].to.x) * i / 100,
                       y = arrow[0].to.y + (arrow[1].to.y - arrow[0].to.y) * i / 100;
          for (const Rect& letter : found.letters)
            CHECK_FALSE((x > letter.x && x < letter.right() && y > letter.y && y < letter.bottom()));
        }
      }
    }
  PatternPlan rows = laid::plan_of(PatternKind::rows, 4, 2);
  rows.rows = *slot_rows("ABAB AAAA BABA BBBB", 4);
  const auto pages = build(with_piece(laid::half_circle(rows, 32)), in_metres());
  CHECK(letters_and_arrows(pages).arrows.empty());
  const std::string text = all_text(pages);
  CHECK(has(text, "To which side the clusters are turned makes no difference, as long as it is the same for all"));
  CHECK_FALSE(has(text, "climb to"));
  CHECK_FALSE(has(text, "Mind the side"));
}

// Two boxes were drawn on every plate, whatever stands there.
TEST_CASE("the frame's picture has a block for each container, and the list of feet says how many") {
  sample::Job job = secured_arch();
  const EventCount counted = job.count();
  // 10 kg of ballast on each foot: containers of 10 l of water hold it one each.
  double containers = 0;
  for (const SupplyLine& supply : counted.pieces.at(0).supplies)
    if (supply.key == "ballast-container") containers = supply.quantity;
  REQUIRE(containers == 2);
  const auto blocks = [](const std::vector<Page>& pages) {
    int found = 0;
    for (const Page& page : pages)
      for (const Mark& mark : page.marks)
        if (const auto* path = std::get_if<PathMark>(&mark.shape); path != nullptr && mark.part == Part::drawing)
          found += path->fill == std::vector{Ink{0.88, 0.88, 0.9, 1}} && path->steps.size() == 5 &&
                   path->stroke.at(0).width < 0.2;
    return found;
  };
  for (const double each : {10.0, 25.0, 60.0}) {
    Piece piece = sample::arch(1.2, 19, 0.23);
    for (Support& support : piece.supports) support.ballast_kg = each;
    const std::vector<Page> pages = build(with_piece(piece), in_metres());
    const int on_each = static_cast<int>(std::ceil(each / 10));
    CHECK(blocks(pages) == 2 * on_each);
    CHECK(has(all_text(pages), "\u00a0in\u00a0" + std::to_string(on_each) + "\u00a0container"));
  }
}

// Sections whose label found no room had none; the last running mark had no figure.
TEST_CASE("each section is named on the frame's picture with its length, and the last running mark has its figure") {
  for (const Units units : {Units::feet, Units::metric}) {
    SheetOptions options;
    options.units = units;
    const Piece piece = laid::half_circle(laid::plan_of(PatternKind::spiral, 4, 2), 41);
    const std::string text = all_text(build(with_piece(piece), options));
    // 40 chords of a half circle of 1.5 m: 4.71 m.
    CHECK(has(text, units == Units::feet ? "S1\u200215' 5 1/2\"\n" : "S1\u20024.71 m\n"));
    CHECK(has(text, units == Units::feet ? "\n15'\n" : "\n4.50 m\n"));
  }
}

TEST_CASE("what a rule asks to be tied and no line of the piece does is said to be on no list") {
  sample::Job job = secured_arch();
  Piece piece = job.built["p1"]->piece;
  piece.anchoring = {{Requirement::front_and_back, When::always, "tie", "Tie the crown both ways.", "It tips.", ""}};
  job.built["p1"] = sample::built(piece);
  const char* const said = "Tie the crown both ways. It tips. No such lines are drawn, so neither cord nor anchors";
  CHECK_FALSE(has(all_text(build(job, in_metres())), said));
  job = with_piece(piece);
  CHECK(has(all_text(build(job, in_metres())), said));
}

// Fifteen rows that said the same, but for the size.
TEST_CASE("clusters that differ in size alone have one row in the chart, and a list of their sizes") {
  Piece piece = laid::pole(laid::plan_of(PatternKind::spiral, 4, 3), 9);
  for (Balloon& balloon : piece.balloons)
    balloon.diameter_m = balloon.cluster <= 1 ? 0.25 : balloon.cluster <= 6 ? 0.23 : 0.2;
  const std::string text = all_text(build(with_piece(piece), in_metres()));
  CHECK(has(text, "1\nABAC\nballoon 1 to the front\n2–9\nABAC\n1/8 turn right\n"));
  CHECK(has(text, "1\n11 in\n25.0 cm\n2–6\n11 in\n23.0 cm\n7–9\n11 in\n20.0 cm\n"));
}

// "Along 1.46 m" stood there for a topper whose neck is tied to the last cluster: its collar stood higher.
TEST_CASE("a topper is on top, and names of collars stand beside the piece") {
  Piece piece = laid::pole(laid::plan_of(PatternKind::spiral, 4, 3), 6);
  const double top = piece.spine.back().at_m;
  const Vec3 neck(0, 0, top);
  piece.balloons.push_back({neck + Vec3(0, 0, 0.4), neck, 0.5, 24, 0, 0, 0, Role::topper});
  for (const Vec3& out : {Vec3(0, -1, 0), Vec3(1, 0, 0), Vec3(0, 1, 0), Vec3(-1, 0, 0)})
    piece.balloons.push_back({neck + Vec3(0, 0, 0.1) + 0.1 * out, neck, 0.1, 5, 1, 0, 0, Role::collar});
  const std::vector<Page> pages = build(with_piece(piece), in_metres());
  const std::string text = all_text(pages);
  CHECK(has(text, "t1\ntopper, 24 in\nA\n50.0 cm\non top\n"));
  CHECK(has(text, "c1–c4\ncollar, 5 in, one in each crease\nB\n10.0 cm\n" + print_fixed(top, 2) + " m\n"));
  int named = 0;
  for (const Page& page : pages)
    for (const Mark& mark : page.marks)
      if (const auto* name = std::get_if<TextMark>(&mark.shape);
          name && mark.part == Part::dimension && name->text == "c1–c4") {
        ++named;
        for (const Mark& other : page.marks)
          if (const auto* balloon = std::get_if<BalloonMark>(&other.shape)) {
            const double x = std::clamp(balloon->centre.x, name->box.x, name->box.right()),
                         y = std::clamp(balloon->centre.y, name->box.y, name->box.bottom());
            CHECK(std::hypot(x - balloon->centre.x, y - balloon->centre.y) > balloon->radius - 0.01);
          }
      }
  CHECK(named == 1);
}
