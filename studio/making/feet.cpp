#include "studio/making/feet.hpp"

#include <algorithm>
#include <utility>

#include "studio/making/spine_place.hpp"
#include "studio/model/anchor_place.hpp"

namespace quadrille {
namespace {

const char* word_of(SupportKind kind) { return kind == SupportKind::hook ? "hook " : "support "; }

}  // namespace

std::vector<NamedSupport> named_supports(const Piece& piece) {
  std::vector<NamedSupport> feet, hung;
  for (Foot& foot : feet_of(piece))
    feet.push_back({foot.support, std::move(foot.name), foot.place, true, place_along(piece, foot.place).at_m});
  for (std::size_t i = 0; i < piece.supports.size(); ++i) {
    const Support& support = piece.supports[i];
    const bool is_foot = support.kind == SupportKind::plate || support.kind == SupportKind::socket;
    if (is_foot || support.node >= piece.frame.nodes.size()) continue;
    const Vec3& place = piece.frame.nodes[support.node];
    hung.push_back({i, "", place, false, place_along(piece, place).at_m});
  }
  std::ranges::stable_sort(hung, {}, &NamedSupport::at_m);
  for (std::size_t i = 0; i < hung.size(); ++i)
    hung[i].name = word_of(piece.supports[hung[i].support].kind) + std::to_string(i + 1);
  feet.insert(feet.end(), hung.begin(), hung.end());
  return feet;
}

}  // namespace quadrille
