// What a job costs the decorator: balloons, supplies, labour and the road, for each piece and in all.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "studio/labour/day_plan.hpp"
#include "studio/model/event.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/supply_order.hpp"

namespace quadrille {

/// What a quote is made from; all of one event. The pieces borrowed live as long as the call.
struct QuoteInput {
  const Event& event;
  const EventCount& count;
  const SuppliesOrder& supplies;
  const DayPlan& plan;
  std::span<const Palette> palettes;
  const House& house;
};

/// One piece's part of the costs, in minor units of the event's currency.
struct PieceCost {
  std::string piece;  ///< id
  Minor balloons_minor = 0, supplies_minor = 0, labour_minor = 0;
  std::int64_t work_s = 0;           ///< of inflating, making, mounting: frames and securing are the job's set-up
  std::vector<std::string> unknown;  ///< what has no price and is in none of these
  Minor all_minor() const { return balloons_minor + supplies_minor + labour_minor; }
};

struct JobCosts {
  std::vector<PieceCost> pieces;  ///< in the order of EventCount::pieces
  Minor balloons_minor = 0, supplies_minor = 0, labour_minor = 0, travel_minor = 0;
  std::vector<std::string> unknown;    ///< what has no price, each once
  std::int64_t site_s = 0, all_s = 0;  ///< of all people: DayPlan::site_presence_s, all_presence_s
  std::int64_t set_up_s = 0;           ///< work of load-in, frames, bases, securing, last check
  std::int64_t strike_s = 0;           ///< work after the event, at the venue
  Minor hardware_minor = 0;            ///< of what is reused but has to be bought first: no cost of this job
};

/// The longest that all people together may take by a plan that is reckoned with [s]: some 278,000 hours.
inline constexpr std::int64_t longest_plan_s = 1'000'000'000;

/// The costs of an event as its count and its plan have it.
///
/// Balloons: whole packs at the least cost for what is used and its spares, as if the shelf were empty: what is taken
/// from it was paid for once and will be bought again. A bag's cost goes over its pieces by the balloons they use.
/// Supplies that are used up: by the quantity, since what is left of a spool serves the next job; they go over their
/// pieces by quantity. What is reused costs nothing here; hardware_minor has what of it is still to be bought.
/// Labour: each piece's by its work; the job's by the time that people are there, at home and on the road, waiting with
/// the rest. The road: there and back.
///
/// A price in another currency than the event's is not known. Where the house's is another, only balloons with prices
/// in the event's are reckoned. Throws std::overflow_error beyond highest_amount, and std::invalid_argument for a plan
/// beyond longest_plan_s.
JobCosts costs_of(const QuoteInput& input);

/// There and back [m], rounded; 0 where the way is not known.
std::int64_t metres_there_and_back(const Event& event);

}  // namespace quadrille
