// The order of supplies: what the kits and the shelf give, what is bought in packs, what it costs and weighs.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "studio/model/house.hpp"
#include "studio/model/money.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// One supply: needed = from_kits + on_hand + what has to be bought; always from_kits + on_hand + bought() >= needed.
struct SupplyOrder {
  std::string key, name, unit;
  double needed = 0;
  double from_kits = 0;  ///< in whole kits that are taken along
  double in_stock = 0;  ///< loose on the shelf, before this event and before what other supplies took of the same entry
  double on_hand = 0;   ///< taken from it: at most needed - from_kits
  double pack = 0;      ///< in the supply's unit; 0 where the house has no entry for it
  std::int64_t packs = 0;  ///< to buy
  double to_buy = 0;       ///< without rounding to packs
  /// Of the packs, in the house's currency; 0 where nothing has to be bought or it is free, nothing where no price is
  /// known: never to be shown as free.
  std::optional<Minor> cost_minor;
  bool reused = false;     ///< comes back from the job; false = used up
  Minor rental_minor = 0;  ///< of what is reused and comes in no kit, each begun unit
  double mass_kg = 0;      ///< of all that is needed, with what comes in kits; 0 where not known
  std::string kept_where;  ///< empty = not said
  double bought() const { return pack > 0 ? static_cast<double>(packs) * pack : to_buy; }
  bool operator==(const SupplyOrder&) const = default;
};

/// Kits of one kind that are taken along.
struct KitOrder {
  std::string key, name;
  std::int64_t kits = 0;   ///< at least 1
  Minor rental_minor = 0;  ///< of all of them
  std::string kept_where;
  bool operator==(const KitOrder&) const = default;
};

struct SuppliesOrder {
  std::vector<SupplyOrder> lines;  ///< in the order of the supplies
  std::vector<KitOrder> kits;      ///< in the order of the house's
  std::string currency;            ///< the house's
  Minor cost_minor = 0;            ///< of what has a price
  Minor rental_minor = 0;          ///< of lines and kits
  double mass_kg = 0;              ///< of what has a mass, with the water
  bool operator==(const SuppliesOrder&) const = default;
};

/// True for what is taken off a shelf or bought by itself: neither the water out of the tap, nor what comes in kits
/// alone.
bool is_pulled(const SupplyOrder& line);

/// The order for `supplies`, such as EventCount::supplies. "ballast" is left out: its containers and filling stand for
/// it. Whole kits are taken first, while the house has them and all their parts are needed; a part stands for the
/// supplies whose key is its own or begins with it at a '-'. An entry of the house that stands for several supplies is
/// one shelf for all of them. Water is free. The mass of one piece is what the key ends in ("-8kg"), else the entry's.
/// Sums beyond highest_amount are not known and left out of the totals.
SuppliesOrder order_supplies(std::span<const SupplyLine> supplies, const House& house);

}  // namespace quadrille
