// Changing the house file beside somebody else who does so too.
#include "studio/files/house_change.hpp"

#include <doctest/doctest.h>

#include "scratch.hpp"

using namespace quadrille;

namespace {

House called(House house, const char* name) {
  house.name = name;
  return house;
}

}  // namespace

TEST_CASE("a change is made on what stands on the disk now, so that two of them lose nothing") {
  const ScratchFolder folder;
  const auto file = folder / "mine.quadrille-house";
  REQUIRE(!save_house(file, standard_house("EUR")));
  const LoadedHouse loaded = load_house(file, "EUR");
  REQUIRE(!change_house(loaded, [](House house) { return called(std::move(house), "Lantern and leaf"); }));
  // `loaded` is older than the file by now.
  REQUIRE(!change_house(loaded, [](House house) {
    house.contact = "By post";
    return house;
  }));
  const House now = load_house(file, "EUR").house;
  CHECK(now.name == "Lantern and leaf");
  CHECK(now.contact == "By post");
  CHECK(now.currency == "EUR");
}

TEST_CASE("where no house file is yet it is made of the house that served, folders and all") {
  const ScratchFolder folder;
  LoadedHouse loaded;
  loaded.house = standard_house("GBP");
  loaded.is_standard = true;
  loaded.file = folder.path() / "deep" / "down" / "house.quadrille-house";
  REQUIRE(!change_house(loaded, [](House house) { return called(std::move(house), "Leaf"); }));
  const LoadedHouse again = load_house(loaded.file, "USD");
  CHECK(!again.is_standard);
  CHECK(again.house == called(standard_house("GBP"), "Leaf"));
}

TEST_CASE("a house that cannot be read is never written over, and without a place nothing is saved") {
  const ScratchFolder folder;
  const auto file = folder / "broken.quadrille-house";
  put(file, "<house");
  LoadedHouse loaded = load_house(file, "USD");
  const auto fault = change_house(loaded, [](House house) { return house; });
  REQUIRE(fault);
  CHECK(fault->find("broken.quadrille-house") != std::string::npos);
  CHECK(contents(file) == "<house");
  loaded.file.clear();
  CHECK(change_house(loaded, [](House house) { return house; })->find("QUADRILLE_HOUSE") != std::string::npos);
}
