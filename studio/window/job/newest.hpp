// A thread that works on the newest thing it is asked, and on nothing else.
#pragma once

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace quadrille {

/// True as soon as the question at hand need not be answered any more: a newer one waits, or the end is near.
using Stale = std::function<bool()>;

template <class Question>
class Newest {
 public:
  /// `work` runs on a thread of its own, never throws, and looks at the second argument between its steps.
  explicit Newest(std::function<void(const Question&, const Stale&)> work)
      : work_(std::move(work)), thread_([this] { run(); }) {}
  /// Waits for the step that is being worked on.
  ~Newest() {
    {
      const std::lock_guard lock(mutex_);
      stop_ = true;
    }
    wake_.notify_one();
    thread_.join();
  }
  Newest(const Newest&) = delete;
  Newest& operator=(const Newest&) = delete;

  /// Works on `question` as soon as it can; one that waits is forgotten for it, one at hand becomes stale.
  void ask(Question question) {
    {
      const std::lock_guard lock(mutex_);
      waiting_ = std::move(question);
    }
    wake_.notify_one();
  }

 private:
  void run() {
    const Stale stale = [this] {
      const std::lock_guard lock(mutex_);
      return stop_ || waiting_.has_value();
    };
    while (true) {
      std::optional<Question> question;
      {
        std::unique_lock lock(mutex_);
        wake_.wait(lock, [this] { return stop_ || waiting_; });
        if (stop_) return;
        question = std::exchange(waiting_, std::nullopt);
      }
      work_(*question, stale);
    }
  }

  std::function<void(const Question&, const Stale&)> work_;
  std::mutex mutex_;  ///< guards what follows, but the thread
  std::condition_variable wake_;
  std::optional<Question> waiting_;
  bool stop_ = false;
  std::thread thread_;  ///< last, so that all it uses is there before it starts
};

}  // namespace quadrille
