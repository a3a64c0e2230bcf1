// Looks into a library file without loading it: is it sound, and does it export a symbol?
//
// Own code because boost::dll::library_info (Boost 1.74) reads the link-time symbol table, which a stripped library has
// not, and takes names from the last string table of the file without checking any bound.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace quadrille {

struct LibraryLook {
  /// Where not empty: why the file cannot be taken for a library of this machine. One sentence.
  std::string damage;
  /// True where it exports the symbol as a data object.
  bool exported = false;
  std::uint64_t symbol_size = 0;  ///< bytes, as the symbol table says
  /// The first three 32-bit words of the symbol as they stand in the file; none where the file holds no bytes for it.
  std::optional<std::array<std::uint32_t, 3>> first_words;
};

/// Reads headers, segments, sections and the dynamic symbol table of `file`, checking every offset against the file's
/// size: a truncated library would otherwise end the program when it is mapped. Takes regular files only and never
/// waits on anything else. Source: System V ABI, chapter 4 "Object files".
LibraryLook look_into_library(const std::filesystem::path& file, const std::string& symbol);

}  // namespace quadrille
