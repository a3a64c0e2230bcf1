// The build sheet: everything on it stays in its place, pieces alike share one, and its numbers are those of the event.
#include "studio/build_sheet/build_sheet.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <set>

#include "sdk/number.hpp"
#include "studio/making/stretches.hpp"
#include "studio/paint/output.hpp"
#include "studio/paint/text.hpp"
#include "tests/build_sheet/garlands.hpp"
#include "tests/making/laid.hpp"
#include "tests/paint/picture.hpp"
#include "tests/paper/page_checks.hpp"

using namespace quadrille;

namespace {

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

/// An arch with lines to stakes, a dead weight and a structure, in a garden.
sample::Job secured_arch() {
  return changed([](sample::Job& job, Area& area) {
    area.site.surroundings = Surroundings::outdoors, area.site.ground = Ground::grass;
    Structure post;
    post.id = "s1", post.name = "A gate post with a long name that somebody gave it", post.x_m = 5, post.height_m = 2;
    area.structures.push_back(post);
    secure_first(job, area,
                 {{Severity::warning, "tightness", "At a tightness of 0.80 the packing is forced.", Topic::other}});
  });
}

std::vector<HardCase> build_cases() {
  std::vector<HardCase> cases = hard_cases();
  cases.push_back({"garland", with_piece(garland())});
  cases.push_back({"long garland", with_piece(garland(14))});
  cases.push_back({"secured arch", secured_arch()});
  cases.push_back({"40 alike with long names", columns(40, nullptr)});
  cases.back().job = changed([](sample::Job& job, Area& area) {
    area.pieces.clear();
    for (int i = 0; i < 40; ++i) {
      const std::string id = numbered("c", i), name(60, static_cast<char>('a' + i % 26));
      area.pieces.push_back(sample::placed(id, name, i, {"lagoon", "brass"}));
      job.built[id] = sample::built(sample::column(2, 0.2));
    }
  });
  const auto rows = laid::plan_of(PatternKind::zigzag, 6, 6, 1, 5);
  cases.push_back({"six by six", with_piece(laid::half_circle(rows, 50))});
  return cases;
}

}  // namespace

TEST_CASE("a build sheet's text stays in its box, boxes within the margins, and no text lies over another") {
  for (const HardCase& hard : build_cases())
    for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid})
      for (Units units : {Units::feet, Units::metric}) {
        CAPTURE(hard.name);
        CAPTURE(static_cast<int>(paper));
        CAPTURE(static_cast<int>(units));
        SheetOptions options;
        options.paper = paper, options.units = units;
        const std::vector<Page> pages = build(hard.job, options);
        REQUIRE_FALSE(pages.empty());
        for (const Page& page : pages) check_page(page);
      }
}

TEST_CASE("nothing on a build sheet is cut short but what is longer than twelve lines, and nothing is below 7.5 pt") {
  for (const HardCase& hard : build_cases()) {
    if (hard.name == "200 letters") continue;  // the title block cuts such names
    CAPTURE(hard.name);
    for (const Page& page : build(hard.job))
      for (const Mark& mark : page.marks)
        if (const auto* text = std::get_if<TextMark>(&mark.shape)) {
          CHECK(text->style.size_pt >= 7.5);
          CHECK_MESSAGE(!(mark.part == Part::key && set_text(*text).shortened), text->text);
        }
  }
}

TEST_CASE("pieces alike share a sheet that names them all; a piece that differs has its own") {
  const std::string text = all_text(build(columns(5), in_metres()));
  CHECK(has(text, "Build: Aisle 1 to 5\n"));
  CHECK(has(text, "Make 5 of these\n"));
  for (int i = 1; i <= 5; ++i) CHECK(has(text, numbered("Aisle ", i) + ", Garden entrance\n"));
  CHECK(times(text, "How the clusters go\n") == 1);
  using Change = void (*)(sample::Job&, PlacedPiece&);
  for (const Change change :
       {Change{[](sample::Job&, PlacedPiece&p) { p.colours[1].colour = "ink"; }},
        Change{[](sample::Job&job, PlacedPiece&) { job.built["c3"] = sample::built(sample::column(1.5, 0.2)); }},
        Change{[](sample::Job&, PlacedPiece&p) { p.type = "column"; }}}) {
    const std::string other = all_text(build(columns(5, change), in_metres()));
    CHECK(has(other, "Make 4 of these\n"));
    CHECK(has(other, "What is made by this sheet\n"));
  }
}

TEST_CASE("what cannot be built is named with the reason, and an empty event says so") {
  for (const HardCase& hard : hard_cases()) {
    const std::string text = all_text(build(hard.job));
    if (hard.name == "no pieces" || hard.name == "no areas") CHECK(has(text, "There are no pieces here yet.\n"));
    if (hard.name == "missing and refused") {
      CHECK(has(text, "Ribbon wall: its piece type is not available.\n"));
      CHECK(has(text, "Too wide: The span of 7 m is longer than the rod of 6 m"));
    }
  }
  SheetOptions elsewhere;
  elsewhere.area = "no such area";
  CHECK(build(sample::one_arch(), elsewhere).empty());
}

TEST_CASE("lines, feet, warnings and parts are told as they are") {
  const std::string text = all_text(build(secured_arch(), in_metres()));
  // From the crown (0, 0, 1.45) to (-1.6, -2.6, 0): sqrt(2.56 + 6.76 + 2.1025) = 3.38 m, asin(1.45 / 3.38) = 25.4°. The
  // left foot stands at x = -1.2, so the anchor is 0.40 m to its left. Cut: a tenth more and 0.6 m, 4.32 m.
  CHECK(has(text,
            "3.38 m long (cut 4.32 m), 25° to the ground. The anchor stands 2.60 m out in front, 0.40 m to the left, "
            "seen from the left foot."));
  CHECK(has(text, "Crown, to the back, to: dead weight, 20.0 kg\n"));
  CHECK(has(text, "A gate post with a long name that somebody gave it, 1.60 m up\n"));
  CHECK(has(text, "plate 0.40 m square, 6.0 kg; ballast\u00a010.0\u00a0kg\u00a0in\u00a01\u00a0container\n"));
  CHECK(has(text, "At a tightness of 0.80 the packing is forced.\n"));
  CHECK(has(text, "L1"));
  CHECK(has(text, "From above, 1:"));
}

TEST_CASE("the balloons on a sheet add up to what is counted of its piece, and spares are the event's") {
  for (const sample::Job& job : {sample::one_arch(), with_piece(garland()), columns(3)}) {
    const EventCount count = job.count();
    // A row: size, diameter, how many, spares, as marks in this order.
    std::vector<std::string> texts;
    for (const Page& page : build(job, in_metres()))
      for (const Mark& mark : page.marks)
        if (const auto* t = std::get_if<TextMark>(&mark.shape)) texts.push_back(t->text);
    std::int64_t each = 0, spares = 0;
    for (std::size_t i = 2; i + 1 < texts.size(); ++i)
      if (texts[i - 1].ends_with(" cm") && texts[i - 2].ends_with(" in") && !texts[i].empty() &&
          texts[i].find_first_not_of("0123456789") == std::string::npos) {
        each += std::stoll(texts[i]);
        if (texts[i + 1] != "\"") spares += std::stoll(texts[i + 1]);
      }
    CHECK(each == count.pieces.front().balloons);
    std::int64_t wanted = 0;
    for (const BalloonBag& bag : count.bags) wanted += bag.spares;
    CHECK(spares == wanted);
  }
}

TEST_CASE("each running mark is told with its cluster and where the middle of that is") {
  const Piece piece = laid::half_circle(laid::plan_of(PatternKind::spiral, 4, 3, 1, 5), 41);
  const std::string text = all_text(build(with_piece(piece), in_metres()));
  const auto marks = running_marks(piece, cluster_chart(piece), 0.5);
  REQUIRE(marks.size() > 5);
  for (const RunningMark& mark : marks) {
    const std::string row = print_fixed(mark.at_m, 2) + " m\n" + std::to_string(mark.cluster) + "\n" +
                            print_fixed(mark.cluster_at_m, 2) + " m\n";
    CHECK_MESSAGE(has(text, row), row);
  }
}

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

TEST_CASE("a single plate without lines has no plan: it was drawn as a square as large as the column") {
  CHECK_FALSE(has(all_text(build(columns(3), in_metres())), "From above"));
  CHECK(has(all_text(build(sample::one_arch(), in_metres())), "From above"));
}

TEST_CASE("captions over a table are never bold, whatever the cells beneath them are") {
  for (const sample::Job& job : {sample::one_arch(), columns(2)})
    for (const Page& page : build(job, in_metres()))
      for (const Mark& mark : page.marks)
        if (const auto* text = std::get_if<TextMark>(&mark.shape))
          if (text->text == "Clusters" || text->text == "Colours" || text->text == "Turned")
            CHECK(text->style.face == Face::regular);
}

TEST_CASE("equal events give equal bytes") {
  const sample::Job job = with_piece(garland());
  CHECK(*to_pdf(build(job), {"A", "2027-06-19"}) == *to_pdf(build(job), {"A", "2027-06-19"}));
}

TEST_CASE("lists had uneven gaps: rows were measured for a narrower column than they were drawn in") {
  for (const sample::Job& job : {sample::one_arch(), with_piece(garland()), secured_arch(), columns(3)})
    for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid}) {
      SheetOptions options;
      options.paper = paper;
      for (const Page& page : build(job, options)) {
        // Of the cells of a row the tallest gives its height.
        std::map<std::pair<double, double>, double> tallest;
        for (const Mark& mark : page.marks)
          if (const auto* text = std::get_if<TextMark>(&mark.shape); text && mark.part == Part::key)
            if (text->box.height > 4.5) {
              double& most = tallest[{text->box.y, text->box.height}];
              most = std::max(most, set_text(*text).logical.height);
            }
        for (const auto& [box, most] : tallest) CHECK(box.second - most < 0.1);
      }
    }
}

TEST_CASE("how a burst balloon is mended is told once, and for each way with its pieces") {
  CHECK(times(all_text(build(columns(3), in_metres())), "A balloon has burst\n") == 1);
  sample::Job job = columns(4, [](sample::Job&, PlacedPiece& p) { p.colours[1].colour = "ink"; });
  std::string text = all_text(build(job, in_metres()));
  CHECK(times(text, "A balloon has burst\n") == 1);
  CHECK(times(text, "Pocket every scrap") == 1);
  CHECK_FALSE(has(text, "\nAt "));
  job = columns(4, [](sample::Job& j, PlacedPiece&) { j.built["c3"] = sample::built(garland()); });
  text = all_text(build(job, in_metres()));
  CHECK(times(text, "A balloon has burst\n") == 1);
  CHECK(has(text, "\nAt Aisle 1, 2, 4: find the number of its cluster"));
  CHECK(has(text, "\nAt Aisle 3: find its stretch by measuring along the line from the left end"));
}
