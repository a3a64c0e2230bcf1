#include "studio/paint/drawing_file.hpp"

#include <cassert>

#include "sdk/quantity.hpp"

namespace quadrille {
namespace {

std::filesystem::path numbered(const std::filesystem::path& file, std::size_t number) {
  std::filesystem::path name = file.stem();
  name += "-" + std::to_string(number);
  name += file.extension();
  return file.parent_path() / name;
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

std::vector<std::filesystem::path> drawing_files(const std::filesystem::path& file, DrawingFormat format,
                                                 std::size_t pages) {
  if (pages == 0) return {};
  if (pages == 1 || format == DrawingFormat::pdf) return {file};
  std::vector<std::filesystem::path> files;
  for (std::size_t number = 1; number <= pages; ++number) files.push_back(numbered(file, number));
  return files;
}

Result<std::string> drawing_bytes(std::span<const Page> pages, std::size_t number, DrawingFormat format,
                                  const DocumentInfo& info) {
  assert(number < pages.size());
  if (format == DrawingFormat::pdf) return to_pdf(pages, info);
  return format == DrawingFormat::svg ? to_svg(pages[number]) : to_png(pages[number], png_dots_per_inch);
}

}  // namespace quadrille
