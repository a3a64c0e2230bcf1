// What the client is asked: the issued quote as a table.
#pragma once

#include <vector>

#include "studio/model/event.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// The quote's lines, tax, total, deposit and balance, and until when it holds; set-up and strike without the hours they
/// take. Pieces of the event that the quote does not know, and those it knows that are no longer there, are named. No
/// block where no quote was issued. `width` is of the column [mm].
std::vector<Block> price_blocks(const Event& event, double width);

}  // namespace quadrille
