// What a step does to several pieces at once: which of them it may change, and how it is called.
#pragma once

#include <string>
#include <string_view>

#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// Pieces of a selection that a step may change, and those that it leaves as they are.
struct Grasp {
  PieceIds free, locked;
};

/// Those of `pieces` that are in the event, in their order. A lock guards a piece's place, shape and being there.
Grasp grasp(const Event& event, const PieceIds& pieces);

/// The name of a step: "Remove Door arch", "Remove 3 pieces", the pieces as step_subject calls them.
std::string step_name(std::string_view verb, const Event& event, const PieceIds& pieces);

/// What is told of locked pieces that were left out: "Door arch is locked and was left out." Empty without any.
std::string left_out_words(const Event& event, const PieceIds& locked);

/// The hidden pieces of the area.
PieceIds hidden_in(const Area& area);

/// Gives one piece the name; several get it one after the other from the left, each with a number that makes it its own:
/// "Column", "Column 2". An empty name takes away the names.
Event renamed_all(Event event, const PieceIds& pieces, const std::string& name);

}  // namespace quadrille
