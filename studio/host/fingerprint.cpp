#include "studio/host/fingerprint.hpp"

#include <bit>
#include <cstdint>
#include <type_traits>
#include <vector>

namespace quadrille {
namespace {

class Bytes {
 public:
  std::string text;

  template <class... Parts>
  void add(const Parts&... parts) {
    (put(parts), ...);
  }

 private:
  void put_bits(std::uint64_t bits) {
    for (int shift = 0; shift < 64; shift += 8) text += static_cast<char>((bits >> shift) & 0xFF);
  }
  void put(double number) { put_bits(std::bit_cast<std::uint64_t>(number)); }
  void put(const std::string& part) {
    put_bits(part.size());
    text += part;
  }
  void put(const Vec3& point) { add(point.x(), point.y(), point.z()); }
  template <class Code>
  requires(std::is_enum_v<Code> || std::is_integral_v<Code>) void put(Code code) {
    put_bits(static_cast<std::uint64_t>(code));
  }
  void put(const Balloon& b) { add(b.centre, b.neck, b.diameter_m, b.nominal_in, b.slot, b.cluster, b.place, b.role); }
  void put(const Cluster& c) { add(c.number, c.at_m, c.centre, c.axis, c.turn_rad); }
  void put(const SpinePoint& p) { add(p.at_m, p.point); }
  void put(const FrameMember& m) {
    add(m.from, m.to, m.joint_from, m.rest, m.outer_m, m.inner_m, m.young_pa, m.density_kg_m3, m.strength_pa);
  }
  void put(const Support& s) {
    add(s.kind, s.node, s.turns, s.width_m, s.depth_m, s.own_mass_kg, s.ballast_kg, s.ballast_limit_kg);
  }
  void put(const TiePoint& t) { add(t.node, t.purpose, t.point, t.label); }
  void put(const Supply& s) { add(s.key, s.label, s.unit, s.quantity); }
  void put(const Work& w) { add(w.key, w.label, w.quantity); }
  void put(const AnchoringRule& a) { add(a.requirement, a.when, a.key, a.text, a.reason, a.source); }
  void put(const Message& m) { add(m.severity, m.topic, m.key, m.text, m.remedy); }
  void put(const Fact& f) { add(f.key, f.number); }
  template <class Item>
  void put(const std::vector<Item>& items) {
    put_bits(items.size());
    for (const Item& item : items) put(item);
  }
};

}  // namespace

std::string bytes_of(const Piece& p) {
  Bytes bytes;
  bytes.add(p.balloons, p.clusters, p.spine, p.frame.nodes, p.frame.members, p.supports, p.tie_points, p.supplies,
            p.work, p.anchoring, p.messages, p.facts);
  return std::move(bytes.text);
}

}  // namespace quadrille
