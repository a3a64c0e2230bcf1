// Turns the values of built.hpp into the flat records of abi.h and back: the only place that knows both.
#pragma once

#include "sdk/abi.h"
#include "sdk/built.hpp"

namespace quadrille {

inline void copy_point(const Vec3& from, double (&to)[3]) {
  for (int axis = 0; axis < 3; ++axis) to[axis] = from[axis];
}
inline Vec3 point_of(const double (&from)[3]) { return {from[0], from[1], from[2]}; }

template <class Code>
constexpr std::uint32_t code_of(Code code) {
  return static_cast<std::uint32_t>(code);
}

inline quadrille_balloon to_record(const Balloon& b) {
  quadrille_balloon record{};
  copy_point(b.centre, record.centre);
  copy_point(b.neck, record.neck);
  record.diameter = b.diameter_m;
  record.nominal = b.nominal_in;
  record.slot = b.slot;
  record.cluster = b.cluster;
  record.place = b.place;
  record.role = code_of(b.role);
  return record;
}
inline Balloon from_record(const quadrille_balloon& r) {
  return {point_of(r.centre),       point_of(r.neck), r.diameter, r.nominal, r.slot, r.cluster, r.place,
          static_cast<Role>(r.role)};
}

inline quadrille_cluster to_record(const Cluster& c) {
  quadrille_cluster record{};
  record.number = c.number;
  record.at = c.at_m;
  copy_point(c.centre, record.centre);
  copy_point(c.axis, record.axis);
  record.turn = c.turn_rad;
  return record;
}
inline Cluster from_record(const quadrille_cluster& r) {
  return {r.number, r.at, point_of(r.centre), point_of(r.axis), r.turn};
}

inline quadrille_spine_point to_record(const SpinePoint& p) {
  quadrille_spine_point record{};
  record.at = p.at_m;
  copy_point(p.point, record.point);
  return record;
}
inline SpinePoint from_record(const quadrille_spine_point& r) { return {r.at, point_of(r.point)}; }

inline quadrille_frame_node to_record(const Vec3& node) {
  quadrille_frame_node record{};
  copy_point(node, record.position);
  return record;
}
inline Vec3 from_record(const quadrille_frame_node& r) { return point_of(r.position); }

inline quadrille_frame_member to_record(const FrameMember& m) {
  return {m.from,    m.to,       code_of(m.joint_from), code_of(m.rest), m.outer_m,
          m.inner_m, m.young_pa, m.density_kg_m3,       m.strength_pa};
}
inline FrameMember from_record(const quadrille_frame_member& r) {
  return {r.from,    r.to,      static_cast<Joint>(r.joint_from), static_cast<Rest>(r.rest), r.outer, r.inner, r.young,
          r.density, r.strength};
}

inline quadrille_support to_record(const Support& s) {
  return {code_of(s.kind), s.node,       s.turns ? 1u : 0u, 0, s.width_m, s.depth_m,
          s.own_mass_kg,   s.ballast_kg, s.ballast_limit_kg};
}
inline Support from_record(const quadrille_support& r) {
  return {
      static_cast<SupportKind>(r.kind), r.node, r.turns != 0, r.width, r.depth, r.own_mass, r.ballast, r.ballast_limit};
}

/// The records below borrow the strings of the value they are made from.
inline quadrille_tie_point to_record(const TiePoint& t) {
  quadrille_tie_point record{};
  record.node = t.node;
  record.purpose = code_of(t.purpose);
  copy_point(t.point, record.point);
  record.label = t.label.c_str();
  return record;
}
inline TiePoint from_record(const quadrille_tie_point& r) {
  return {r.node, static_cast<TiePurpose>(r.purpose), point_of(r.point), r.label};
}

inline quadrille_supply to_record(const Supply& s) {
  return {s.key.c_str(), s.label.c_str(), s.unit.c_str(), s.quantity};
}
inline Supply from_record(const quadrille_supply& r) { return {r.key, r.label, r.unit, r.quantity}; }

inline quadrille_work to_record(const Work& w) { return {w.key.c_str(), w.label.c_str(), w.quantity}; }
inline Work from_record(const quadrille_work& r) { return {r.key, r.label, r.quantity}; }

inline quadrille_anchoring to_record(const AnchoringRule& a) {
  return {code_of(a.requirement), code_of(a.when), a.key.c_str(), a.text.c_str(), a.reason.c_str(), a.source.c_str()};
}
inline AnchoringRule from_record(const quadrille_anchoring& r) {
  return {static_cast<Requirement>(r.requirement), static_cast<When>(r.when), r.key, r.text, r.reason, r.source};
}

inline quadrille_message to_record(const Message& m) {
  return {code_of(m.severity), code_of(m.topic), m.key.c_str(), m.text.c_str(), m.remedy.c_str()};
}
inline Message from_record(const quadrille_message& r) {
  const bool bare_frame = r.topic == QUADRILLE_ABOUT_BARE_FRAME;
  return {static_cast<Severity>(r.severity), r.key, r.text, bare_frame ? Topic::bare_frame : Topic::other,
          r.remedy == nullptr ? "" : r.remedy};
}

inline quadrille_fact to_record(const Fact& f) { return {f.key.c_str(), f.number}; }
inline Fact from_record(const quadrille_fact& r) { return {r.key, r.number}; }

}  // namespace quadrille
