// Elevation sheets: what stands on them.
#include "studio/paper/sheet.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "sdk/units.hpp"
#include "studio/paint/output.hpp"
#include "tests/paint/picture.hpp"
#include "tests/paper/sheets.hpp"

using namespace quadrille;

TEST_CASE("the drawing has the stated scale") {
  const sample::Job job = sample::one_arch();
  for (Units units : {Units::metric, Units::feet}) {
    SheetOptions options;
    options.units = units;
    const Page page = sheet(job, options).front();
    REQUIRE(page.scale > 0);
    double left = 1e9, right = -1e9, low = -1e9, high = 1e9;
    for (const Mark& mark : page.marks)
      if (const auto* b = std::get_if<BalloonMark>(&mark.shape); b && mark.part == Part::drawing) {
        left = std::min(left, b->centre.x - b->radius), right = std::max(right, b->centre.x + b->radius);
        low = std::max(low, b->centre.y + b->radius), high = std::min(high, b->centre.y - b->radius);
        CHECK(b->radius * page.scale == doctest::Approx(115));  // half of 0.23 m
      }
    // Of the balloons themselves; the base plates reach no further than they do.
    double least = 1e9, most = -1e9, bottom = 1e9, top = -1e9;
    for (const Balloon& b : job.built.at("p1")->piece.balloons) {
      least = std::min(least, b.centre.x() - 0.115), most = std::max(most, b.centre.x() + 0.115);
      bottom = std::min(bottom, b.centre.z() - 0.115), top = std::max(top, b.centre.z() + 0.115);
    }
    CHECK((right - left) * page.scale / 1000 == doctest::Approx(most - least));
    CHECK((low - high) * page.scale / 1000 == doctest::Approx(top - bottom));
    const std::string stated = units == Units::feet ? "(1:" : "1:";
    CHECK(has(all_text({page}), stated + std::to_string(static_cast<int>(page.scale))));
  }
}

TEST_CASE("the bar of 1 m measures 1 m at the stated scale, on the page and in the pixels") {
  const Folder folder;
  for (double radius : {0.9, 1.2, 3.0, 15.0}) {
    CAPTURE(radius);
    const sample::Job job = changed([&](sample::Job& j, Area&) {
      j.built["p1"] = sample::built(sample::arch(radius, static_cast<int>(radius * 14), 0.23));
    });
    const Page page = sheet(job, in_metres()).front();
    const auto outline =
        std::find_if(page.marks.begin(), page.marks.end(), [](const Mark& m) { return m.part == Part::scale_bar; });
    REQUIRE(outline != page.marks.end());
    Rect bar = bounds(*outline);
    const double pen = std::get<PathMark>(outline->shape).stroke.front().width;
    bar = {bar.x - pen / 2, bar.y - pen / 2, bar.width + pen, bar.height + pen};
    // The figure at its end says how long it is: "1 m", "2 m", "5 m"…
    double metres = 0;
    for (const Mark& mark : page.marks)
      if (const auto* text = std::get_if<TextMark>(&mark.shape);
          text && mark.part == Part::scale_bar && text->text.ends_with(" m"))
        metres = std::stod(text->text);
    REQUIRE(metres >= 1);
    CHECK(std::abs(bar.width - metres * 1000 / page.scale) < 0.2);

    constexpr int dpi = 300;
    const Picture picture = png_picture(folder, *to_png(page, dpi));
    const double pixel = 25.4 / dpi;
    const int row = static_cast<int>(bar.middle().y / pixel);
    int first = -1, last = -1;
    for (int x = static_cast<int>((bar.x - 0.8) / pixel); x < static_cast<int>((bar.right() + 3) / pixel); ++x)
      if (picture.at(x, row).green < 160) first = first < 0 ? x : first, last = x;
    CHECK(std::abs((last - first + 1) * pixel - metres * 1000 / page.scale) < 0.2);
  }
}

TEST_CASE("the printed counts are those of EventCount, which the sheet does not reckon again") {
  const Folder folder;
  const sample::Job job = sample::one_arch();
  EventCount count = job.count();
  // By hand: 19 clusters of four, half of them A and half B.
  CHECK(count.total_balloons == 76);
  const std::string text = pdf_text(folder, *to_pdf(sheet(job, count), {"t", "2027-06-19"}));
  for (const char* part : {"76", "38", "Rosewood", "Chalk", "11 in", "19 clusters", "76 balloons", "Base plate 40 cm",
                           "Midsummer party", "Ada Fenwright", "Orchard Hall", "19 June 2027", "Garden entrance",
                           "1 of 1", "Drawn with Quadrille", "Wind and anchoring must be checked"})
    CHECK_MESSAGE(has(text, part), part);

  // Numbers that no reckoning could give must come out as they are.
  count.total_balloons = 70123;
  count.balloons[0].used = 61234;
  count.pieces[0].by_slot = {51111, 52222};
  count.supplies[0].quantity = 43210;
  const std::string odd = pdf_text(folder, *to_pdf(sheet(job, count), {"t", "2027-06-19"}));
  for (const char* part : {"70123", "61234", "51111", "52222", "43210"}) CHECK_MESSAGE(has(odd, part), part);
}

TEST_CASE("dimensions are printed in the asked units") {
  const sample::Job job = sample::one_arch();
  const Box& box = job.built.at("p1")->box;
  const std::string metric = all_text(sheet(job, in_metres())), feet = all_text(sheet(job));
  CHECK(has(metric, print_length(box.width_m(), LengthStyle::metres)));
  CHECK(has(metric, print_length(box.height_m(), LengthStyle::metres)));
  CHECK(has(feet, print_length(box.width_m(), LengthStyle::feet_inches)));
  CHECK(has(feet, print_length(box.height_m(), LengthStyle::feet_inches)));
}

TEST_CASE("several areas: a page each, the tables of all on the last, and one area alone when asked") {
  sample::Job job = sample::one_arch();
  Area second = *job.event.areas[0];
  second.id = "a2", second.name = "Dance floor";
  second.pieces[0].edit([](PlacedPiece& p) { p.id = "p2", p.name = "Dance arch"; });
  job.event.areas.push_back(second);
  job.built["p2"] = job.built["p1"];
  const std::vector<Page> pages = sheet(job);
  REQUIRE(pages.size() == 3);
  CHECK(pages[0].name == "Garden entrance");
  CHECK(pages[1].name == "Dance floor");
  CHECK(has(all_text({pages[2]}), "Balloons in all areas"));
  CHECK(has(all_text({pages[2]}), "152"));
  CHECK(has(all_text({pages[1]}), "2 of 3"));
  CHECK_FALSE(has(all_text({pages[0]}), "Dance arch"));
  for (const char* name : {"a2", "Dance floor"}) {
    SheetOptions options;
    options.area = name;
    const std::vector<Page> one = sheet(job, options);
    REQUIRE(one.size() == 1);
    CHECK(one[0].name == "Dance floor");
  }
  SheetOptions none;
  none.area = "Attic";
  CHECK(sheet(job, none).empty());
}

TEST_CASE("what cannot be drawn says so") {
  CHECK(has(all_text(sheet(sample::Job{})), "no areas yet"));
  CHECK(has(all_text(sheet(changed([](sample::Job&, Area& area) { area.pieces.clear(); }))),
            "no pieces in this area yet"));
  const auto far =
      changed([](sample::Job&, Area& area) { area.pieces[0].edit([](PlacedPiece& p) { p.x_m = 1e300; }); });
  CHECK(has(all_text(sheet(far)), "cannot be drawn"));
  for (const HardCase& hard : hard_cases()) {
    if (hard.name != "missing and refused") continue;
    const std::vector<Page> pages = sheet(hard.job);
    const std::string text = all_text(pages);
    CHECK(has(text, "Ribbon wall (as last calculated)"));
    CHECK(has(text, "longer than the rod of 6 m"));
    CHECK(has(text, "48"));
    bool hatched = false;
    for (const Mark& mark : pages[0].marks)
      hatched = hatched || (mark.part == Part::drawing && std::holds_alternative<HatchMark>(mark.shape));
    CHECK(hatched);
  }
}

TEST_CASE("tables that do not fit go on to further pages, and no row is lost") {
  for (const HardCase& hard : hard_cases()) {
    if (hard.name != "40 colours") continue;
    const std::vector<Page> pages = sheet(hard.job);
    CHECK(pages.size() > 1);
    std::size_t swatches = 0, in_key = 0;
    for (const Page& page : pages)
      for (const Mark& mark : page.marks) {
        if (!std::holds_alternative<BalloonMark>(mark.shape)) continue;
        swatches += mark.part == Part::totals ? 1u : 0u;
        in_key += mark.part == Part::key ? 1u : 0u;
      }
    const EventCount count = hard.job.count();
    CHECK(swatches == count.balloons.size());
    CHECK(swatches == 40);
    CHECK(in_key == 42);  // seven pieces of six slots
    // No piece is split under the same heading twice: where its rows go on, its heading says so.
    for (int i = 1; i <= 7; ++i) {
      const std::string heading = numbered("Arch no. ", i) + "\n", all = all_text(pages);
      CHECK(all.find(heading) == all.rfind(heading));
    }
  }
}

TEST_CASE("letters stand on the balloons, unless they are switched off or the balloons are too small on paper") {
  // Without them readers who do not tell the colours apart could not tell the slots apart.
  const auto lettered = [](const std::vector<Page>& pages) {
    return std::count_if(pages[0].marks.begin(), pages[0].marks.end(), [](const Mark& m) {
      const auto* b = std::get_if<BalloonMark>(&m.shape);
      return b && m.part == Part::drawing && b->letter != 0;
    });
  };
  SheetOptions options;
  CHECK(lettered(sheet(sample::one_arch(), options)) == 76);
  options.letters = false;
  CHECK(lettered(sheet(sample::one_arch(), options)) == 0);
  options.letters = true;
  // An arch 30 m wide is drawn at 1:200 or so: its balloons of 0.28 m come out smaller than 2 mm.
  const auto wide =
      changed([](sample::Job& job, Area&) { job.built["p1"] = sample::built(sample::arch(15, 120, 0.28)); });
  CHECK(lettered(sheet(wide, options)) == 0);
}

TEST_CASE("the paper is that of the event's units unless one is asked for, and all pages are turned the same way") {
  // Letter is 8.5 in × 11 in, A4 210 mm × 297 mm (ISO 216).
  sample::Job job = sample::one_arch();
  const auto shorter = [](const Page& page) { return std::min(page.width, page.height); };
  CHECK(shorter(sheet(job).front()) == doctest::Approx(8.5 * 25.4));
  CHECK(shorter(sheet(job, in_metres()).front()) == doctest::Approx(8.5 * 25.4));  // the paper stays the house's own
  job.event.units = Units::metric;
  CHECK(shorter(sheet(job).front()) == 210);
  // A gate that is drawn best upright beside a row of columns that is drawn best lying.
  Area row;
  row.id = "a2", row.name = "Aisle";
  for (int i = 0; i < 9; ++i) {
    const std::string id = numbered("c", i);
    row.pieces.push_back(sample::placed(id, "Column", 1.2 * i, {"lagoon"}));
    job.built[id] = sample::built(sample::column(2, 0.2));
  }
  job.event.areas.push_back(row);
  const std::vector<Page> pages = sheet(job);
  REQUIRE(pages.size() >= 3);
  for (const Page& page : pages) CHECK(page.width == pages[0].width);
}

TEST_CASE("a page of tables does not carry the memory of the drawing before it") {
  // Each of 150 pages of tables was made from a copy of the drawn page: 5.4 GB for 2,000 arches.
  for (const HardCase& hard : hard_cases()) {
    if (hard.name != "40 colours") continue;
    const std::vector<Page> pages = sheet(hard.job);
    REQUIRE(pages.size() > 1);
    CHECK(pages[0].marks.size() > 300);
    for (std::size_t i = 1; i < pages.size(); ++i) CHECK(pages[i].marks.capacity() < 2 * pages[i].marks.size());
  }
}

TEST_CASE("supplies stand in the order of their names, which is what people look for") {
  const auto job = changed([](sample::Job& j, Area&) {
    Piece piece = sample::arch(1.2, 19, 0.23);
    piece.supplies = {
        {"z-key", "anchor line", "m", 3}, {"a-key", "Zip ties", "piece", 20}, {"m-key", "Base", "piece", 2}};
    j.built["p1"] = sample::built(piece);
  });
  const std::string text = all_text(sheet(job));
  CHECK(text.find("anchor line") < text.find("Base"));
  CHECK(text.find("Base") < text.find("Zip ties"));
}

TEST_CASE("the sheet says that it is to be printed at actual size") {
  CHECK(has(all_text(sheet(sample::one_arch())), "Print at actual size"));
}
