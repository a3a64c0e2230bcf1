// An arch built through the plugin boundary, as the studio sees it, and what to ask of it.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>
#include <string>
#include <string_view>

#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "tests/places.hpp"

namespace quadrille {

inline const PieceType& arch_type() {
  static const PieceTypes found = find_piece_types({{build_place("pieces")}, std::nullopt, false});
  REQUIRE(found.find("arch") != nullptr);
  return *found.find("arch");
}

inline Value length_of(double metres) { return Value::of_number(Kind::length, metres); }
inline Value ratio_of(double ratio) { return Value::of_number(Kind::ratio, ratio); }
inline Value count_of(double count) { return Value::of_number(Kind::count, count); }
inline Value balloon_of(double nominal_in) { return Value::of_number(Kind::balloon, nominal_in); }
inline Value choice_of(const char* key) { return Value::of_text(Kind::choice, key); }

inline std::shared_ptr<const BuiltPiece> build(const ValueMap& values) { return build_piece(arch_type(), values); }

inline double fact(const BuiltPiece& built, std::string_view key) {
  const auto found = std::ranges::find(built.piece.facts, key, &Fact::key);
  REQUIRE_MESSAGE(found != built.piece.facts.end(), "no fact ", std::string(key));
  return found->number;
}

inline const Message* refusal(const BuiltPiece& built) {
  const auto found = std::ranges::find(built.piece.messages, Severity::refusal, &Message::severity);
  return found == built.piece.messages.end() ? nullptr : &*found;
}

inline std::string refused_key(const ValueMap& values) {
  const auto built = build(values);
  REQUIRE(built->status != Status::ok);
  REQUIRE(refusal(*built) != nullptr);
  CHECK(refusal(*built)->text.size() > 20);
  return refusal(*built)->key;
}

inline bool warns(const BuiltPiece& built, std::string_view key) {
  return std::ranges::any_of(built.piece.messages,
                             [&](const Message& m) { return m.severity == Severity::warning && m.key == key; });
}

/// The text of the message that blames `key`, or an empty one.
inline std::string text_of(const BuiltPiece& built, std::string_view key) {
  const auto found = std::ranges::find_if(built.piece.messages, [&](const Message& m) { return m.key == key; });
  return found == built.piece.messages.end() ? "" : found->text;
}

/// The first length in metres after `words` in `text`: what it advises.
inline double advised_m(const std::string& text, const std::string& words) {
  const std::size_t at = text.find(words);
  REQUIRE_MESSAGE(at != std::string::npos, text);
  return std::stod(text.substr(at + words.size()));
}

/// How many of a supply; 0 where it is not on the list.
inline double supplied(const BuiltPiece& built, std::string_view stem) {
  double quantity = 0;
  for (const Supply& supply : built.piece.supplies)
    if (std::string_view(supply.key).starts_with(stem)) quantity += supply.quantity;
  return quantity;
}

}  // namespace quadrille
