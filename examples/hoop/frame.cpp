// The hoop's frame, and what to bring and to do for it.
#include <cmath>
#include <string>
#include <vector>

#include "hoop.hpp"

namespace hoop {

using namespace quadrille;

namespace {

/// From the ring's foot, node 0, down to the floor; returns the node there.
std::uint32_t add_stand(Frame& frame, const Hoop& hoop) {
  FrameMember member = frame.members.front();
  const int parts = static_cast<int>(std::ceil(hoop.lift_m / longest_member_m));
  for (int i = 1; i <= parts; ++i) {
    member.from = i == 1 ? 0 : member.to;
    member.to = static_cast<std::uint32_t>(frame.nodes.size());
    frame.nodes.push_back(to_nanometre(Vec3(0, 0, hoop.lift_m * (parts - i) / parts)));
    frame.members.push_back(member);
  }
  return parts == 0 ? 0 : member.to;
}

}  // namespace

void add_frame(Piece& piece, const Hoop& hoop) {
  const double ring = hoop.ring_m();
  // A node every five degrees, so that it is round to the eye.
  std::vector<double> places;
  for (int i = 1; i < 72; ++i) places.push_back(ring * i / 72);
  add_rod(piece, hoop.tube, Rest::as_drawn, rod_marks(ring, hoop.tube.piece_m, places),
          [&](double at_m) { return hoop.point(at_m / hoop.radius_m); });
  add_tie_point(piece, ring / 2, TiePurpose::front, "top, to the front");
  add_tie_point(piece, ring / 2, TiePurpose::back, "top, to the back");
  add_tie_point(piece, ring / 4, TiePurpose::side, "left, to the side");
  add_tie_point(piece, ring * 3 / 4, TiePurpose::side, "right, to the side");
  // A ring ends where it begins.
  piece.frame.nodes.pop_back();
  piece.frame.members.back().to = 0;
  piece.supports.push_back(foot_at(add_stand(piece.frame, hoop), hoop.base, false));
  // Only what is to be dressed is meant to be hidden.
  piece.spine.clear();
  const int steps = static_cast<int>(std::ceil(hoop.dressed_m() / 0.02));
  for (int i = 0; i <= steps; ++i) {
    const double share = static_cast<double>(i) / steps;
    piece.spine.push_back(
        {share * hoop.dressed_m(), to_nanometre(hoop.point(hoop.from + share * (hoop.to - hoop.from)))});
  }
}

void add_supplies_and_work(Piece& piece, const Hoop& hoop) {
  const RodParts parts = rod_parts({{0, hoop.ring_m()}}, hoop.tube.piece_m);
  constexpr int ends_in_tee = 2;
  add_rod_supplies(piece, hoop.tube, parts, ends_in_tee, 1);
  if (hoop.lift_m > 0)
    piece.supplies.push_back(
        {"hoop-stand-" + rod_key(hoop.tube) + "-" + whole_text(hoop.lift_m * 1000) + "mm",
         "Stand with a tee for the ring, " + rod_label(hoop.tube) + ", " + print_fixed(hoop.lift_m, 2) + " m", "piece",
         1});
  add_base(piece, hoop.base, 1);
  add_cluster_line(piece);
  add_cluster_work(piece);
  add_work_units(piece, "join-rod", "Join and tape a rod", static_cast<double>(parts.sleeves + ends_in_tee));
  add_work_units(piece, "raise-frame", "Raise the frame", 1);
}

}  // namespace hoop
