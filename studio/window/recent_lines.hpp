// What was used last, a line each in a file of its own, remembered from one start to the next. Knows no toolkit.
#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille {

/// Newest first, each once, at most so many. `memory` is the file they are kept in; empty = they are forgotten at the end.
class RecentLines {
 public:
  /// Lines of the file that `is_good` refuses are passed over; a file that cannot be read holds none.
  RecentLines(std::filesystem::path memory, std::size_t most, const std::function<bool(std::string_view)>& is_good);

  const std::vector<std::string>& lines() const { return lines_; }
  /// Puts the line, which holds no line break, on top. That it cannot be written down is no fault worth telling.
  void put_on_top(std::string line);
  void forget(const std::string& line);

 private:
  void keep() const;

  std::filesystem::path memory_;
  std::size_t most_;
  std::vector<std::string> lines_;
};

/// The file of this name in the user's state folder; empty where there is none.
std::filesystem::path memory_called(const char* name);

}  // namespace quadrille
