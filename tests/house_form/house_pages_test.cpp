// The house's single figures: what stands in the fields, and what may be typed.
#include "studio/house_form/house_pages.hpp"

#include <doctest/doctest.h>

#include <map>
#include <string>

#include "studio/files/house_file.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/rates.hpp"

namespace quadrille {
namespace {

House typed(const House& house, HousePage page, const char* key, const char* text) {
  auto changed = with_house_field(house, page, key, text);
  REQUIRE_MESSAGE(changed, changed.error);
  return std::move(*changed.value);
}

std::string fault_of(const House& house, HousePage page, const char* key, const char* text) {
  return with_house_field(house, page, key, text).error;
}

HouseField field_of(const House& house, HousePage page, std::string_view key) {
  for (const HouseFieldGroup& group : page_of(house, page))
    for (const HouseField& field : group.fields)
      if (field.key == key) return field;
  FAIL("no field " << std::string(key));
  return {};
}

/// What a file gives back of a house.
House through_a_file(const House& house) {
  auto read = read_house(write_house(house), "house");
  REQUIRE_MESSAGE(read, read.error);
  House again = std::move(read->house);
  again.preserved = {};
  return again;
}

template <class Act>
void for_each_field(const House& house, Act act) {
  for (const HousePage page : house_pages)
    for (const HouseFieldGroup& group : page_of(house, page))
      for (const HouseField& field : group.fields) act(page, field);
}

}  // namespace

TEST_CASE("every rate and every figure of the house stands on exactly one page") {
  std::map<std::string, int> seen;
  for_each_field(standard_house(), [&](HousePage, const HouseField& field) { ++seen[field.key]; });
  for (const Rate& row : all_rates()) CHECK_MESSAGE(seen[row.key] == 1, row.key);
  for (const HouseFigure& row : all_figures()) CHECK_MESSAGE(seen[row.key] == 1, row.key);
  for (const auto& [key, count] : seen) CHECK_MESSAGE(count == 1, key);
}

TEST_CASE("in the standard house every figure that has a default stands at it, and has a label and a help") {
  for (const char* currency : {"USD", "JPY", "KWD"})
    for_each_field(standard_house(currency), [&](HousePage, const HouseField& field) {
      CAPTURE(field.key);
      CHECK(!field.label.empty());
      CHECK(!field.help.empty());
      CHECK(field.is_standard == field.has_standard);
      if (field.has_standard) CHECK(field.text == field.standard);
    });
}

TEST_CASE("a field's own text leaves the house as it is, however its figure was rounded to be shown") {
  House house = standard_house("EUR");
  house.short_chance = 0.0123456789;
  house.container_l = 1.0 / 3;
  house.rates["mount-cluster"] = 12.345678901234;
  for_each_field(house, [&](HousePage page, const HouseField& field) {
    CAPTURE(field.key);
    const auto same = with_house_field(house, page, field.key, field.text);
    REQUIRE(same);
    CHECK(*same == house);
  });
}

TEST_CASE("whatever a field accepts, a file holds") {
  const House house = standard_house("EUR");
  int accepted = 0;
  for_each_field(house, [&](HousePage page, const HouseField& field) {
    for (const char* text :
         {"", "0", "-1", "1", "3", "0.001", "99", "100", "1000", "12345678", "1e12", "nan", "abc", "yes"}) {
      CAPTURE(field.key);
      CAPTURE(text);
      const auto changed = with_house_field(house, page, field.key, text);
      if (!changed) {
        CHECK(!changed.error.empty());
        continue;
      }
      ++accepted;
      CHECK(through_a_file(*changed) == *changed);
    }
  });
  CHECK(accepted > 200);
}

TEST_CASE("amounts are typed as people write them, and kept in whole minor units") {
  const House house = standard_house("EUR");
  CHECK(typed(house, HousePage::prices, "wage-per-hour", "31.50").pricing.wage_per_hour == 3150);
  CHECK(typed(house, HousePage::prices, "wage-per-hour", " 31,5 ").pricing.wage_per_hour == 3150);
  CHECK(typed(standard_house("JPY"), HousePage::prices, "minimum", "20000").pricing.minimum == 20000);
  CHECK(typed(house, HousePage::prices, "tax-pieces", "8.25").pricing.tax_pieces == 82'500);
  CHECK(typed(house, HousePage::prices, "tax-pieces", "8,25 %").pricing.tax_pieces == 82'500);
  CHECK(typed(house, HousePage::prices, "prices-with-tax", "yes").pricing.prices_with_tax);
  CHECK(fault_of(house, HousePage::prices, "wage-per-hour", "31.505").starts_with("Wage: "));
  CHECK(fault_of(house, HousePage::prices, "wage-per-hour", "-1").starts_with("Wage: "));
  CHECK(fault_of(house, HousePage::prices, "deposit", "101").find("0 to 100 %") != std::string::npos);
  CHECK(fault_of(house, HousePage::prices, "valid-days", "2.5").find("whole number") != std::string::npos);
}

TEST_CASE("a rate of one's own is kept, and one typed as the default is none any more") {
  const House house = standard_house();
  const House own = typed(house, HousePage::rates, "mount-cluster", "7,5");
  CHECK(rate_of(own, "mount-cluster") == 7.5);
  const HouseField field = field_of(own, HousePage::rates, "mount-cluster");
  CHECK(field.text == "7.5");
  CHECK(!field.is_standard);
  CHECK(field.standard == "10");
  CHECK(with_house_default(own, HousePage::rates, "mount-cluster") == house);
  CHECK(typed(own, HousePage::rates, "mount-cluster", "10") == house);
  CHECK(typed(house, HousePage::rates, "mount-cluster", "(4 + 8) * 2").rates.at("mount-cluster") == 24);
  CHECK(fault_of(house, HousePage::rates, "mount-cluster", "0").find("1 to 240") != std::string::npos);
  CHECK(fault_of(house, HousePage::rates, "mount-cluster", "quick").starts_with("Mount a cluster"));
}

TEST_CASE("every default can be gone back to") {
  const House usual = standard_house("EUR");
  House own = usual;
  own.crew = 4, own.container_l = 25, own.short_chance = 0.2, own.ballast_fill = BallastFill::sand;
  own.pricing.wage_per_hour = 1, own.pricing.markup_labour = 7, own.pricing.prices_with_tax = true;
  own.pricing.valid_days = 3, own.rates = {{"drive", 60}, {"least-spares", 4}};
  CHECK(own != usual);
  House back = own;
  for_each_field(own, [&](HousePage page, const HouseField& field) {
    if (field.has_standard) back = with_house_default(back, page, field.key);
  });
  CHECK(back == usual);
}

TEST_CASE("another currency keeps the figures as people read them") {
  const House dollars = standard_house("USD");
  const House yen = typed(dollars, HousePage::business, "currency", "JPY");
  CHECK(yen.currency == "JPY");
  CHECK(dollars.pricing.wage_per_hour == 2500);  // 25.00
  CHECK(yen.pricing.wage_per_hour == 25);
  CHECK(yen.supplies.front().price_minor == 12);                                // 12.00
  const House dinars = typed(dollars, HousePage::business, "currency", "KWD");  // three digits
  CHECK(dinars.pricing.wage_per_hour == 25'000);
  CHECK(typed(dinars, HousePage::business, "currency", "USD") == dollars);
  CHECK(fault_of(dollars, HousePage::business, "currency", "gold").find("ISO 4217") != std::string::npos);
}

TEST_CASE("the inflator in use is chosen by its name") {
  const House house = standard_house();
  const HouseField field = field_of(house, HousePage::crew_and_travel, "inflator");
  REQUIRE(field.choices.size() == house.inflators.size());
  CHECK(field.text == house.inflators.front().name);
  CHECK(!field.may_be_typed);
  const House other = typed(house, HousePage::crew_and_travel, "inflator", field.choices.back().c_str());
  CHECK(inflator_in_use(other)->key == house.inflators.back().key);
  CHECK(!with_house_field(house, HousePage::crew_and_travel, "inflator", "Bellows"));
}

}  // namespace quadrille
