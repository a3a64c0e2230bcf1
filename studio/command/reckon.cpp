#include "studio/command/reckon.hpp"

#include <algorithm>
#include <iterator>

namespace quadrille {

EventOrder order_of(const PreparedEvent& prepared) {
  return order_event(prepared.opened.event, prepared.built, prepared.palettes.palettes, prepared.house.house);
}

Findings findings_of(const PreparedEvent& prepared, const EventOrder& order) {
  return order_event_findings(prepared.opened.event, order, prepared.palettes.palettes, prepared.house.house);
}

DayPlan plan_of(const PreparedEvent& prepared, const EventCount& count, const PlanOptions& options) {
  return plan_event(prepared.opened.event, prepared.built, count, prepared.house.house, options);
}

QuoteInput quote_input(const PreparedEvent& prepared, const EventOrder& order, const DayPlan& plan) {
  return {prepared.opened.event, order.count, order.supplies, plan, prepared.palettes.palettes, prepared.house.house};
}

std::string print_house(const LoadedHouse& house) {
  if (house.is_standard) return "Prices, stock and rates are the standard house's; its prices are invented.";
  return "Prices, stock and rates are those of " + house.file.string() + ".";
}

void append(Findings& all, Findings more) { std::ranges::move(more, std::back_inserter(all)); }

}  // namespace quadrille
