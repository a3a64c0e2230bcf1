// "Did you mean": the word that was probably meant.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace quadrille {

/// The one of `words` that `typed` is a slip of: by at most one letter changed, put in, taken out or swapped with its
/// neighbour in a word of up to five letters, two up to eight, three in a longer one, and always fewer than half its letters. The first of equally near ones;
/// nothing where none is near, or where `typed` is longer than 64 bytes.
std::optional<std::string> near_word(std::string_view typed, std::span<const std::string> words);

}  // namespace quadrille
