#include "studio/host/discovery.hpp"

#include <algorithm>
#include <set>
#include <system_error>

#include "sdk/quoted.hpp"
#include "studio/host/gate.hpp"

namespace quadrille {
namespace {

/// Entries of `folder` that end in ".so", sorted by name.
std::vector<std::filesystem::path> libraries_in(const std::filesystem::path& folder, PieceTypes& found) {
  std::vector<std::filesystem::path> files;
  std::error_code failed;
  if (!std::filesystem::exists(folder, failed) && !failed) return files;
  std::filesystem::directory_iterator entry(folder, failed), end;
  for (; !failed && entry != end; entry.increment(failed))
    if (entry->path().extension() == ".so") files.push_back(entry->path());
  if (failed)
    found.refused.push_back(
        {folder, RefusalReason::cannot_load, "The folder cannot be read: " + failed.message() + ".", {}});
  std::ranges::sort(files);
  return files;
}

void take(Admission admission, PieceTypes& found) {
  for (RefusedFile& refused : admission.refused) found.refused.push_back(std::move(refused));
  for (PieceType& type : admission.types) {
    const PieceType* first = found.find(type.id);
    if (first == nullptr)
      found.types.push_back(std::move(type));
    else
      found.refused.push_back({type.file, RefusalReason::duplicate_id,
                               "Its piece type " + quoted(type.id) + " is left out: " + first->file.string() +
                                   " has one of that id and was found first.",
                               type.id});
  }
}

}  // namespace

PieceTypes find_piece_types(const SearchPlan& plan) {
  PieceTypes found;
  std::set<std::filesystem::path> met;
  for (const std::filesystem::path& folder : plan.folders)
    for (const std::filesystem::path& file : libraries_in(folder, found)) {
      std::error_code dangling;
      std::filesystem::path real = std::filesystem::canonical(file, dangling);
      if (dangling) real = file;
      if (met.insert(real).second) take(admit(real, plan.state_folder, plan.try_crashed_again), found);
    }
  return found;
}

}  // namespace quadrille
