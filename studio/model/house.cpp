// Looking up in the house.
#include "studio/model/house.hpp"

namespace quadrille {
namespace {

/// True where `stem` is the key or its beginning up to a '-'.
bool begins(std::string_view key, std::string_view stem) {
  return key.starts_with(stem) && (key.size() == stem.size() || key[stem.size()] == '-') && !stem.empty();
}

}  // namespace

const SupplyStock* find_supply(const House& house, std::string_view supply_key) {
  const SupplyStock* best = nullptr;
  for (const SupplyStock& supply : house.supplies)
    if (begins(supply_key, supply.key) && (best == nullptr || supply.key.size() > best->key.size())) best = &supply;
  return best;
}

const Inflator* inflator_in_use(const House& house) {
  for (const Inflator& inflator : house.inflators)
    if (inflator.key == house.inflator) return &inflator;
  return house.inflators.empty() ? nullptr : &house.inflators.front();
}

double failure_rate(const House& house, double nominal_in, Finish finish) {
  double rate = 0.02;
  int best = -1;
  for (const FailureRate& entry : house.failures) {
    const bool by_size = entry.nominal_in != 0, by_finish = entry.finish.has_value();
    if ((by_size && entry.nominal_in != nominal_in) || (by_finish && *entry.finish != finish)) continue;
    const int special = (by_size ? 2 : 0) + (by_finish ? 1 : 0);
    if (special <= best) continue;
    best = special;
    rate = entry.rate;
  }
  return rate;
}

}  // namespace quadrille
