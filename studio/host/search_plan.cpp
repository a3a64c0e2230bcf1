#include "studio/host/search_plan.hpp"

#include <cstdlib>
#include <string>
#include <system_error>

namespace quadrille {
namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::string() : value;
}

/// The folder of an XDG variable, or `fallback` below HOME; nothing where neither is an absolute path.
std::optional<std::filesystem::path> xdg_folder(const char* variable, const char* fallback) {
  if (const std::filesystem::path folder = environment(variable); folder.is_absolute()) return folder;
  if (const std::filesystem::path home = environment("HOME"); home.is_absolute()) return home / fallback;
  return std::nullopt;
}

std::filesystem::path full_path(const std::filesystem::path& path) {
  std::error_code unknown;
  const auto full = std::filesystem::absolute(path, unknown);
  return unknown ? path : full.lexically_normal();
}

}  // namespace

SearchPlan standard_search_plan(const std::filesystem::path& executable) {
  SearchPlan plan;
  const std::string listed = environment("QUADRILLE_PIECES_PATH") + ":";
  for (std::size_t from = 0, end = 0; (end = listed.find(':', from)) != std::string::npos; from = end + 1)
    if (end > from) plan.folders.push_back(full_path(listed.substr(from, end - from)));
  if (!executable.empty()) {
    const std::filesystem::path folder = full_path(executable).parent_path(), prefix = folder.parent_path();
    plan.folders.push_back(folder / "pieces");
    plan.folders.push_back(prefix / "pieces");
    plan.folders.push_back(prefix / QUADRILLE_LIBRARY_FOLDER / "quadrille" / "pieces");
  }
  if (const auto data = xdg_folder("XDG_DATA_HOME", ".local/share"))
    plan.folders.push_back(*data / "quadrille" / "pieces");
  if (const auto state = xdg_folder("XDG_STATE_HOME", ".local/state")) plan.state_folder = *state / "quadrille";
  return plan;
}

}  // namespace quadrille
