#include "studio/making/loose_balloons.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "studio/making/spine_place.hpp"

namespace quadrille {
namespace {

/// What a balloon's name begins with. Fillers that are accents count among the fillers: they sit in the same creases.
char initial_of(Role role) {
  switch (role) {
    case Role::topper:
      return 't';
    case Role::collar:
      return 'c';
    case Role::body:
    case Role::filler:
    case Role::accent:
      break;
  }
  return 'f';
}

}  // namespace

std::vector<LooseBalloon> loose_balloons(const Piece& piece) {
  std::vector<LooseBalloon> loose;
  for (std::size_t i = 0; i < piece.balloons.size(); ++i) {
    const Balloon& balloon = piece.balloons[i];
    if (balloon.cluster != 0) continue;
    const double at = place_along(piece, balloon.neck).at_m;
    const double reach = (balloon.centre - balloon.neck).norm() + balloon.diameter_m;
    loose.push_back({"", i, at, print_side(place_along(piece, balloon.centre, at, reach))});
  }
  std::ranges::stable_sort(loose, {}, &LooseBalloon::at_m);
  std::array<int, 128> numbers{};
  for (LooseBalloon& one : loose) {
    const char initial = initial_of(piece.balloons[one.balloon].role);
    one.name = std::string(1, initial) + std::to_string(++numbers[static_cast<std::size_t>(initial)]);
  }
  return loose;
}

const char* print_role(Role role) {
  switch (role) {
    case Role::filler:
      return "filler";
    case Role::accent:
      return "accent";
    case Role::topper:
      return "topper";
    case Role::collar:
      return "collar";
    case Role::body:
      break;
  }
  return "body";
}

}  // namespace quadrille
