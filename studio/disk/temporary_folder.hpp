// A folder that nobody else can enter and that goes with the object, for libraries that only write to files.
#pragma once

#include <filesystem>

namespace quadrille {

class TemporaryFolder {
 public:
  /// Makes it where the system keeps such folders (TMPDIR). Its path is empty where it could not be made.
  TemporaryFolder();
  /// Removes it with all that is in it.
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace quadrille
