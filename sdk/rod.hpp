// Rods, poles and tubes: as members of a frame, cut into the sections they are carried in, and as supplies.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/material.hpp"
#include "sdk/number.hpp"
#include "sdk/piece.hpp"
#include "sdk/units.hpp"

namespace quadrille {

struct Rod {
  RoundSection section;
  const Material* material = nullptr;
  double piece_m = 0;  ///< length of one section as carried, above 0

  double bending_stiffness_nm2() const { return material->young_pa * section.second_moment_m4(); }
  double mass_per_m_kg() const { return material->density_kg_m3 * section.area_m2(); }
  /// The tightest radius it is kept bent to.
  double bend_limit_m() const { return section.outer_m / 2 / material->bend_strain; }
};

inline constexpr quadrille_choice rod_materials[] = {
    {"glass-fibre", "Glass fibre"}, {"pvc", "PVC"}, {"aluminium", "Aluminium"}, {"steel", "Steel"}};

/// Reads the parameters `stem`-diameter, `stem`-wall (0 = solid), `stem`-material (of rod_materials) and `stem`-section.
/// Throws BadParameter where the wall leaves no tube.
inline Rod read_rod(const Values& values, const std::string& stem) {
  Rod rod;
  rod.section.outer_m = values.number(stem + "-diameter");
  const double wall = values.number(stem + "-wall");
  if (2 * wall >= rod.section.outer_m)
    throw BadParameter(stem + "-wall", "A wall of " + print_fixed(wall * 1000, 1) + " mm leaves no tube of " +
                                           print_fixed(rod.section.outer_m * 1000, 1) +
                                           " mm: it must be less than half of the diameter, or 0 for a solid one.");
  rod.section.inner_m = wall > 0 ? rod.section.outer_m - 2 * wall : 0;
  rod.material = find_material(values.text(stem + "-material"));
  rod.piece_m = values.number(stem + "-section");
  return rod;
}

/// Lengths of the sections of a rod of `length_m`, in order; the last one is what is left over.
inline std::vector<double> section_lengths(double length_m, double piece_m) {
  std::vector<double> lengths;
  double left = length_m;
  while (left > piece_m + 1e-6) {
    lengths.push_back(piece_m);
    left -= piece_m;
  }
  lengths.push_back(left);
  return lengths;
}

/// A straight or bent stretch of rod between fittings, cut by itself.
struct RodRun {
  double from_m = 0, to_m = 0;  ///< along the frame
  bool from_its_end = false;    ///< cut from `to_m` backward, as the far leg is from its foot
};

/// Arc lengths along the frame at which the sections of a run are joined, in order.
inline std::vector<double> sleeve_places(const RodRun& run, double piece_m) {
  std::vector<double> places;
  const auto sections = section_lengths(run.to_m - run.from_m, piece_m);
  double cut = 0;
  for (std::size_t i = 0; i + 1 < sections.size(); ++i) {
    cut += sections[i];
    places.push_back(run.from_its_end ? run.to_m - cut : run.from_m + cut);
  }
  std::ranges::sort(places);
  return places;
}

/// A place along a rod that must be a node of the frame.
struct Mark {
  double at_m = 0;
  Joint joint = Joint::rigid;  ///< of the member that begins here
};

/// `marks` in order, each place once, the first and the last rigid. Of two at one place a sleeve wins.
inline std::vector<Mark> in_order(std::vector<Mark> marks) {
  std::ranges::stable_sort(marks, {}, &Mark::at_m);
  const auto same_place = [](const Mark& a, const Mark& b) { return b.at_m - a.at_m < 1e-6; };
  for (std::size_t i = 1; i < marks.size(); ++i)
    if (same_place(marks[i - 1], marks[i]) && marks[i].joint == Joint::sleeve) marks[i - 1].joint = Joint::sleeve;
  marks.erase(std::unique(marks.begin(), marks.end(), same_place), marks.end());
  marks.front().joint = marks.back().joint = Joint::rigid;
  return marks;
}

/// The marks of one rod of `length_m`: both ends, the sleeves between its sections, and `more`.
inline std::vector<Mark> rod_marks(double length_m, double piece_m, const std::vector<double>& more) {
  std::vector<Mark> marks{{0, Joint::rigid}, {length_m, Joint::rigid}};
  for (const double place : sleeve_places({0, length_m}, piece_m)) marks.push_back({place, Joint::sleeve});
  for (const double place : more) marks.push_back({place, Joint::rigid});
  return in_order(std::move(marks));
}

/// No member of a frame is longer [m]: enough elements for the frame analysis to follow the bending.
inline constexpr double longest_member_m = 0.12;

/// Adds the rod to the frame and the spine of `piece`, which are empty: nodes at the marks and evenly between, members in
/// order. `point_at` gives the point [m] at an arc length, 0 to the last mark.
template <class PointAt>
void add_rod(Piece& piece, const Rod& rod, Rest rest, const std::vector<Mark>& marks, PointAt point_at) {
  const auto add_node = [&](double at_m) {
    const Vec3 point = to_nanometre(Vec3(point_at(at_m)));
    piece.frame.nodes.push_back(point);
    piece.spine.push_back({at_m, point});
  };
  FrameMember member;
  member.rest = rest;
  member.outer_m = rod.section.outer_m;
  member.inner_m = rod.section.inner_m;
  member.young_pa = rod.material->young_pa;
  member.density_kg_m3 = rod.material->density_kg_m3;
  member.strength_pa = rod.material->strength_pa;
  add_node(0);
  for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
    const double from = marks[i].at_m, length = marks[i + 1].at_m - from;
    const int members = std::max(1, static_cast<int>(std::ceil(length / longest_member_m - 1e-9)));
    for (int j = 1; j <= members; ++j) {
      add_node(j == members ? marks[i + 1].at_m : from + length * j / members);
      member.to = static_cast<std::uint32_t>(piece.frame.nodes.size() - 1);
      member.from = member.to - 1;
      member.joint_from = j == 1 ? marks[i].joint : Joint::rigid;
      piece.frame.members.push_back(member);
    }
  }
}

/// The node nearest to an arc length along the spine, where nodes and spine points are the same.
inline std::uint32_t nearest_node(const Piece& piece, double at_m) {
  const auto nearer = [at_m](const SpinePoint& a, const SpinePoint& b) {
    return std::abs(a.at_m - at_m) < std::abs(b.at_m - at_m);
  };
  return static_cast<std::uint32_t>(std::ranges::min_element(piece.spine, nearer) - piece.spine.begin());
}

inline void add_tie_point(Piece& piece, double at_m, TiePurpose purpose, const char* label) {
  const std::uint32_t node = nearest_node(piece, at_m);
  piece.tie_points.push_back({node, purpose, piece.frame.nodes[node], label});
}

inline std::string whole_text(double number) { return std::to_string(std::lround(number)); }

/// "8" or "33.4": millimetres without a useless zero.
inline std::string millimetres(double metres) { return print_number(std::round(metres * 1e4) / 10); }

/// "glass-fibre-8mm" or "aluminium-25mmx1.5mm": part of the keys of supplies.
inline std::string rod_key(const Rod& rod) {
  const std::string wall = millimetres((rod.section.outer_m - rod.section.inner_m) / 2);
  return rod.material->key + ("-" + millimetres(rod.section.outer_m) + "mm") +
         (rod.section.inner_m == 0 ? "" : "x" + wall + "mm");
}

/// "glass fibre rod, 8 mm", "aluminium tube, 25 x 1.5 mm" or "PVC tube, 33.4 x 3.4 mm": inside a sentence or a label.
inline std::string rod_words(const Rod& rod) {
  const bool solid = rod.section.inner_m == 0;
  const std::string wall = millimetres((rod.section.outer_m - rod.section.inner_m) / 2);
  return word_of(*rod.material) + (solid ? " rod, " : " tube, ") + millimetres(rod.section.outer_m) +
         (solid ? " mm" : " x " + wall + " mm");
}

/// The same at the beginning of a label: "Glass fibre rod, 8 mm".
inline std::string rod_label(const Rod& rod) {
  return rod.material->label + rod_words(rod).substr(word_of(*rod.material).size());
}

/// Two turns of tape and an end, each joint. Common practice, no source.
inline constexpr double tape_per_joint_m = 0.25;

/// What a frame of rods is put together from.
struct RodParts {
  int sections = 0, sleeves = 0;
};

inline RodParts rod_parts(const std::vector<RodRun>& runs, double piece_m) {
  RodParts parts;
  for (const RodRun& run : runs) {
    const auto sections = static_cast<int>(section_lengths(run.to_m - run.from_m, piece_m).size());
    parts.sections += sections;
    parts.sleeves += sections - 1;
  }
  return parts;
}

/// Sections, sleeves and foot sockets, and tape for the sleeves and for `fitted_joints` more (those of elbows).
inline void add_rod_supplies(Piece& piece, const Rod& rod, const RodParts& parts, int fitted_joints, int feet) {
  piece.supplies.push_back({"rod-" + rod_key(rod) + "-" + whole_text(rod.piece_m * 1000) + "mm",
                            rod_label(rod) + ", section of " + print_both(rod.piece_m), "piece",
                            static_cast<double>(parts.sections)});
  if (parts.sleeves > 0)
    piece.supplies.push_back(
        {"sleeve-" + rod_key(rod), "Sleeve joint for " + rod_words(rod), "piece", static_cast<double>(parts.sleeves)});
  if (const int joints = parts.sleeves + fitted_joints; joints > 0)
    piece.supplies.push_back({"joint-tape", "Tape over the joints", "m", joints * tape_per_joint_m});
  piece.supplies.push_back({"socket-" + millimetres(rod.section.outer_m) + "mm",
                            "Foot socket for a rod or tube of " + millimetres(rod.section.outer_m) + " mm", "piece",
                            static_cast<double>(feet)});
}

/// Those of one rod of `length_m`.
inline void add_rod_supplies(Piece& piece, const Rod& rod, double length_m, int feet) {
  add_rod_supplies(piece, rod, rod_parts(std::vector<RodRun>{{0, length_m}}, rod.piece_m), 0, feet);
}

}  // namespace quadrille
