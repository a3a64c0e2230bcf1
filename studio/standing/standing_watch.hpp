// Reckoning many pieces while somebody looks on, who may have enough of it.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "studio/standing/piece_standing.hpp"

namespace quadrille {

/// Called on several threads at once.
struct StandingWatch {
  std::function<bool()> given_up;  ///< true: no further piece is begun
  std::function<void(std::size_t done, std::size_t of)> told;
};

/// As stand_all(); nothing where the watch gave up.
std::optional<std::vector<PieceStanding>> stand_all_watched(const Event& event, const BuiltEvent& built,
                                                            const StandingOptions& options, std::string_view area_id,
                                                            const StandingWatch& watch);

}  // namespace quadrille
