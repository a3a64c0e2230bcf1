// All that is taken off an event at once: the count, the order, air and power.
#pragma once

#include <span>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/air.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/power.hpp"
#include "studio/takeoff/supply_order.hpp"

namespace quadrille {

struct EventOrder {
  EventCount count;
  SuppliesOrder supplies;
  AirNeed air;
  std::vector<AreaPower> power;
};

EventOrder order_event(const Event& event, const BuiltEvent& built, std::span<const Palette> palettes,
                       const House& house);

/// What there is to say of the order, of heat and of power, in this sequence; `order` is the event's.
Findings order_event_findings(const Event& event, const EventOrder& order, std::span<const Palette> palettes,
                              const House& house);

}  // namespace quadrille
