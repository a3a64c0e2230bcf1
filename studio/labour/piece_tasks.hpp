// The tasks of one piece: building it, securing it, taking it down.
#pragma once

#include <string>

#include "studio/labour/tasks.hpp"

namespace quadrille {

/// A piece that is to be built, with all that is known of it.
struct PieceJob {
  const Area* area = nullptr;
  const PlacedPiece* placed = nullptr;
  const PieceCount* count = nullptr;
  const Piece* piece = nullptr;  ///< null where its type is not available
  Units units = Units::feet;     ///< of the event
};

/// "3 clusters", "1 cluster": with an s for all but one.
std::string so_many(double number, const std::string& what);

/// Appends the tasks of `job` before the event. They wait for "<area>/unpack" and "<area>/power", where those are.
void add_building(Labour& labour, const PieceJob& job, const House& house, const WorkOptions& options);

/// Appends those after it. They wait for each other only.
void add_striking(Labour& labour, const PieceJob& job, const House& house);

}  // namespace quadrille
