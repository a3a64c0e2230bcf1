// Saying so where a value was changed that has no effect with what else was chosen, instead of ignoring it in silence.
#pragma once

#include <string>
#include <utility>

#include "sdk/built.hpp"
#include "sdk/piece.hpp"

namespace quadrille {

/// Notes `sentence`, which says why the parameter `key` (a number or a text) has no effect here; only where its value
/// stands at other than its default, so that nobody is told of what nobody touched.
inline void note_without_effect(Piece& piece, const Values& values, const char* key, std::string sentence) {
  if (!values.is_standard(key)) piece.messages.push_back({Severity::note, key, std::move(sentence)});
}

}  // namespace quadrille
