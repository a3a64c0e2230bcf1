// What there is to tell of the clusters that dress a line: their sizes, how far apart they stand, how long they dress.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/dressing_values.hpp"
#include "sdk/number.hpp"
#include "sdk/piece.hpp"
#include "sdk/units.hpp"

namespace quadrille {

/// The fact of this key, or nothing.
inline std::optional<double> find_fact(const Piece& piece, std::string_view key) {
  const auto found = std::ranges::find(piece.facts, key, &Fact::key);
  return found == piece.facts.end() ? std::nullopt : std::optional(found->number);
}

namespace dressing_detail {

/// Inflated diameter [m] of the body balloons of each cluster, in their order.
inline std::vector<double> diameters(const Piece& piece, const DressingValues& dressing) {
  std::vector<double> inflated(piece.clusters.size(), dressing.make.inflated_m);
  for (const Balloon& balloon : piece.balloons)
    if (balloon.cluster > 0 && balloon.cluster <= inflated.size() && balloon.role == dressing.make.role)
      inflated[balloon.cluster - 1] = balloon.diameter_m;
  return inflated;
}

inline DressingValues inflated_to(DressingValues dressing, double inflated_m) {
  dressing.make.inflated_m = inflated_m;
  return dressing;
}

/// Diameter, ring radius and thickness of one cluster; `place` goes before their keys.
inline void add_cluster_size(Piece& piece, const std::string& place, const DressingValues& dressing) {
  piece.facts.push_back({place + "inflated_m", dressing.make.inflated_m});
  piece.facts.push_back({place + "ring_radius_m", dressing.ring_radius_m()});
  piece.facts.push_back({place + "thickness_m", dressing.thickness_m()});
}

/// One spacing where the clusters stand evenly by it; else the least and the widest from centre to centre.
inline void add_spacing(Piece& piece, const DressingValues& dressing) {
  double least = dressing.spacing_m(), widest = least;
  for (std::size_t i = 1; i < piece.clusters.size(); ++i) {
    const double spacing = piece.clusters[i].at_m - piece.clusters[i - 1].at_m;
    least = i == 1 ? spacing : std::min(least, spacing);
    widest = i == 1 ? spacing : std::max(widest, spacing);
  }
  const auto is_usual = [&](double spacing) { return std::abs(spacing - dressing.spacing_m()) < 1e-9; };
  if (is_usual(least) && is_usual(widest)) {
    piece.facts.push_back({"spacing_m", dressing.spacing_m()});
    return;
  }
  piece.facts.push_back({"least_spacing_m", to_twelve_digits(least)});
  piece.facts.push_back({"widest_spacing_m", to_twelve_digits(widest)});
}

}  // namespace dressing_detail

/// The length [m] of the spine that the clusters of `piece`, numbered from 1 in their order, dress: from the first centre
/// to the last, and beyond either of them half the spacing at which clusters like it follow each other. n equal clusters,
/// evenly spaced, dress n × spacing. 0 without clusters.
inline double dressed_length_m(const Piece& piece, const DressingValues& dressing) {
  if (piece.clusters.empty()) return 0;
  const std::vector<double> inflated = dressing_detail::diameters(piece, dressing);
  const double first = dressing_detail::inflated_to(dressing, inflated.front()).spacing_m();
  const double last = dressing_detail::inflated_to(dressing, inflated.back()).spacing_m();
  return piece.clusters.back().at_m - piece.clusters.front().at_m + (first + last) / 2;
}

/// Facts of a stack of clusters, from where they stand in `piece`: tightness, snug, counts, `dressed_m` (see
/// dressed_length_m), and the balloons of the clusters per length of it, which a topper, a collar or a filler does not
/// raise. Where all clusters are equal, `inflated_m`, `ring_radius_m` and `thickness_m`; where they are not, these of the
/// first and of the last, as `foot_inflated_m`, `top_inflated_m`…. Where they stand evenly, `spacing_m`; where they do
/// not (round a corner, along a taper), `least_spacing_m` and `widest_spacing_m`.
inline void add_dressing_facts(Piece& piece, const DressingValues& dressing) {
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, number}); };
  add("tightness", dressing.tightness);
  add("snug", dressing.make.snug);
  const std::vector<double> inflated = dressing_detail::diameters(piece, dressing);
  if (std::ranges::adjacent_find(inflated, std::ranges::not_equal_to()) == inflated.end()) {
    const double all = inflated.empty() ? dressing.make.inflated_m : inflated.front();
    dressing_detail::add_cluster_size(piece, "", dressing_detail::inflated_to(dressing, all));
  } else {
    dressing_detail::add_cluster_size(piece, "foot_", dressing_detail::inflated_to(dressing, inflated.front()));
    dressing_detail::add_cluster_size(piece, "top_", dressing_detail::inflated_to(dressing, inflated.back()));
  }
  dressing_detail::add_spacing(piece, dressing);
  const double dressed_m = to_twelve_digits(dressed_length_m(piece, dressing));
  const auto in_clusters = static_cast<double>(piece.clusters.size()) * dressing.make.size;
  add("clusters", static_cast<double>(piece.clusters.size()));
  add("dressed_m", dressed_m);
  add("balloons", static_cast<double>(piece.balloons.size()));
  if (dressed_m <= 0) return;
  add("balloons_per_m", in_clusters / dressed_m);
  add("balloons_per_ft", in_clusters / dressed_m * metres_per_foot);
}

}  // namespace quadrille
