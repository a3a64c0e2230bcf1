#include "studio/paper/piece_groups.hpp"

#include <algorithm>
#include <cmath>

#include "studio/drawing/dimension.hpp"
#include "studio/model/lengths.hpp"
#include "studio/paper/piece_key.hpp"

namespace quadrille {
namespace {

constexpr double together_m = 0.1, alike_m = 0.03, longest_ring = 20;
constexpr std::ptrdiff_t few = 4;

bool has_room_for(const Scene& scene, const PieceGroup& group, std::size_t piece) {
  std::vector<std::size_t> pieces = group.pieces;
  pieces.push_back(piece);
  return 2 * ring_half_width(ring_of(scene, pieces)) <= longest_ring;
}

}  // namespace

bool lie_together(const ScenePiece& a, const ScenePiece& b) {
  const Extent first = a.body(), second = b.body();
  const auto near = [](double x, double y) { return std::abs(x - y) <= together_m; };
  return near(first.left, second.left) && near(first.right, second.right) && near(first.floor, second.floor) &&
         near(first.top, second.top);
}

std::string ring_of(const Scene& scene, const std::vector<std::size_t>& pieces) {
  if (scene.pieces.size() < 2) return "";
  std::vector<std::size_t> numbers;
  for (const std::size_t piece : pieces) numbers.push_back(piece + 1);
  return print_numbers(numbers);
}

std::vector<PieceGroup> groups_by(const Scene& scene, Units units, bool nearly,
                                  const std::function<double(const ScenePiece&)>& measure_of) {
  const auto text_of = [&](double metres) { return print_length(metres, lengths_in(units)); };
  // Many that differ a little share a line; of a few each has its own.
  const bool many = std::ranges::count(scene.pieces, true, &ScenePiece::size_known) > few;
  std::vector<PieceGroup> groups;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i) {
    const ScenePiece& piece = scene.pieces[i];
    const double measure = measure_of(piece);
    if (!piece.size_known || !(measure > 0)) continue;
    const auto belongs = [&](const PieceGroup& group) {
      const ScenePiece& first = scene.pieces[group.pieces.front()];
      const double apart = std::abs(measure_of(first) - measure);
      const bool alike = text_of(measure_of(first)) == text_of(measure) || (nearly && many && apart <= alike_m);
      return (alike || (nearly && lie_together(first, piece))) && has_room_for(scene, group, i);
    };
    auto group = std::ranges::find_if(groups, belongs);
    if (group == groups.end()) group = groups.insert(group, PieceGroup{});
    group->pieces.push_back(i);
  }
  for (PieceGroup& group : groups) {
    double least = 1e300, most = 0;
    for (const std::size_t i : group.pieces) {
      least = std::min(least, measure_of(scene.pieces[i])), most = std::max(most, measure_of(scene.pieces[i]));
    }
    group.text = text_of(least);
    if (text_of(most) != group.text) group.text += " to " + text_of(most);
    const bool apart = std::ranges::any_of(group.pieces, [&](std::size_t i) {
      return !lie_together(scene.pieces[i], scene.pieces[group.pieces.front()]);
    });
    if (apart) group.text += " each";
    group.ring = ring_of(scene, group.pieces);
  }
  return groups;
}

std::vector<PieceGroup> groups_together(const Scene& scene) {
  std::vector<PieceGroup> groups;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i) {
    auto group = std::ranges::find_if(groups, [&](const PieceGroup& g) {
      return lie_together(scene.pieces[g.pieces.front()], scene.pieces[i]) && has_room_for(scene, g, i);
    });
    if (group == groups.end()) group = groups.insert(group, PieceGroup{});
    group->pieces.push_back(i);
  }
  for (PieceGroup& group : groups) group.ring = ring_of(scene, group.pieces);
  return groups;
}

}  // namespace quadrille
