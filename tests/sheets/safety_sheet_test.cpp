// The safety sheet: its levels, lines and checklist are those that were reckoned, and nothing is out of its place.
#include "studio/sheets/safety_sheet.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "studio/making/anchored_line.hpp"
#include "studio/paint/output.hpp"
#include "studio/sheets/safety_front.hpp"
#include "studio/standing/level_words.hpp"
#include "studio/standing/site_words.hpp"
#include "tests/paint/picture.hpp"
#include "tests/sheets/site_sheets.hpp"

using namespace quadrille;

namespace {

/// Ticks drawn into boxes: open runs of three points with a pen of 0.55 mm.
std::size_t ticks_on(const std::vector<Page>& pages) {
  std::size_t ticks = 0;
  for (const Page& page : pages)
    for (const Mark& mark : page.marks)
      if (const auto* path = std::get_if<PathMark>(&mark.shape))
        ticks += path->steps.size() == 3 && path->stroke.size() == 1 && path->stroke[0].width == 0.55 ? 1 : 0;
  return ticks;
}

std::string of_pdf(const std::vector<Page>& pages) {
  const Folder folder;
  const auto pdf = to_pdf(pages, {"Safety", "2027-06-19"});
  REQUIRE(pdf);
  return output_of("pdftotext -layout '" + folder.write("safety.pdf", *pdf) + "' -");
}

}  // namespace

TEST_CASE("nothing on a safety sheet leaves its place, is cut short, or is smaller than 7.5 pt") {
  check_everywhere(day_cases(), safety_sheet, false);
  std::vector<HardCase> reckoned{{"garden arch", garden_arch()}};
  check_everywhere(reckoned, safety_sheet, true);
}

TEST_CASE("a level is told in whole miles and kilometres an hour, rounded down, and in Beaufort") {
  // 10 m/s: 10 / 0.44704 = 22.4 mph, 36 km/h; WMO code table 1100: 8.0 to 10.7 m/s is Beaufort 5. 4.87 m/s: 10.9 mph,
  // 17.5 km/h, Beaufort 3 (3.4 to 5.4).
  CHECK(level_words(10, Units::feet) == "22 mph, 36 km/h, Beaufort 5");
  CHECK(level_words(4.87, Units::metric) == "17 km/h, 10 mph, Beaufort 3");
  CHECK(short_level_words(4.87, Units::feet) == "10 mph (Beaufort 3)");
  // A forecast is no limit: 8.95 mph is nearer to 9.
  CHECK(forecast_words(4.0, Units::feet) == "9 mph (Beaufort 3)");
  CHECK(forecast_words(4.0, Units::metric) == "14 km/h (Beaufort 3)");
}

TEST_CASE("levels, lines and what is left without one are those of the answer") {
  const ReckonedJob reckoned(garden_arch(), standard_house(), true);
  REQUIRE(reckoned.standing.size() == 1);
  const PieceStanding& answer = reckoned.standing.front();
  REQUIRE_FALSE(answer.fails_at_rest);
  const std::string text = all_text(safety_sheet(reckoned.input(), in_metres()));
  CHECK(has(text, "\nWelcome arch\n" + std::string(answer.limit_beyond ? "more than " : "") +
                      level_words(answer.limit_gust_m_s, Units::metric) + "\n" +
                      level_words(answer.watch_m_s, Units::metric) + "\n" +
                      level_words(answer.take_down_m_s, Units::metric) + "\n"));
  CHECK(has(text, std::string(failure_of(answer.governing.code)).substr(1)));  // it begins the sentence
  REQUIRE(answer.not_counted.empty());
  REQUIRE(answer.lines.size() == 3);
  REQUIRE(answer.without.size() == 3);
  const Area& area = *reckoned.job.event.areas[0];
  const auto lines = anchored_lines(*area.pieces[0], reckoned.job.built.at("p1")->piece, area);
  REQUIRE(lines.size() == 3);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string label = numbered("L", static_cast<int>(i) + 1);
    const double pull = answer.lines[i].greatest_n;
    CHECK(pull >= answer.lines[i].tension_n);
    const std::string force = pull < 0.05 ? "slack" : print_force(pull, Units::metric);
    // On the plan and in the table.
    const double angle = std::round(lines[i].to_ground_rad * 180 / pi);
    const std::string length = print_length(lines[i].length_m, LengthStyle::metres),
                      degrees = std::to_string(static_cast<int>(angle)) + "°";
    CHECK_MESSAGE(has(text, label + ": " + length + ", " + degrees + ", " + force + "\n"), label);
    CHECK_MESSAGE(has(text, "\n" + length + "\n" + degrees + "\n" + force + "\n" +
                                short_level_words(answer.without[i].limit_gust_m_s, Units::metric)),
                  label);
  }
}

TEST_CASE("the first line of the garden arch is as long and as steep as reckoned by hand") {
  // From the crown (0, 0, 1.45) to (-1.6, -2.6, 0): sqrt(2.56 + 6.76 + 2.1025) = 3.38 m, asin(1.45 / 3.38) = 25.4°.
  const ReckonedJob reckoned(garden_arch());
  CHECK(has(all_text(safety_sheet(reckoned.input(), in_metres())), "L1: 3.38 m, 25°\n"));
}

TEST_CASE("every line of the checklist is on the sheet with a box, ticked where it is done") {
  sample::Job job = garden_arch();
  {
    const ReckonedJob first(job, standard_house(), true);
    REQUIRE(first.checks.size() > 8);
    for (std::size_t i = 0; i < first.checks.size(); i += 3) job.event.ticked.insert(first.checks[i].key);
  }
  const ReckonedJob reckoned(job, standard_house(), true);
  const auto pages = safety_sheet(reckoned.input(), in_metres());
  const std::string text = all_text(pages);
  std::size_t done = 0, lines = 0, lines_done = 0, open = 0;
  for (const ChecklistLine& line : reckoned.checks) {
    if (line.key.find("/line-") != std::string::npos) {
      ++lines, lines_done += line.done ? 1 : 0;
      continue;
    }
    // What is still to be decided has no box.
    open += line.open ? 1 : 0;
    CHECK_MESSAGE(has(text, line.open ? line.text : line.text + "\n"), line.text);
    if (line.reason != planning_aid) CHECK_MESSAGE(has(text, line.reason), line.reason);
    done += line.done && !line.open ? 1 : 0;
  }
  // All lines of the piece in one row, ticked where all of them are.
  REQUIRE(lines == 3);
  CHECK(times_in(text, "Lines L1 to L3 as on the plan") == 1);
  CHECK(ticks_on(pages) == done + (lines_done == lines ? 1 : 0));
  CHECK(times_in(text, "To decide before the day\n") == (open > 0 ? 1 : 0));
}

TEST_CASE("the lines of a piece are ticked in one row once all of them are done") {
  sample::Job job = garden_arch();
  std::size_t lines = 0;
  for (const ChecklistLine& line : ReckonedJob(job).checks)
    if (line.key.find("/line-") != std::string::npos && ++lines < 3) job.event.ticked.insert(line.key);
  CHECK(ticks_on(safety_sheet(ReckonedJob(job).input(), in_metres())) == 0);
  for (const ChecklistLine& line : ReckonedJob(job).checks)
    if (line.key.find("/line-") != std::string::npos) job.event.ticked.insert(line.key);
  CHECK(ticks_on(safety_sheet(ReckonedJob(job).input(), in_metres())) == 1);
}

TEST_CASE("only sources that can be read are cited, and common practice is said once in a list") {
  const std::string text = all_text(safety_sheet(ReckonedJob(garden_arch()).input(), in_metres()));
  CHECK_FALSE(has(text, "no source)"));
  CHECK_FALSE(has(text, "from memory"));
  CHECK_FALSE(has(text, "ground-wetness"));
  CHECK(has(text, "(16 CFR 1500.19)"));
  CHECK(has(text, "Items without a source are common practice.\n"));
  // A stake keeps half of its hold in soaked ground ("wet-stake-share"): 1 / 0.5.
  CHECK(has(text, "in soaked ground two for each line"));
}

TEST_CASE("where no water is, nobody is told where to empty it") {
  const auto asks = [](const sample::Job& job) {
    return has(all_text(safety_sheet(ReckonedJob(job).input(), in_metres())), "Empty ballast water");
  };
  sample::Job job = garden_arch();
  CHECK(asks(job));
  auto bare = std::make_shared<BuiltPiece>(*job.built["p1"]);
  for (Support& support : bare->piece.supports) support.ballast_kg = 0;
  job.built["p1"] = bare;
  job.event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.lines.clear(); }); });
  CHECK_FALSE(asks(job));
  House sand = standard_house();
  sand.ballast_fill = BallastFill::sand;
  CHECK_FALSE(
      has(all_text(safety_sheet(ReckonedJob(garden_arch(), sand).input(), in_metres())), "Empty ballast water"));
}

TEST_CASE("what is drawn nowhere and asked for is to be decided first, and is no box to tick") {
  sample::Job job = garden_arch();
  auto built = std::make_shared<BuiltPiece>(*job.built["p1"]);
  built->piece.anchoring.push_back({Requirement::front_and_back, When::outdoors, "crown-lines",
                                    "Tie the crown to the front and to the back.", "It leans.", "common practice"});
  job.built["p1"] = built;
  job.event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.lines.clear(); }); });
  const std::string text = all_text(safety_sheet(ReckonedJob(job).input(), in_metres()));
  const auto open = text.find("To decide before the day\n"), levels = text.find("Wind levels\n");
  REQUIRE(open != std::string::npos);
  CHECK(open < levels);
  CHECK(times_in(text, "Tie the crown to the front and to the back. No such lines are drawn") == 1);
}

TEST_CASE("the checklist asked for permission to tie to what nothing is tied to, and for lines that nobody packs") {
  sample::Job job = garden_arch();
  job.event.areas[0].edit([](Area& area) {
    Structure fence = area.structures[0];
    fence.id = "s9", fence.name = "Fence";
    area.structures.push_back(fence);
  });
  auto built = std::make_shared<BuiltPiece>(*job.built["p1"]);
  built->piece.anchoring.push_back({Requirement::front_and_back, When::outdoors, "crown-lines",
                                    "Tie the crown to the front and to the back.", "It leans.", "common practice"});
  job.built["p1"] = built;
  const auto texts = [](const sample::Job& of) {
    std::string all;
    for (const ChecklistLine& line : checklist(of.event, of.built, {})) all += line.text + "\n";
    return all;
  };
  CHECK(has(texts(job), "gate post"));
  CHECK_FALSE(has(texts(job), "Fence"));
  CHECK_FALSE(has(texts(job), "No such lines are drawn"));
  job.event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.lines.clear(); }); });
  CHECK_FALSE(has(texts(job), "gate post"));
  CHECK(has(texts(job),
            "to the back. No such lines are drawn, so neither cord nor anchors for them are on the lists.\n"));
}

TEST_CASE("the sentence on local code stands with every limit and at the signature, as text that can be searched") {
  const ReckonedJob reckoned(garden_arch(), standard_house(), true);
  const std::string text = of_pdf(safety_sheet(reckoned.input(), in_metres()));
  CHECK(times_in(text, planning_aid) >= 2);
  for (const char* part : {"Signature", "Who watches", "Date and time", "Take it down at", "Beaufort 5", "Wind levels",
                           "ground-fault device", "Way in", "Front: the audience stands here", "Wind read on the spot"})
    CHECK_MESSAGE(has(text, part), part);
}

TEST_CASE("outdoors comes first, indoors is short: no levels, no picture without lines") {
  sample::Job job = garden_arch();
  Area hall = *job.event.areas[0];
  hall.id = "a0", hall.name = "Hall", hall.site = {}, hall.walkways.clear();
  hall.pieces[0].edit([](PlacedPiece& piece) { piece.id = "p0", piece.lines.clear(); });
  job.built["p0"] = job.built["p1"];
  job.event.areas.insert(job.event.areas.begin(), hall);
  const ReckonedJob reckoned(job, standard_house(), true);
  const auto pages = safety_sheet(reckoned.input(), in_metres());
  CHECK(pages.front().name == "Safety: Garden entrance");
  // What goes for every area has a head of its own.
  CHECK(pages.back().name == "Safety: every area");
  CHECK(std::ranges::count(pages, "Safety: Hall", &Page::name) > 0);
  SheetOptions only = in_metres();
  only.area = "Hall";
  const std::string text = all_text(safety_sheet(reckoned.input(), only));
  CHECK_FALSE(has(text, "Wind levels"));
  CHECK_FALSE(has(text, "From the front"));
  CHECK(has(text, "How it stands\n"));
  CHECK(has(text, "Checklist: every area\n"));
}

TEST_CASE("what was not reckoned is said, and so is what was not built") {
  const ReckonedJob reckoned(garden_arch());
  SheetInput input = reckoned.input();
  input.standing = nullptr, input.checklist = nullptr, input.power = nullptr;
  const std::string text = all_text(safety_sheet(input, {}));
  CHECK(has(text, "How the pieces stand was not reckoned: there are no levels on this sheet.\n"));
  CHECK(has(text, "The checklist was not made: it is missing here.\n"));
  CHECK(has(text, "Cords and power were not reckoned."));
  for (const HardCase& hard : hard_cases())
    if (hard.name == "missing and refused") {
      const ReckonedJob missing(hard.job);
      CHECK(has(all_text(safety_sheet(missing.input(), {})), "Too wide: it was not built, so nothing is known"));
    }
  SheetOptions elsewhere;
  elsewhere.area = "no such area";
  CHECK(safety_sheet(reckoned.input(), elsewhere).empty());
}

TEST_CASE("equal events give equal safety sheets, day sheets and pull lists") {
  const ReckonedJob one(garden_arch(), standard_house(), true), other(garden_arch(), standard_house(), true);
  CHECK(*to_pdf(safety_sheet(one.input(), {}), {"A", "2027-06-19"}) ==
        *to_pdf(safety_sheet(other.input(), {}), {"A", "2027-06-19"}));
}

TEST_CASE("what is so of several pieces alike is said once, with their numbers and names") {
  const ReckonedJob reckoned(columns(5), standard_house(), true);
  const std::string text = all_text(safety_sheet(reckoned.input(), in_metres()));
  CHECK(times_in(text, "1–5  Aisle 1 to 5\n") == 1);
  CHECK_FALSE(has(text, "Aisle 3"));
  const auto ones =
      columns(3, [](sample::Job& job, PlacedPiece&) { job.built["c3"] = sample::built(sample::column(1.5, 0.2)); });
  const ReckonedJob other(ones, standard_house(), true);
  CHECK(has(all_text(safety_sheet(other.input(), in_metres())), "3  Aisle 3\n"));
}

TEST_CASE("a place without a plan was told to mark its outlet on the plan") {
  sample::Job job = columns(2);
  job.event.areas[0].edit([](Area& area) { area.site.outlet_m = 7.6; });
  const std::string text = all_text(safety_sheet(ReckonedJob(job).input(), in_metres()));
  CHECK(has(text, "The outlet is 8 m away. "));
  CHECK_FALSE(has(text, "on the plan"));
  CHECK(has(all_text(safety_sheet(ReckonedJob(garden_arch()).input(), in_metres())),
            "The outlet is 12 m away; mark on the plan where it is."));
}

TEST_CASE("a table of six metres was drawn from above as small as a post") {
  sample::Job job = garden_arch();
  job.event.areas[0].edit([](Area& area) {
    Structure table;
    table.id = "s2", table.name = "Long table", table.kind = StructureKind::table;
    table.x_m = 1, table.y_m = -1, table.width_m = 2, table.depth_m = 0.8;
    area.structures.push_back(table);
  });
  const auto pages = safety_sheet(ReckonedJob(job).input(), in_metres());
  std::vector<Rect> boxes;
  double scale = 0;
  for (const Page& page : pages) {
    const std::string text = all_text({page});
    if (const auto at = text.find("From the front, and from above beneath it, 1:"); at != std::string::npos)
      scale = std::stod(text.substr(at + 45));
    for (const Mark& mark : page.marks)
      if (const auto* path = std::get_if<PathMark>(&mark.shape); path && mark.part == Part::site && !path->fill.empty())
        boxes.push_back(bounds(mark));
  }
  REQUIRE(scale > 0);
  CHECK(std::ranges::any_of(boxes, [&](const Rect& box) {
    return std::abs(box.width - 2000 / scale) < 0.01 && std::abs(box.height - 800 / scale) < 0.01;
  }));
}

TEST_CASE("two lines that fall on each other from the front were drawn as neither: one is, and says which is which") {
  const FrontLine first{{10, 20}, {5, 40}, Vec3(-1, -1.6, -1.5), AnchorKind::stake, "L1"};
  FrontLine back = first, other = first;
  back.run.y() = 1.6, back.label = "L2";
  other.to.x = 30, other.run.y() = 0, other.label = "L3";
  const auto seen = seen_from_front({other, first, back});
  REQUIRE(seen.size() == 2);
  CHECK(seen[0].label == "L1 front, L2 back");
  CHECK(seen[1].label == "L3");
  CHECK_FALSE(is_out_of_plane(seen[1].run));
}

TEST_CASE("the legend of a picture explains the signs that are there, and no others") {
  const std::string text = all_text(safety_sheet(ReckonedJob(garden_arch()).input(), in_metres()));
  CHECK(has(text, "Cross: stake. Square: dead weight. Diamond: tied to what stands there. Hatched: walkway. From"));
  sample::Job job = garden_arch();
  job.event.areas[0].edit([](Area& area) {
    area.walkways.clear();
    area.pieces[0].edit([](PlacedPiece& piece) { piece.lines.clear(); });
  });
  const std::string bare = all_text(safety_sheet(ReckonedJob(job).input(), in_metres()));
  CHECK(has(bare, "From the front"));
  for (const char* sign : {"Cross:", "Square:", "Diamond:", "Hatched:", "dashed"}) CHECK_FALSE(has(bare, sign));
}
