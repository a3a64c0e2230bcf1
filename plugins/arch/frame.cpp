#include "plugins/arch/frame.hpp"

namespace quadrille::arch {

void add_frame(Piece& piece, const Outline& outline, const Request& request) {
  const double length = outline.length_m;
  std::vector<double> places{length / 4, length / 2, length * 3 / 4};
  for (const Corner& corner : outline.corners) places.insert(places.end(), {corner.from_m, corner.to_m});
  const Rest rest = request.frame == FrameKind::flexible_rod ? Rest::straight : Rest::as_drawn;
  add_rod(piece, request.rod, rest, rod_marks(length, request.rod.piece_m, places),
          [&](double at_m) { return outline.at(at_m).point; });
  for (const std::uint32_t node : {0u, static_cast<std::uint32_t>(piece.frame.nodes.size() - 1)})
    piece.supports.push_back(foot_at(node, request.base, request.feet == Feet::pinned));
  add_tie_point(piece, length / 2, TiePurpose::front, "crown, to the front");
  add_tie_point(piece, length / 2, TiePurpose::back, "crown, to the back");
  add_tie_point(piece, length / 4, TiePurpose::side, "left leg, to the side");
  add_tie_point(piece, length * 3 / 4, TiePurpose::side, "right leg, to the side");
}

}  // namespace quadrille::arch
