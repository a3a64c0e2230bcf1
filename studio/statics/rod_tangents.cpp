#include "studio/statics/rod_tangents.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace quadrille {
namespace {

constexpr double sharpest_bend_rad = 0.6;  // a rod turning more than this at a node is two rods joined at a corner

/// A place where a bent element ends at a node.
struct End {
  std::size_t element;
  bool at_to;
};

Vec3 outward(const FrameModel& model, const End& end) {
  const FrameElement& element = model.elements[end.element];
  const Vec3 chord = model.nodes[element.to] - model.nodes[element.from];
  return (end.at_to ? Vec3(-chord) : chord).normalized();
}

/// The bent elements' ends at each node, those with a hinge left out: there each element ends by itself.
std::vector<std::vector<End>> ends_at_nodes(const FrameModel& model) {
  std::vector<std::vector<End>> ends(model.nodes.size());
  for (std::size_t i = 0; i < model.elements.size(); ++i) {
    const FrameElement& element = model.elements[i];
    if (element.rest != Rest::straight) continue;
    if (!element.hinge_from) ends[element.from].push_back({i, false});
    if (!element.hinge_to) ends[element.to].push_back({i, true});
  }
  return ends;
}

/// The end in which the rod goes on beyond `end`, or nothing where it stops.
const End* beyond(const FrameModel& model, const std::vector<std::vector<End>>& ends, const End& end) {
  const FrameElement& element = model.elements[end.element];
  if (end.at_to ? element.hinge_to : element.hinge_from) return nullptr;
  const auto& here = ends[end.at_to ? element.to : element.from];
  if (here.size() != 2) return nullptr;
  const End& other = here[0].element == end.element ? here[1] : here[0];
  const bool bends = outward(model, end).dot(outward(model, other)) < -std::cos(sharpest_bend_rad);
  return bends ? &other : nullptr;
}

struct Sample {
  double at;
  Vec3 point;
};

/// Up to `most` nodes of the rod met on leaving a node through `first`, nearest first; those crowded against the one
/// before are passed over, because their rounding would tilt the tangent.
std::vector<Sample> walk(const FrameModel& model, const std::vector<std::vector<End>>& ends, End first, double sign,
                         std::size_t most) {
  std::vector<Sample> samples;
  double at = 0, last = 0, spacing = 0;
  for (std::size_t steps = 0; samples.size() < most && steps < 12; ++steps) {
    const FrameElement& element = model.elements[first.element];
    const std::uint32_t far = first.at_to ? element.from : element.to;
    const double length = (model.nodes[element.to] - model.nodes[element.from]).norm();
    at += length;
    spacing = std::max(spacing, length);
    const End exit{first.element, !first.at_to};
    const End* next = beyond(model, ends, exit);
    if (at - last > 0.3 * spacing || next == nullptr) {
      samples.push_back({sign * at, model.nodes[far]});
      last = at;
    }
    if (next == nullptr) break;
    first = *next;
  }
  return samples;
}

/// Derivative at 0 of the polynomial through the samples.
Vec3 slope_at_zero(const std::vector<Sample>& samples) {
  Vec3 slope = Vec3::Zero();
  for (std::size_t i = 0; i < samples.size(); ++i) {
    double weight = 0;
    for (std::size_t j = 0; j < samples.size(); ++j) {
      if (j == i) continue;
      double term = 1 / (samples[i].at - samples[j].at);
      for (std::size_t k = 0; k < samples.size(); ++k)
        if (k != i && k != j) term *= -samples[k].at / (samples[i].at - samples[k].at);
      weight += term;
    }
    slope += weight * samples[i].point;
  }
  return slope;
}

/// Direction of the rod where `end` leaves its node into the element.
Vec3 direction_at(const FrameModel& model, const std::vector<std::vector<End>>& ends, const End& end) {
  const FrameElement& element = model.elements[end.element];
  const std::uint32_t node = end.at_to ? element.to : element.from;
  const Vec3 chord = outward(model, end);
  if (node < model.tangents.size() && model.tangents[node].norm() > 0) {
    const Vec3 stated = model.tangents[node].normalized();
    return stated.dot(chord) < 0 ? Vec3(-stated) : stated;
  }
  const End* back = beyond(model, ends, end);
  std::vector<Sample> samples{{0, model.nodes[node]}};
  if (back != nullptr)
    for (const Sample& sample : walk(model, ends, *back, -1, 2)) samples.push_back(sample);
  for (const Sample& sample : walk(model, ends, end, 1, 5 - samples.size())) samples.push_back(sample);
  const Vec3 slope = slope_at_zero(samples);
  // A zigzag is no curve: the polynomial may then point anywhere.
  const bool sound = slope.allFinite() && slope.normalized().dot(chord) > std::cos(sharpest_bend_rad);
  return sound ? Vec3(slope.normalized()) : chord;
}

}  // namespace

std::vector<EndDirections> rod_tangents(const FrameModel& model) {
  const auto ends = ends_at_nodes(model);
  std::vector<EndDirections> directions(model.elements.size());
  for (std::size_t i = 0; i < model.elements.size(); ++i) {
    const FrameElement& element = model.elements[i];
    if (element.rest == Rest::straight) {
      directions[i].from = direction_at(model, ends, {i, false});
      directions[i].to = -direction_at(model, ends, {i, true});
    } else {
      directions[i].from = directions[i].to = (model.nodes[element.to] - model.nodes[element.from]).normalized();
    }
  }
  return directions;
}

}  // namespace quadrille
