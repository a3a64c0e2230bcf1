// One call of a plugin's build: values in, checked piece or fault out.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>

#include "sdk/value.hpp"
#include "studio/host/fault.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/built_event.hpp"

namespace quadrille {

struct Attempt {
  /// Never null. Where its status is not ok a message is a refusal; what a type pushed before it refused stays, to be
  /// shown, measured as if it were built.
  std::shared_ptr<const BuiltPiece> built;
  std::optional<Fault>
      fault;  ///< the plugin broke the contract or failed inside; `built` then has status internal and only messages
};

/// Calls build of `type` with one value per parameter, in the order of the table, each as resolve gives it. Whatever
/// the plugin throws is caught, whatever it pushes is checked (sink.hpp). Thread-safe.
Attempt build_once(const PieceType& type, std::span<const Value> values);

/// The first refusal of a piece, as "'key': sentence" or the sentence alone; empty where there is none.
std::string refusal_of(const BuiltPiece& built);

/// Outer measures of balloons and frame: a balloon counts as its sphere and its neck, a member as a round bar with ends
/// cut square. All zero for a piece with neither.
Box box_of(const Piece& piece);

}  // namespace quadrille
