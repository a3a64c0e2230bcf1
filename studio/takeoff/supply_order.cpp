#include "studio/takeoff/supply_order.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

#include "sdk/number.hpp"
#include "studio/takeoff/placing.hpp"

namespace quadrille {
namespace {

constexpr double most_packs = 1e12;
constexpr std::int64_t most_kits = 10'000;  // of one kind; no event takes as many

/// A sum of supplies that is off by less than this share is the same.
constexpr double same = 1e-9;

bool stands_for(std::string_view stem, std::string_view key) {
  return !stem.empty() && key.starts_with(stem) && (key.size() == stem.size() || key[stem.size()] == '-');
}

/// Whole numbers of `size` that hold `quantity`; the rounding of sums asks for no further one.
std::int64_t whole_numbers(double quantity, double size) {
  const double number = quantity / size;
  if (!(number > same)) return 0;
  return static_cast<std::int64_t>(std::min(most_packs, std::ceil(number * (1 - same))));
}

std::optional<Minor> times(std::int64_t number, Minor price) {
  const __int128 product = static_cast<__int128>(number) * price;
  return product <= highest_amount && product >= 0 ? std::optional(static_cast<Minor>(product)) : std::nullopt;
}

void add_to(Minor& sum, const std::optional<Minor>& amount) {
  if (amount && *amount <= highest_amount - sum) sum += *amount;
}

/// "…-8.0kg" is 8.0 kg.
std::optional<double> mass_in_key(std::string_view key) {
  if (!key.ends_with("kg")) return std::nullopt;
  key.remove_suffix(2);
  const auto kilograms = parse_number(key.substr(key.rfind('-') + 1));
  return kilograms && *kilograms >= 0 ? kilograms : std::nullopt;
}

class SuppliesPlan {
 public:
  SuppliesPlan(std::span<const SupplyLine> supplies, const House& house) : house_(house) {
    plan_.currency = house.currency;
    for (const SupplyLine& supply : supplies) {
      if (supply.key == ballast_key && supply.unit == "kg") continue;
      SupplyOrder& line = plan_.lines.emplace_back();
      line.key = supply.key;
      line.name = supply.name.empty() ? supply.key : supply.name;
      line.unit = supply.unit;
      line.needed = std::isfinite(supply.quantity) ? std::max(0.0, supply.quantity) : 0;
    }
  }

  SuppliesOrder made() && {
    for (const FrameKit& kit : house_.kits) take_kits(kit);
    for (SupplyOrder& line : plan_.lines) order(line);
    return std::move(plan_);
  }

 private:
  static double open(const SupplyOrder& line) { return line.needed - line.from_kits; }

  /// Takes a whole kit where all its parts are needed; false where one is not.
  bool take_kit(const FrameKit& kit) {
    std::vector<double> taken(plan_.lines.size(), 0);
    for (const FrameKit::Part& part : kit.parts) {
      double missing = part.quantity;
      for (std::size_t i = 0; i < plan_.lines.size() && missing > 0; ++i) {
        const SupplyOrder& line = plan_.lines[i];
        if (!stands_for(part.supply, line.key)) continue;
        const double share = std::min(missing, open(line) - taken[i]);
        taken[i] += share;
        missing -= share;
      }
      if (missing > same * part.quantity) return false;
    }
    for (std::size_t i = 0; i < taken.size(); ++i) plan_.lines[i].from_kits += taken[i];
    return true;
  }

  void take_kits(const FrameKit& kit) {
    if (std::ranges::none_of(kit.parts, [](const FrameKit::Part& part) { return part.quantity > 0; })) return;
    std::int64_t kits = 0;
    while (kits < std::min(kit.on_hand, most_kits) && take_kit(kit)) ++kits;
    if (kits == 0) return;
    const Minor rental = times(kits, kit.rental_minor).value_or(0);
    add_to(plan_.rental_minor, rental);
    plan_.kits.push_back({kit.key, kit.name.empty() ? kit.key : kit.name, kits, rental, kit.kept_where});
  }

  void order(SupplyOrder& line) {
    const SupplyStock* const entry = find_supply(house_, line.key);
    double unit_kg = 0;
    if (entry != nullptr) {
      double& shelf = shelves_.try_emplace(entry, std::max(0.0, entry->on_hand)).first->second;
      if (!entry->name.empty() && entry->key == line.key) line.name = entry->name;
      line.in_stock = std::max(0.0, entry->on_hand);
      line.on_hand = std::min(shelf, open(line));
      shelf -= line.on_hand;
      line.reused = entry->reused;
      line.kept_where = entry->kept_where;
      line.pack = entry->pack > 0 ? entry->pack : 1;
      unit_kg = std::max(0.0, entry->mass_kg);
      if (line.reused) line.rental_minor = times(whole_numbers(open(line), 1), entry->rental_minor).value_or(0);
    }
    line.to_buy = std::max(0.0, open(line) - line.on_hand);
    if (entry != nullptr) {
      line.packs = whole_numbers(line.to_buy, line.pack);
      line.cost_minor = times(line.packs, entry->price_minor);
    } else if (line.key == "ballast-water" || line.to_buy == 0) {
      line.cost_minor = 0;
    }
    if (line.key == "ballast-water" || line.unit == "kg") unit_kg = 1;
    line.mass_kg = line.needed * mass_in_key(line.key).value_or(unit_kg);
    add_to(plan_.cost_minor, line.cost_minor);
    add_to(plan_.rental_minor, line.rental_minor);
    plan_.mass_kg += line.mass_kg;
  }

  const House& house_;
  SuppliesOrder plan_;
  std::map<const SupplyStock*, double> shelves_;  // what is left of each entry
};

}  // namespace

bool is_pulled(const SupplyOrder& line) { return line.needed > line.from_kits && line.key != "ballast-water"; }

SuppliesOrder order_supplies(std::span<const SupplyLine> supplies, const House& house) {
  return SuppliesPlan(supplies, house).made();
}

}  // namespace quadrille
