// The house's lists: rows, entries, and what may be typed into them.
#include "studio/house_form/house_lists.hpp"

#include <doctest/doctest.h>

#include <string>

#include "studio/files/house_file.hpp"
#include "studio/labour/calibration.hpp"
#include "studio/model/rates.hpp"

namespace quadrille {
namespace {

using Typed = std::map<std::string, std::string>;

std::vector<Palette> palettes() {
  Palette palette;
  palette.key = "meadow", palette.name = "Meadow";
  palette.colours = {{"poppy", "Poppy", 200, 30, 30, Finish::matte, {}},
                     {"clover", "Clover", 30, 160, 60, Finish::matte, {}}};
  return {palette};
}

House changed(const House& house, HouseList list, std::optional<std::size_t> row, const Typed& typed) {
  auto change = with_entry(house, list, row, typed, palettes());
  REQUIRE_MESSAGE(change.house, change.faults.front().sentence);
  return std::move(*change.house);
}

std::vector<HouseEntryFault> faults_of(const House& house, HouseList list, std::optional<std::size_t> row,
                                       const Typed& typed) {
  auto change = with_entry(house, list, row, typed, palettes());
  CHECK(!change.house);
  return change.faults;
}

/// A house that has something in each list.
House full_house() {
  House house = standard_house("EUR");
  house.balloons = {{{"meadow", "poppy"}, 11, 120, {{11, 100, 1495}}, {}}, {{"elsewhere", "dusk"}, 5, 7, {}, {}}};
  house.kits = {{"hoop", "Hoop", 2, 2500, {{"rod-aluminium", 4}, {"sleeve", 3.5}}, "Garage", {}}};
  house.packings = {{11, 0.2286, 4, 0.95, 0.9, "2027-03-01", "porch", {}}};
  JobRecord job;
  job.date = "2027-04-02", job.title = "Spring fair";
  job.planned_s = {{"make-cluster", 600}, {"mount-cluster", 1200}, {"inflate-medium", 900}, {"air-medium", 300}};
  job.actual_s = {{"make-cluster", 900}};
  house.jobs = {job};
  return house;
}

House through_a_file(const House& house) {
  auto read = read_house(write_house(house), "house");
  REQUIRE_MESSAGE(read, read.error);
  House again = std::move(read->house);
  again.preserved = {};
  return again;
}

}  // namespace

TEST_CASE("each list has a row for each entry and a cell for each column") {
  const House house = full_house();
  const std::size_t sizes[] = {2, house.supplies.size(), 1, house.inflators.size(), house.failures.size(), 1, 1};
  for (const HouseList list : house_lists) {
    const HouseTable table = table_of(house, list, palettes());
    CAPTURE(table.title);
    CHECK(table.rows.size() == sizes[static_cast<std::size_t>(list)]);
    for (const auto& row : table.rows) CHECK(row.size() == table.columns.size());
  }
  const HouseTable balloons = table_of(house, HouseList::balloons, palettes());
  CHECK(balloons.rows[0] == std::vector<std::string>{"Poppy (Meadow)", "11 in", "120", "100 for 14.95"});
  CHECK(balloons.rows[1] == std::vector<std::string>{"elsewhere/dusk", "5 in", "7", "the palette's"});
  CHECK(table_of(house, HouseList::kits, {}).rows[0][4] == "rod-aluminium 4; sleeve 3.5");
  // 600 + 1200 + 900 s of work are 45 min; the air's 300 s are part of the inflating.
  CHECK(table_of(house, HouseList::jobs, {}).rows[0] ==
        std::vector<std::string>{"2027-04-02", "Spring fair", "45 min", "1 task"});
}

TEST_CASE("an entry whose own texts are typed stays as it is") {
  const House house = full_house();
  for (const HouseList list : house_lists)
    for (std::size_t row = 0; row < table_of(house, list, palettes()).rows.size(); ++row) {
      Typed typed;
      for (const HouseField& field : entry_of(house, list, row, palettes())) {
        CHECK(!typed.contains(field.key));
        CHECK(!field.label.empty());
        typed[field.key] = field.text;
      }
      CHECK(changed(house, list, row, typed) == house);
    }
}

TEST_CASE("a new supply, as a file gives it back") {
  const House house = full_house();
  const House more = changed(house, HouseList::supplies, {},
                             {{"key", "ribbon"},
                              {"name", "Ribbon"},
                              {"pack", "12,5"},
                              {"price", "8.40"},
                              {"on-hand", "3"},
                              {"reused", "yes"},
                              {"rental", "0.50"},
                              {"mass", "0.2"},
                              {"kept-where", " Shelf 3 "}});
  REQUIRE(more.supplies.size() == house.supplies.size() + 1);
  const SupplyStock& ribbon = more.supplies.back();
  CHECK(ribbon.key == "ribbon");
  CHECK(ribbon.pack == 12.5);
  CHECK(ribbon.price_minor == 840);
  CHECK(ribbon.on_hand == 3);
  CHECK(ribbon.reused);
  CHECK(ribbon.rental_minor == 50);
  CHECK(ribbon.mass_kg == 0.2);
  CHECK(ribbon.kept_where == "Shelf 3");
  CHECK(through_a_file(more) == more);
  CHECK(without_entry(more, HouseList::supplies, more.supplies.size() - 1) == house);
}

TEST_CASE("what a file could not hold is refused at its field") {
  const House house = full_house();
  const auto fault_at = [&](HouseList list, std::optional<std::size_t> row, const Typed& typed) {
    const auto faults = faults_of(house, list, row, typed);
    REQUIRE(faults.size() == 1);
    CHECK(!faults[0].sentence.empty());
    return faults[0].key;
  };
  CHECK(fault_at(HouseList::supplies, {}, {{"key", "base-plate"}}) == "key");  // there is one
  CHECK(fault_at(HouseList::supplies, {}, {{"key", "  "}}) == "key");
  CHECK(fault_at(HouseList::supplies, 0, {{"pack", "0"}}) == "pack");
  CHECK(fault_at(HouseList::supplies, 0, {{"price", "-1"}}) == "price");
  CHECK(fault_at(HouseList::balloons, {}, {{"size", "11"}}) == "colour");
  CHECK(fault_at(HouseList::balloons, {}, {{"colour", "Poppy (Meadow)"}, {"size", "11"}}) == "colour");  // twice
  CHECK(fault_at(HouseList::balloons, 0, {{"packs", "100 at 14"}}) == "packs");
  CHECK(fault_at(HouseList::balloons, 0, {{"packs", "50 for 7; 50 for 8"}}) == "packs");
  CHECK(fault_at(HouseList::kits, 0, {{"parts", "sleeve"}}) == "parts");
  CHECK(fault_at(HouseList::kits, 0, {{"parts", "sleeve 2; sleeve 3"}}) == "parts");
  CHECK(fault_at(HouseList::failures, 0, {{"rate", "95"}}) == "rate");
  CHECK(fault_at(HouseList::inflators, 0, {{"nozzles", "1.5"}}) == "nozzles");
  CHECK(fault_at(HouseList::packings, 0, {{"date", "1 March"}}) == "date");
  CHECK(faults_of(house, HouseList::inflators, 0, {{"flow", "x"}, {"power", "-3"}}).size() == 2);
}

TEST_CASE("packs and parts are typed as lists, in either decimal mark") {
  const House house = full_house();
  const House packs = changed(house, HouseList::balloons, 0, {{"packs", "50 for 7,50; 100 for 14;"}, {"size", "12"}});
  CHECK(packs.balloons[0].nominal_in == 12);
  CHECK(packs.balloons[0].packs == std::vector<Pack>{{12, 50, 750}, {12, 100, 1400}});
  CHECK(through_a_file(packs) == packs);
  const House parts = changed(house, HouseList::kits, 0, {{"parts", "base-plate 2 ; securing-line 7,5"}});
  CHECK(parts.kits[0].parts == std::vector<FrameKit::Part>{{"base-plate", 2}, {"securing-line", 7.5}});
  CHECK(through_a_file(parts) == parts);
}

TEST_CASE("the inflator in use stays so under a new key") {
  House house = full_house();
  house.inflator = house.inflators[1].key;
  const House renamed = changed(house, HouseList::inflators, 1, {{"key", "little-one"}});
  CHECK(inflator_in_use(renamed)->key == "little-one");
}

TEST_CASE("what a watch said of a job is typed in minutes or with a unit, and teaches the rates") {
  const House house = full_house();
  // By hand: 12 min are 720 s, 1.5 h are 5400 s.
  const House timed =
      changed(house, HouseList::jobs, 0, {{"rate:mount-cluster", "1.5 h"}, {"rate:make-cluster", "12"}});
  CHECK(timed.jobs[0].actual_s.at("mount-cluster") == 5400);
  CHECK(timed.jobs[0].actual_s.at("make-cluster") == 720);
  CHECK(!changed(timed, HouseList::jobs, 0, {{"rate:mount-cluster", ""}}).jobs[0].actual_s.contains("mount-cluster"));
  CHECK(through_a_file(timed) == timed);
  const HouseTable learned = learned_rates(timed);
  REQUIRE(learned.rows.size() == 2);
  // By hand: one job is believed 1 / (1 + 2). 720 of 600 s: 5 s × (1 + 0.2 / 3) = 5.33 s.
  CHECK(learned.rows[0] == std::vector<std::string>{"Make a cluster out of pairs", "5", "5.33", "s", "1"});
  // 5400 of 1200 s: 10 s × (1 + 3.5 / 3) = 21.7 s.
  CHECK(learned.rows[1][2] == "21.7");
  CHECK(rate_of(with_rates(timed, calibrated_rates(timed)), "make-cluster") == 5.33);
}

}  // namespace quadrille
