// Where plugin files are looked for, and where the studio keeps what it must remember of them.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

namespace quadrille {

/// Where to look, in order, and where to keep the crash marker.
struct SearchPlan {
  std::vector<std::filesystem::path> folders;
  std::optional<std::filesystem::path> state_folder;  ///< none: no marker is kept
  bool try_crashed_again = false;                     ///< gives files that crashed another chance
};

/// In this order: the folders of QUADRILLE_PIECES_PATH (separated by ':'; empty ones are left out), `pieces` in the
/// executable's folder and beside it, `<prefix>/lib…/quadrille/pieces` where the executable lies in `<prefix>/bin`, and
/// $XDG_DATA_HOME/quadrille/pieces (or ~/.local/share/…). The state folder is $XDG_STATE_HOME/quadrille or
/// ~/.local/state/quadrille. Works without HOME: what cannot be known is left out. Relative XDG folders are ignored, as
/// the XDG Base Directory Specification says.
SearchPlan standard_search_plan(const std::filesystem::path& executable);

}  // namespace quadrille
