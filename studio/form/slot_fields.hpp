// The colour slots of the selected pieces.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

struct SlotField {
  std::size_t slot = 0;                   ///< 0 = A
  std::string letter;                     ///< "A"
  std::optional<ColourReference> colour;  ///< none where the pieces differ; both keys empty: no colour yet
  bool various = false;
  std::size_t balloons = 0;  ///< that bear it in the pieces as they are built
};

/// How many slots the piece uses: the value of its parameter of kind slots, at least as many as its balloons bear; without
/// such a parameter as many as those, and at least one.
std::size_t slots_of(const PlacedPiece& piece, const ParameterTable& table, const BuiltEvent& built);

/// One field for each slot that any of `pieces` uses. A piece that does not use a slot has no say in its colour.
std::vector<SlotField> slot_fields(const Event& event, const PieceIds& pieces, const ParameterTables& tables,
                                   const BuiltEvent& built);

}  // namespace quadrille
