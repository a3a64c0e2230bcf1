#include "studio/takeoff/event_order.hpp"

#include <algorithm>
#include <iterator>

#include "studio/takeoff/air_findings.hpp"
#include "studio/takeoff/order_findings.hpp"

namespace quadrille {

EventOrder order_event(const Event& event, const BuiltEvent& built, std::span<const Palette> palettes,
                       const House& house) {
  EventOrder order;
  order.count = count_event(event, built, palettes, house);
  order.supplies = order_supplies(order.count.supplies, house);
  order.air = air_of(event, order.count, house);
  order.power = power_of(event, order.air, house);
  return order;
}

Findings order_event_findings(const Event& event, const EventOrder& order, std::span<const Palette> palettes,
                              const House& house) {
  Findings findings = order_findings(event, order.count, order.supplies, palettes, house);
  for (Findings more :
       {air_findings(event, order.count, palettes, house), power_findings(event, order.power, order.air, house)})
    std::ranges::move(more, std::back_inserter(findings));
  return findings;
}

}  // namespace quadrille
