// Palette files: XML in the namespace urn:quadrille:palette:1.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

/// Reads a palette; errors as read_event, and: a colour without key or sRGB value, a key that stands twice, a pack list
/// that is not there. What is not understood otherwise is told in `findings`.
Result<Palette> read_palette(std::string bytes, std::string_view name, Findings* findings = nullptr);

/// "#rrggbb", as palette files have it.
std::string srgb_text(const Colour& colour);

/// A palette as a file of this version: colours in their order, each with its own packs by size and count.
std::string write_palette(const Palette& palette);

/// Saves to `path` by the one safe routine, after the same check as for events. Palette files are written for people to
/// go on with by hand: what another file at `path` held besides is not kept, but stays as `path~`. Returns a sentence
/// where it failed; the file is then as it was.
std::optional<std::string> save_palette(const std::filesystem::path& path, const Palette& palette);

/// All palettes of these folders ("*.xml", sorted by name; the first of a key wins), and what could not be read.
struct LoadedPalettes {
  std::vector<Palette> palettes;
  Findings findings;
};
LoadedPalettes load_palettes(const std::vector<std::filesystem::path>& folders);

/// QUADRILLE_PALETTES_PATH (separated by ':'), `palettes` beside the event, the installed folder or the source tree
/// that the executable was built from, and the user's data folder.
std::vector<std::filesystem::path> standard_palette_folders(const std::filesystem::path& executable,
                                                            const std::filesystem::path& event_file);

}  // namespace quadrille
