#include "studio/labour/add_task.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <unordered_set>
#include <utility>

namespace quadrille {

std::vector<std::string> listed(const std::vector<Task>& tasks, const std::vector<std::string>& ids) {
  std::vector<std::string> found;
  if (constexpr std::size_t few = 8; ids.size() <= few) {
    std::ranges::copy_if(ids, std::back_inserter(found),
                         [&](const std::string& id) { return std::ranges::find(tasks, id, &Task::id) != tasks.end(); });
    return found;
  }
  std::unordered_set<std::string_view> names;
  for (const Task& task : tasks) names.insert(task.id);
  std::ranges::copy_if(ids, std::back_inserter(found), [&](const std::string& id) { return names.contains(id); });
  return found;
}

void add_task(std::vector<Task>& tasks, std::string id, std::string text, Task task,
              const std::vector<std::string>& after) {
  if (task.work_s + task.fixed_s <= 0) return;
  task.id = std::move(id);
  task.text = std::move(text);
  task.after = listed(tasks, after);
  task.can_be_before = task.can_be_before || task.phase == Phase::day_before;
  tasks.push_back(std::move(task));
}

}  // namespace quadrille
