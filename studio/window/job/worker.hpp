// The background worker: one thread that loads the piece types and studies the event. Knows no toolkit.
#pragma once

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "studio/host/search_plan.hpp"
#include "studio/window/job/study.hpp"

namespace quadrille {

/// Where answers go. Both are called on the worker's thread, with plain values.
struct WorkerAnswers {
  std::function<void(std::shared_ptr<const PieceTypes>)> types;
  std::function<void(std::shared_ptr<const Study>)> study;
};

class Worker {
 public:
  /// Loads the piece types of `plan` at once.
  Worker(SearchPlan plan, WorkerAnswers answers);
  /// Waits for the piece that is being built and answers no more.
  ~Worker();
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  /// Studies `question` as soon as it can; one that waits and is not begun is forgotten for it.
  void ask(Question question);
  /// Builds the pieces of `event` when no question waits, and hands them to `use` on the worker's thread; one that waits is
  /// forgotten for it. What `use` throws is passed over.
  void build(Event event, std::function<void(const BuiltEvent&)> use);
  /// Looks for piece types anew and studies the last question again.
  void reload(bool try_crashed_again);

 private:
  /// What one search found, and what was built with it.
  struct Workshop {
    explicit Workshop(std::shared_ptr<const PieceTypes> found) : types(std::move(found)), builder(*types) {}
    std::shared_ptr<const PieceTypes> types;
    EventBuilder builder;
    EventBuilder aside{*types};  ///< for what is no part of the event, so that it drives nothing of it out
  };
  struct Aside {
    Event event;
    std::function<void(const BuiltEvent&)> use;
  };
  void run();
  void load(SearchPlan plan);
  void build_aside(const Aside& aside);
  bool stopping();

  SearchPlan plan_;
  WorkerAnswers answers_;
  std::unique_ptr<Workshop> workshop_;  ///< the worker thread's alone

  std::mutex mutex_;  ///< guards all below but the thread
  std::condition_variable wake_;
  std::optional<SearchPlan> to_load_;
  std::optional<Question> waiting_, last_;
  std::optional<Aside> aside_;
  bool stop_ = false;

  std::thread thread_;  ///< last, so that all it uses is there before it starts
};

}  // namespace quadrille
