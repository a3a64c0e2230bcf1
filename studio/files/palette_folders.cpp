// Where palettes are found, and reading all of them.
#include <algorithm>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/user_folders.hpp"
#include "studio/files/palette_file.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

/// The "*.xml" of a folder by name; none where it cannot be listed.
std::vector<fs::path> palette_files(const fs::path& folder, Findings& findings) {
  std::vector<fs::path> files;
  std::error_code error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error))
    if (entry->path().extension() == ".xml") files.push_back(entry->path());
  if (error && error != std::errc::no_such_file_or_directory && error != std::errc::not_a_directory)
    findings.push_back({Weight::warning,
                        "palettes-unreadable",
                        {},
                        {},
                        {},
                        "The palette folder " + folder.string() + " cannot be read.",
                        "Check its permissions."});
  std::ranges::sort(files);
  return files;
}

void load_file(const fs::path& file, LoadedPalettes& loaded) {
  auto bytes = read_bytes(file);
  Findings inside;
  auto palette =
      bytes ? read_palette(std::move(*bytes.value), file.string(), &inside) : Result<Palette>::bad(bytes.error);
  if (!palette) {
    loaded.findings.push_back(
        {Weight::warning, "palette-unreadable", {}, {}, {}, palette.error, "Mend or remove the file."});
    return;
  }
  for (Finding& finding : inside) {
    finding.text = file.string() + ": " + finding.text;
    loaded.findings.push_back(std::move(finding));
  }
  if (std::ranges::find(loaded.palettes, palette->key, &Palette::key) == loaded.palettes.end()) {
    loaded.palettes.push_back(std::move(*palette.value));
    return;
  }
  loaded.findings.push_back(
      {Weight::note,
       "palette-repeated",
       {},
       {},
       palette->key,
       file.string() + " holds the palette \"" + palette->key + "\", which was found before; it is left out.",
       "Give one of them another key."});
}

}  // namespace

LoadedPalettes load_palettes(const std::vector<fs::path>& folders) {
  LoadedPalettes loaded;
  for (std::size_t i = 0; i < folders.size(); ++i) {
    const bool again = std::find(folders.begin(), folders.begin() + static_cast<std::ptrdiff_t>(i), folders[i]) !=
                       folders.begin() + static_cast<std::ptrdiff_t>(i);
    if (again) continue;
    for (const fs::path& file : palette_files(folders[i], loaded.findings)) load_file(file, loaded);
  }
  return loaded;
}

std::vector<fs::path> standard_palette_folders(const fs::path& executable, const fs::path& event_file) {
  std::vector<fs::path> folders = listed_folders("QUADRILLE_PALETTES_PATH");
  if (!event_file.empty()) folders.push_back(event_file.parent_path() / "palettes");
  if (!executable.empty())
    folders.push_back((executable.parent_path() / ".." / "share" / "quadrille" / "palettes").lexically_normal());
  if (const auto data = data_folder()) folders.push_back(*data / "palettes");
  return folders;
}

}  // namespace quadrille
