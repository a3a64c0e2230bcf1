// Small numbers in words.
#pragma once

#include <array>
#include <cstddef>
#include <string>

namespace quadrille {

/// "no", "one" … "six", and figures from 7 on.
inline std::string number_word(std::size_t number) {
  constexpr std::array<const char*, 7> words{"no", "one", "two", "three", "four", "five", "six"};
  return number < words.size() ? words[number] : std::to_string(number);
}

}  // namespace quadrille
