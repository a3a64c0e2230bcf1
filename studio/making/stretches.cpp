#include "studio/making/stretches.hpp"

#include <algorithm>
#include <cmath>

#include "studio/making/spine_place.hpp"

namespace quadrille {

std::vector<MakingStretch> stretches_of(const Piece& piece, const ClusterChart& chart,
                                        const std::vector<LooseBalloon>& loose, double step_m) {
  const double length = spine_length_m(piece);
  const auto count = static_cast<std::size_t>(std::clamp(std::ceil(length / step_m - 1e-9), 1.0, 1000.0));
  std::vector<MakingStretch> stretches;
  for (std::size_t i = 0; i < count; ++i)
    stretches.push_back(
        {static_cast<double>(i) * step_m, i + 1 == count ? length : static_cast<double>(i + 1) * step_m, {}, {}});
  const auto stretch_at = [&](double at_m) -> MakingStretch& {
    const double index = std::clamp(std::floor(at_m / step_m + 1e-9), 0.0, static_cast<double>(count - 1));
    return stretches[static_cast<std::size_t>(index)];
  };
  for (std::size_t i = 0; i < chart.clusters.size(); ++i) stretch_at(chart.clusters[i].at_m).clusters.push_back(i);
  for (std::size_t i = 0; i < loose.size(); ++i) stretch_at(loose[i].at_m).loose.push_back(i);
  return stretches;
}

std::vector<RunningMark> running_marks(const Piece& piece, const ClusterChart& chart, double step_m) {
  std::vector<RunningMark> marks;
  if (chart.clusters.empty()) return marks;
  const auto nearest = [&](double at_m) {
    return std::ranges::min_element(chart.clusters, {},
                                    [at_m](const ChartCluster& c) { return std::abs(c.at_m - at_m); });
  };
  double least = chart.clusters.front().at_m, most = least;
  for (const ChartCluster& cluster : chart.clusters) {
    least = std::min(least, cluster.at_m);
    most = std::max(most, cluster.at_m);
  }
  const double half =
      chart.clusters.size() > 1 ? (most - least) / static_cast<double>(chart.clusters.size() - 1) / 2 : 0;
  const double length = std::max(spine_length_m(piece), most);
  for (double at = step_m; at <= length + 1e-9 && marks.size() < 1000; at += step_m) {
    const double mark = std::round(at / step_m) * step_m;
    if (mark < least - half || mark > most + half) continue;
    const auto cluster = nearest(mark);
    marks.push_back({mark, cluster->number, cluster->at_m});
  }
  return marks;
}

}  // namespace quadrille
