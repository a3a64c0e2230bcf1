#include "studio/host/search_plan.hpp"

#include <system_error>

#include "studio/disk/user_folders.hpp"

namespace quadrille {
namespace {

std::filesystem::path full_path(const std::filesystem::path& path) {
  std::error_code unknown;
  const auto full = std::filesystem::absolute(path, unknown);
  return unknown ? path : full.lexically_normal();
}

}  // namespace

SearchPlan standard_search_plan(const std::filesystem::path& executable) {
  SearchPlan plan;
  for (const std::filesystem::path& folder : listed_folders("QUADRILLE_PIECES_PATH"))
    plan.folders.push_back(full_path(folder));
  if (!executable.empty()) {
    const std::filesystem::path folder = full_path(executable).parent_path(), prefix = folder.parent_path();
    plan.folders.push_back(folder / "pieces");
    plan.folders.push_back(prefix / "pieces");
    plan.folders.push_back(prefix / QUADRILLE_LIBRARY_FOLDER / "quadrille" / "pieces");
  }
  if (const auto data = data_folder()) plan.folders.push_back(*data / "pieces");
  plan.state_folder = state_folder();
  return plan;
}

}  // namespace quadrille
