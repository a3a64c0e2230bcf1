// Where a user's own things lie, as the environment says.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace quadrille {

/// The value of a variable of the environment; empty where it is not set.
std::string environment(const char* name);

/// The folders that a variable lists between colons, in order; empty parts are left out.
std::vector<std::filesystem::path> listed_folders(const char* name);

/// Where a user's own files go: XDG_DATA_HOME, else .local/share in HOME, both below in "quadrille". Nothing where neither
/// is an absolute path. Source: XDG Base Directory Specification 0.8: a path that is not absolute counts as not set.
std::optional<std::filesystem::path> data_folder();

/// Where what a program remembers goes, likewise: XDG_STATE_HOME, else .local/state.
std::optional<std::filesystem::path> state_folder();

}  // namespace quadrille
