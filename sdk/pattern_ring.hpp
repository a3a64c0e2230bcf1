// The colours of a cluster by their positions around the rod: what one sees of it, whichever way it came to be.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/pattern.hpp"

namespace quadrille {

/// The clusters that stand in `piece`, in its order: their balloons of role body, by place, and their turns to the
/// nearest half step. A place without a balloon is left out, so that the row is shorter.
inline std::vector<LaidCluster> laid_clusters(const Piece& piece) {
  std::map<std::uint32_t, std::map<std::uint32_t, std::uint32_t>> members;
  for (const Balloon& balloon : piece.balloons)
    if (balloon.role == Role::body && balloon.cluster != 0) members[balloon.cluster][balloon.place] = balloon.slot;
  std::vector<LaidCluster> laid;
  for (const Cluster& cluster : piece.clusters) {
    LaidCluster entry;
    for (const auto& [place, slot] : members[cluster.number]) entry.slots.push_back(slot);
    const auto n = static_cast<double>(entry.slots.size());
    entry.half_steps = static_cast<int>(std::lround(cluster.turn_rad / (pi / std::max(n, 1.0))));
    laid.push_back(std::move(entry));
  }
  return laid;
}

namespace pattern_detail {

inline constexpr int no_balloon = -1;

/// Slots by position, in half steps: two positions per balloon, every second one empty.
using Ring = std::vector<int>;

inline Ring ring_of(const SlotRow& slots, int half_steps) {
  const int positions = 2 * static_cast<int>(slots.size());
  Ring ring(static_cast<std::size_t>(positions), no_balloon);
  for (std::size_t place = 0; place < slots.size(); ++place) {
    const int position = ((half_steps + 2 * static_cast<int>(place)) % positions + positions) % positions;
    ring[static_cast<std::size_t>(position)] = static_cast<int>(slots[place]);
  }
  return ring;
}

/// True where `to` is `from` turned by `steps` half steps, of either sign.
inline bool is_turned(const Ring& from, const Ring& to, int steps) {
  if (from.size() != to.size()) return false;
  const int positions = static_cast<int>(from.size());
  for (int p = 0; p < positions; ++p) {
    const int turned = ((p + steps) % positions + positions) % positions;
    if (to[static_cast<std::size_t>(turned)] != from[static_cast<std::size_t>(p)]) return false;
  }
  return true;
}

/// True where `to` has the colours of `from` in their order around the rod, however it is turned.
inline bool is_same_wreath(const Ring& from, const Ring& to) {
  for (int steps = 0; steps < static_cast<int>(from.size()); ++steps)
    if (is_turned(from, to, steps)) return true;
  return from.empty() && to.empty();
}

inline bool of_one_colour(const Ring& ring) {
  std::set<int> colours(ring.begin(), ring.end());
  colours.erase(no_balloon);
  return colours.size() == 1;
}

/// Letters of the colours in which two rings of one size differ: "A, B".
inline std::string broken_colours(const Ring& wanted, const Ring& seen) {
  std::set<int> broken;
  for (std::size_t p = 0; p < std::min(wanted.size(), seen.size()); ++p)
    if (wanted[p] != seen[p]) broken.insert({wanted[p], seen[p]});
  broken.erase(no_balloon);
  std::string letters;
  for (const int slot : broken)
    letters += (letters.empty() ? "" : ", ") + std::string(1, slot_letter(static_cast<std::uint32_t>(slot)));
  return letters;
}

}  // namespace pattern_detail
}  // namespace quadrille
