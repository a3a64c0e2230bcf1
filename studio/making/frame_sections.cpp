#include "studio/making/frame_sections.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "sdk/number.hpp"

namespace quadrille {
namespace {

/// A section counts as bent that rises over its chord by more than this share of its length, and by more than what a rod
/// gives by itself.
constexpr double bent_share = 0.005, play_m = 0.01;

/// Curvature [1/m] below which it is straight, and by how much of its mean an arc's may differ.
constexpr double straight_below = 0.02, even_share = 0.1;

/// A place at which a section changes its direction.
struct Turn {
  double angle = 0, span_m = 0;
  double curvature() const { return angle / span_m; }
};

/// What is straight before a bend of this radius that begins in a stretch of `length_m` between two nodes: on the arc's part
/// u of that stretch it has come aside by u²/2r, which is what the first of the two nodes turns by times the length.
double straight_in(double radius_m, double length_m, double first_turn) {
  return std::max(0.0, length_m - std::sqrt(2 * radius_m * length_m * first_turn));
}

/// Whether the section is straight, one arc and straight again, and that arc.
void find_arc(FrameSection& section, const Frame& frame) {
  const auto node = [&](std::size_t i) -> const Vec3& { return frame.nodes[section.nodes[i]]; };
  std::vector<double> lengths;
  for (std::size_t i = 1; i < section.nodes.size(); ++i) lengths.push_back((node(i) - node(i - 1)).norm());
  std::vector<Turn> turns;
  for (std::size_t i = 1; i + 1 < section.nodes.size(); ++i) {
    const Vec3 before = node(i) - node(i - 1), after = node(i + 1) - node(i);
    turns.push_back({std::atan2(before.cross(after).norm(), before.dot(after)), (lengths[i - 1] + lengths[i]) / 2});
  }
  const auto is_straight = [](const Turn& turn) { return turn.curvature() < straight_below; };
  std::size_t from = 0, to = turns.size();
  while (from < to && is_straight(turns[from])) ++from;
  while (to > from && is_straight(turns[to - 1])) --to;
  // Where straight goes over into the arc between two nodes, both of them turn by less.
  const bool straight_before = from > 0, straight_after = to < turns.size();
  const std::size_t first = from + (straight_before ? 2 : 0),
                    last = to - std::min(to, std::size_t{straight_after ? 2u : 0u});
  if (last < first + 2) return;
  double curvature = 0;
  for (std::size_t i = first; i < last; ++i) curvature += turns[i].curvature() / static_cast<double>(last - first);
  for (std::size_t i = first; i < last; ++i)
    if (std::abs(turns[i].curvature() - curvature) > even_share * curvature) return;
  section.radius_m = 1 / curvature;
  if (straight_before) {
    for (std::size_t i = 0; i <= from; ++i) section.straight_before_m += lengths[i];
    section.straight_before_m += straight_in(section.radius_m, lengths[from + 1], turns[from].angle);
  }
  if (straight_after) {
    for (std::size_t i = to; i < lengths.size(); ++i) section.straight_after_m += lengths[i];
    section.straight_after_m += straight_in(section.radius_m, lengths[to - 1], turns[to - 1].angle);
  }
}

void finish(FrameSection& section, const Frame& frame) {
  const Vec3 from = frame.nodes[section.nodes.front()], chord = frame.nodes[section.nodes.back()] - from;
  section.chord_m = chord.norm();
  for (const std::uint32_t index : section.nodes) {
    const Vec3 off = frame.nodes[index] - from;
    const double along = section.chord_m > 0 ? off.dot(chord) / section.chord_m : 0;
    section.rise_m = std::max(section.rise_m, std::sqrt(std::max(0.0, off.squaredNorm() - along * along)));
  }
  section.bent = !section.springs && section.rise_m > std::max(play_m, bent_share * section.length_m);
  if (section.bent) find_arc(section, frame);
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

double stock_length_m(const Piece& piece, const FrameSections& frame, const FrameSection& section) {
  double longest = 0;
  for (const FrameSection& other : frame.sections)
    if (other.outer_m == section.outer_m && other.inner_m == section.inner_m)
      longest = std::max(longest, other.length_m);
  for (const Supply& supply : piece.supplies) {
    const std::size_t dash = supply.key.rfind('-');
    if (!supply.key.starts_with("rod-") || !supply.key.ends_with("mm") || dash < 4) continue;
    const std::string_view digits = std::string_view(supply.key).substr(dash + 1, supply.key.size() - dash - 3);
    const auto millimetres = parse_number(digits);
    if (millimetres && *millimetres / 1000 > longest) longest = *millimetres / 1000;
  }
  return longest;
}

std::string print_tube(const FrameSection& section) {
  const auto millimetres = [](double metres) { return print_number(std::round(metres * 1e4) / 10); };
  if (!(section.inner_m > 0)) return millimetres(section.outer_m) + " mm";
  return millimetres(section.outer_m) + " x " + millimetres((section.outer_m - section.inner_m) / 2) + " mm";
}

}  // namespace quadrille
