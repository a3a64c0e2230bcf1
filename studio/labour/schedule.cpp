// List scheduling: at every moment the free people take, of the tasks that can begin, those that a rule puts first.
#include "studio/labour/schedule.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <map>
#include <numeric>
#include <optional>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace quadrille {
namespace {

using Places = std::vector<std::size_t>;

/// The tasks' waiting for each other, by place in the list.
struct Order {
  std::vector<Places> before, behind;
  Places sorted;  ///< each after those it waits for
};

Order order_of(std::span<const Task> tasks) {
  Order order;
  order.before.resize(tasks.size());
  order.behind.resize(tasks.size());
  std::map<std::string_view, std::size_t> places;
  for (std::size_t i = 0; i < tasks.size(); ++i)
    if (!places.emplace(tasks[i].id, i).second) throw std::invalid_argument("two tasks are called " + tasks[i].id);
  std::vector<std::size_t> waiting(tasks.size(), 0);
  for (std::size_t i = 0; i < tasks.size(); ++i)
    for (const std::string& id : tasks[i].after)
      if (const auto found = places.find(id); found != places.end()) {
        order.before[i].push_back(found->second);
        order.behind[found->second].push_back(i);
        ++waiting[i];
      }
  for (std::size_t i = 0; i < tasks.size(); ++i)
    if (waiting[i] == 0) order.sorted.push_back(i);
  for (std::size_t at = 0; at < order.sorted.size(); ++at)
    for (const std::size_t next : order.behind[order.sorted[at]])
      if (--waiting[next] == 0) order.sorted.push_back(next);
  if (order.sorted.size() < tasks.size()) throw std::invalid_argument("tasks wait for each other in a circle");
  return order;
}

/// For each task the seconds from its beginning to the end of the longest chain behind it.
std::vector<std::int64_t> tails_of(std::span<const Task> tasks, const Order& order, int crew) {
  std::vector<std::int64_t> tails(tasks.size(), 0);
  for (auto at = order.sorted.rbegin(); at != order.sorted.rend(); ++at) {
    std::int64_t behind = 0;
    for (const std::size_t next : order.behind[*at]) behind = std::max(behind, tails[next]);
    tails[*at] = behind + seconds_of(tasks[*at], most_of(tasks[*at], crew));
  }
  return tails;
}

/// How many of the free people a task gets: as many as help, as few as it wants, or an even share of them.
enum class Sharing { most, least, even };

/// One run of list scheduling. Tasks earlier in `ranks` come first.
class Run {
 public:
  Run(std::span<const Task> tasks, const Order& order, const Places& ranks, Sharing sharing, int crew, int inflators)
      : tasks_(tasks),
        order_(order),
        sharing_(sharing),
        free_(static_cast<std::size_t>(crew), true),
        inflators_(static_cast<std::size_t>(inflators)),
        pieces_(static_cast<std::size_t>(crew)),
        slots_(tasks.size()),
        rank_(tasks.size()) {
    for (std::size_t at = 0; at < ranks.size(); ++at) rank_[ranks[at]] = at;
    for (std::size_t task = 0; task < tasks.size(); ++task) {
      waiting_for_.push_back(order.before[task].size());
      if (waiting_for_[task] == 0) ready_.emplace(rank_[task], task);
      if (tasks[task].at_inflator) ++wanted_at_[place_of(tasks[task])];
    }
  }

  Schedule result() {
    for (std::size_t ended = 0; ended < tasks_.size();) {
      begin_what_can(false);
      if (running_.empty()) begin_what_can(true);
      ended += end_next();
    }
    return {slots_, now_};
  }

 private:
  int free_people() const { return static_cast<int>(std::ranges::count(free_, true)); }

  static std::string_view place_of(const Task& task) {
    return task.phase == Phase::day_before ? std::string_view("at home") : std::string_view(task.area);
  }

  /// A free inflator: one that is there, else one that was not used yet, else one that nobody wants where it is; where
  /// `any`, else any.
  std::optional<std::size_t> inflator_for(const Task& task, bool any) const {
    const auto first = [&](const auto& serves) -> std::optional<std::size_t> {
      for (std::size_t i = 0; i < inflators_.size(); ++i)
        if (inflators_[i].is_free && serves(inflators_[i])) return i;
      return std::nullopt;
    };
    auto found = first([&](const InflatorAt& inflator) { return inflator.place == place_of(task); });
    if (!found) found = first([](const InflatorAt& inflator) { return !inflator.place; });
    if (!found) found = first([&](const InflatorAt& inflator) { return wanted_at_.at(*inflator.place) == 0; });
    if (!found && any) found = first([](const InflatorAt&) { return true; });
    return found;
  }

  /// `anyhow`: an inflator leaves where it is still wanted, since nothing else could begin.
  void begin_what_can(bool anyhow) {
    auto left = static_cast<int>(ready_.size());
    const int crew = static_cast<int>(free_.size());
    for (auto at = ready_.begin(); at != ready_.end(); --left) {
      const std::size_t task = at->second;
      const int least = least_of(tasks_[task], crew), free = free_people();
      if (free == 0) return;
      const bool has_inflator =
          !tasks_[task].at_inflator || inflator_for(tasks_[task], anyhow && running_.empty()).has_value();
      if (free < least || !has_inflator) {
        ++at;
        continue;
      }
      at = ready_.erase(at);
      begin(task, hands_for(task, least, free, left), anyhow);
    }
  }

  /// `left`: how many tasks, this one among them, still want people at this moment.
  int hands_for(std::size_t task, int least, int free, int left) const {
    const int most = std::min(free, most_of(tasks_[task], static_cast<int>(free_.size())));
    if (sharing_ == Sharing::least) return least;
    return sharing_ == Sharing::most ? most : std::clamp(free / left, least, most);
  }

  void begin(std::size_t task, int hands, bool anyhow) {
    Slot& slot = slots_[task];
    slot.task = task;
    slot.start_s = now_;
    slot.end_s = now_ + seconds_of(tasks_[task], hands);
    const std::string_view piece = tasks_[task].piece;
    // Whoever worked at the same piece before goes on with it.
    for (const bool known : {true, false})
      for (std::size_t person = 0; person < free_.size() && std::ssize(slot.people) < hands; ++person)
        if (free_[person] && pieces_[person].contains(piece) == known) {
          free_[person] = false;
          slot.people.push_back(static_cast<int>(person) + 1);
        }
    std::ranges::sort(slot.people);
    if (!piece.empty())
      for (const int person : slot.people) pieces_[static_cast<std::size_t>(person) - 1].insert(piece);
    if (tasks_[task].at_inflator) {
      const std::size_t inflator = *inflator_for(tasks_[task], anyhow);
      inflators_[inflator] = {false, place_of(tasks_[task])};
      --wanted_at_[place_of(tasks_[task])];
      slot.inflator = static_cast<int>(inflator) + 1;
    }
    running_.push_back(task);
  }

  /// Moves on to when the next task ends; how many end then.
  std::size_t end_next() {
    assert(!running_.empty());  // no task can wait for ever: there is no circle, and the whole crew is enough for any
    now_ = slots_[running_.front()].end_s;
    for (const std::size_t task : running_) now_ = std::min(now_, slots_[task].end_s);
    return std::erase_if(running_, [&](std::size_t task) {
      if (slots_[task].end_s != now_) return false;
      end(task);
      return true;
    });
  }

  void end(std::size_t task) {
    for (const int person : slots_[task].people) free_[static_cast<std::size_t>(person) - 1] = true;
    if (const int inflator = slots_[task].inflator; inflator > 0)
      inflators_[static_cast<std::size_t>(inflator) - 1].is_free = true;
    for (const std::size_t next : order_.behind[task])
      if (--waiting_for_[next] == 0) ready_.emplace(rank_[next], next);
  }

  std::span<const Task> tasks_;
  const Order& order_;
  Sharing sharing_;
  struct InflatorAt {
    bool is_free = true;
    std::optional<std::string_view> place;  ///< nothing until it is used
  };

  std::vector<bool> free_;
  std::vector<InflatorAt> inflators_;
  std::map<std::string_view, std::size_t> wanted_at_;  ///< tasks that have not begun and want one there
  std::vector<std::set<std::string_view>> pieces_;     ///< at which each person has worked
  std::vector<Slot> slots_;
  Places rank_, waiting_for_, running_;
  std::set<std::pair<std::size_t, std::size_t>> ready_;  ///< rank and task of those that can begin
  std::int64_t now_ = 0;
};

/// The rules: as listed; the longest chain behind it first; the longest task first; the most work behind it first.
std::array<Places, 4> rankings_of(std::span<const Task> tasks, const Order& order, int crew) {
  Places listed(tasks.size());
  std::iota(listed.begin(), listed.end(), std::size_t{0});
  const auto by = [&](const std::vector<std::int64_t>& weight) {
    Places ranks = listed;
    std::ranges::stable_sort(ranks, [&](std::size_t a, std::size_t b) { return weight[a] > weight[b]; });
    return ranks;
  };
  std::vector<std::int64_t> alone(tasks.size()), followers(tasks.size());
  for (std::size_t i = 0; i < tasks.size(); ++i) alone[i] = seconds_of(tasks[i], 1);
  for (auto at = order.sorted.rbegin(); at != order.sorted.rend(); ++at) {
    followers[*at] = alone[*at];
    for (const std::size_t next : order.behind[*at]) followers[*at] += followers[next] / 2;
  }
  return {listed, by(tails_of(tasks, order, crew)), by(alone), by(followers)};
}

/// Slack of each slot: what waits for it are the tasks that name it, and what its people and its inflator do next.
void find_slack(Schedule& schedule, std::span<const Task> tasks, const Order& order) {
  std::vector<Slot*> last_first;  // where tasks last no time, the one that waits comes before the one it waits for
  for (auto at = order.sorted.rbegin(); at != order.sorted.rend(); ++at) last_first.push_back(&schedule.slots[*at]);
  std::ranges::stable_sort(last_first, [](const Slot* a, const Slot* b) {
    return std::pair(a->start_s, a->end_s) > std::pair(b->start_s, b->end_s);
  });
  std::vector<std::int64_t> latest_start(tasks.size(), schedule.length_s);
  std::map<int, std::int64_t> person_wanted, inflator_wanted;  // from when on, at the latest
  const auto wanted = [&](const std::map<int, std::int64_t>& by, int who) {
    const auto found = by.find(who);
    return found == by.end() ? schedule.length_s : found->second;
  };
  for (Slot* slot : last_first) {
    std::int64_t latest_end = wanted(inflator_wanted, slot->inflator);
    for (const int person : slot->people) latest_end = std::min(latest_end, wanted(person_wanted, person));
    for (const std::size_t next : order.behind[slot->task]) latest_end = std::min(latest_end, latest_start[next]);
    slot->slack_s = latest_end - slot->end_s;
    latest_start[slot->task] = slot->start_s + slot->slack_s;
    for (const int person : slot->people) person_wanted[person] = latest_start[slot->task];
    if (slot->inflator > 0) inflator_wanted[slot->inflator] = latest_start[slot->task];
  }
}

/// The best that one crew of just so many people finds.
Schedule best_of_crew(std::span<const Task> tasks, const Order& order, int crew, int inflators) {
  std::optional<Schedule> best;
  const auto tails = tails_of(tasks, order, crew);
  const std::int64_t no_shorter = tails.empty() ? 0 : std::ranges::max(tails);
  for (const Places& ranks : rankings_of(tasks, order, crew))
    for (const Sharing sharing : {Sharing::even, Sharing::most, Sharing::least}) {
      Schedule found = Run(tasks, order, ranks, sharing, crew, inflators).result();
      if (!best || found.length_s < best->length_s) best = std::move(found);
      if (best->length_s <= no_shorter) return *best;
    }
  return *best;
}

void check(int crew, int inflators) {
  if (crew < 1 || crew > largest_crew) throw std::invalid_argument("a crew is 1 to 20 people");
  if (inflators < 1) throw std::invalid_argument("there is at least one inflator");
}

}  // namespace

Schedule schedule(std::span<const Task> tasks, int crew, int inflators) {
  check(crew, inflators);
  const Order order = order_of(tasks);
  Schedule best = best_of_crew(tasks, order, crew, inflators);
  for (int fewer = crew - 1; fewer >= 1; --fewer)
    if (Schedule found = best_of_crew(tasks, order, fewer, inflators); found.length_s < best.length_s)
      best = std::move(found);
  find_slack(best, tasks, order);
  std::ranges::stable_sort(best.slots, {}, &Slot::start_s);
  return best;
}

std::vector<std::int64_t> lengths_by_crew(std::span<const Task> tasks, int largest, int inflators) {
  check(largest, inflators);
  const Order order = order_of(tasks);
  std::vector<std::int64_t> lengths;
  for (int crew = 1; crew <= largest; ++crew) {
    const std::int64_t length = best_of_crew(tasks, order, crew, inflators).length_s;
    lengths.push_back(lengths.empty() ? length : std::min(length, lengths.back()));
  }
  return lengths;
}

std::int64_t critical_path_s(std::span<const Task> tasks, int crew) {
  const auto tails = tails_of(tasks, order_of(tasks), crew);
  return tails.empty() ? 0 : std::ranges::max(tails);
}

std::int64_t serial_s(std::span<const Task> tasks) {
  return std::accumulate(tasks.begin(), tasks.end(), std::int64_t{0},
                         [](std::int64_t sum, const Task& task) { return sum + seconds_of(task, 1); });
}

}  // namespace quadrille
