#include "studio/standing/line_search.hpp"

#include <algorithm>
#include <initializer_list>
#include <set>
#include <utility>

#include "sdk/vec.hpp"
#include "studio/standing/line_sets.hpp"

namespace quadrille {
namespace {

constexpr double worth = 1.02;         // what a further step must gain
constexpr std::size_t few_sets = 150;  // so many are all tried

class Climb {
 public:
  Climb(const AnchorSpots& spots, const TryLines& tried, double above_m_s, int most_tries)
      : spots_(spots), tried_(tried), above_m_s_(above_m_s), tries_left_(most_tries) {}

  /// Whether `choices` are the best so far, and by enough. Their lines come in the order of the ties, then of the directions.
  bool takes(const Choices& choices) {
    Choices sorted = choices;
    std::ranges::sort(sorted);
    if (std::ranges::adjacent_find(sorted) != sorted.end() || tries_left_ == 0 || !seen_.insert(sorted).second)
      return false;
    std::vector<SecuringLine> lines;
    for (const LineChoice& choice : sorted) {
      auto line = spots_.line(choice);
      if (!line) return false;
      lines.push_back(std::move(*line));
    }
    --tries_left_;
    auto found = tried_(std::move(lines), best_ ? worth * best_->limit_gust_m_s : above_m_s_);
    if (!found) return false;
    best_ = std::move(found);
    at_ = choices;
    return true;
  }

  void go() {
    while (best_ && steps()) {
    }
  }

  std::optional<FoundLines> best() {
    if (!best_) return std::nullopt;
    return FoundLines{std::move(*best_), std::move(at_)};
  }

 private:
  /// Whether one step from where the climb stands was better.
  bool steps() {
    for (std::size_t i = 0; i < at_.size(); ++i)
      for (const LineChoice& next : spots_.beside(at_[i]))
        for (const auto& [left_right, front_back] : {std::pair{true, true}, {true, false}, {false, true}})
          if (takes(stepped(i, next, left_right, front_back))) return true;
    return false;
  }

  /// Line `i` goes to `next`, and those that mirror it go with it.
  Choices stepped(std::size_t i, const LineChoice& next, bool left_right, bool front_back) const {
    Choices to = at_;
    to[i] = next;
    for (const auto& [across, through] : {std::pair{true, false}, {false, true}, {true, true}}) {
      if ((across && !left_right) || (through && !front_back)) continue;
      const auto mirror = spots_.mirrored(at_[i], across, through), image = spots_.mirrored(next, across, through);
      if (!mirror || !image) continue;
      for (std::size_t j = 0; j < to.size(); ++j)
        if (j != i && at_[j] == *mirror) to[j] = *image;
    }
    return to;
  }

  const AnchorSpots& spots_;
  const TryLines& tried_;
  double above_m_s_;
  int tries_left_;
  std::set<Choices> seen_;
  std::optional<TriedLines> best_;
  Choices at_;
};

/// The set as near as the site allows; `as_asked` becomes false where that is not the set itself.
std::optional<Choices> begun_with(const LineSet& set, const AnchorSpots& spots, bool& as_asked) {
  Choices choices;
  for (const LineWay& way : set) {
    const auto tie = spots.tie_of(way.purpose, way.number);
    const auto choice = tie ? spots.nearest(*tie, way.angle) : std::nullopt;
    as_asked = as_asked && (!tie || (choice && !choice->structure && choice->distance == 0 &&
                                     choice->direction == LineChoice::nearest_direction(way.angle)));
    if (!choice) return std::nullopt;
    choices.push_back(*choice);
  }
  return choices;
}

/// Of every tie what is allowed nearest to the eight directions.
Choices coarse(const AnchorSpots& spots) {
  constexpr int eighths = 8;
  std::set<LineChoice> found;
  for (std::size_t tie = 0; tie < spots.ties(); ++tie)
    for (int eighth = 0; eighth < eighths; ++eighth)
      if (const auto choice = spots.nearest(tie, 2 * pi * eighth / eighths)) found.insert(*choice);
  return {found.begin(), found.end()};
}

/// Sets of three or four in which one or two pairs mirror each other left for right.
std::vector<Choices> mirrored_sets(const Choices& of, std::size_t count, const AnchorSpots& spots) {
  std::vector<Choices> pairs, sets;
  for (const LineChoice& one : of)
    if (const auto other = spots.mirrored(one, true, false); other && one < *other) pairs.push_back({one, *other});
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const auto add = [&](std::initializer_list<LineChoice> further) {
      sets.push_back(pairs[i]);
      sets.back().insert(sets.back().end(), further);
    };
    if (count == 3)
      for (const LineChoice& third : of) add({third});
    if (count == 4)
      for (std::size_t j = 0; j < i; ++j) add({pairs[j][0], pairs[j][1]});
  }
  return sets;
}

/// Every set of `count` of these, where that is no more than `most`; otherwise none.
std::vector<Choices> all_sets(const Choices& of, std::size_t count, std::size_t most) {
  std::vector<Choices> sets;
  if (of.size() < count) return sets;
  std::vector<bool> chosen(of.size());
  std::fill_n(chosen.begin(), count, true);
  do {
    if (sets.size() == most) return {};
    Choices& set = sets.emplace_back();
    for (std::size_t i = 0; i < of.size(); ++i)
      if (chosen[i]) set.push_back(of[i]);
  } while (std::prev_permutation(chosen.begin(), chosen.end()));
  return sets;
}

}  // namespace

std::optional<FoundLines> best_lines_of(std::size_t count, const AnchorSpots& spots, double above_m_s,
                                        const TryLines& tried, const Beginnings& from, int most_tries) {
  Climb climb(spots, tried, above_m_s, most_tries);
  bool as_asked = true;
  if (from.known.size() == count) climb.takes(from.known);
  for (const LineSet& set : line_sets())
    if (set.size() == count)
      if (const auto choices = begun_with(set, spots, as_asked)) climb.takes(*choices);
  if (!as_asked) {
    // What the climb ends at depends on where it begins.
    for (const Choices& set : all_sets(spots.all(), count, few_sets)) climb.takes(set);
    const Choices some = coarse(spots);
    for (const Choices& set :
         count <= 2 ? all_sets(some, count, some.size() * some.size()) : mirrored_sets(some, count, spots))
      climb.takes(set);
    for (const LineChoice& further : some) {
      Choices set = from.fewer;
      set.push_back(further);
      if (set.size() == count) climb.takes(set);
    }
  }
  climb.go();
  return climb.best();
}

}  // namespace quadrille
