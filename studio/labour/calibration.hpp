// Rates learned from finished jobs: planned against actual seconds.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "studio/labour/tasks.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

/// The record of a job that is done, to be kept in House::jobs: `planned_s` is what the *standard* rates of time and
/// speed give for it, with the house's inflator and loads, whatever the house's own rates are. So a record stays true
/// when rates change, and reading it twice changes nothing. `actual_s` is left to be filled in by what a watch said,
/// under the same keys; rates that were not timed are left out of it.
JobRecord record_of(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                    const WorkOptions& options = {});

struct CalibratedRate {
  std::string key;
  double held = 0;      ///< what the house has now
  double proposed = 0;  ///< what its jobs say, to three significant digits
  double ratio = 1;     ///< the weighted median of actual ÷ planned
  double trust = 0;     ///< how far it goes from the standard to what was measured, 0 to 1
  std::int64_t jobs = 0;
  bool operator==(const CalibratedRate&) const = default;
};

/// Rates as the house's jobs say, one for each rate of work, walking or driving that a job timed; sorted by key.
///
/// For each job in which both are above 0, ratio = actual ÷ planned. Of the ratios the weighted median counts, the
/// weight being the planned seconds: one day on which all went wrong, or a slip of the pen, moves little. (Sorted by
/// ratio, the first at which the weights reach more than half of their sum; where they reach exactly half, the mean of
/// it and the next.) Few jobs are believed little: with n jobs' worth of weight, n = (Σw)² ÷ Σw² (Kish's effective
/// number), the rate goes n ÷ (n + 2) of the way from the standard to the standard × ratio; our choice. A speed is
/// divided by that factor. For inflating, the air's own time ("air-medium"…) is taken off both first, since it is the
/// inflator's. The result is drawn into the rate's range. Seconds that are not finite are passed over, and so is work
/// without a rate of its own in all_rates().
std::vector<CalibratedRate> calibrated_rates(const House& house);

/// The house with these rates; one that is its standard is left out of House::rates.
House with_rates(House house, const std::vector<CalibratedRate>& rates);

}  // namespace quadrille
