#include "studio/standing/piece_frame.hpp"

#include <cmath>

#include "sdk/material.hpp"

namespace quadrille {
namespace {

FrameElement element_of(const FrameMember& member, const Assumptions& assumptions) {
  const RoundSection section{member.outer_m, member.inner_m};
  const bool springy = member.rest == Rest::straight;
  FrameElement element;
  element.from = member.from;
  element.to = member.to;
  element.axial_stiffness_n = member.young_pa * section.area_m2();
  element.bending_stiffness_nm2 = member.young_pa * section.second_moment_m4();
  element.torsion_stiffness_nm2 =
      assumptions[springy ? "rod-shear-share" : "pole-shear-share"] * member.young_pa * 2 * section.second_moment_m4();
  element.rest = member.rest;
  element.hinge_from = member.joint_from == Joint::hinge;
  return element;
}

FrameSupport support_of(const Support& foot) {
  FrameSupport support;
  support.node = foot.node;
  const bool clamps = (foot.kind == SupportKind::plate || foot.kind == SupportKind::socket) && !foot.turns;
  support.turns = {!clamps, !clamps, !clamps};
  return support;
}

}  // namespace

FrameModel frame_of_piece(const Piece& piece, const std::vector<RiggedLine>& lines, const Assumptions& assumptions) {
  FrameModel model;
  model.nodes = piece.frame.nodes;
  model.tangents.assign(model.nodes.size(), Vec3::Zero());
  for (const Support& foot : piece.supports) model.supports.push_back(support_of(foot));
  for (const FrameMember& member : piece.frame.members) {
    model.elements.push_back(element_of(member, assumptions));
    if (member.rest != Rest::straight) continue;
    const Vec3 along = (model.nodes[member.to] - model.nodes[member.from]).normalized();
    if (std::abs(along.z()) < std::cos(pi / 6)) continue;
    for (const FrameSupport& support : model.supports)
      if (!support.turns[0] && (support.node == member.from || support.node == member.to))
        model.tangents[support.node] = Vec3::UnitZ() * (along.z() > 0 ? 1 : -1);
  }
  for (const RiggedLine& line : lines) {
    FrameCable cable;
    cable.from = {piece.tie_points[line.run.tie_point].node, line.run.from};
    cable.to = {std::nullopt, line.run.to};
    cable.length_m = line.run.length_m() * (1 + assumptions["line-slack"]);
    cable.axial_stiffness_n = line.cord.stiffness_n();
    model.cables.push_back(cable);
  }
  return model;
}

}  // namespace quadrille
