#include "studio/host/record_check.hpp"

#include <cmath>
#include <initializer_list>
#include <set>
#include <span>
#include <string>

#include "sdk/number.hpp"
#include "studio/host/limits.hpp"

namespace quadrille {
namespace {

using Faulty = std::optional<Fault>;

Fault broken(std::string sentence) { return {FaultKind::broken, std::move(sentence)}; }

Faulty not_finite(std::initializer_list<double> numbers) {
  for (const double number : numbers)
    if (!std::isfinite(number)) return Fault{FaultKind::not_finite, "has a number that is not finite."};
  return std::nullopt;
}

Faulty not_a_place(std::span<const double, 3> place) {
  if (Faulty fault = not_finite({place[0], place[1], place[2]})) return fault;
  for (const double coordinate : place)
    if (std::abs(coordinate) > farthest_m)
      return broken("lies " + print_number(coordinate) + " m away; at most " + print_number(farthest_m) +
                    " m is taken.");
  return std::nullopt;
}

/// A diameter must be a micrometre or more, so that lengths can be counted in it, and no more than `most` m.
Faulty not_a_diameter(double number, double most, const char* what) {
  if (Faulty fault = not_finite({number})) return fault;
  if (number >= 1e-6 && number <= most) return std::nullopt;
  return broken(std::string("has the ") + what + " " + print_number(number) +
                " m; it must be above 0 and no more than " + print_number(most) + " m.");
}

/// An amount goes from 0 to `most`.
Faulty not_within(double number, double most, const char* what) {
  if (Faulty fault = not_finite({number})) return fault;
  if (number >= 0 && number <= most) return std::nullopt;
  return broken(std::string("has the ") + what + " " + print_number(number) +
                (number < 0 ? "; it must not be below 0." : "; at most " + print_number(most) + " is taken."));
}

Faulty unknown_code(std::uint32_t code, std::uint32_t last, const char* what) {
  if (code <= last) return std::nullopt;
  return broken(std::string("has the ") + what + " " + std::to_string(code) + "; the last one is " +
                std::to_string(last) + ".");
}

/// The first fault of several.
Faulty first(std::initializer_list<Faulty> faults) {
  for (const Faulty& fault : faults)
    if (fault) return fault;
  return std::nullopt;
}

}  // namespace

Faulty fault_of(const quadrille_balloon& r) {
  return first({not_a_place(r.centre), not_a_place(r.neck), not_a_diameter(r.diameter, largest_balloon_m, "diameter"),
                not_finite({r.nominal}), r.nominal > 0 ? Faulty() : broken("has no nominal size above 0."),
                unknown_code(r.slot, 5, "colour slot"), unknown_code(r.role, QUADRILLE_ROLE_COLLAR, "role")});
}

Faulty fault_of(const quadrille_cluster& r) {
  if (Faulty fault = first({not_a_place(r.centre), not_finite({r.axis[0], r.axis[1], r.axis[2], r.turn}),
                            not_within(r.at, farthest_m, "place along the spine")}))
    return fault;
  const double length = std::hypot(r.axis[0], r.axis[1], r.axis[2]);
  if (std::abs(length - 1) > 1e-6)
    return broken("has an axis of the length " + print_number(length) + " instead of 1.");
  if (r.number == 0) return broken("has the number 0; they count from 1.");
  if (std::abs(r.turn) > 1e6) return broken("is turned farther than is taken.");
  return std::nullopt;
}

Faulty fault_of(const quadrille_spine_point& r) {
  return first({not_a_place(r.point), not_within(r.at, farthest_m, "place along the spine")});
}

Faulty fault_of(const quadrille_frame_node& r) { return not_a_place(r.position); }

Faulty fault_of(const quadrille_frame_member& r) {
  if (Faulty fault = first(
          {not_a_diameter(r.outer, farthest_m, "outer diameter"), not_within(r.inner, farthest_m, "inner diameter"),
           not_finite({r.young, r.density, r.strength}), unknown_code(r.joint_from, QUADRILLE_JOINT_HINGE, "joint"),
           unknown_code(r.rest, QUADRILLE_REST_STRAIGHT, "shape at rest")}))
    return fault;
  if (r.inner >= r.outer) return broken("has an inner diameter that is not below the outer one.");
  if (!(r.young > 0) || !(r.density > 0) || !(r.strength > 0))
    return broken("has a modulus, density or strength that is not above 0.");
  return std::nullopt;
}

Faulty fault_of(const quadrille_support& r) {
  return first({unknown_code(r.kind, QUADRILLE_SUPPORT_SURFACE, "kind of support"), unknown_code(r.turns, 1, "turning"),
                not_within(r.width, farthest_m, "width"), not_within(r.depth, farthest_m, "depth"),
                not_within(r.own_mass, most_mass_kg, "mass"), not_within(r.ballast, most_mass_kg, "ballast"),
                not_within(r.ballast_limit, most_mass_kg, "ballast limit")});
}

Faulty fault_of(const quadrille_tie_point& r) {
  return first({not_a_place(r.point), unknown_code(r.purpose, QUADRILLE_TIE_SIDE, "purpose")});
}

Faulty fault_of(const quadrille_supply& r) { return not_within(r.quantity, most_quantity, "quantity"); }

Faulty fault_of(const quadrille_work& r) { return not_within(r.quantity, most_quantity, "quantity"); }

Faulty fault_of(const quadrille_anchoring& r) {
  return first({unknown_code(r.requirement, QUADRILLE_SECURE_OTHER, "requirement"),
                unknown_code(r.when, QUADRILLE_WHEN_INDOORS, "condition")});
}

Faulty fault_of(const quadrille_message& r) { return unknown_code(r.severity, QUADRILLE_REFUSAL, "severity"); }

Faulty fault_of(const quadrille_fact& r) { return not_finite({r.number}); }

std::optional<Fault> fault_between(const Piece& piece) {
  std::set<std::uint32_t> clusters;
  for (const Cluster& cluster : piece.clusters)
    if (!clusters.insert(cluster.number).second)
      return broken("two clusters have the number " + std::to_string(cluster.number) + ".");
  for (const Balloon& balloon : piece.balloons)
    if (balloon.cluster != 0 && !clusters.contains(balloon.cluster))
      return broken("a balloon belongs to cluster " + std::to_string(balloon.cluster) + ", which is not there.");

  const std::size_t nodes = piece.frame.nodes.size();
  const auto no_node = [nodes](const char* what, std::uint32_t node) -> Faulty {
    if (node < nodes) return std::nullopt;
    return broken(std::string(what) + " refers to node " + std::to_string(node) + ", but there are only " +
                  std::to_string(nodes) + ", counted from 0.");
  };
  for (const FrameMember& member : piece.frame.members) {
    if (Faulty fault = first({no_node("a frame member", member.from), no_node("a frame member", member.to)}))
      return fault;
    if ((piece.frame.nodes[member.from] - piece.frame.nodes[member.to]).norm() <= 0)
      return broken("the frame member from node " + std::to_string(member.from) + " to node " +
                    std::to_string(member.to) + " has no length.");
  }
  for (const Support& support : piece.supports)
    if (Faulty fault = no_node("a support", support.node)) return fault;
  for (const TiePoint& tie : piece.tie_points)
    if (Faulty fault = no_node("a tie point", tie.node)) return fault;

  if (!piece.spine.empty() && piece.spine.front().at_m > 1e-9) return broken("the spine does not begin at 0.");
  for (std::size_t i = 1; i < piece.spine.size(); ++i)
    if (piece.spine[i].at_m < piece.spine[i - 1].at_m)
      return broken("point " + std::to_string(i + 1) + " of the spine lies before the one ahead of it.");
  return std::nullopt;
}

}  // namespace quadrille
