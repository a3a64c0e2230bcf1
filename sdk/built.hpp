// What a piece type builds: balloons, clusters, frame, supports, supplies… as plain values in SI units.
// These are the C++ twins of the records in abi.h, used on both sides of the plugin boundary; frame and units are those
// of abi.h.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sdk/vec.hpp"

namespace quadrille {

/// Codes equal those of abi.h.
enum class Role : std::uint32_t { body, filler, accent, topper, collar };
enum class Joint : std::uint32_t { rigid, sleeve, hinge };
enum class Rest : std::uint32_t { as_drawn, straight };
enum class SupportKind : std::uint32_t { plate, socket, hook, surface };
enum class TiePurpose : std::uint32_t { front, back, side };
enum class When : std::uint32_t { always, outdoors, walkway, hard_ground, soft_ground, indoors };
enum class Requirement : std::uint32_t {
  clusters_to_frame,
  clusters_together,
  front_and_back,
  ballast,
  joints,
  clearance,
  other
};
enum class Severity : std::uint32_t { note, warning, refusal };
/// What a message is about, where the studio would else say it itself.
enum class Topic : std::uint32_t { other, bare_frame };
enum class Status : std::uint32_t { ok, bad_parameter, infeasible, internal };

struct Balloon {
  Vec3 centre = Vec3::Zero();  ///< m
  Vec3 neck = Vec3::Zero();    ///< m, where the neck is tied
  double diameter_m = 0;       ///< inflated
  double nominal_in = 0;       ///< nominal size, inches
  std::uint32_t slot = 0;      ///< colour slot, 0 = A
  std::uint32_t cluster = 0;   ///< number of its cluster, from 1; 0 = none
  std::uint32_t place = 0;     ///< place in the cluster, from 0
  Role role = Role::body;
  bool operator==(const Balloon&) const = default;
};

struct Cluster {
  std::uint32_t number = 0;  ///< from 1, in the order of building
  double at_m = 0;           ///< arc length of its centre along the spine
  Vec3 centre = Vec3::Zero();
  Vec3 axis = Vec3::UnitZ();  ///< unit tangent of the spine
  double turn_rad = 0;        ///< angle of place 0 about the axis, accumulated over the clusters
  bool operator==(const Cluster&) const = default;
};

struct SpinePoint {
  double at_m = 0;
  Vec3 point = Vec3::Zero();
  bool operator==(const SpinePoint&) const = default;
};

/// A round tube or rod between two nodes of the frame.
struct FrameMember {
  std::uint32_t from = 0, to = 0;
  Joint joint_from = Joint::rigid;  ///< how it is joined to what comes before
  Rest rest = Rest::as_drawn;       ///< its stress-free shape
  double outer_m = 0, inner_m = 0;  ///< diameters; inner 0 = solid
  double young_pa = 0, density_kg_m3 = 0, strength_pa = 0;
  bool operator==(const FrameMember&) const = default;
};

struct Frame {
  std::vector<Vec3> nodes;  ///< m
  std::vector<FrameMember> members;
  bool operator==(const Frame&) const = default;
};

struct Support {
  SupportKind kind = SupportKind::plate;
  std::uint32_t node = 0;
  bool turns = false;               ///< the foot may turn freely in it
  double width_m = 0, depth_m = 0;  ///< of the plate
  double own_mass_kg = 0, ballast_kg = 0, ballast_limit_kg = 0;
  bool operator==(const Support&) const = default;
};

struct TiePoint {
  std::uint32_t node = 0;
  TiePurpose purpose = TiePurpose::front;
  Vec3 point = Vec3::Zero();
  std::string label;
  bool operator==(const TiePoint&) const = default;
};

struct Supply {
  std::string key, label, unit;  ///< unit: "piece", "m", "kg" or "l"
  double quantity = 0;
  bool operator==(const Supply&) const = default;
};

struct Work {
  std::string key, label;
  double quantity = 0;
  bool operator==(const Work&) const = default;
};

struct AnchoringRule {
  Requirement requirement = Requirement::other;
  When when = When::always;
  std::string key, text, reason, source;
  bool operator==(const AnchoringRule&) const = default;
};

struct Message {
  Severity severity = Severity::note;
  std::string key;  ///< the parameter to blame, or empty
  std::string text;
  Topic topic = Topic::other;
  std::string remedy = {};  ///< one change that is known to mend it, "key=value" in its written form; or empty
  bool operator==(const Message&) const = default;
};

struct Fact {
  std::string key;  ///< snake_case with the unit in the name
  double number = 0;
  bool operator==(const Fact&) const = default;
};

/// One built piece: everything a piece type says about one set of values.
struct Piece {
  std::vector<Balloon> balloons;
  std::vector<Cluster> clusters;
  std::vector<SpinePoint> spine;
  Frame frame;
  std::vector<Support> supports;
  std::vector<TiePoint> tie_points;
  std::vector<Supply> supplies;
  std::vector<Work> work;
  std::vector<AnchoringRule> anchoring;
  std::vector<Message> messages;
  std::vector<Fact> facts;
  bool operator==(const Piece&) const = default;
};

}  // namespace quadrille
