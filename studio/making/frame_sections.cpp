#include "studio/making/frame_sections.hpp"

#include <cmath>

#include "sdk/number.hpp"

namespace quadrille {
namespace {

/// Longer than its chord by more than this share a section counts as bent: 0.2 % is a rise of 3 % of its length.
constexpr double bent_share = 0.002;

void finish(FrameSection& section, const Frame& frame) {
  const double chord = (frame.nodes[section.nodes.back()] - frame.nodes[section.nodes.front()]).norm();
  section.bent = !section.springs && section.length_m > chord * (1 + bent_share);
}

bool goes_on(const FrameSection& section, const FrameMember& member) {
  return section.nodes.back() == member.from && member.joint_from == Joint::rigid &&
         section.outer_m == member.outer_m && section.inner_m == member.inner_m &&
         section.springs == (member.rest == Rest::straight);
}

}  // namespace

FrameSections frame_sections(const Frame& frame) {
  FrameSections found;
  for (const FrameMember& member : frame.members) {
    if (member.from >= frame.nodes.size() || member.to >= frame.nodes.size()) continue;
    if (found.sections.empty() || !goes_on(found.sections.back(), member)) {
      if (member.joint_from != Joint::rigid) found.joints.push_back({member.from, member.joint_from});
      FrameSection section;
      section.nodes = {member.from};
      section.outer_m = member.outer_m, section.inner_m = member.inner_m;
      section.springs = member.rest == Rest::straight;
      found.sections.push_back(std::move(section));
    }
    FrameSection& section = found.sections.back();
    section.nodes.push_back(member.to);
    section.length_m += (frame.nodes[member.to] - frame.nodes[member.from]).norm();
  }
  for (FrameSection& section : found.sections) finish(section, frame);
  return found;
}

std::string print_tube(const FrameSection& section) {
  const auto millimetres = [](double metres) { return print_number(std::round(metres * 1e4) / 10); };
  if (!(section.inner_m > 0)) return millimetres(section.outer_m) + " mm";
  return millimetres(section.outer_m) + " x " + millimetres((section.outer_m - section.inner_m) / 2) + " mm";
}

}  // namespace quadrille
