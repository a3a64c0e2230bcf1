// How long a task lasts, by hand.
#include "studio/labour/task.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

namespace quadrille {
namespace {

Task work_of(double seconds, int least, int most) {
  Task task;
  task.work_s = seconds;
  task.crew_least = least;
  task.crew_most = most;
  return task;
}

Task work_of_trips() {
  Task task = work_of(300, 1, 20);
  task.parts = 5;
  return task;
}

TEST_CASE("work is shared, up to as many as help") {
  const Task task = work_of(100, 1, 3);
  CHECK(seconds_of(task, 1) == 100);
  CHECK(seconds_of(task, 2) == 50);
  CHECK(seconds_of(task, 3) == 34);  // 33.3, rounded up
  CHECK(seconds_of(task, 9) == 34);
}

TEST_CASE("no helper shortens what the inflator or the road takes") {
  Task task = work_of(100, 1, 2);
  task.fixed_s = 40;
  CHECK(seconds_of(task, 1) == 140);
  CHECK(seconds_of(task, 2) == 90);
}

TEST_CASE("trips are whole trips") {
  // Five trips of 60 s: two people walk three times, three people twice, five once.
  Task task = work_of(300, 1, 20);
  task.parts = 5;
  CHECK(seconds_of(task, 1) == 300);
  CHECK(seconds_of(task, 2) == 180);
  CHECK(seconds_of(task, 3) == 120);
  CHECK(seconds_of(task, 4) == 120);
  CHECK(seconds_of(task, 5) == 60);
  CHECK(seconds_of(task, 20) == 60);
}

TEST_CASE("what wants two is more work for one") {
  Task task = work_of(180, 2, 2);
  task.alone_factor = 1.5;
  CHECK(seconds_of(task, 1) == 270);
  CHECK(seconds_of(task, 2) == 90);
  CHECK(least_of(task, 1) == 1);
  CHECK(least_of(task, 5) == 2);
  CHECK(most_of(task, 5) == 2);
}

TEST_CASE("who stood idle while the others made their last trip was paid for work") {
  // Five trips of 60 s are 300 s of work, whoever makes them; two people are there for 180 s each.
  Task trips = work_of_trips();
  CHECK(work_of(trips, 1) == 300);
  CHECK(work_of(trips, 2) == 300);
  CHECK(2 * seconds_of(trips, 2) == 360);
  CHECK(work_of(trips, 5) == 300);
  // The road and the inflator hold everybody who is at it: 100 s shared, and 40 s for each of two.
  Task blown = work_of(100, 1, 2);
  blown.fixed_s = 40;
  CHECK(work_of(blown, 1) == 140);
  CHECK(work_of(blown, 2) == 180);
  // One alone at what wants two has half as much again to do.
  Task raised = work_of(180, 2, 2);
  raised.alone_factor = 1.5;
  CHECK(work_of(raised, 1) == 270);
  CHECK(work_of(raised, 2) == 180);
}

TEST_CASE("each phase has a key and a name of its own") {
  std::set<std::string> words;
  for (int phase = 0; phase <= static_cast<int>(Phase::put_away); ++phase) {
    words.emplace(key_of(static_cast<Phase>(phase)));
    words.emplace(name_of(static_cast<Phase>(phase)));
  }
  CHECK(words.size() == 16);
}

}  // namespace
}  // namespace quadrille
