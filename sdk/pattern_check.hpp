// Walks the colours of a built piece from cluster to cluster and finds the clusters that break its pattern.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/pattern.hpp"

namespace quadrille {

struct PatternBreak {
  std::uint32_t cluster = 0;  ///< its number
  std::string text;           ///< one sentence
};

namespace pattern_detail {

inline constexpr int no_balloon = -1;

/// Colours around the rod by position, in half steps.
struct Ring {
  std::uint32_t number = 0;
  std::vector<int> slots;
};

inline std::vector<Ring> rings_of(const Piece& piece) {
  std::map<std::uint32_t, std::vector<const Balloon*>> members;
  for (const Balloon& balloon : piece.balloons)
    if (balloon.role == Role::body && balloon.cluster != 0) members[balloon.cluster].push_back(&balloon);
  std::vector<Ring> rings;
  for (const Cluster& cluster : piece.clusters) {
    const auto& balloons = members[cluster.number];
    const auto n = static_cast<long>(balloons.size());
    if (n == 0) continue;
    Ring ring{cluster.number, std::vector<int>(static_cast<std::size_t>(2 * n), no_balloon)};
    const long turned = std::lround(cluster.turn_rad / (pi / static_cast<double>(n)));
    for (const Balloon* balloon : balloons) {
      const long position = ((turned + 2 * static_cast<long>(balloon->place)) % (2 * n) + 2 * n) % (2 * n);
      ring.slots[static_cast<std::size_t>(position)] = static_cast<int>(balloon->slot);
    }
    rings.push_back(std::move(ring));
  }
  return rings;
}

inline bool turned_equal(const Ring& from, const Ring& to, std::size_t steps) {
  if (from.slots.size() != to.slots.size()) return false;
  for (std::size_t p = 0; p < from.slots.size(); ++p)
    if (to.slots[(p + steps) % to.slots.size()] != from.slots[p]) return false;
  return true;
}

inline std::vector<int> sorted_colours(const Ring& ring) {
  std::vector<int> colours = ring.slots;
  std::ranges::sort(colours);
  return colours;
}

inline bool of_one_colour(const Ring& ring) {
  std::set<int> colours(ring.slots.begin(), ring.slots.end());
  colours.erase(no_balloon);
  return colours.size() == 1;
}

/// True where the colours of `ring` themselves are wrong beside those of `other`: neither a turn nor a new stripe.
inline bool has_wrong_colours(const Ring& ring, const Ring& other) {
  const bool stripe = of_one_colour(ring) && of_one_colour(other);
  return !stripe && sorted_colours(ring) != sorted_colours(other);
}

/// A rule that most clusters obey: each looks like the one `period` before it, turned by `steps`.
struct Rule {
  std::size_t period = 1, steps = 0;
};

/// A cluster that is only turned otherwise is a mistake where this many periods on either side keep the rule across it;
/// nearer to an end, or to another such cluster, the pattern may be meant to change there.
inline constexpr std::size_t witnesses = 4;

/// The clusters (indices) that break the rule while their neighbours keep it across them; nothing where what breaks
/// cannot be put down to single clusters, so that the rule is none.
inline std::optional<std::set<std::size_t>> breaks_of(const std::vector<Ring>& rings, const Rule& rule) {
  const std::size_t period = rule.period, count = rings.size();
  const auto keeps = [&](std::size_t from, std::size_t to) {
    return turned_equal(rings[from], rings[to], rule.steps * ((to - from) / period) % rings[to].slots.size());
  };
  std::set<std::size_t> wrong;
  std::optional<std::size_t> last_turned;
  const std::size_t most = std::max<std::size_t>(1, count / 10);
  for (std::size_t i = period; i < count; ++i) {
    if (wrong.contains(i - period) || keeps(i - period, i)) continue;
    const bool first = i < 2 * period && i + period < count && keeps(i, i + period);
    const bool recovers = i + period < count && keeps(i - period, i + period);
    if (!first && !recovers && i + period < count) return std::nullopt;
    const std::size_t suspect = first ? i - period : i;
    if (!has_wrong_colours(rings[suspect], rings[first ? i : i - period])) {
      const bool near_an_end = suspect < witnesses * period || suspect + witnesses * period >= count;
      if (near_an_end || (last_turned && suspect - *last_turned <= witnesses * period)) return std::nullopt;
      last_turned = suspect;
    }
    wrong.insert(suspect);
    if (wrong.size() > most) return std::nullopt;
  }
  return wrong;
}

inline std::string broken_colours(const Ring& seen, const Ring& before, std::size_t steps) {
  std::set<int> broken;
  for (std::size_t p = 0; p < seen.slots.size(); ++p) {
    const int wanted = before.slots[p], found = seen.slots[(p + steps) % seen.slots.size()];
    if (wanted == found) continue;
    broken.insert(wanted);
    broken.insert(found);
  }
  broken.erase(no_balloon);
  std::string letters;
  for (const int slot : broken)
    letters += (letters.empty() ? "" : ", ") + std::string(1, slot_letter(static_cast<std::uint32_t>(slot)));
  return letters;
}

inline PatternBreak describe(const std::vector<Ring>& rings, const Rule& rule, std::size_t wrong) {
  const Ring& ring = rings[wrong];
  const bool backward = wrong < rule.period;
  const std::size_t other = backward ? wrong + rule.period : wrong - rule.period;
  const std::size_t positions = ring.slots.size();
  const std::size_t steps = backward ? (positions - rule.steps % positions) % positions : rule.steps % positions;
  const std::string number = std::to_string(ring.number);
  for (std::size_t turn = 1; turn < positions; ++turn)
    if (ring.slots.size() == rings[other].slots.size() && turned_equal(rings[other], ring, (steps + turn) % positions))
      return {ring.number,
              "Cluster " + number + " breaks the pattern: it has the right colours but is turned the wrong way."};
  if (ring.slots.size() != rings[other].slots.size())
    return {ring.number, "Cluster " + number + " breaks the pattern: it has another number of balloons."};
  return {ring.number, "Cluster " + number + " breaks the pattern: the colours " +
                           broken_colours(ring, rings[other], steps) + " do not run on through it."};
}

}  // namespace pattern_detail

/// Clusters that break an otherwise unbroken pattern, in order. The rule (what repeats after how many clusters, turned
/// by how much) is read off the clusters themselves, so it holds for any piece type; at most one cluster in ten may
/// break it. Where no rule is found, as in a free pattern, nothing is reported. The first and the last cluster are
/// reported only for wrong colours, not for a wrong turn: the pattern may be meant to change there. Only balloons of
/// role body count.
inline std::vector<PatternBreak> pattern_breaks(const Piece& piece) {
  using namespace pattern_detail;
  const std::vector<Ring> rings = rings_of(piece);
  if (rings.size() < 5) return {};
  std::optional<Rule> rule;
  std::set<std::size_t> wrong;
  for (std::size_t period = 1; period <= rings.size() / 2; ++period)
    for (std::size_t steps = 0; steps < rings.front().slots.size(); ++steps) {
      const auto breaks = breaks_of(rings, {period, steps});
      if (breaks && breaks->empty()) return {};
      // With single breaks the shortest rule that repeats at least three times is believed.
      if (!breaks || rule || 3 * period > rings.size()) continue;
      rule = Rule{period, steps};
      wrong = *breaks;
    }
  std::vector<PatternBreak> found;
  for (const std::size_t index : wrong) found.push_back(describe(rings, *rule, index));
  return found;
}

}  // namespace quadrille
