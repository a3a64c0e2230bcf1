// Undo and redo: named snapshots of the event, which share what did not change.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

/// The event as it is and as it was. There is always a present event. One step is one name, however many edits it took:
/// a drag calls `amend` as it goes and `settle` when the mouse is let go.
class History {
 public:
  explicit History(Event start) : steps_{{"", std::move(start)}} {}

  const Event& event() const { return steps_[present_].event; }

  /// Makes `next` the present, as a new step; what was undone is forgotten. An event equal to the present is no step.
  void commit(std::string name, Event next);
  /// Makes `next` the present within the step that an earlier amend of this `name` began; begins one where there is none.
  /// A step that ends where it began is none.
  void amend(const std::string& name, Event next);
  /// Ends the step that amend is growing: the next amend begins another. So do commit, undo and redo.
  void settle() { growing_ = false; }

  bool can_undo() const { return present_ > 0; }
  bool can_redo() const { return present_ + 1 < steps_.size(); }
  /// Names of the step that would be undone or redone; empty where there is none.
  std::string undo_name() const { return can_undo() ? steps_[present_].name : std::string(); }
  std::string redo_name() const { return can_redo() ? steps_[present_ + 1].name : std::string(); }
  void undo() {
    settle();
    present_ -= can_undo() ? 1 : 0;
  }
  void redo() {
    settle();
    present_ += can_redo() ? 1 : 0;
  }

  /// Remembers the present as what is on disk.
  void mark_saved() { saved_ = steps_[present_].event; }
  bool has_changes() const { return !(saved_ == steps_[present_].event); }

 private:
  struct Step {
    std::string name;
    Event event;
  };
  std::vector<Step> steps_;
  std::size_t present_ = 0;
  bool growing_ = false;  ///< the present step may still be amended
  Event saved_ = steps_.front().event;
};

}  // namespace quadrille
