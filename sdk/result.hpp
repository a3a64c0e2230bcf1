// The answer of something that can fail on bad input: a value, or a sentence that says what is wrong and what would be
// accepted. A programmer's mistake is never reported this way.
#pragma once

#include <optional>
#include <string>
#include <utility>

namespace quadrille {

template <class T>
struct Result {
  std::optional<T> value;
  std::string error;  ///< empty exactly when there is a value

  explicit operator bool() const { return value.has_value(); }
  const T& operator*() const { return *value; }
  const T* operator->() const { return &*value; }

  static Result good(T value) { return {std::move(value), {}}; }
  static Result bad(std::string sentence) { return {std::nullopt, std::move(sentence)}; }
};

}  // namespace quadrille
