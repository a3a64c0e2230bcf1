#include "studio/statics/frame_faults.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

#include "sdk/number.hpp"

namespace quadrille {
namespace {

constexpr double longest_m = 1000, stiffest = 1e15, shortest_m = 1e-6, largest_force = 1e9;
constexpr std::size_t most_parts = 20000;

bool within(const Vec3& vector, double most) { return vector.allFinite() && vector.cwiseAbs().maxCoeff() <= most; }

std::string numbered(const char* what, std::size_t i) { return std::string(what) + " " + std::to_string(i); }

std::string stiffness_fault(const FrameElement& element, std::size_t i) {
  for (const auto& [name, value] : {std::pair{"axial", element.axial_stiffness_n},
                                    {"bending", element.bending_stiffness_nm2},
                                    {"torsion", element.torsion_stiffness_nm2}})
    if (!(value > 0 && value <= stiffest))
      return numbered("Element", i) + " has a " + name + " stiffness of " + print_number(value) +
             ": it must be above 0 and at most 1e15.";
  if (!(element.shear_stiffness_n >= 0 && element.shear_stiffness_n <= stiffest))
    return numbered("The shear stiffness of element", i) + " must be 0 (it does not shear) or up to 1e15.";
  return {};
}

std::string element_fault(const FrameModel& model, std::size_t i) {
  const FrameElement& element = model.elements[i];
  if (element.from >= model.nodes.size() || element.to >= model.nodes.size())
    return numbered("Element", i) + " ends at a node that does not exist.";
  const double chord = (model.nodes[element.to] - model.nodes[element.from]).norm();
  if (!(chord >= shortest_m)) return numbered("Element", i) + " has no length: its ends must be 1e-6 m apart or more.";
  const double length = element.length_m;
  if (!(length >= 0 && length <= longest_m) || (length != 0 && (length < 0.5 * chord || length > 2 * chord)))
    return numbered("The unstretched length of element", i) +
           " must be 0 (as drawn) or between half and twice the distance of its ends.";
  return stiffness_fault(element, i);
}

std::string cable_fault(const FrameModel& model, std::size_t i) {
  const FrameCable& cable = model.cables[i];
  for (const CableEnd* end : {&cable.from, &cable.to}) {
    if (end->node && *end->node >= model.nodes.size())
      return numbered("Line", i) + " is tied to a node that does not exist.";
    if (!within(end->at, longest_m)) return numbered("Line", i) + " ends at no place within 1000 m.";
  }
  if (!cable.from.node && !cable.to.node) return numbered("Line", i) + " is tied to nothing of the frame.";
  if (!(cable.length_m >= 1e-3 && cable.length_m <= longest_m))
    return numbered("The unstretched length of line", i) + " must be from 1 mm to 1000 m.";
  if (!(cable.axial_stiffness_n > 0 && cable.axial_stiffness_n <= stiffest))
    return numbered("The stiffness of line", i) + " must be above 0 and at most 1e15 N.";
  return {};
}

std::string supports_fault(const FrameModel& model) {
  std::vector<bool> held(model.nodes.size());
  for (std::size_t i = 0; i < model.supports.size(); ++i) {
    const FrameSupport& support = model.supports[i];
    if (support.node >= model.nodes.size()) return numbered("Support", i) + " holds a node that does not exist.";
    if (held[support.node]) return numbered("Node", support.node) + " has more than one support.";
    held[support.node] = true;
    if (std::ranges::count(support.turns, true) == 2)
      return numbered("Support", i) + " turns about two axes: none, one or all three are possible.";
  }
  return {};
}

/// Which part of the frame each node belongs to, joined by elements and lines.
std::vector<std::size_t> parts_of(const FrameModel& model) {
  std::vector<std::size_t> part(model.nodes.size());
  std::iota(part.begin(), part.end(), std::size_t{0});
  const auto root = [&](std::size_t node) {
    while (part[node] != node) node = part[node] = part[part[node]];
    return node;
  };
  for (const FrameElement& element : model.elements) part[root(element.from)] = root(element.to);
  for (const FrameCable& cable : model.cables)
    if (cable.from.node && cable.to.node) part[root(*cable.from.node)] = root(*cable.to.node);
  for (std::size_t i = 0; i < part.size(); ++i) part[i] = root(i);
  return part;
}

std::string loose_part(const FrameModel& model) {
  const auto part = parts_of(model);
  std::vector<bool> held(model.nodes.size()), used(model.nodes.size());
  for (const FrameElement& element : model.elements) used[element.from] = used[element.to] = true;
  for (const FrameSupport& support : model.supports)
    if (std::ranges::count(support.moves, true) < 3) held[part[support.node]] = true;
  for (const FrameCable& cable : model.cables)
    for (const auto& [end, other] : {std::pair{&cable.from, &cable.to}, {&cable.to, &cable.from}})
      if (end->node && !other->node) held[part[*end->node]] = true;
  for (std::size_t i = 0; i < part.size(); ++i) {
    if (!used[i]) return numbered("Node", i) + " belongs to no element.";
    if (!held[part[i]])
      return numbered("Node", i) + " belongs to a part of the frame that no support and no line holds.";
  }
  return {};
}

}  // namespace

std::string frame_fault(const FrameModel& model) {
  if (model.elements.empty()) return "The frame has no elements.";
  if (std::max({model.nodes.size(), model.elements.size(), model.cables.size()}) > most_parts)
    return "The frame has too many parts: at most 20000 nodes, elements and lines each.";
  if (!model.tangents.empty() && model.tangents.size() != model.nodes.size())
    return "There must be one tangent per node, or none at all.";
  for (std::size_t i = 0; i < model.nodes.size(); ++i)
    if (!within(model.nodes[i], longest_m)) return numbered("Node", i) + " is at no place within 1000 m.";
  for (std::size_t i = 0; i < model.tangents.size(); ++i)
    if (!within(model.tangents[i], 1e6)) return numbered("The tangent of node", i) + " is not finite.";
  for (std::size_t i = 0; i < model.elements.size(); ++i)
    if (auto fault = element_fault(model, i); !fault.empty()) return fault;
  for (std::size_t i = 0; i < model.cables.size(); ++i)
    if (auto fault = cable_fault(model, i); !fault.empty()) return fault;
  if (auto fault = supports_fault(model); !fault.empty()) return fault;
  return loose_part(model);
}

std::string loads_fault(const FrameModel& model, const FrameLoads& loads) {
  for (std::size_t i = 0; i < loads.pushes.size(); ++i) {
    const Push& push = loads.pushes[i];
    if (push.node >= model.nodes.size()) return numbered("Push", i) + " is on a node that does not exist.";
    if (!within(push.force_n, largest_force) || !within(push.moment_nm, largest_force) ||
        !within(push.arm_m, longest_m))
      return numbered("Push", i) + " is not finite, or above 1e9 N, 1e9 Nm or an arm of 1000 m.";
  }
  for (std::size_t i = 0; i < loads.moves.size(); ++i) {
    const SupportMove& move = loads.moves[i];
    if (move.support >= model.supports.size()) return numbered("Move", i) + " is of a support that does not exist.";
    if (!within(move.shift_m, longest_m) || !(move.turn_rad.norm() <= pi + 1e-9))
      return numbered("Move", i) + " must be a shift within 1000 m and a turn of at most half a revolution.";
    if (move.turn_rad.norm() > 0 && std::ranges::count(model.supports[move.support].turns, true) > 0)
      return numbered("Move", i) + " turns a support that turns freely.";
  }
  return {};
}

}  // namespace quadrille
