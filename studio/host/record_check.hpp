// What may stand in one record that a plugin pushes, looked at by itself.
#pragma once

#include <array>
#include <optional>

#include "sdk/abi.h"
#include "sdk/built.hpp"
#include "studio/host/fault.hpp"

namespace quadrille {

/// What is wrong with a record's numbers and codes: numbers finite, places and measures within farthest_m, diameters above
/// 0, balloons no larger than largest_balloon_m, codes known, masses and quantities from 0 to what limits.hpp says. Its texts are not looked at. The sentence goes on from the record's name.
std::optional<Fault> fault_of(const quadrille_balloon& record);
std::optional<Fault> fault_of(const quadrille_cluster& record);
std::optional<Fault> fault_of(const quadrille_spine_point& record);
std::optional<Fault> fault_of(const quadrille_frame_node& record);
std::optional<Fault> fault_of(const quadrille_frame_member& record);
std::optional<Fault> fault_of(const quadrille_support& record);
std::optional<Fault> fault_of(const quadrille_tie_point& record);
std::optional<Fault> fault_of(const quadrille_supply& record);
std::optional<Fault> fault_of(const quadrille_work& record);
std::optional<Fault> fault_of(const quadrille_anchoring& record);
std::optional<Fault> fault_of(const quadrille_message& record);
std::optional<Fault> fault_of(const quadrille_fact& record);

/// The texts of a record, for those that have some.
template <class Record>
std::array<const char*, 0> texts_of(const Record&) {
  return {};
}
inline std::array<const char*, 1> texts_of(const quadrille_tie_point& r) { return {r.label}; }
inline std::array<const char*, 3> texts_of(const quadrille_supply& r) { return {r.key, r.label, r.unit}; }
inline std::array<const char*, 2> texts_of(const quadrille_work& r) { return {r.key, r.label}; }
inline std::array<const char*, 4> texts_of(const quadrille_anchoring& r) { return {r.key, r.text, r.reason, r.source}; }
/// The remedy may be missing: older plugins push none.
inline std::array<const char*, 3> texts_of(const quadrille_message& r) {
  return {r.key, r.text, r.remedy == nullptr ? "" : r.remedy};
}
inline std::array<const char*, 1> texts_of(const quadrille_fact& r) { return {r.key}; }

/// What the records of a piece say of each other: nodes, clusters and numbers that are referred to exist, cluster
/// numbers are unique, places along the spine rise from 0, members have a length.
std::optional<Fault> fault_between(const Piece& piece);

}  // namespace quadrille
