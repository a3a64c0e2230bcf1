// The worker's loop: load what is to be loaded, then study the newest question.
#include "studio/window/job/worker.hpp"

#include <exception>
#include <utility>

#include "studio/host/discovery.hpp"

namespace quadrille {

Worker::Worker(SearchPlan plan, WorkerAnswers answers)
    : plan_(std::move(plan)), answers_(std::move(answers)), to_load_(plan_), thread_([this] { run(); }) {}

Worker::~Worker() {
  {
    const std::lock_guard lock(mutex_);
    stop_ = true;
  }
  wake_.notify_one();
  thread_.join();
}

void Worker::ask(Question question) {
  {
    const std::lock_guard lock(mutex_);
    last_ = question;
    waiting_ = std::move(question);
  }
  wake_.notify_one();
}

void Worker::build(Event event, std::function<void(const BuiltEvent&)> use) {
  {
    const std::lock_guard lock(mutex_);
    aside_ = Aside{std::move(event), std::move(use)};
  }
  wake_.notify_one();
}

void Worker::reload(bool try_crashed_again) {
  {
    const std::lock_guard lock(mutex_);
    to_load_ = plan_;
    to_load_->try_crashed_again = try_crashed_again;
    waiting_ = last_;
  }
  wake_.notify_one();
}

bool Worker::stopping() {
  const std::lock_guard lock(mutex_);
  return stop_;
}

void Worker::load(SearchPlan plan) {
  auto found = std::make_shared<PieceTypes>();
  try {
    *found = find_piece_types(plan);
  } catch (const std::exception& error) {
    found->refused.push_back(
        {{}, RefusalReason::cannot_load, "The search for piece types failed: " + std::string(error.what()) + ".", {}});
  }
  workshop_ = std::make_unique<Workshop>(std::move(found));
  if (!stopping()) answers_.types(workshop_->types);
}

void Worker::build_aside(const Aside& aside) {
  BuiltEvent built;
  try {
    built = workshop_->aside.build(aside.event);
  } catch (const std::exception&) {
    built.clear();  // they are shown as boxes
  }
  if (stopping()) return;
  try {
    aside.use(built);
  } catch (const std::exception&) {
    // Pictures alone are made so: without memory for them a list does without, and the event goes on.
  }
}

void Worker::run() {
  while (true) {
    std::optional<SearchPlan> plan;
    std::optional<Question> question;
    std::optional<Aside> aside;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return stop_ || to_load_ || waiting_ || aside_; });
      if (stop_) return;
      plan = std::exchange(to_load_, std::nullopt);
      if (!plan) question = std::exchange(waiting_, std::nullopt);
      if (!plan && !question) aside = std::exchange(aside_, std::nullopt);
    }
    if (plan) {
      load(std::move(*plan));
      continue;
    }
    if (aside) {
      build_aside(*aside);
      continue;
    }
    auto study = std::make_shared<const Study>(study_of(*question, workshop_->types, workshop_->builder));
    if (!stopping()) answers_.study(std::move(study));
  }
}

}  // namespace quadrille
