// By what a piece hangs, in words.
#pragma once

#include <algorithm>
#include <string_view>

#include "sdk/built.hpp"

namespace quadrille {

/// What holds a piece where it hangs, told by its supplies: `points` where these say neither.
enum class HungBy { hooks, ties, points };

inline HungBy hung_by(const Piece& piece) {
  const auto has = [&](std::string_view key) {
    return std::ranges::any_of(piece.supplies, [&](const Supply& supply) { return supply.key == key; });
  };
  return has("cable-tie") ? HungBy::ties : has("hook") ? HungBy::hooks : HungBy::points;
}

/// "hook", "tie", "hanging point".
inline const char* word_of(HungBy by) {
  return by == HungBy::ties ? "tie" : by == HungBy::hooks ? "hook" : "hanging point";
}

}  // namespace quadrille
