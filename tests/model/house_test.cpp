// Looking up in the house, and the standard house.
#include "studio/model/house.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace quadrille;

TEST_CASE("a supply is found by its key, or by the longest beginning of it") {
  House house;
  for (const char* const key : {"rod", "rod-glass-fibre", "rod-glass-fibre-8mm-1500mm", "stake"}) {
    SupplyStock supply;
    supply.key = key;
    house.supplies.push_back(supply);
  }
  CHECK(find_supply(house, "rod-glass-fibre-8mm-1500mm")->key == "rod-glass-fibre-8mm-1500mm");
  CHECK(find_supply(house, "rod-glass-fibre-10mm-1500mm")->key == "rod-glass-fibre");
  CHECK(find_supply(house, "rod-glass-fibreboard")->key == "rod");
  CHECK(find_supply(house, "stake")->key == "stake");
  CHECK(find_supply(house, "stakes") == nullptr);
  CHECK(find_supply(house, "") == nullptr);
}

TEST_CASE("the failure rate that fits best counts: size and finish, then size, then finish, then any") {
  House house;
  CHECK(failure_rate(house, 11, Finish::matte) == 0.02);
  house.failures = {{0, Finish::pearl, 0.04, {}},
                    {11, std::nullopt, 0.05, {}},
                    {0, std::nullopt, 0.03, {}},
                    {11, Finish::pearl, 0.06, {}}};
  CHECK(failure_rate(house, 11, Finish::pearl) == 0.06);
  CHECK(failure_rate(house, 11, Finish::clear) == 0.05);
  CHECK(failure_rate(house, 5, Finish::pearl) == 0.04);
  CHECK(failure_rate(house, 5, Finish::clear) == 0.03);
}

TEST_CASE("the inflator in use is the one that is named, else the first") {
  House house;
  CHECK(inflator_in_use(house) == nullptr);
  house = standard_house();
  CHECK(inflator_in_use(house)->key == "two-nozzle");
  house.inflator = "hand-pump";
  CHECK(inflator_in_use(house)->key == "hand-pump");
  house.inflator = "lost";
  CHECK(inflator_in_use(house)->key == "two-nozzle");
}

TEST_CASE("the standard house has inflators for the outlets where its currency is used: pounds once drew 120 V") {
  CHECK(inflator_in_use(standard_house("USD"))->volts == 120);
  CHECK(inflator_in_use(standard_house("GBP"))->volts == 230);
  CHECK(inflator_in_use(standard_house("EUR"))->volts == 230);
}

TEST_CASE("the standard house asks the same in whole units of every currency") {
  const House dollars = standard_house("USD"), yen = standard_house("JPY"), dinars = standard_house("KWD");
  CHECK(dollars.pricing.wage_per_hour == 2500);
  CHECK(yen.pricing.wage_per_hour == 25);
  CHECK(dinars.pricing.wage_per_hour == 25'000);
  std::set<std::string> keys;
  for (const SupplyStock& supply : dollars.supplies) {
    CHECK_MESSAGE(keys.insert(supply.key).second, supply.key);
    CHECK(supply.pack > 0);
    CHECK(supply.price_minor > 0);
    CHECK((supply.reused || supply.rental_minor == 0));
  }
}
