// A value that copies of its owner share until one of them changes it.
#pragma once

#include <memory>
#include <utility>

namespace quadrille {

/// Behaves like a `T` that is cheap to copy. Equality compares the values; two that share are equal at once.
/// Safe to copy and read from several threads; edit one object from one thread only.
template <class T>
class Shared {
 public:
  Shared() : value_(std::make_shared<T>()) {}
  Shared(T value) : value_(std::make_shared<T>(std::move(value))) {}  // NOLINT(google-explicit-constructor)

  const T& operator*() const { return *value_; }
  const T* operator->() const { return value_.get(); }
  bool shares_with(const Shared& other) const { return value_ == other.value_; }

  /// Replaces the value by `change(copy)`; other holders keep the old one.
  template <class Change>
  void edit(Change&& change) {
    auto copy = std::make_shared<T>(*value_);
    std::forward<Change>(change)(*copy);
    value_ = std::move(copy);
  }

  friend bool operator==(const Shared& a, const Shared& b) { return a.value_ == b.value_ || *a.value_ == *b.value_; }

 private:
  std::shared_ptr<const T> value_;
};

}  // namespace quadrille
