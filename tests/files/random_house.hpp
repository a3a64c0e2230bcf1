// Random houses that a file can hold, with hostile texts and numbers.
#pragma once

#include "random_event.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

inline double above_zero(double most) { return number(1e-9, most); }
inline Minor money() { return whole<Minor>(0, 999'999'999'999'999); }
inline Minor pack_price() { return whole<Minor>(0, highest_pack_price + 1); }
inline PartsPerMillion share(PartsPerMillion most = 10'000'000) { return whole<PartsPerMillion>(0, most + 1); }
/// A key that no other of its list bears.
inline std::string any_key(int number) { return "k" + std::to_string(number) + *any_text(); }
inline std::string any_date() { return *rc::gen::element<std::string>("", "2028-02-29", "1999-12-31"); }

inline Pricing any_pricing() {
  Pricing pricing;
  for (Minor* amount :
       {&pricing.wage_per_hour, &pricing.charge_per_hour, &pricing.delivery_base, &pricing.delivery_per_km,
        &pricing.travel_cost_per_km, &pricing.minimum, &pricing.deposit_above})
    *amount = money();
  for (PartsPerMillion* part : {&pricing.markup_balloons, &pricing.markup_supplies, &pricing.markup_labour,
                                &pricing.tax_pieces, &pricing.tax_delivery, &pricing.tax_work, &pricing.tax_rental})
    *part = share();
  pricing.deposit = share(1'000'000);
  pricing.prices_with_tax = *rc::gen::arbitrary<bool>();
  pricing.valid_days = whole(1, 3651);
  return pricing;
}

inline FrameKit any_kit(int number_of) {
  FrameKit kit;
  kit.key = any_key(number_of);
  kit.name = *any_text();
  kit.on_hand = whole(0, 100);
  kit.rental_minor = money();
  kit.kept_where = *any_text();
  for (int i = whole(0, 3); i > 0; --i) kit.parts.push_back({any_key(i), above_zero(1e6)});
  return kit;
}

inline RepertoirePiece any_repertoire_piece(int number_of) {
  const PlacedPiece placed = any_piece("p");
  return {any_key(number_of), placed.name,        placed.type, placed.values,
          placed.colours,     placed.price_minor, placed.note, {}};
}

inline JobRecord any_job() {
  JobRecord job;
  job.date = any_date();
  job.title = *any_text();
  for (int i = whole(0, 4); i > 0; --i) {
    const int which = whole(1, 4);
    if (which & 1) job.planned_s.insert_or_assign(any_key(i), number(0, 1e7));
    if (which & 2) job.actual_s.insert_or_assign(any_key(i), number(0, 1e7));
  }
  return job;
}

inline BalloonStock any_stock(int number_of) {
  BalloonStock stock{{any_key(number_of), any_key(1)}, above_zero(1000), whole<std::int64_t>(0, 1'000'000'001), {}, {}};
  for (int i = whole(0, 3); i > 0; --i)
    stock.packs.push_back({stock.nominal_in, whole(1, 1000) * 10 + i, pack_price()});
  return stock;
}

inline House any_house() {
  House house = standard_house(*rc::gen::element<std::string>("USD", "JPY", "KWD", "CLF"));
  house.name = *any_text();
  house.contact = *any_text();
  house.crew = whole(1, 21);
  house.short_chance = number(1e-6, 0.5);
  house.ballast_fill = static_cast<BallastFill>(whole(0, 2));
  house.container_l = above_zero(10'000);
  for (int i = whole(0, 4); i > 0; --i) house.rates.insert_or_assign(any_key(i), above_zero(1e6));
  house.pricing = any_pricing();
  if (*rc::gen::arbitrary<bool>()) {
    house.inflators.clear();
    for (int i = whole(0, 3); i > 0; --i)
      house.inflators.push_back({any_key(i),
                                 *any_text(),
                                 above_zero(1000),
                                 whole(1, 101),
                                 number(0, 1e5),
                                 above_zero(1000),
                                 *any_text(),
                                 {}});
    if (!house.inflators.empty()) house.inflator = house.inflators.back().key;
    house.failures.clear();
    for (int i = whole(0, 3); i > 0; --i)
      house.failures.push_back({i * 0.1, static_cast<Finish>(whole(0, 4)), number(0, 0.9), {}});
    house.supplies.clear();
    for (int i = whole(0, 3); i > 0; --i)
      house.supplies.push_back({any_key(i),
                                *any_text(),
                                above_zero(1e6),
                                pack_price(),
                                number(0, 1e6),
                                *rc::gen::arbitrary<bool>(),
                                money(),
                                number(0, 1e4),
                                *any_text(),
                                {}});
  }
  for (int i = whole(0, 3); i > 0; --i) house.balloons.push_back(any_stock(i));
  for (int i = whole(0, 3); i > 0; --i) house.kits.push_back(any_kit(i));
  for (int i = whole(0, 3); i > 0; --i) house.repertoire.push_back(any_repertoire_piece(i));
  for (int i = whole(0, 3); i > 0; --i)
    house.packings.push_back(
        {above_zero(1000), above_zero(10), whole(1, 13), above_zero(3), above_zero(3), any_date(), *any_text(), {}});
  for (int i = whole(0, 3); i > 0; --i) house.jobs.push_back(any_job());
  return house;
}

}  // namespace quadrille
