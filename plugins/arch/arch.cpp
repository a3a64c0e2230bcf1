// The arch: clusters along a flexible rod, a half circle, a half ellipse or a square frame.
#include "plugins/arch/bend.hpp"
#include "plugins/arch/checks.hpp"
#include "plugins/arch/dressing.hpp"
#include "plugins/arch/frame.hpp"
#include "plugins/arch/materials.hpp"
#include "plugins/arch/parameters.hpp"
#include "plugins/arch/request.hpp"
#include "sdk/piece.hpp"

namespace quadrille::arch {
namespace {

Outline outline_of(const Request& request, const std::optional<Elastica>& elastica) {
  switch (request.frame) {
    case FrameKind::half_circle:
      return half_circle(request.span_m, request.height_m);
    case FrameKind::half_ellipse:
      return half_ellipse(request.span_m, request.height_m);
    case FrameKind::square:
      return square(request.span_m, request.height_m, request.corner_m);
    case FrameKind::flexible_rod:
      break;
  }
  return bent_rod(*elastica, request.rod_length_m);
}

Piece build(const Values& values) {
  const Request request = read_request(values);
  const std::optional<Elastica> elastica = bend_rod(request);
  const Outline outline = outline_of(request, elastica);
  Dressing dressing = dress(outline, request.dressing);

  Piece piece;
  piece.clusters = std::move(dressing.clusters);
  piece.balloons = std::move(dressing.balloons);
  add_frame(piece, outline, request);
  add_facts(piece, outline, request, elastica ? &*elastica : nullptr);
  refuse_impossible(piece, outline, request, dressing.most_clusters);
  add_supplies(piece, outline, request);
  add_work(piece, outline, request);
  add_anchoring_rules(piece, request);
  add_warnings(piece, outline, request);
  note_ignored(piece, values, outline, request);
  return piece;
}

constexpr quadrille_piece_type types[] = {piece_type<parameters, build>(
    "arch", "Arch", "Clusters along a flexible rod, a half circle, a half ellipse or a square frame.")};

}  // namespace
}  // namespace quadrille::arch

QUADRILLE_PIECES("quadrille.arch", "1.0.0", quadrille::arch::types)
