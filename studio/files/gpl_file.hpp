// Palettes in the plain-text format that free graphics programs exchange (*.gpl), read as palettes of ours.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

/// A palette as it was imported: all colours matte and without packs, since the format knows neither.
struct ImportedPalette {
  Palette palette;
  Findings findings;  ///< each with its line: what was left out, and what would be accepted
};

/// No palette of ours gets more colours from one file.
inline constexpr std::size_t most_imported_colours = 10'000;

/// Reads `bytes`: the first line "GIMP Palette", then perhaps "Name: …" and "Columns: …", then lines "R G B name" with
/// numbers from 0 to 255, empty ones, and comments that begin with '#'. Lines may end in LF, CR LF or CR; bytes that are
/// no UTF-8 are taken as ISO 8859-1. Keys are made from names, in plain small letters and digits, and unique; a colour
/// without a name is called by its sRGB value. The palette is called `stem` where the file gives it no name. `name`
/// stands for the file in messages, `currency` is that of the packs to come. A line that is none of these is left out
/// and told. An error, one sentence, where the first line is another or no line holds a colour.
/// Source: GIMP developer documentation, "GIMP Palette Format Version 2 (.gpl)".
Result<ImportedPalette> read_gpl(std::string_view bytes, std::string_view name, std::string_view stem,
                                 std::string_view currency = "USD");

/// Reads the file at `path`; `stem` is its name without the ending. Errors as read_gpl, and: no such file, a folder.
Result<ImportedPalette> open_gpl(const std::filesystem::path& path, std::string_view currency = "USD");

}  // namespace quadrille
