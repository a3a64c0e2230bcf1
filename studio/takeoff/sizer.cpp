#include "studio/takeoff/sizer.hpp"

#include <functional>
#include <map>
#include <utility>

#include "sdk/vec.hpp"
#include "studio/takeoff/air.hpp"

namespace quadrille {

std::vector<SizerLine> sizer_lines(std::span<const LastBuilt::Count> counts, const Site& site) {
  const auto climate = climate_of(site);
  const double shrunk = climate ? growth(climate->event, climate->blown) : 1;
  std::map<std::pair<double, double>, std::int64_t, std::greater<>> sizes;
  for (const LastBuilt::Count& count : counts) sizes[{count.nominal_in, count.inflated_m}] += count.balloons;
  std::vector<SizerLine> lines;
  for (const auto& [size, balloons] : sizes)
    lines.push_back({size.first, size.second, size.second * shrunk, pi * size.second * shrunk, balloons});
  return lines;
}

}  // namespace quadrille
