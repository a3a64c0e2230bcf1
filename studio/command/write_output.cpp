// The ending decides; the bytes are made in memory and then written by the one safe routine.
#include "studio/command/drawing_file.hpp"

#include <cstddef>
#include <ostream>
#include <vector>

#include "sdk/quantity.hpp"
#include "studio/files/safe_write.hpp"

namespace quadrille {
namespace {

constexpr double png_dots_per_inch = 200;

Result<std::string> bytes_of(const Page& page, DrawingFormat format) {
  return format == DrawingFormat::svg ? to_svg(page) : to_png(page, png_dots_per_inch);
}

Exit write_made(const std::filesystem::path& file, const Result<std::string>& bytes, const Console& console) {
  if (bytes) return write_output(file, *bytes, console);
  console.err << file.string() << ": " << bytes.error << '\n';
  return Exit::no_output;
}

}  // namespace

std::optional<DrawingFormat> format_of(const std::filesystem::path& file) {
  const std::string ending = in_lower_case(file.extension().string());
  if (ending == ".pdf") return DrawingFormat::pdf;
  if (ending == ".svg") return DrawingFormat::svg;
  if (ending == ".png") return DrawingFormat::png;
  return std::nullopt;
}

std::string sentence_about_ending(const std::filesystem::path& file) {
  return file.string() + ": a drawing becomes what its name ends in, which is to be .pdf, .svg or .png.";
}

std::filesystem::path numbered(const std::filesystem::path& file, std::size_t number) {
  std::filesystem::path name = file.stem();
  name += "-" + std::to_string(number);
  name += file.extension();
  return file.parent_path() / name;
}

Exit write_drawing(std::span<const Page> pages, const std::filesystem::path& file, DrawingFormat format,
                   const DocumentInfo& info, const Console& console) {
  if (format == DrawingFormat::pdf) return write_made(file, to_pdf(pages, info), console);
  if (pages.size() == 1) return write_made(file, bytes_of(pages.front(), format), console);
  console.err << "The drawing has " << pages.size() << " pages and such a file holds one: they go to "
              << numbered(file, 1).string() << " to " << numbered(file, pages.size()).string()
              << ". '--area NAME' draws a single area, and a PDF holds all of them.\n";
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const Exit written = write_made(numbered(file, i + 1), bytes_of(pages[i], format), console);
    if (written != Exit::done) return written;
  }
  return Exit::done;
}

Exit write_output(const std::filesystem::path& file, std::string_view bytes, const Console& console) {
  const auto fault = safe_write(file, bytes, Backup::none);
  if (!fault) return Exit::done;
  console.err << *fault << '\n';
  return Exit::no_output;
}

}  // namespace quadrille
