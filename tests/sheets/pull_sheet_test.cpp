// The pull list: all that is counted is on it, where it is kept, with boxes; nothing is out of its place.
#include "studio/sheets/pull_sheet.hpp"

#include <doctest/doctest.h>

#include "studio/model/one_unit.hpp"
#include "studio/paint/output.hpp"
#include "studio/takeoff/print.hpp"
#include "tests/paint/picture.hpp"
#include "tests/sheets/site_sheets.hpp"

using namespace quadrille;

namespace {

House kept_house() {
  House house = standard_house();
  house.supplies.push_back({"rod", "", 1, 0, 0, true, 0, 0.4, "Tube in the van", {}});
  house.supplies.push_back({"line", "", 50, 700, 0, false, 0, 0.003, "Drawer 3", {}});
  house.supplies.push_back({"tool-ladder", "Red ladder", 1, 0, 1, true, 0, 9, "Garage wall", {}});
  house.kits.push_back({"pair", "Pair of plates", 1, 0, {{"base-plate", 2}}, "Blue bag", {}});
  return house;
}

/// Squares of the size of a box to tick.
std::size_t boxes_on(const std::vector<Page>& pages) {
  std::size_t boxes = 0;
  for (const Page& page : pages)
    for (const Mark& mark : page.marks)
      if (const auto* path = std::get_if<PathMark>(&mark.shape); path && !path->fill.empty()) {
        const Rect r = bounds(mark);
        boxes += std::abs(r.width - 3.4) < 1e-6 && std::abs(r.height - 3.4) < 1e-6 ? 1 : 0;
      }
  return boxes;
}

}  // namespace

TEST_CASE("nothing on a pull list leaves its place, is cut short, or is smaller than 7.5 pt") {
  check_everywhere(day_cases(), pull_sheet, false);
}

TEST_CASE("every supply and every bag is on the list with its quantity, beneath where it is kept") {
  const ReckonedJob reckoned(garden_arch(), kept_house());
  const Folder folder;
  SheetOptions metric = in_metres();
  const auto pages = pull_sheet(reckoned.input(), metric);
  const auto pdf = to_pdf(pages, {"Pull", "2027-06-19"});
  REQUIRE(pdf);
  std::string text = output_of("pdftotext -layout '" + folder.write("pull.pdf", *pdf) + "' -");
  const std::string marks = all_text(pages);
  for (const SupplyOrder& line : reckoned.supplies.lines) {
    if (line.key == "ballast-water") continue;
    CAPTURE(line.key);
    CHECK(has(marks, "\n" + in_one_unit(line.name, Units::metric) + "\n") == (line.needed > line.from_kits));
    if (line.needed > line.from_kits)
      CHECK(has(marks, print_quantity(line.needed - line.from_kits, line.unit, LengthStyle::metres) + "\n"));
  }
  for (const BalloonBag& bag : reckoned.count.bags) {
    CHECK(has(text, bag.colour_name));
    CHECK(has(marks, std::to_string(bag.used) + " to use, " + std::to_string(bag.spares)));
    CHECK(has(marks, "\n" + std::to_string(bag.used + bag.spares) + "\n"));
  }
  for (const char* place : {"Tube in the van", "Drawer 3", "Blue bag", "Everything else, no place noted", "Tools"})
    CHECK_MESSAGE(times_in(marks, std::string(place) + "\n") == 1, place);
  CHECK(has(marks, "Kit: Pair of plates\nIn each: 2 × Base plate 40 cm\n1\n"));
  CHECK(has(marks, "Red ladder") == false);  // nothing stands higher than 2.10 m
  CHECK(has(marks, "Mallet for the stakes\n"));
  CHECK(has(marks, "Stake for a line, at least 0.38 m by 16 mm\n"));
  CHECK(has(marks, "Anemometer\n"));
}

TEST_CASE("what comes back has a second box, what is used up has none") {
  const ReckonedJob reckoned(garden_arch(), kept_house());
  std::size_t second = reckoned.supplies.kits.size(), first = reckoned.supplies.kits.size();
  for (const SupplyOrder& line : reckoned.supplies.lines) {
    if (line.key == "ballast-water" || line.needed <= line.from_kits) continue;
    ++first;
    second += line.reused ? 1 : 0;
  }
  first += reckoned.count.bags.size();
  // At home: two kinds of fill (10 kg on each foot, and the dead weight). Tools of a garden arch that is not high:
  // inflator, cord, ground-fault device, cover, sizer, scissors, tape measure, mallet, anemometer, first aid, broom come
  // back; the bags do not.
  first += 2 + 12, second += 11;
  CHECK(boxes_on(pull_sheet(reckoned.input(), {})) == first + second);
}

TEST_CASE("ballast to be filled at home is told by container, foot and piece") {
  ReckonedJob reckoned(garden_arch());
  CHECK(has(all_text(pull_sheet(reckoned.input(), in_metres())),
            "2 containers with 10 l of water each, 10.0 kg\nWelcome arch: 1 on the left foot, 1 on the right foot\n"));
  // 10 l ÷ 3.785411784 l to the gallon
  CHECK(has(all_text(pull_sheet(reckoned.input(), {})), "2 containers with 2.6 gal of water each, 22.0 lb\n"));
  reckoned.house.ballast_fill = BallastFill::sand, reckoned.house.container_l = 4;  // 6.4 kg of sand at 1.6 kg/l
  CHECK(has(all_text(pull_sheet(reckoned.input(), in_metres())),
            "4 containers with 5.0 kg of sand each\nWelcome arch: 2 on the left foot, 2 on the right foot\n"));
}

TEST_CASE("ballast of eight columns alike was told eight times") {
  ReckonedJob reckoned(changed([](sample::Job& job, Area& area) {
    area.pieces.clear();
    for (int i = 1; i <= 4; ++i) {
      const std::string id = "c" + std::to_string(i), name = i < 4 ? "Aisle " + std::to_string(i) : "By the door";
      Piece column = sample::column(2, 0.2);
      REQUIRE_FALSE(column.supports.empty());
      column.supports[0].ballast_kg = 10;
      area.pieces.push_back(sample::placed(id, name, i, {"lagoon", "brass"}));
      job.built[id] = sample::built(column);
    }
  }));
  CHECK(has(all_text(pull_sheet(reckoned.input(), in_metres())),
            "4 containers with 10 l of water each, 10.0 kg\nAisle 1 to 3, each: 1 on its foot; By the door: 1 on its "
            "foot\n"));
}

TEST_CASE("what was not reckoned is said on the page") {
  const ReckonedJob reckoned(garden_arch());
  SheetInput input = reckoned.input();
  input.house = nullptr, input.supplies = nullptr, input.power = nullptr, input.plan = nullptr;
  const std::string text = all_text(pull_sheet(input, {}));
  CHECK(times_in(text, "This list is not complete without it.") == 3);
  for (const SupplyLine& line : reckoned.count.supplies)
    CHECK(has(text, in_one_unit(line.name, reckoned.job.event.units) + "\n"));
  SheetOptions elsewhere;
  elsewhere.area = "no such area";
  CHECK(pull_sheet(reckoned.input(), elsewhere).empty());
}

TEST_CASE("an outlet that nobody knows asks for a charged battery") {
  sample::Job job = garden_arch();
  job.event.areas[0].edit([](Area& area) { area.site.outlet_m.reset(); });
  const ReckonedJob reckoned(job);
  REQUIRE(reckoned.power.size() == 1);
  const std::string text = all_text(pull_sheet(reckoned.input(), {}));
  // "A generator …", as the check says it.
  CHECK(times_in(text, "A" + print_own_power(reckoned.power[0]).substr(1)) == 2);
  CHECK(has(text, "Garden entrance: no outlet is known\n"));
}
