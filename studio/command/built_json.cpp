// Record by record; names of codes stand beside those of sdk/built.hpp.
#include "studio/command/built_json.hpp"

#include <vector>

#include "sdk/pattern.hpp"

namespace quadrille {
namespace {

/// The name of a code, which a plugin may have made up.
template <class Code, std::size_t N>
std::string_view named(Code code, const std::string_view (&names)[N]) {
  const auto index = static_cast<std::size_t>(code);
  return index < N ? names[index] : "unknown";
}

constexpr std::string_view severities[] = {"note", "warning", "refusal"};
constexpr std::string_view statuses[] = {"ok", "bad_parameter", "infeasible", "internal"};
constexpr std::string_view roles[] = {"body", "filler", "accent", "topper", "collar"};
constexpr std::string_view joints[] = {"rigid", "sleeve", "hinge"};
constexpr std::string_view rests[] = {"as_drawn", "straight"};
constexpr std::string_view support_kinds[] = {"plate", "socket", "hook", "surface"};
constexpr std::string_view purposes[] = {"front", "back", "side"};
constexpr std::string_view conditions[] = {"always", "outdoors", "walkway", "hard_ground", "soft_ground", "indoors"};
constexpr std::string_view requirements[] = {
    "clusters_to_frame", "clusters_together", "front_and_back", "ballast", "joints", "clearance", "other"};

Json json_of(const Vec3& point) { return {point.x(), point.y(), point.z()}; }

Json json_of(const Message& message) {
  return {{"severity", named(message.severity, severities)}, {"key", message.key}, {"text", message.text}};
}

Json json_of(const FrameMember& member) {
  return {{"from", member.from},
          {"to", member.to},
          {"outer_m", member.outer_m},
          {"inner_m", member.inner_m},
          {"young_pa", member.young_pa},
          {"density_kg_m3", member.density_kg_m3},
          {"strength_pa", member.strength_pa},
          {"joint_from", named(member.joint_from, joints)},
          {"rest", named(member.rest, rests)}};
}

Json json_of(const Cluster& cluster) {
  return {{"number", cluster.number},
          {"at_m", cluster.at_m},
          {"centre_m", json_of(cluster.centre)},
          {"axis", json_of(cluster.axis)},
          {"turn_deg", cluster.turn_rad * 180 / pi}};
}

Json json_of(const Balloon& balloon) {
  return {{"centre_m", json_of(balloon.centre)},
          {"neck_m", json_of(balloon.neck)},
          {"diameter_m", balloon.diameter_m},
          {"nominal_in", balloon.nominal_in},
          {"slot", std::string(1, slot_letter(balloon.slot))},
          {"cluster", balloon.cluster},
          {"place", balloon.place},
          {"role", named(balloon.role, roles)}};
}

Json json_of(const Support& support) {
  return {{"kind", named(support.kind, support_kinds)},
          {"node", support.node},
          {"turns", support.turns},
          {"width_m", support.width_m},
          {"depth_m", support.depth_m},
          {"own_mass_kg", support.own_mass_kg},
          {"ballast_kg", support.ballast_kg},
          {"ballast_limit_kg", support.ballast_limit_kg}};
}

Json json_of(const TiePoint& tie) {
  return {{"node", tie.node},
          {"purpose", named(tie.purpose, purposes)},
          {"point_m", json_of(tie.point)},
          {"label", tie.label}};
}

Json json_of(const Supply& supply) {
  return {{"key", supply.key}, {"label", supply.label}, {"quantity", supply.quantity}, {"unit", supply.unit}};
}

Json json_of(const Work& work) { return {{"key", work.key}, {"label", work.label}, {"quantity", work.quantity}}; }

Json json_of(const AnchoringRule& rule) {
  return {{"requirement", named(rule.requirement, requirements)},
          {"when", named(rule.when, conditions)},
          {"key", rule.key},
          {"text", rule.text},
          {"reason", rule.reason},
          {"source", rule.source}};
}

Json json_of(const SpinePoint& point) { return {{"at_m", point.at_m}, {"point_m", json_of(point.point)}}; }

Json json_of(const Stretch& stretch) { return {stretch.from_m, stretch.to_m}; }

template <class Item>
Json list_of(const std::vector<Item>& items) {
  Json list = Json::array();
  for (const Item& item : items) list.push_back(json_of(item));
  return list;
}

}  // namespace

std::string_view name_of(Status status) { return named(status, statuses); }

Json json_of(const std::string& type, const BuiltPiece& built) {
  const Piece& piece = built.piece;
  Json json{{"type", type}, {"status", name_of(built.status)}, {"messages", list_of(piece.messages)}};
  json["size"] = {
      {"width_m", built.box.width_m()}, {"height_m", built.box.height_m()}, {"depth_m", built.box.depth_m()}};
  json["hidden_share"] = built.hidden_share;
  json["bare"] = list_of(built.bare);
  json["spine_m"] = built.spine_m;
  json["frame"] = {{"nodes", list_of(piece.frame.nodes)}, {"members", list_of(piece.frame.members)}};
  json["spine"] = list_of(piece.spine);
  json["clusters"] = list_of(piece.clusters);
  json["balloons"] = list_of(piece.balloons);
  json["supports"] = list_of(piece.supports);
  json["tie_points"] = list_of(piece.tie_points);
  json["supplies"] = list_of(piece.supplies);
  json["work"] = list_of(piece.work);
  json["anchoring"] = list_of(piece.anchoring);
  Json facts = Json::object();
  for (const Fact& fact : piece.facts) facts[fact.key] = fact.number;
  json["facts"] = facts;
  return json;
}

}  // namespace quadrille
