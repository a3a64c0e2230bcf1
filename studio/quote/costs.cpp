#include "studio/quote/costs.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "studio/quote/charges.hpp"
#include "studio/takeoff/market.hpp"
#include "studio/takeoff/packs.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr std::int64_t highest_factor = 1'000'000'000;  // of `scaled` and `split`

/// A quantity in thousandths of its unit, so that money is only multiplied by whole numbers.
std::optional<std::int64_t> thousandths(double quantity) {
  if (!(quantity >= 0 && quantity * 1000 < static_cast<double>(highest_factor))) return std::nullopt;
  return std::llround(quantity * 1000);
}

/// The frame is the job's set-up.
bool is_dressing(const Task& task) {
  return !task.piece.empty() && (task.phase == Phase::build || task.phase == Phase::day_before) && !task.of_frame;
}

class Costing {
 public:
  explicit Costing(const QuoteInput& input) : in_(input) {
    for (const PieceCount& piece : in_.count.pieces) costs_.pieces.push_back({piece.id, 0, 0, 0, 0, {}});
  }

  JobCosts made() && {
    for (const BalloonBag& bag : in_.count.bags) balloons(bag);
    if (in_.house.currency == in_.event.currency) {
      for (const SupplyOrder& line : in_.supplies.lines) supplies(line);
      work();
      costs_.labour_minor = scaled(in_.house.pricing.wage_per_hour, costs_.all_s, 3600);
      costs_.travel_minor = scaled(in_.house.pricing.travel_cost_per_km, metres_there_and_back(in_.event), 1000);
    }
    for (std::size_t i = 0; i < costs_.pieces.size(); ++i)
      if (in_.count.pieces[i].as_last_calculated) costs_.pieces[i].unknown.push_back("supplies and frame");
    return std::move(costs_);
  }

 private:
  /// Says of every piece with a part that `what` has no price.
  void leave(const std::string& what, const std::vector<std::int64_t>& parts) {
    costs_.unknown.push_back(what);
    for (std::size_t i = 0; i < parts.size(); ++i)
      if (parts[i] > 0) costs_.pieces[i].unknown.push_back(what);
  }

  /// Shares `cost` out to the pieces by their parts.
  void share(Minor cost, const std::vector<std::int64_t>& parts, Minor PieceCost::*of) {
    if (std::ranges::all_of(parts, [](std::int64_t part) { return part == 0; })) return;
    const std::vector<Minor> shares = split(cost, parts);
    for (std::size_t i = 0; i < shares.size(); ++i) costs_.pieces[i].*of = added(costs_.pieces[i].*of, shares[i]);
  }

  std::optional<Minor> price_of(const BalloonBag& bag) const {
    const Market market = market_of(bag.colour, bag.nominal_in, in_.palettes, in_.house);
    if (market.currency != in_.event.currency) return std::nullopt;
    const auto bought = cheapest_packs(bag.used + bag.spares, market.packs);
    if (bought.empty()) return std::nullopt;
    Minor sum = 0;
    for (const BoughtPacks& packs : bought) sum = added(sum, scaled(packs.price_minor, packs.packs, 1));
    return sum;
  }

  void balloons(const BalloonBag& bag) {
    if (bag.used == 0) return;
    std::vector<std::int64_t> parts;
    for (const PieceCount& piece : in_.count.pieces) {
      std::int64_t used = 0;
      for (const BalloonLine& line : piece.lines)
        if (is_in(line, bag)) used += line.used;
      parts.push_back(used);
    }
    const auto cost = price_of(bag);
    if (!cost) return leave(bag.colour_name + " " + print_nominal(bag.nominal_in), parts);
    costs_.balloons_minor = added(costs_.balloons_minor, *cost);
    share(*cost, parts, &PieceCost::balloons_minor);
  }

  void supplies(const SupplyOrder& line) {
    if (line.reused) {
      if (line.cost_minor) costs_.hardware_minor = added(costs_.hardware_minor, *line.cost_minor);
      return;
    }
    if (line.key == "ballast-water" || line.needed <= 0) return;
    std::vector<std::int64_t> parts;
    for (const PieceCount& piece : in_.count.pieces) {
      double quantity = 0;
      for (const SupplyLine& supply : piece.supplies)
        if (supply.key == line.key) quantity += supply.quantity;
      parts.push_back(thousandths(quantity).value_or(0));
    }
    const SupplyStock* const entry = find_supply(in_.house, line.key);
    const auto needed = thousandths(line.needed), pack = thousandths(line.pack);
    if (entry == nullptr || !needed || !pack || *pack == 0) return leave(line.name, parts);
    const Minor cost = scaled(entry->price_minor, *needed, *pack);
    costs_.supplies_minor = added(costs_.supplies_minor, cost);
    share(cost, parts, &PieceCost::supplies_minor);
  }

  void work() {
    costs_.site_s = in_.plan.site_presence_s();
    costs_.all_s = in_.plan.all_presence_s();
    for (const PlannedTask& planned : in_.plan.tasks) {
      const Task& task = planned.task;
      if (is_dressing(task)) {
        const auto piece = std::ranges::find(costs_.pieces, task.piece, &PieceCost::piece);
        if (piece != costs_.pieces.end()) piece->work_s += planned.work_s();
      } else if (task.phase == Phase::strike) {
        costs_.strike_s += planned.work_s();
      } else if (task.phase == Phase::load_in || task.phase == Phase::build || task.phase == Phase::secure ||
                 task.phase == Phase::check) {
        costs_.set_up_s += planned.work_s();
      }
    }
    for (PieceCost& piece : costs_.pieces)
      piece.labour_minor = scaled(in_.house.pricing.wage_per_hour, piece.work_s, 3600);
  }

  const QuoteInput& in_;
  JobCosts costs_;
};

}  // namespace

JobCosts costs_of(const QuoteInput& input) { return Costing(input).made(); }

std::int64_t metres_there_and_back(const Event& event) {
  constexpr double longest = 20'000'000;  // no road is longer
  return 2 * std::llround(std::clamp(event.terms.travel_m.value_or(0), 0.0, longest));
}

}  // namespace quadrille
