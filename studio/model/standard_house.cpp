// The house that serves where the decorator has none of their own. Prices are invented; the rest says where it is from.
#include <array>
#include <cmath>

#include "studio/model/house.hpp"

namespace quadrille {
namespace {

/// Prices here are in hundredths of a whole unit of any currency; masses from memory of such goods.
struct StandardSupply {
  const char* key;
  double pack;
  std::int64_t price, rental;
  bool reused;
  double mass_kg;
};

constexpr std::array<StandardSupply, 22> standard_supplies{{
    {"rod-glass-fibre", 1, 1200, 150, true, 0.18},
    {"rod-aluminium", 1, 1600, 150, true, 0.45},
    {"rod-steel", 1, 1400, 150, true, 1.4},
    {"rod-pvc", 1, 500, 75, true, 0.5},
    {"sleeve", 1, 300, 25, true, 0.05},
    {"corner", 1, 900, 100, true, 0.2},
    {"socket", 1, 800, 75, true, 0.3},
    {"base-plate", 1, 4500, 500, true, 8},
    {"ballast-container", 1, 700, 100, true, 0.4},
    {"ballast-sand", 25, 500, 0, false, 1},
    {"stake", 1, 600, 75, true, 0.6},
    {"dead-weight", 1, 1500, 200, true, 0.5},
    {"hook", 1, 120, 0, false, 0.02},
    {"cable-tie", 50, 450, 0, false, 0.002},
    {"cluster-line", 100, 700, 0, false, 0.003},
    {"garland-line", 100, 500, 0, false, 0.002},
    {"clusters-together-line", 100, 700, 0, false, 0.003},
    {"securing-line", 30, 1200, 0, false, 0.01},
    {"balloon-strip", 7.5, 400, 0, false, 0.01},
    {"glue-dot", 500, 800, 0, false, 0.0005},
    {"joint-tape", 20, 600, 0, false, 0.02},
    {"topper-rod", 1, 500, 50, true, 0.2},
}};

/// True for the currencies of countries whose outlets give 100 to 127 V (from memory).
constexpr bool has_120_volts(std::string_view currency) {
  constexpr std::string_view list = "USD CAD MXN JPY TWD COP VES CRC DOP GTQ HNL NIO PAB CUP HTG BSD BZD JMD BMD KYD";
  return currency.size() == 3 && list.find(currency) != std::string_view::npos;
}

}  // namespace

House standard_house(std::string_view currency) {
  House house;
  house.currency = currency;
  const int digits = minor_digits(currency).value_or(2);
  const auto money = [&](std::int64_t hundredths) {
    std::int64_t unit = 1;
    for (int i = 0; i < digits; ++i) unit *= 10;
    return scaled(hundredths, unit, 100);
  };
  house.pricing = {.wage_per_hour = money(2500),
                   .charge_per_hour = money(5000),
                   .markup_balloons = 1'500'000,
                   .markup_supplies = 1'500'000,
                   .markup_labour = 1'500'000,
                   .delivery_base = money(3500),
                   .delivery_per_km = money(120),
                   .travel_cost_per_km = money(40),
                   .minimum = money(20'000),
                   .prices_with_tax = false,
                   .tax_pieces = 0,
                   .tax_delivery = 0,
                   .tax_work = 0,
                   .tax_rental = 0,
                   .deposit = 500'000,
                   .deposit_above = money(30'000),
                   .valid_days = 30};
  const char* const memory = "typical of such devices, from memory";
  const double volts = has_120_volts(currency) ? 120 : 230;
  house.inflators = {{"two-nozzle", "Electric inflator, two nozzles", 10, 2, 1200, volts, memory, {}},
                     {"one-nozzle", "Electric inflator, one nozzle", 8, 1, 600, volts, memory, {}},
                     {"hand-pump", "Hand pump", 0.7, 1, 0, volts, memory, {}}};
  house.failures = {{0, std::nullopt, 0.02, {}},
                    {5, std::nullopt, 0.03, {}},
                    {36, std::nullopt, 0.05, {}},
                    {0, Finish::metallic, 0.03, {}}};
  for (const StandardSupply& supply : standard_supplies) {
    SupplyStock& stock = house.supplies.emplace_back();
    stock.key = supply.key;
    stock.pack = supply.pack;
    stock.price_minor = money(supply.price);
    stock.reused = supply.reused;
    stock.rental_minor = money(supply.rental);
    stock.mass_kg = supply.mass_kg;
  }
  return house;
}

}  // namespace quadrille
