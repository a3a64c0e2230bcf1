// Pages into a file whose ending says what it becomes.
#pragma once

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "studio/command/verbs.hpp"
#include "studio/drawing/display_list.hpp"
#include "studio/drawing/output.hpp"

namespace quadrille {

enum class DrawingFormat { pdf, svg, png };

/// By the ending of the name, in either case; nothing for any other.
std::optional<DrawingFormat> format_of(const std::filesystem::path& file);

/// What to say about a name that has none of these endings.
std::string sentence_about_ending(const std::filesystem::path& file);

/// The file of page `number` (from 1) where several pages go into files of their own: "F-2.png" for "F.png".
std::filesystem::path numbered(const std::filesystem::path& file, std::size_t number);

/// Writes the pages, at least one: all into one PDF; an SVG or PNG holds one page, so that several are numbered, which
/// is said on console.err. PNG at 200 dots per inch. Returns Exit::done, or Exit::no_output after a sentence.
Exit write_drawing(std::span<const Page> pages, const std::filesystem::path& file, DrawingFormat format,
                   const DocumentInfo& info, const Console& console);

/// Replaces `file` by `bytes` in the one safe way. Returns Exit::done, or Exit::no_output after a sentence.
Exit write_output(const std::filesystem::path& file, std::string_view bytes, const Console& console);

}  // namespace quadrille
