// The events that were open last, remembered from one start to the next. Knows no toolkit.
#pragma once

#include <filesystem>
#include <vector>

#include "studio/window/recent_lines.hpp"

namespace quadrille {

/// Newest first. `memory` is the file they are kept in, one path a line; empty = they are forgotten at the end.
class RecentFiles {
 public:
  static constexpr std::size_t most = 9;

  explicit RecentFiles(std::filesystem::path memory);

  std::vector<std::filesystem::path> files() const { return {kept_.lines().begin(), kept_.lines().end()}; }
  /// Puts the file on top. That it cannot be written down is no fault worth telling.
  void opened(const std::filesystem::path& file);
  /// Takes a file off that is no longer there.
  void forget(const std::filesystem::path& file);

 private:
  RecentLines kept_;
};

/// Where they are kept: "recent-events" in the user's state folder; empty where there is none.
std::filesystem::path recent_files_memory();

/// The sample events that come with the studio, by name; none where they are not found.
std::vector<std::filesystem::path> sample_events(const std::filesystem::path& executable);

}  // namespace quadrille
