// Arrays of pieces whose halves may face each other, and what an array would make in words.
#pragma once

#include <cstdint>
#include <string>

#include "studio/arrange/copies.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

/// As arrayed of copies.hpp; with the plan's `facing` each copy of the second half is mirrored as `mirrored` does, about its
/// own place, so that the halves are mirror images about the middle between them. `built` holds the pieces themselves.
Copies arrayed(const Event& event, const PieceIds& pieces, const ArrayPlan& plan, const ParameterTables& tables,
               const BuiltEvent& built);

/// How many pieces stand there once `pieces` have been arrayed, the ones there are among them.
std::int64_t pieces_of(const ArrayPlan& plan, std::size_t pieces);

/// "10 pieces in all, 9 of them new: 2 along, 3.00 m apart; 5 in depth, 2.00 m apart over 8.00 m." In the event's units;
/// "Nothing is added: there is one place only." where the plan has one.
std::string array_words(const ArrayPlan& plan, std::size_t pieces, Units units);

}  // namespace quadrille
