// The lines of the lists in words, the same at the terminal, in the window and on paper.
#pragma once

#include <string>

#include "studio/model/house.hpp"
#include "studio/model/lengths.hpp"
#include "studio/takeoff/air.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/supply_order.hpp"

namespace quadrille {

/// The name of a balloon's size: "11 in".
std::string print_nominal(double inches);

/// What a balloon is inflated to, to a tenth: "9.0 in" or "22.9 cm".
std::string print_inflated(double metres, LengthStyle lengths);

/// How much of a supply: "7", "14' 9\"" or "4.50 m", "22.0 lb" or "10.0 kg", "0.7 gal" or "2.5 l".
std::string print_quantity(const SupplyLine& line, LengthStyle lengths);

/// "2 × 100 + 1 × 50"; "from stock", "from the packs above", "no colour chosen", "not sold in this size" where nothing is
/// bought.
std::string print_packs(const BalloonLine& line);

/// The same for a bag.
std::string print_packs(const BalloonBag& bag);

/// How the spares are reckoned, in two sentences: "Spares: so many that each colour and size runs short in at most 5 of
/// 100 builds, where 2 in 100 balloons fail (5 in: 3, 36 in: 5, metallic: 3), spares too; at least 1 of each. …"; the
/// second says what that comes to for the whole event, unless `count` has no balloons.
std::string print_spare_rule(const House& house, const EventCount& count);

/// A cost: "14.95 USD", or "not known", which is not free.
std::string print_cost(const std::optional<Minor>& cost, const std::string& currency);

/// A quantity of a supply as print_quantity does.
std::string print_quantity(double quantity, const std::string& unit, LengthStyle lengths);

/// How a supply is come by: "from stock", "2 kits' + 1 from stock", "buy 2 × 100 m", "buy 3", "buy 20 (no price)".
std::string print_source(const SupplyOrder& line, LengthStyle lengths);

/// "reused" or "used up", for what is in the house's list; empty for what is not.
std::string print_use(const SupplyOrder& line);

/// Air: "1234 l" or "43.6 cu ft" (1 cu ft = 28.316846592 l).
std::string print_air(double litres, LengthStyle lengths);

/// Energy: "85 Wh", "1.2 kWh"; rounded up, so that what is asked for is enough.
std::string print_watt_hours(double watt_hours);

/// How long a machine runs: "40 s", "12 min", "2 h 05 min"; rounded up.
std::string print_running(double seconds);

/// How its counts are to be taken: "as last calculated", "not built", or empty where they are those of its build.
std::string print_state(const PieceCount& piece);

}  // namespace quadrille
