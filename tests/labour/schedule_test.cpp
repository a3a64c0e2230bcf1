// Schedules: small ones by hand, and what must hold for any.
#include "studio/labour/schedule.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <tuple>

namespace quadrille {
namespace {

Task task(std::string id, double work_s, std::vector<std::string> after = {}, int least = 1, int most = 1) {
  Task made;
  made.id = std::move(id);
  made.work_s = work_s;
  made.after = std::move(after);
  made.crew_least = least;
  made.crew_most = most;
  return made;
}

const Slot& slot_of(const Schedule& schedule, std::size_t task) {
  return *std::ranges::find(schedule.slots, task, &Slot::task);
}

TEST_CASE("one person does everything in a row") {
  const std::vector<Task> tasks{task("a", 10), task("b", 20, {"a"}), task("c", 30)};
  CHECK(schedule(tasks, 1).length_s == 60);
  CHECK(serial_s(tasks) == 60);
  CHECK(critical_path_s(tasks, 1) == 30);
}

TEST_CASE("nothing to do takes no time") {
  CHECK(schedule({}, 3).length_s == 0);
  CHECK(critical_path_s({}, 3) == 0);
}

TEST_CASE("two people: the longest chain first") {
  // a then b take 40, c 30, d 10: one person has the chain, the other the rest. Slack of c and d by hand: none for the
  // chain; the others may end 40 − 40 = 0 later, if both are one person's.
  const std::vector<Task> tasks{task("d", 10), task("c", 30), task("a", 15), task("b", 25, {"a"})};
  const Schedule found = schedule(tasks, 2);
  CHECK(found.length_s == 40);
  CHECK(slot_of(found, 2).slack_s == 0);
  CHECK(slot_of(found, 3).slack_s == 0);
}

TEST_CASE("slack counts what the people do next") {
  // One chain of 50, and one task of 10 that nothing waits for: it may end 40 later.
  const std::vector<Task> tasks{task("a", 20), task("b", 30, {"a"}), task("c", 10)};
  const Schedule found = schedule(tasks, 2);
  CHECK(found.length_s == 50);
  CHECK(slot_of(found, 0).slack_s == 0);
  CHECK(slot_of(found, 1).slack_s == 0);
  CHECK(slot_of(found, 2).slack_s == 40);
}

TEST_CASE("what wants two waits until two are free, and has both") {
  const std::vector<Task> tasks{task("a", 30), task("raise", 40, {}, 2, 2)};
  const Schedule found = schedule(tasks, 2);
  CHECK(found.length_s == 50);  // 20 together, 30 alone, in either order
  CHECK(slot_of(found, 1).people == std::vector<int>{1, 2});
}

TEST_CASE("one inflator serves one task at a time, two serve two") {
  std::vector<Task> tasks{task("a", 30), task("b", 30)};
  for (Task& made : tasks) made.at_inflator = true;
  CHECK(schedule(tasks, 2, 1).length_s == 60);
  CHECK(schedule(tasks, 2, 2).length_s == 30);
}

TEST_CASE("work is shared where that is quicker") {
  // Alone 60 and 20; two people share the first: (60 + 20) / 2.
  const std::vector<Task> tasks{task("a", 60, {}, 1, 2), task("b", 20)};
  CHECK(schedule(tasks, 2).length_s <= 50);
  CHECK(schedule(tasks, 1).length_s == 80);
}

TEST_CASE("tasks that take no time, and tasks that wait for what is not there") {
  const std::vector<Task> tasks{task("a", 0), task("b", 0, {"a"}), task("c", 10, {"b", "gone"})};
  const Schedule found = schedule(tasks, 1);
  CHECK(found.length_s == 10);
  for (const Slot& slot : found.slots) CHECK(slot.slack_s == 0);
}

TEST_CASE("a circle, a name that stands twice and a crew of nobody are refused") {
  CHECK_THROWS_AS(schedule(std::vector{task("a", 1, {"b"}), task("b", 1, {"a"})}, 1), std::invalid_argument);
  CHECK_THROWS_AS(schedule(std::vector{task("a", 1, {"a"})}, 1), std::invalid_argument);
  CHECK_THROWS_AS(schedule(std::vector{task("a", 1), task("a", 1)}, 1), std::invalid_argument);
  CHECK_THROWS_AS(schedule(std::vector{task("a", 1)}, 0), std::invalid_argument);
  CHECK_THROWS_AS(schedule(std::vector{task("a", 1)}, 21), std::invalid_argument);
  CHECK_THROWS_AS(schedule(std::vector{task("a", 1)}, 1, 0), std::invalid_argument);
}

std::vector<Task> some_tasks() {
  std::vector<Task> tasks;
  const int number = *rc::gen::inRange(1, 14);
  for (int i = 0; i < number; ++i) {
    const int least = *rc::gen::weightedElement<int>({{5, 1}, {2, 2}, {1, 3}});
    Task made = task("t" + std::to_string(i), *rc::gen::inRange(0, 500), {}, least, least + *rc::gen::inRange(0, 3));
    made.fixed_s = *rc::gen::weightedElement<int>({{4, 0}, {1, 37}});
    made.parts = *rc::gen::weightedElement<int>({{4, 0}, {1, 5}});
    made.alone_factor = least > 1 ? 1.5 : 1;
    made.at_inflator = *rc::gen::weightedElement<bool>({{3, false}, {1, true}});
    for (int before = 0; before < i; ++before)
      if (*rc::gen::weightedElement<bool>({{4, false}, {1, true}})) made.after.push_back("t" + std::to_string(before));
    tasks.push_back(std::move(made));
  }
  return tasks;
}

bool overlap(const Slot& a, const Slot& b) { return a.start_s < b.end_s && b.start_s < a.end_s; }

bool share_somebody(const Slot& a, const Slot& b) {
  return std::ranges::any_of(a.people, [&](int person) { return std::ranges::count(b.people, person) > 0; });
}

TEST_CASE("nobody does two things at once, and nothing begins before what it waits for has ended") {
  CHECK(rc::check([] {
    const auto tasks = some_tasks();
    const int crew = *rc::gen::inRange(1, 6), inflators = *rc::gen::inRange(1, 3);
    const Schedule found = schedule(tasks, crew, inflators);
    RC_ASSERT(found.slots.size() == tasks.size());
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      const Slot& a = slot_of(found, i);
      const int hands = static_cast<int>(a.people.size());
      RC_ASSERT(a.end_s - a.start_s == seconds_of(tasks[i], hands));
      RC_ASSERT(a.end_s <= found.length_s && a.start_s >= 0);
      RC_ASSERT(hands >= std::min(crew, tasks[i].crew_least) && hands <= std::min(crew, tasks[i].crew_most));
      RC_ASSERT(std::ranges::adjacent_find(a.people, std::ranges::greater_equal()) == a.people.end());
      RC_ASSERT(a.people.front() >= 1 && a.people.back() <= crew);
      RC_ASSERT((a.inflator > 0) == tasks[i].at_inflator && a.inflator <= inflators);
      for (std::size_t j = 0; j < tasks.size(); ++j) {
        const Slot& b = slot_of(found, j);
        if (i != j && overlap(a, b)) {
          RC_ASSERT(!share_somebody(a, b));
          RC_ASSERT(a.inflator == 0 || a.inflator != b.inflator);
        }
        if (std::ranges::count(tasks[i].after, tasks[j].id) > 0) RC_ASSERT(a.start_s >= b.end_s);
      }
    }
  }));
}

TEST_CASE(
    "a schedule is never under the critical path, never over the work in a row, and never longer with more people") {
  CHECK(rc::check([] {
    const auto tasks = some_tasks();
    std::int64_t last = serial_s(tasks);
    const auto lengths = lengths_by_crew(tasks, 6);
    for (int crew = 1; crew <= 6; ++crew) {
      const std::int64_t length = schedule(tasks, crew).length_s;
      RC_ASSERT(length >= critical_path_s(tasks, crew));
      RC_ASSERT(length <= last);
      RC_ASSERT(length == lengths[static_cast<std::size_t>(crew) - 1]);
      last = length;
    }
  }));
}

TEST_CASE("what has slack may take that much longer, and what has none may not") {
  // Hold everything else in its order and let one task take longer: the end moves by as much as is beyond its slack.
  CHECK(rc::check([] {
    const auto tasks = some_tasks();
    const int crew = *rc::gen::inRange(1, 5);
    const Schedule found = schedule(tasks, crew);
    const auto late = *rc::gen::inRange<std::size_t>(0, found.slots.size());
    const auto more = *rc::gen::inRange<std::int64_t>(0, 600);
    std::vector<Slot> pushed = found.slots;
    std::vector<std::size_t> order(pushed.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) {
      const auto key = [&](std::size_t at) {
        return std::tuple(pushed[at].start_s, pushed[at].end_s, pushed[at].task);
      };
      return key(a) < key(b);
    });
    std::int64_t end = 0;
    for (std::size_t n = 0; n < order.size(); ++n) {
      Slot& slot = pushed[order[n]];
      const Slot& was = found.slots[order[n]];
      std::int64_t start = was.start_s;
      for (std::size_t m = 0; m < n; ++m) {
        const Slot &before = pushed[order[m]], &before_was = found.slots[order[m]];
        const bool waits = std::ranges::count(tasks[slot.task].after, tasks[before.task].id) > 0 ||
                           share_somebody(slot, before) || (slot.inflator > 0 && slot.inflator == before.inflator);
        if (waits && before_was.end_s <= was.start_s) start = std::max(start, before.end_s);
      }
      slot.start_s = start;
      slot.end_s = start + was.end_s - was.start_s + (order[n] == late ? more : 0);
      end = std::max(end, slot.end_s);
    }
    RC_ASSERT(end - found.length_s == std::max<std::int64_t>(0, more - found.slots[late].slack_s));
  }));
}

}  // namespace
}  // namespace quadrille
