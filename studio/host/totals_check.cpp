// What a built piece says of itself against its geometry: clusters, spine, facts.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <set>

#include "sdk/quoted.hpp"
#include "studio/host/conformance.hpp"

namespace quadrille {
namespace {

std::string fault_of_clusters(const Piece& piece) {
  std::map<std::uint32_t, std::set<std::uint32_t>> places;
  for (const Balloon& balloon : piece.balloons)
    if (balloon.cluster != 0 && !places[balloon.cluster].insert(balloon.place).second)
      return "two balloons of cluster " + std::to_string(balloon.cluster) + " have the place " +
             std::to_string(balloon.place) + ".";
  const double length = piece.spine.empty() ? 0 : piece.spine.back().at_m;
  for (std::size_t i = 0; i < piece.clusters.size(); ++i) {
    const Cluster& cluster = piece.clusters[i];
    const std::string name = "cluster " + std::to_string(cluster.number);
    if (cluster.number != i + 1) return name + " comes where number " + std::to_string(i + 1) + " should.";
    if (!places.contains(cluster.number)) return name + " has no balloons.";
    if (!piece.spine.empty() && cluster.at_m > length + 1e-6) return name + " lies beyond the end of the spine.";
  }
  return {};
}

std::string fault_of_spine(const Piece& piece) {
  double polyline = 0;
  for (std::size_t i = 1; i < piece.spine.size(); ++i) {
    const double chord = (piece.spine[i].point - piece.spine[i - 1].point).norm();
    if (chord > piece.spine[i].at_m - piece.spine[i - 1].at_m + 1e-6)
      return "points " + std::to_string(i) + " and " + std::to_string(i + 1) +
             " of the spine are farther apart than their places along it say.";
    polyline += chord;
  }
  if (piece.spine.size() > 1 && piece.spine.back().at_m > polyline * 1.01 + 1e-6)
    return "the spine is said to be longer than the line through its points.";
  return {};
}

std::string fault_of_facts(const Piece& piece) {
  for (const Fact& fact : piece.facts) {
    if (fact.key == "balloons" && fact.number != static_cast<double>(piece.balloons.size()))
      return "the fact 'balloons' is not the number of balloons.";
    if (fact.key == "clusters" && fact.number != static_cast<double>(piece.clusters.size()))
      return "the fact 'clusters' is not the number of clusters.";
  }
  return {};
}

}  // namespace

std::string fault_of_totals(const PieceType& type, const Piece& piece) {
  for (const auto check : {fault_of_clusters, fault_of_spine, fault_of_facts})
    if (std::string fault = check(piece); !fault.empty()) return fault;
  std::set<std::string> keys;
  for (const AnchoringRule& rule : piece.anchoring)
    if (!keys.insert(rule.key).second) return "two anchoring rules have the key " + quoted(rule.key) + ".";
  for (const Message& message : piece.messages)
    if (!message.key.empty() && type.find(message.key) == nullptr)
      return "a message blames the parameter " + quoted(message.key) + ", which there is not.";
  return {};
}

}  // namespace quadrille
