// The words of the house file, and the ranges in which its numbers can be meant.
#pragma once

#include <array>

#include "studio/files/words.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

inline constexpr std::array<Word<BallastFill>, 2> ballast_words{
    {{BallastFill::water, "water"}, {BallastFill::sand, "sand"}}};

inline constexpr Range pack_price_range{0, static_cast<double>(highest_pack_price), money_range.unit};
inline constexpr Range pack_count_range{1, 1e6, "balloons in a pack"};
inline constexpr Range pack_quantity_range{0, 1e6, "in the supply's unit", true};
inline constexpr Range quantity_range{0, 1e6, "in the supply's unit"};
inline constexpr Range part_range{0, 1e6, "in the supply's unit", true};
inline constexpr Range unit_mass_range{0, 1e4, "kilograms of one unit"};
inline constexpr Range sold_size_range{0, 1'000, "inches", true};
inline constexpr Range inflated_range{0, 10, "metres", true};
inline constexpr Range failure_range{0, 0.9, "of all balloons; 0.02 is 2 in 100"};
inline constexpr Range short_chance_range{0.000001, 0.5, "of running short; 0.05 is 5 in 100"};
inline constexpr Range rate_range{0, 1e6, "in the rate's unit", true};
inline constexpr Range no_rate_range{0, 1e6, "in the rate's unit"};
inline constexpr Range flow_range{0, 1'000, "litres per second", true};
inline constexpr Range nozzle_range{1, 100, "nozzles"};
inline constexpr Range power_range{0, 100'000, "watts"};
inline constexpr Range voltage_range{0, 1'000, "volts", true};
inline constexpr Range container_range{0, 10'000, "litres", true};
inline constexpr Range deposit_range{0, 1'000'000, "parts per million; 500000 is 50 %"};
inline constexpr Range days_range{1, 3'650, "days"};
inline constexpr Range cluster_range{1, 12, "balloons"};
inline constexpr Range packing_range{0, 3, "of what hard spheres take", true};
inline constexpr Range seconds_range{0, 1e7, "seconds"};

}  // namespace quadrille
