#include "plugins/arch/frame.hpp"

namespace quadrille::arch {
namespace {

/// Sleeves within the runs, a joint at either end of every corner, and `places`.
std::vector<Mark> frame_marks(const Outline& outline, const Request& request, const std::vector<double>& places) {
  std::vector<Mark> marks{{0, Joint::rigid}, {outline.length_m, Joint::rigid}};
  for (const RodRun& run : rod_runs(outline))
    for (const double place : sleeve_places(run, request.rod.piece_m)) marks.push_back({place, Joint::sleeve});
  for (const Corner& corner : outline.corners)
    for (const double end : {corner.from_m, corner.to_m}) marks.push_back({end, Joint::sleeve});
  for (const double place : places) marks.push_back({place, Joint::rigid});
  return in_order(std::move(marks));
}

}  // namespace

std::vector<RodRun> rod_runs(const Outline& outline) {
  std::vector<RodRun> runs;
  double from = 0;
  const auto add = [&](double to, bool from_its_end) {
    if (to - from > 1e-6) runs.push_back({from, to, from_its_end});
  };
  for (const Corner& corner : outline.corners) {
    add(corner.from_m, false);
    from = corner.to_m;
  }
  add(outline.length_m, !outline.corners.empty());
  return runs;
}

void add_frame(Piece& piece, const Outline& outline, const Request& request) {
  const double length = outline.length_m;
  const Rest rest = request.frame == FrameKind::flexible_rod ? Rest::straight : Rest::as_drawn;
  add_rod(piece, request.rod, rest, frame_marks(outline, request, {length / 4, length / 2, length * 3 / 4}),
          [&](double at_m) { return outline.at(at_m).point; });
  for (const std::uint32_t node : {0u, static_cast<std::uint32_t>(piece.frame.nodes.size() - 1)})
    piece.supports.push_back(foot_at(node, request.base, request.feet == Feet::pinned));
  add_tie_point(piece, length / 2, TiePurpose::front, "crown, to the front");
  add_tie_point(piece, length / 2, TiePurpose::back, "crown, to the back");
  add_tie_point(piece, length / 4, TiePurpose::side, "left leg, to the side");
  add_tie_point(piece, length * 3 / 4, TiePurpose::side, "right leg, to the side");
}

}  // namespace quadrille::arch
