// The figures of order, air and power.
#include "studio/model/figures.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <set>
#include <stdexcept>
#include <string>

#include "studio/model/rates.hpp"

namespace quadrille {
namespace {

TEST_CASE("every figure has a range that holds its standard, a source, and a key of its own") {
  std::set<std::string> keys;
  for (const HouseFigure& figure : all_figures()) {
    CAPTURE(figure.key);
    CHECK(keys.insert(figure.key).second);
    CHECK(figure.least <= figure.standard);
    CHECK(figure.standard <= figure.most);
    CHECK(std::string(figure.source) != "");
    CHECK(std::string(figure.label) != "");
    CHECK(find_rate(figure.key) == nullptr);  // they share a list in the house
  }
}

TEST_CASE("the house's own figure counts, within its range") {
  House house;
  CHECK(figure_of(house, "voltage-drop") == 0.03);
  house.rates["voltage-drop"] = 0.05;
  CHECK(figure_of(house, "voltage-drop") == 0.05);
  house.rates["voltage-drop"] = 7;
  CHECK(figure_of(house, "voltage-drop") == 0.1);
  house.rates["voltage-drop"] = std::nan("");
  CHECK(figure_of(house, "voltage-drop") == 0.03);
  CHECK_THROWS_AS(figure_of(house, "voltage"), std::invalid_argument);
}

}  // namespace
}  // namespace quadrille
