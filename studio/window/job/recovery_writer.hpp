// Keeps unsaved work away from the main thread: the newest state, as soon as the disk is done with the one before. Knows no
// toolkit.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "studio/files/recovery.hpp"
#include "studio/window/job/newest.hpp"

namespace quadrille {

class RecoveryWriter {
 public:
  /// `told` is called on the writer's thread with the sentence why nothing can be kept, once until it can be again.
  RecoveryWriter(std::filesystem::path folder, std::function<void(std::string fault)> told);
  /// Waits for what is being written; what was kept stays.
  ~RecoveryWriter() = default;

  /// Keeps the state that `entry` gives; it is called on the writer's thread, so that only values may be bound to it.
  void keep(std::function<RecoveryEntry()> entry) { newest_->ask(std::move(entry)); }
  /// Nothing is unsaved any more.
  void forget() { newest_->ask({}); }
  using State = std::function<RecoveryEntry()>;  ///< empty: nothing is to be kept
  /// The last state: it is kept, or nothing is, when this returns, and nothing can be any more.
  void end(const State& last);

 private:
  void work(const State& state);

  std::function<void(std::string)> told_;
  RecoveryJournal journal_;  ///< the writer's thread's alone, until the end
  bool failed_ = false;
  std::unique_ptr<Newest<State>> newest_;  ///< last, so that all it uses is there before it starts
};

}  // namespace quadrille
