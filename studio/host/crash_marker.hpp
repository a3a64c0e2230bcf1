// A marker on disk while a plugin file is tried for the first time: if the program ends meanwhile, the marker stays and
// the file is skipped at the next start.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace quadrille {

/// One trial of one plugin file, from before it is loaded until its piece types were built once. Take the lock by
/// `begin`, ask crashed_before, and say `survived` at the end. Only an end of the process in between leaves the marker.
class Trial {
 public:
  /// Begins the trial of `file` (canonical path). A file is known by its path, size and time of change: any change of
  /// them makes it a new one. Nothing is written for a file that survived before, nor where `state_folder` is none or
  /// cannot be written. Where another process is trying the same file, waits for it, five seconds at most.
  static Trial begin(const std::optional<std::filesystem::path>& state_folder, const std::filesystem::path& file,
                     bool try_again);

  /// True where an earlier trial of this very file ended the program; then it is not to be loaded.
  bool crashed_before() const { return crashed_before_; }
  /// Remembers the file as one that does not end the program.
  void survived();

  Trial(Trial&& other) noexcept;
  Trial& operator=(Trial&&) = delete;
  ~Trial();

 private:
  Trial() = default;
  void remove_marker();

  std::filesystem::path marker_, known_;
  std::string identity_;
  int descriptor_ = -1;  ///< of the marker, locked; -1 where none is kept
  bool crashed_before_ = false;
};

}  // namespace quadrille
