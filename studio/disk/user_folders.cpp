#include "studio/disk/user_folders.hpp"

#include <algorithm>
#include <cstdlib>

namespace quadrille {
namespace {

std::optional<std::filesystem::path> own_folder(const char* variable, const char* below_home) {
  if (const std::filesystem::path folder = environment(variable); folder.is_absolute()) return folder / "quadrille";
  if (const std::filesystem::path home = environment("HOME"); home.is_absolute())
    return home / below_home / "quadrille";
  return std::nullopt;
}

}  // namespace

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::string() : std::string(value);
}

std::vector<std::filesystem::path> listed_folders(const char* name) {
  std::vector<std::filesystem::path> folders;
  std::string rest = environment(name);
  while (!rest.empty()) {
    const std::size_t colon = std::min(rest.find(':'), rest.size());
    if (colon > 0) folders.emplace_back(rest.substr(0, colon));
    rest.erase(0, colon + 1);
  }
  return folders;
}

std::optional<std::filesystem::path> data_folder() { return own_folder("XDG_DATA_HOME", ".local/share"); }
std::optional<std::filesystem::path> state_folder() { return own_folder("XDG_STATE_HOME", ".local/state"); }

}  // namespace quadrille
