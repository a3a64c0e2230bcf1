// Walks the colours of a built piece from cluster to cluster and finds the clusters that break its pattern: against a
// plan (pattern_plan.hpp), or, here, without knowing any.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "sdk/pattern_plan.hpp"
#include "sdk/pattern_ring.hpp"

namespace quadrille {
namespace pattern_detail {

/// What can be read off a piece whose plan is unknown.
class Reading {
 public:
  explicit Reading(const Piece& piece) {
    const auto laid = laid_clusters(piece);
    for (std::size_t i = 0; i < laid.size(); ++i) {
      if (laid[i].slots.empty()) continue;
      numbers_.push_back(piece.clusters[i].number);
      half_steps_.push_back(laid[i].half_steps);
      rings_.push_back(ring_of(laid[i].slots, laid[i].half_steps));
    }
    most_ = std::max<std::size_t>(1, rings_.size() / 10);
  }

  std::vector<PatternBreak> breaks() const {
    if (rings_.size() < 5) return {};
    std::vector<std::size_t> wreaths;
    std::map<Ring, std::size_t> known;
    for (const Ring& ring : rings_) wreaths.push_back(known.emplace(wreath(ring), known.size()).first->second);
    auto found = odd_wreaths(wreaths);
    if (found.empty()) found = odd_in_period(wreaths);
    if (found.empty()) found = odd_turns(known.size() == 1);
    return found.size() > most_ ? std::vector<PatternBreak>() : found;
  }

 private:
  /// The same for all turns of a ring.
  static Ring wreath(const Ring& ring) {
    Ring least = ring, turned = ring;
    for (std::size_t i = 1; i < ring.size(); ++i) {
      std::rotate(turned.begin(), turned.begin() + 1, turned.end());
      least = std::min(least, turned);
    }
    return least;
  }

  PatternBreak odd_colours(std::size_t odd, std::size_t beside) const {
    const std::string start = "Cluster " + std::to_string(numbers_[odd]) + " breaks the pattern: ";
    if (rings_[odd].size() != rings_[beside].size())
      return {numbers_[odd], start + "it has another number of balloons."};
    Ring seen = rings_[odd], wanted = rings_[beside];
    std::ranges::sort(seen);
    std::ranges::sort(wanted);
    std::vector<int> strange;
    std::ranges::set_symmetric_difference(seen, wanted, std::back_inserter(strange));
    if (strange.empty()) return {numbers_[odd], start + "its colours stand in another order than in the others."};
    std::string colours;
    for (const int slot : std::set<int>(strange.begin(), strange.end()))
      colours += (colours.empty() ? "" : ", ") + std::string(1, slot_letter(static_cast<std::uint32_t>(slot)));
    return {numbers_[odd], start + "the colours " + colours + " do not run on through it."};
  }

  /// Among clusters of one colour each, whether all colours of cluster i are also those of the stripes it lies in or of
  /// the next ones on either side: one colour may be meant to flow into the other there.
  bool may_flow(const std::vector<std::size_t>& wreaths, std::size_t i) const {
    std::set<int> around{no_balloon};
    const auto look = [&](auto next, auto is_end) {
      std::set<std::size_t> seen;
      for (std::size_t at = i; !is_end(at) && seen.size() < 2;) {
        at = next(at);
        if (!of_one_colour(rings_[at])) continue;
        seen.insert(wreaths[at]);
        around.insert(rings_[at].begin(), rings_[at].end());
      }
    };
    look([](std::size_t at) { return at - 1; }, [](std::size_t at) { return at == 0; });
    look([](std::size_t at) { return at + 1; }, [this](std::size_t at) { return at + 1 == rings_.size(); });
    return std::ranges::all_of(rings_[i], [&](int slot) { return around.contains(slot); });
  }

  /// Whether the three clusters on either side of cluster i are all alike.
  static bool is_within(const std::vector<std::size_t>& wreaths, std::size_t i) {
    if (i < 3 || i + 3 >= wreaths.size()) return false;
    for (std::size_t at = i - 3; at <= i + 3; ++at)
      if (at != i && wreaths[at] != wreaths[i - 1]) return false;
    return true;
  }

  /// Nearly all clusters have the same colours in the same order, or nearly all are of one colour each: the others.
  std::vector<PatternBreak> odd_wreaths(const std::vector<std::size_t>& wreaths) const {
    std::map<std::size_t, std::size_t> counts;
    const auto group = [&](std::size_t i) { return of_one_colour(rings_[i]) ? wreaths.size() : wreaths[i]; };
    for (std::size_t i = 0; i < wreaths.size(); ++i) ++counts[group(i)];
    const auto usual = std::ranges::max_element(counts, {}, [](const auto& entry) { return entry.second; });
    if (usual->second + most_ < rings_.size()) return {};
    const bool stripes = usual->first == wreaths.size();
    const bool alone = usual->second + 1 == rings_.size();
    std::vector<PatternBreak> found;
    for (std::size_t i = 0; i < rings_.size(); ++i) {
      if (group(i) == usual->first) continue;
      if (stripes && may_flow(wreaths, i) && !(alone && is_within(wreaths, i))) continue;
      std::size_t beside = i;
      while (beside > 0 && group(beside) != usual->first) --beside;
      while (beside + 1 < rings_.size() && group(beside) != usual->first) ++beside;
      found.push_back(odd_colours(i, beside));
    }
    return found;
  }

  /// The colours repeat after some clusters, at least three times: those that do not.
  std::vector<PatternBreak> odd_in_period(const std::vector<std::size_t>& wreaths) const {
    if (rings_.size() < least_repeating) return {};
    std::optional<std::vector<PatternBreak>> believed;
    for (std::size_t period = 1; period <= rings_.size() / 2; ++period) {
      const auto found = broken_periods(wreaths, period);
      if (found && found->empty()) return {};
      if (found && !believed && 3 * period <= rings_.size()) believed = found;
    }
    return believed.value_or(std::vector<PatternBreak>());
  }

  /// Nothing where what breaks cannot be put down to single clusters, so that this is not the period.
  std::optional<std::vector<PatternBreak>> broken_periods(const std::vector<std::size_t>& wreaths,
                                                          std::size_t period) const {
    const std::size_t count = rings_.size();
    std::map<std::size_t, PatternBreak> wrong;
    for (std::size_t i = period; i < count; ++i) {
      if (wrong.contains(i - period) || wreaths[i] == wreaths[i - period]) continue;
      const bool goes_on = i + period < count;
      const bool first = i < 2 * period && goes_on && wreaths[i] == wreaths[i + period];
      const bool recovers = goes_on && wreaths[i - period] == wreaths[i + period];
      // At the end a stripe of another colour may just begin.
      const bool stripe = of_one_colour(rings_[i]) && of_one_colour(rings_[i - period]);
      if (!first && !recovers && (goes_on || stripe)) return std::nullopt;
      const std::size_t odd = first ? i - period : i;
      wrong.emplace(odd, odd_colours(odd, first ? i : i - period));
      if (wrong.size() > most_) return std::nullopt;
    }
    std::vector<PatternBreak> found;
    for (auto& [index, entry] : wrong) found.push_back(std::move(entry));
    return found;
  }

  /// How cluster i is turned against the one before: as the colours show it where all clusters have the same, or else
  /// by its places.
  struct Step {
    bool right = false, left = false;  ///< by one half step to that hand
  };

  Step step(std::size_t i, bool all_alike) const {
    const Ring &from = rings_[i - 1], &to = rings_[i];
    if (all_alike) return {is_turned(from, to, 1), is_turned(from, to, -1)};
    const int positions = static_cast<int>(to.size());
    if (from.size() != to.size() || (of_one_colour(from) && of_one_colour(to))) return {true, true};
    const int by = ((half_steps_[i] - half_steps_[i - 1]) % positions + positions) % positions;
    return {by == 1 % positions, by == positions - 1};
  }

  PatternBreak turned(std::size_t i) const {
    return {numbers_[i], "Cluster " + std::to_string(numbers_[i]) +
                             " breaks the pattern: it has the right colours but is turned the wrong way."};
  }

  std::vector<PatternBreak> odd_turns(bool all_alike) const {
    std::vector<Step> steps{{true, true}};
    std::size_t to_right = 0, to_left = 0, to_neither = 0, telling = 0;
    for (std::size_t i = 1; i < rings_.size(); ++i) {
      steps.push_back(step(i, all_alike));
      to_right += steps[i].right;
      to_left += steps[i].left;
      to_neither += !steps[i].right && !steps[i].left;
      telling += !of_one_colour(rings_[i - 1]) || !of_one_colour(rings_[i]);
    }
    // A few mixed clusters among those of one colour do not tell how clusters are meant to be turned.
    if (telling + 1 < std::min(rings_.size(), least_repeating)) return {};
    const std::size_t pairs = rings_.size() - 1, most = std::max<std::size_t>(2, 2 * most_);
    if (to_neither > most) return {};
    if (std::max(to_right, to_left) + most >= pairs && rings_.size() >= least_in_one_hand)
      return odd_in_one_hand(steps, to_right >= to_left);
    return odd_in_either_hand(steps);
  }

  /// All clusters are turned to one hand, but for a few. Nothing where any departure is none of those known: the hand
  /// may be meant to change.
  std::vector<PatternBreak> odd_in_one_hand(const std::vector<Step>& steps, bool right) const {
    const auto keeps = [&](std::size_t i) { return right ? steps[i].right : steps[i].left; };
    const auto neither = [&](std::size_t i) { return !steps[i].right && !steps[i].left; };
    std::vector<PatternBreak> found;
    std::size_t shifts = 0;
    const std::size_t count = rings_.size();
    for (std::size_t i = 1; i < count; ++i) {
      if (keeps(i)) continue;
      std::size_t end = i;
      bool none_fits = false;
      for (; end < count && !keeps(end); ++end) none_fits = none_fits || neither(end);
      // At the end of a piece the other hand may just begin.
      if (end - i > 2 || (end == count && !none_fits)) return {};
      if (end - i == 2) {
        found.push_back(turned(i));
      } else if (i == 1 || end == count) {
        found.push_back(turned(i == 1 ? 0 : i));
      } else {
        ++shifts;
        found.push_back({numbers_[i], "From cluster " + std::to_string(numbers_[i]) +
                                          " on the pattern is shifted: it is turned against what comes before."});
      }
      i = end;
    }
    return shifts > 0 && found.size() > 1 ? std::vector<PatternBreak>() : found;
  }

  /// The hand changes on the way: only what is turned to neither hand is wrong, and may be so on either side.
  std::vector<PatternBreak> odd_in_either_hand(const std::vector<Step>& steps) const {
    const auto neither = [&](std::size_t i) { return !steps[i].right && !steps[i].left; };
    std::vector<PatternBreak> found;
    for (std::size_t i = 1; i < rings_.size(); ++i) {
      if (!neither(i)) continue;
      if (i + 1 < rings_.size() && neither(i + 1))
        found.push_back(turned(i++));
      else
        found.push_back({numbers_[i - 1], "Clusters " + std::to_string(numbers_[i - 1]) + " and " +
                                              std::to_string(numbers_[i]) +
                                              " break the pattern: one of them is turned the wrong way."});
    }
    return found;
  }

  static constexpr std::size_t least_repeating = 10;    ///< clusters that show what repeats
  static constexpr std::size_t least_in_one_hand = 20;  ///< clusters that show that no hand is meant to change

  std::vector<std::uint32_t> numbers_;
  std::vector<int> half_steps_;
  std::vector<Ring> rings_;
  std::size_t most_ = 1;  ///< this many clusters may break a pattern that is still believed
};

}  // namespace pattern_detail

/// Clusters that break an otherwise unbroken pattern, in order, for a piece whose plan is not known: what most clusters
/// obey is taken for meant, and at most one in ten (and one in any) may break it. Made to raise no false alarm on any
/// pattern of lay_pattern, at the price of what it cannot see. Finds a cluster whose colours, or their order, differ
/// from what nearly all have, at any place, but for mixed ones where one colour may flow into the next; one in the wrong
/// stripe or diamond where the colours repeat three times; one turned the wrong way among at least 20 that are all
/// turned to one hand, or a shift of the rest, but for the last two clusters; where the hand changes, only a cluster
/// turned to neither hand, naming the two that may be meant. Finds no change of hand, nothing in fewer than 5 clusters,
/// and nothing in a free pattern. Only balloons of role body count.
inline std::vector<PatternBreak> pattern_breaks(const Piece& piece) { return pattern_detail::Reading(piece).breaks(); }

}  // namespace quadrille
