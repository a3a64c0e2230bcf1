// What count, plan, quote and check reckon of a prepared event, each with what there is to say of it.
#pragma once

#include <string>

#include "studio/command/prepare.hpp"
#include "studio/labour/day_plan.hpp"
#include "studio/quote/quote_event.hpp"
#include "studio/takeoff/event_order.hpp"

namespace quadrille {

EventOrder order_of(const PreparedEvent& prepared);
/// Of the order, of heat and of power.
Findings findings_of(const PreparedEvent& prepared, const EventOrder& order);

DayPlan plan_of(const PreparedEvent& prepared, const EventCount& count, const PlanOptions& options = {});

/// What the quote of the event is made from; borrows its arguments.
QuoteInput quote_input(const PreparedEvent& prepared, const EventOrder& order, const DayPlan& plan);

/// Whose figures they are, in a sentence.
std::string print_house(const LoadedHouse& house);

void append(Findings& all, Findings more);

}  // namespace quadrille
