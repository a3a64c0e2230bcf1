#include "plugins/arch/frame.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace quadrille::arch {
namespace {

constexpr double longest_member_m = 0.12;

/// A place of the frame line that must be a node.
struct Mark {
  double at_m;
  Joint joint;  ///< of the member that begins here
};

std::vector<Mark> marks_of(const Outline& outline, const Request& request) {
  std::vector<Mark> marks{{0, Joint::rigid}};
  double at = 0;
  for (const double section : section_lengths(outline.length_m, request.rod.piece_m)) {
    at += section;
    marks.push_back({at, Joint::sleeve});
  }
  marks.back() = {outline.length_m, Joint::rigid};
  marks.push_back({outline.length_m / 2, Joint::rigid});
  for (const Corner& corner : outline.corners)
    for (const double end : {corner.from_m, corner.to_m}) marks.push_back({end, Joint::rigid});
  std::ranges::stable_sort(marks, {}, &Mark::at_m);
  const auto same_place = [](const Mark& a, const Mark& b) { return b.at_m - a.at_m < 1e-6; };
  // Of two marks at one place a sleeve wins.
  for (std::size_t i = 1; i < marks.size(); ++i)
    if (same_place(marks[i - 1], marks[i]) && marks[i].joint == Joint::sleeve) marks[i - 1].joint = Joint::sleeve;
  marks.erase(std::unique(marks.begin(), marks.end(), same_place), marks.end());
  return marks;
}

FrameMember member_of(const Request& request) {
  FrameMember member;
  member.rest = request.frame == FrameKind::flexible_rod ? Rest::straight : Rest::as_drawn;
  member.outer_m = request.rod.section.outer_m;
  member.inner_m = request.rod.section.inner_m;
  member.young_pa = request.rod.material->young_pa;
  member.density_kg_m3 = request.rod.material->density_kg_m3;
  member.strength_pa = request.rod.material->strength_pa;
  return member;
}

void add_node(Piece& piece, const Outline& outline, double at_m) {
  const Vec3 point = to_nanometre(outline.at(at_m).point);
  piece.frame.nodes.push_back(point);
  piece.spine.push_back({at_m, point});
}

std::uint32_t nearest_node(const Piece& piece, double at_m) {
  const auto nearer = [at_m](const SpinePoint& a, const SpinePoint& b) {
    return std::abs(a.at_m - at_m) < std::abs(b.at_m - at_m);
  };
  return static_cast<std::uint32_t>(std::ranges::min_element(piece.spine, nearer) - piece.spine.begin());
}

void add_feet(Piece& piece, const Request& request) {
  for (const std::uint32_t node : {0u, static_cast<std::uint32_t>(piece.frame.nodes.size() - 1)})
    piece.supports.push_back(foot_at(node, request.base, request.feet == Feet::pinned));
}

void add_tie_points(Piece& piece, const Outline& outline) {
  const auto tie = [&](double at_m, TiePurpose purpose, const char* label) {
    const std::uint32_t node = nearest_node(piece, at_m);
    piece.tie_points.push_back({node, purpose, piece.frame.nodes[node], label});
  };
  const double length = outline.length_m;
  tie(length / 2, TiePurpose::front, "crown, to the front");
  tie(length / 2, TiePurpose::back, "crown, to the back");
  tie(length / 4, TiePurpose::side, "left leg, to the side");
  tie(length * 3 / 4, TiePurpose::side, "right leg, to the side");
}

}  // namespace

std::vector<double> section_lengths(double length_m, double piece_m) {
  std::vector<double> lengths;
  double left = length_m;
  while (left > piece_m + 1e-6) {
    lengths.push_back(piece_m);
    left -= piece_m;
  }
  lengths.push_back(left);
  return lengths;
}

void add_frame(Piece& piece, const Outline& outline, const Request& request) {
  const std::vector<Mark> marks = marks_of(outline, request);
  const FrameMember like = member_of(request);
  add_node(piece, outline, 0);
  for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
    const double from = marks[i].at_m, length = marks[i + 1].at_m - from;
    const int members = std::max(1, static_cast<int>(std::ceil(length / longest_member_m - 1e-9)));
    for (int j = 1; j <= members; ++j) {
      add_node(piece, outline, j == members ? marks[i + 1].at_m : from + length * j / members);
      FrameMember member = like;
      member.to = static_cast<std::uint32_t>(piece.frame.nodes.size() - 1);
      member.from = member.to - 1;
      member.joint_from = j == 1 ? marks[i].joint : Joint::rigid;
      piece.frame.members.push_back(member);
    }
  }
  add_feet(piece, request);
  add_tie_points(piece, outline);
}

}  // namespace quadrille::arch
