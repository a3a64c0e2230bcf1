#include "studio/house_form/house_currency.hpp"

#include <stdexcept>
#include <string>

#include "sdk/quoted.hpp"

namespace quadrille {
namespace {

std::int64_t power_of_ten(int digits) {
  std::int64_t power = 1;
  for (; digits > 0; --digits) power *= 10;
  return power;
}

}  // namespace

Result<House> with_currency(House house, std::string_view code) {
  const auto digits = minor_digits(code);
  if (!digits)
    return Result<House>::bad("Currency: a code of ISO 4217 such as USD, EUR or JPY would be accepted, not " +
                              quoted(code) + ".");
  const std::int64_t was = power_of_ten(minor_digits(house.currency).value_or(2)), is = power_of_ten(*digits);
  const auto carry = [&](Minor& amount, Minor most) {
    amount = scaled(amount, is, was);
    if (amount > most) throw std::overflow_error("an amount");
  };
  Pricing& pricing = house.pricing;
  try {
    for (Minor* amount :
         {&pricing.wage_per_hour, &pricing.charge_per_hour, &pricing.delivery_base, &pricing.delivery_per_km,
          &pricing.travel_cost_per_km, &pricing.minimum, &pricing.deposit_above})
      carry(*amount, highest_amount - 1);
    for (BalloonStock& stock : house.balloons)
      for (Pack& pack : stock.packs) carry(pack.price_minor, highest_pack_price);
    for (SupplyStock& supply : house.supplies) {
      carry(supply.price_minor, highest_pack_price);
      carry(supply.rental_minor, highest_amount - 1);
    }
    for (FrameKit& kit : house.kits) carry(kit.rental_minor, highest_amount - 1);
    for (RepertoirePiece& piece : house.repertoire)
      if (piece.price_minor) carry(*piece.price_minor, highest_amount - 1);
  } catch (const std::overflow_error&) {
    return Result<House>::bad("Currency: an amount of the house would be too large in " + std::string(code) + ".");
  }
  house.currency = code;
  return Result<House>::good(std::move(house));
}

}  // namespace quadrille
