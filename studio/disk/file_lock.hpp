// A lock that a process holds on a file of its own, and that the system takes back when the process ends, however it ends.
#pragma once

#include <filesystem>
#include <memory>

#include "studio/disk/open_descriptor.hpp"

namespace quadrille {

class FileLock {
 public:
  /// Makes the file where it is missing, readable by its owner alone, and locks it. Null where another holds it, in this
  /// process or another one, or where it cannot be made.
  static std::unique_ptr<FileLock> take(const std::filesystem::path& path);
  /// Gives the lock back; the file stays.
  ~FileLock() = default;
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;

  const std::filesystem::path& path() const { return path_; }
  /// Removes the file while it is held, so that nobody else can have it in between.
  void remove();

 private:
  FileLock(std::filesystem::path path, int descriptor);

  std::filesystem::path path_;
  OpenDescriptor file_;
};

}  // namespace quadrille
