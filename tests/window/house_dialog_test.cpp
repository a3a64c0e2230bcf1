// House settings: what is typed is kept once, and the open event is reckoned with it.
#include "studio/window/dialogs/house_dialog.hpp"

#include <doctest/doctest.h>
#include <wx/choice.h>

#include "own_house.hpp"
#include "studio/files/house_place.hpp"
#include "studio/quote/quote_event.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/house_entry_dialog.hpp"
#include "studio/window/house_hands.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

std::shared_ptr<const LoadedPalettes> no_palettes() { return std::make_shared<LoadedPalettes>(); }

HouseDialogContent content_of(const House& house) {
  HouseDialogContent content;
  content.house = house;
  content.where = "Saved in a test";
  content.palettes = no_palettes();
  return content;
}

}  // namespace

TEST_CASE("fields take what is typed when they are left, say what they refuse, and go back to the default") {
  OpenWindow window;
  const House house = standard_house("EUR");
  HouseDialog dialog(window.reference().get(), content_of(house));
  HouseFields& prices = dialog.fields(HousePage::prices);
  prices.type("wage-per-hour", "31,50");
  CHECK(dialog.house() == house);  // not left yet
  CHECK(dialog.settle());
  CHECK(dialog.house().pricing.wage_per_hour == 3150);
  CHECK(prices.default_button("wage-per-hour")->IsShown());
  CHECK(!prices.default_button("charge-per-hour")->IsShown());

  prices.type("tax-pieces", "a lot");
  dialog.show_page(3);
  CHECK(!dialog.settle());
  CHECK(prices.fault("tax-pieces").Contains("On pieces"));
  CHECK(dialog.pages().GetSelection() == 1);  // the page with the fault is in front
  CHECK(dialog.house().pricing.tax_pieces == 0);
  prices.type("tax-pieces", "8.25");
  CHECK(dialog.settle());
  CHECK(prices.fault("tax-pieces").empty());
  CHECK(dialog.house().pricing.tax_pieces == 82'500);

  tell(*prices.default_button("wage-per-hour"), wxEVT_BUTTON);
  CHECK(dialog.house().pricing.wage_per_hour == house.pricing.wage_per_hour);
  CHECK(prices.texts()["wage-per-hour"] == "25.00");
  CHECK(!prices.default_button("wage-per-hour")->IsShown());
}

TEST_CASE("entries are added, refused with their faults, and removed") {
  OpenWindow window;
  const House house = standard_house("EUR");
  const std::vector<Palette> palettes;
  HouseEntryDialog entry(window.reference().get(), house, HouseList::supplies, {}, palettes);
  entry.fields().type("key", "base-plate");
  CHECK(!entry.accept());
  CHECK(entry.fields().fault("key").Contains("already"));
  entry.fields().type("key", "ribbon");
  entry.fields().type("pack", "0");
  CHECK(!entry.accept());
  CHECK(entry.fields().fault("key").empty());
  CHECK(!entry.fields().fault("pack").empty());
  CHECK(!entry.changed());
  entry.fields().type("pack", "25");
  entry.fields().type("price", "4.20");
  REQUIRE(entry.accept());
  const SupplyStock& ribbon = entry.changed()->supplies.back();
  CHECK(ribbon.key == "ribbon");
  CHECK(ribbon.price_minor == 420);

  HouseDialog dialog(window.reference().get(), content_of(*entry.changed()));
  HouseListPage& supplies = dialog.list(HouseList::supplies);
  const std::size_t last = supplies.table().model->rows().size() - 1;
  CHECK(!supplies.remove().IsEnabled());
  supplies.select(last);
  CHECK(supplies.remove().IsEnabled());
  tell(supplies.remove(), wxEVT_BUTTON);
  CHECK(dialog.house() == house);
}

// The choice kept the names that were there when the dialog was opened.
TEST_CASE("the inflators to choose from follow their list") {
  OpenWindow window;
  House house = standard_house("EUR");
  Inflator first, second;
  first.key = "one", first.name = "The first", first.litres_per_s = 10;
  second.key = "two", second.name = "The second", second.litres_per_s = 20;
  house.inflators = {first, second};
  house.inflator = "two";
  HouseDialog dialog(window.reference().get(), content_of(house));
  const auto& choice = dynamic_cast<const wxChoice&>(*dialog.fields(HousePage::crew_and_travel).input("inflator"));
  CHECK(choice.GetCount() == 2);
  HouseListPage& inflators = dialog.list(HouseList::inflators);
  inflators.select(0);
  tell(inflators.remove(), wxEVT_BUTTON);
  REQUIRE(choice.GetCount() == 1);
  CHECK(choice.GetStringSelection() == "The second");
  CHECK(dialog.settle());
  CHECK(dialog.house().inflator == "two");
}

TEST_CASE("what finished jobs teach is used by one button") {
  OpenWindow window;
  House house = standard_house("EUR");
  JobRecord job;
  job.planned_s = {{"make-cluster", 600}}, job.actual_s = {{"make-cluster", 1200}};
  house.jobs = {job};
  HouseDialog dialog(window.reference().get(), content_of(house));
  HouseListPage& jobs = dialog.list(HouseList::jobs);
  CHECK(!jobs.add_this_event()->IsEnabled());  // nothing is open
  REQUIRE(jobs.learned().model->rows().size() == 1);
  tell(*jobs.use_learned(), wxEVT_BUTTON);
  // By hand: one job is believed 1 / (1 + 2), and it took twice as long: 5 s × (1 + 1 / 3) = 6.67 s.
  CHECK(dialog.house().rates.at("make-cluster") == 6.67);
  CHECK(dialog.fields(HousePage::rates).texts()["make-cluster"] == "6.67");
}

TEST_CASE("saved settings are in the house file, and the open event is reckoned with them") {
  ScratchFolder folder;
  const OwnHouse own;
  OpenWindow window;
  window.open(put_event(folder));
  REQUIRE(window->study()->house->is_standard);
  const Minor before = window->study()->quoted.quote.total_minor;
  House house = window->study()->house->house;
  house.pricing.delivery_base += 10'000;
  REQUIRE(window->house().save(house));
  window.settle();
  // By hand: the delivery is a line of the quote, so that the total grows by just that.
  CHECK(window->study()->quoted.quote.total_minor == before + 10'000);
  CHECK(own.read().pricing.delivery_base == house.pricing.delivery_base);
  CHECK(!window->document()->has_changes());  // the event is as it was
}

TEST_CASE("a house file that another program changed meanwhile is not replaced unasked") {
  ScratchFolder folder;
  const OwnHouse own;
  OpenWindow window;
  window.open(put_event(folder));
  House house = window->study()->house->house;
  house.name = "Mine";
  REQUIRE(window->house().save(house));
  window.settle();
  House other = house;
  other.name = "Of somebody else";
  REQUIRE(!save_house(own.file(), other));
  house.name = "Mine again";
  {
    Dialogs dialogs({wxID_CANCEL});
    CHECK(!window->house().save(house));
    CHECK(dialogs.said().at(0).find("another program") != std::string::npos);
  }
  CHECK(own.read().name == "Of somebody else");
  {
    Dialogs dialogs({wxID_OK});
    CHECK(window->house().save(house));
  }
  CHECK(own.read().name == "Mine again");
  CHECK(open_house(own.file() += "~")->house.name == "Of somebody else");
}

TEST_CASE("what another program wrote into the house counts as soon as its settings are opened") {
  ScratchFolder folder;
  const OwnHouse own;
  OpenWindow window;
  window.open(put_event(folder));
  House house = window->study()->house->house;
  REQUIRE(window->house().save(house));
  window.settle();
  const Minor before = window->study()->quoted.quote.total_minor;
  house.pricing.delivery_base += 10'000;
  REQUIRE(!save_house(own.file(), house));
  const Dialogs put_away({wxID_CANCEL});
  window.command(command_house);
  window.settle();
  CHECK(window->study()->quoted.quote.total_minor == before + 10'000);
}

TEST_CASE("a house file that cannot be read is never written over") {
  ScratchFolder folder;
  const OwnHouse own;
  put(own.file(), "<house>");
  OpenWindow window;
  window.open(put_event(folder));
  Dialogs dialogs({wxID_OK, wxID_OK});
  CHECK(!window->house().save(standard_house()));
  CHECK(contents(own.file()) == "<house>");
}

}  // namespace quadrille
