// The gate: one plugin file in, its piece types out, or reasons why not. The only place that loads a library.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "studio/host/piece_type.hpp"

namespace quadrille {

struct Admission {
  std::vector<PieceType> types;      ///< each built once at its defaults
  std::vector<RefusedFile> refused;  ///< the whole file, or single types of it
};

/// Passes `file` (full path) through the gate. In this order: the file is looked into; the symbol, the versions and the
/// size of the table are read from the file, before a line of the plugin's code has run; the marker of crash_marker.hpp
/// is set in `state_folder`; the library is loaded for ever; its table is checked; each type builds once at its
/// defaults. Never throws for what a file holds.
Admission admit(const std::filesystem::path& file, const std::optional<std::filesystem::path>& state_folder,
                bool try_crashed_again);

}  // namespace quadrille
