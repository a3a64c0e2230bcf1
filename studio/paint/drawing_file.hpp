// Pages as files: which kind a name asks for, how several pages are named, and their bytes. Writes nothing itself.
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "sdk/result.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/paint/output.hpp"

namespace quadrille {

enum class DrawingFormat { pdf, svg, png };

inline constexpr double png_dots_per_inch = 200;

/// By the ending of the name, in either case; nothing for any other.
std::optional<DrawingFormat> format_of(const std::filesystem::path& file);

/// What to say about a name that has none of these endings.
std::string sentence_about_ending(const std::filesystem::path& file);

/// The files that `pages` pages go to: `file` itself for one page or a PDF; otherwise "F-1.png", "F-2.png"… for
/// "F.png", since an SVG or PNG holds one page. None where there are no pages.
std::vector<std::filesystem::path> drawing_files(const std::filesystem::path& file, DrawingFormat format,
                                                 std::size_t pages);

/// The bytes of file `number` (from 0) of drawing_files; PNG at png_dots_per_inch. Errors as in output.hpp.
Result<std::string> drawing_bytes(std::span<const Page> pages, std::size_t number, DrawingFormat format,
                                  const DocumentInfo& info);

}  // namespace quadrille
