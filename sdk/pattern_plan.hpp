// Compares the clusters as they were laid with the plan they were laid by, and finds every one that departs from it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "sdk/pattern_ring.hpp"

namespace quadrille {

struct PatternBreak {
  std::uint32_t cluster = 0;  ///< its number, or that of the first one concerned
  std::string text;           ///< one sentence
};

namespace pattern_detail {

/// How a stretch of clusters departs from the plan as a whole.
struct Departure {
  int ahead = 0;  ///< clusters by which the pattern runs ahead
  int turn = 0;   ///< half steps by which all are turned
  bool other_hand = false;
  bool operator==(const Departure&) const = default;
};

/// Walks along what was laid, beside the plan.
class PlanWalk {
 public:
  PlanWalk(const std::vector<LaidCluster>& laid, const PatternPlan& plan)
      : laid_(laid), most_ahead_(repeat_of(plan)), size_(plan.cluster_size) {
    wanted_ = lay_pattern(plan, static_cast<int>(laid.size()) + most_ahead_);
    const int positions = 2 * size_;
    for (int turn = 0; turn < positions; ++turn) departures_.push_back({0, turn, false});
    for (int turn = 0; turn < positions; ++turn) departures_.push_back({0, turn, true});
    for (int ahead = 1; ahead <= most_ahead_; ++ahead)
      for (int turn = 0; turn < positions; ++turn)
        departures_.insert(departures_.end(), {{ahead, turn, false}, {-ahead, turn, false}});
  }

  std::vector<PatternBreak> breaks() {
    Departure now;
    for (std::size_t i = 0; i < laid_.size(); ++i) {
      if (fits(i, now)) continue;
      // A single cluster, as long as nothing explains more of what follows than going on as before does.
      const Departure before = now;
      std::size_t explained = 1 + run(i + 1, before);
      for (const Departure& departure : departures_)
        if (const std::size_t longer = run(i, departure); longer > explained) {
          explained = longer;
          now = departure;
        }
      if (now == before) {
        found_.push_back({number(i), single(i, before)});
        continue;
      }
      close(i);
      if (now != Departure()) open_ = Open{i, now};
    }
    close(laid_.size());
    std::ranges::stable_sort(found_, {}, &PatternBreak::cluster);
    return std::move(found_);
  }

 private:
  struct Open {
    std::size_t from = 0;
    Departure departure;
  };

  /// After how many clusters the pattern begins anew, as far as that is looked for.
  static int repeat_of(const PatternPlan& plan) {
    constexpr int most = 60;
    switch (plan.kind) {
      case PatternKind::solid:
      case PatternKind::spiral:
        return 0;  // running ahead is being turned
      case PatternKind::zigzag:
        return std::min(most, 2 * plan.band);
      case PatternKind::stripes:
        return std::min(most, plan.slots * plan.band);
      case PatternKind::diamond:
        return std::min(most, plan.slots * diamond_side(plan.cluster_size));
      case PatternKind::rows:
        return std::min<int>(most, static_cast<int>(plan.rows.size()));
    }
    return 0;
  }

  static std::uint32_t number(std::size_t index) { return static_cast<std::uint32_t>(index + 1); }

  std::optional<Ring> wanted(std::size_t i, const Departure& departure) const {
    const int at = static_cast<int>(i) + departure.ahead;
    if (at < 0 || at >= static_cast<int>(wanted_.size())) return std::nullopt;
    const LaidCluster& cluster = wanted_[static_cast<std::size_t>(at)];
    return ring_of(cluster.slots, (departure.other_hand ? -cluster.half_steps : cluster.half_steps) + departure.turn);
  }
  Ring seen(std::size_t i) const { return ring_of(laid_[i].slots, laid_[i].half_steps); }
  bool fits(std::size_t i, const Departure& departure) const { return wanted(i, departure) == seen(i); }
  std::size_t run(std::size_t from, const Departure& departure) const {
    std::size_t i = from;
    while (i < laid_.size() && fits(i, departure)) ++i;
    return i - from;
  }

  std::string single(std::size_t i, const Departure& departure) const {
    const std::string start = "Cluster " + std::to_string(number(i)) + " breaks the pattern: ";
    if (laid_[i].slots.size() != static_cast<std::size_t>(size_))
      return start + "it has " + std::to_string(laid_[i].slots.size()) + " balloons instead of " +
             std::to_string(size_) + ".";
    const Ring ring = seen(i), want = wanted(i, departure).value_or(ring);
    const std::string colours = broken_colours(want, ring);
    if (is_same_wreath(want, ring))
      return start + "it has the right colours but is turned the wrong way, so that the runs of " + colours +
             " break there.";
    return start + "the colours " + colours + " do not run on through it.";
  }

  /// Says what holds from where a departure began up to `end`.
  void close(std::size_t end) {
    if (!open_) return;
    const auto [from, departure] = *open_;
    open_.reset();
    const std::string where = end == laid_.size() ? "From cluster " + std::to_string(number(from)) + " on "
                                                  : "From cluster " + std::to_string(number(from)) + " to " +
                                                        std::to_string(number(end - 1)) + " ";
    const std::string colours = broken_colours(wanted(from, {}).value_or(Ring()), seen(from));
    const std::string result = ", so that the runs of " + colours + " break there.";
    const int far = std::abs(departure.ahead);
    if (departure.other_hand)
      found_.push_back({number(from), where + "the clusters are turned to the other hand" + result});
    else if (far > 0)
      found_.push_back({number(from), where + "the pattern runs " + std::to_string(far) +
                                          (far == 1 ? " cluster " : " clusters ") +
                                          (departure.ahead > 0 ? "ahead" : "behind") + result});
    else
      found_.push_back(
          {number(from), where + "the pattern is shifted: the clusters are turned against those before" + result});
  }

  const std::vector<LaidCluster>& laid_;
  int most_ahead_, size_;
  std::vector<LaidCluster> wanted_;
  std::vector<Departure> departures_;
  std::optional<Open> open_;
  std::vector<PatternBreak> found_;
};

}  // namespace pattern_detail

/// Where `laid`, cluster 1 first, departs from `plan`, in order: single clusters that are turned the wrong way or have
/// wrong colours, and stretches that are shifted, run ahead or behind, or are turned to the other hand "from cluster N
/// on", each told once. Exact: what looks as the plan has it, and only that, passes, at any index; a turn that nobody
/// can see in the colours or places of the balloons is none. Of two explanations the one that leaves fewer departures
/// is told. `plan` is valid as for lay_pattern; with kind rows, compares with the rows as typed.
inline std::vector<PatternBreak> pattern_breaks(const std::vector<LaidCluster>& laid, const PatternPlan& plan) {
  return pattern_detail::PlanWalk(laid, plan).breaks();
}

}  // namespace quadrille
