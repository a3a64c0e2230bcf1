#include "studio/model/history.hpp"

namespace quadrille {

void History::commit(std::string name, Event next) {
  settle();
  if (next == event()) return;
  steps_.resize(present_ + 1);
  steps_.push_back({std::move(name), std::move(next)});
  ++present_;
}

void History::amend(const std::string& name, Event next) {
  if (!growing_ || steps_[present_].name != name) {
    const std::size_t before = present_;
    commit(name, std::move(next));
    growing_ = present_ != before;
  } else if (next == steps_[present_ - 1].event) {
    steps_.pop_back();
    --present_;
    settle();
  } else {
    steps_[present_].event = std::move(next);
  }
}

}  // namespace quadrille
