// Colour patterns on a stack of clusters: which slot each balloon has, and which way each cluster is turned.
//
// Every cluster sits turned by 180°/n to the one before, to one hand or the other. Positions around the rod are counted
// in such half steps: there are 2n of them, and a cluster fills every second one. Turned to the other hand a cluster
// fills the very same positions; only the colours tell the hands apart.
#pragma once

#include <cassert>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/quoted.hpp"
#include "sdk/result.hpp"
#include "sdk/row_text.hpp"

namespace quadrille {

inline constexpr int most_slots = 6;

enum class PatternKind { solid, spiral, zigzag, stripes, diamond, rows };

using SlotRow = std::vector<std::uint32_t>;  ///< the slot of each place of one cluster

struct PatternPlan {
  PatternKind kind = PatternKind::spiral;
  int cluster_size = 4;  ///< 2 to 6
  int slots = 2;         ///< colour slots to spread, 1 to 6
  int hand =
      1;  ///< +1: each cluster is turned to the right hand (anticlockwise seen from the spine's far end); -1: left
  int band = 4;  ///< stripes: clusters per stripe; zigzag: clusters until the hand changes; at least 1
  std::vector<SlotRow>
      rows;  ///< rows: one per cluster, repeated from the start when they run out; each cluster_size long
};

struct LaidCluster {
  int half_steps =
      0;  ///< turn of place 0 in units of 180°/n, accumulated over the clusters: may be negative or go round many times
  SlotRow slots;
};

inline char slot_letter(std::uint32_t slot) { return static_cast<char>('A' + slot); }
/// Slots that have a letter; more come only out of a damaged file.
inline constexpr std::uint32_t most_lettered = 26;
/// "A", or a number from 27 on.
inline std::string slot_name(std::size_t slot) {
  return slot < most_lettered ? std::string(1, slot_letter(static_cast<std::uint32_t>(slot)))
                              : std::to_string(slot + 1);
}

/// The clusters that pattern text writes: see row_words. A word has one letter per balloon of the cluster, or a single
/// letter for a cluster of one colour; otherwise it fails with a sentence that names the row.
inline Result<std::vector<SlotRow>> slot_rows(std::string_view text, int cluster_size) {
  const auto words = row_words(text);
  if (!words) return Result<std::vector<SlotRow>>::bad(words.error);
  const auto size = static_cast<std::size_t>(cluster_size);
  std::vector<SlotRow> rows;
  for (const std::string& word : *words) {
    SlotRow row;
    for (const char c : word) row.push_back(static_cast<std::uint32_t>(c - 'A'));
    if (row.size() == 1) row.resize(size, row.front());
    if (row.size() != size)
      return Result<std::vector<SlotRow>>::bad("Row " + std::to_string(rows.size() + 1) + " (" + quoted(word) +
                                               ") has " + std::to_string(row.size()) + " letters; a cluster of " +
                                               std::to_string(size) + " takes " + std::to_string(size) +
                                               ", or one letter for all.");
    rows.push_back(std::move(row));
  }
  return Result<std::vector<SlotRow>>::good(std::move(rows));
}

/// Colours of one cluster of n spread over its places so that a colour used twice lies opposite itself where n allows:
/// 4 balloons in 2 colours ABAB, in 3 colours ABAC; 5 in 2 ABABA. Slots beyond n are not used.
inline SlotRow spread_slots(int n, int slots) {
  SlotRow row(static_cast<std::size_t>(n));
  const int half = n / 2;
  const bool opposite = n % 2 == 0 && slots >= half && slots < n;
  int fresh = 0;
  for (int place = 0; place < n; ++place) {
    std::uint32_t slot = static_cast<std::uint32_t>(place % slots);
    if (opposite) slot = static_cast<std::uint32_t>(place < half || place - half >= n - slots ? fresh++ : place - half);
    row[static_cast<std::size_t>(place)] = slot;
  }
  return row;
}

/// Side of a diamond in balloons: diamonds must close around the rod, so it divides the cluster size.
inline int diamond_side(int n) { return n == 2 || n % 2 == 1 ? n : n / 2; }

namespace pattern_detail {

inline int floor_div(int a, int b) { return a >= 0 ? a / b : -((-a + b - 1) / b); }

/// Lozenges on the unrolled lattice: along its two creases a step changes the colour every `side` balloons.
inline SlotRow diamond_row(const PatternPlan& plan, int cluster, int half_steps) {
  const int n = plan.cluster_size, side = diamond_side(n);
  SlotRow row;
  for (int place = 0; place < n; ++place) {
    const int position = ((half_steps + 2 * place) % (2 * n) + 2 * n) % (2 * n);
    const int lean = (cluster + position) / 2, fall = floor_div(cluster - position, 2);
    const int step = floor_div(lean, side) + floor_div(fall, side);
    row.push_back(static_cast<std::uint32_t>(((step % plan.slots) + plan.slots) % plan.slots));
  }
  return row;
}

inline SlotRow row_of(const PatternPlan& plan, int cluster, int half_steps) {
  const auto n = static_cast<std::size_t>(plan.cluster_size);
  switch (plan.kind) {
    case PatternKind::solid:
      return SlotRow(n, 0);
    case PatternKind::spiral:
    case PatternKind::zigzag:
      return spread_slots(plan.cluster_size, plan.slots);
    case PatternKind::stripes:
      return SlotRow(n, static_cast<std::uint32_t>(cluster / plan.band % plan.slots));
    case PatternKind::diamond:
      return diamond_row(plan, cluster, half_steps);
    case PatternKind::rows:
      return plan.rows[static_cast<std::size_t>(cluster) % plan.rows.size()];
  }
  return {};
}

}  // namespace pattern_detail

/// Lays `clusters` clusters by the plan, the first at turn 0. With kind rows there must be at least one row.
inline std::vector<LaidCluster> lay_pattern(const PatternPlan& plan, int clusters) {
  assert(plan.cluster_size >= 2 && plan.slots >= 1 && plan.slots <= most_slots && plan.band >= 1);
  assert(plan.hand == 1 || plan.hand == -1);
  assert(plan.kind != PatternKind::rows || !plan.rows.empty());
  std::vector<LaidCluster> laid;
  int half_steps = 0;
  for (int cluster = 0; cluster < clusters; ++cluster) {
    if (cluster > 0) {
      const bool other_hand = plan.kind == PatternKind::zigzag && (cluster - 1) / plan.band % 2 == 1;
      half_steps += other_hand ? -plan.hand : plan.hand;
    }
    laid.push_back({half_steps, pattern_detail::row_of(plan, cluster, half_steps)});
  }
  return laid;
}

}  // namespace quadrille
