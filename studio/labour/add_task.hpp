// Putting tasks into the list of a job.
#pragma once

#include <string>
#include <vector>

#include "studio/labour/task.hpp"

namespace quadrille {

/// Those of `ids` that name a task of the list.
std::vector<std::string> listed(const std::vector<Task>& tasks, const std::vector<std::string>& ids);

/// Appends `task` under this id, to wait for those of `after` that stand in the list already; nothing where it takes no
/// time. What is done the day before can be.
void add_task(std::vector<Task>& tasks, std::string id, std::string text, Task task,
              const std::vector<std::string>& after);

}  // namespace quadrille
