// Pages, bytes, one safe write each.
#include "studio/window/drawing_export.hpp"

#include <string_view>

#include "sdk/quantity.hpp"
#include "studio/drawing/output.hpp"
#include "studio/files/safe_write.hpp"

namespace quadrille {
namespace {

constexpr double png_dots_per_inch = 200;

std::string ending_of(const std::filesystem::path& file) { return in_lower_case(file.extension().string()); }

std::vector<Page> pages_of(const Study& study, Paper paper) {
  SheetOptions options;
  options.paper = paper;
  return elevation_sheet({study.event, study.built, study.count, study.palettes->palettes}, options);
}

std::filesystem::path numbered(const std::filesystem::path& file, std::size_t number) {
  std::filesystem::path name = file.stem();
  name += "-";
  name += std::to_string(number);
  name += file.extension();
  return file.parent_path() / name;
}

Exported files_for(const std::filesystem::path& file, std::size_t pages) {
  const std::string ending = ending_of(file);
  if (ending != ".pdf" && ending != ".svg" && ending != ".png")
    return {{}, file.string() + ": a drawing becomes what its name ends in, which is to be .pdf, .svg or .png."};
  if (pages == 0) return {{}, "The event has no area, so there is nothing to draw."};
  if (ending == ".pdf" || pages == 1) return {{file}, {}};
  Exported planned;
  for (std::size_t i = 1; i <= pages; ++i) planned.files.push_back(numbered(file, i));
  return planned;
}

std::string write_made(const std::filesystem::path& file, const Result<std::string>& bytes) {
  if (!bytes) return file.string() + ": " + bytes.error;
  return safe_write(file, *bytes, Backup::none).value_or("");
}

}  // namespace

Exported plan_export(const Study& study, const std::filesystem::path& file, Paper paper) {
  return files_for(file, pages_of(study, paper).size());
}

Exported export_drawing(const Study& study, const std::filesystem::path& file, Paper paper) {
  const auto pages = pages_of(study, paper);
  const Exported planned = files_for(file, pages.size());
  if (!planned.fault.empty()) return planned;
  const std::string ending = ending_of(file);
  if (ending == ".pdf") {
    const std::string fault = write_made(file, to_pdf(pages, {study.event.title, study.event.date}));
    return fault.empty() ? planned : Exported{{}, fault};
  }
  Exported done;
  for (std::size_t i = 0; i < pages.size() && done.fault.empty(); ++i) {
    done.fault =
        write_made(planned.files[i], ending == ".svg" ? to_svg(pages[i]) : to_png(pages[i], png_dots_per_inch));
    if (done.fault.empty()) done.files.push_back(planned.files[i]);
  }
  return done;
}

}  // namespace quadrille
