// Pages, bytes, one safe write each.
#include "studio/window/job/drawing_export.hpp"

#include "studio/disk/safe_write.hpp"
#include "studio/files/own_file.hpp"
#include "studio/paint/drawing_file.hpp"

namespace quadrille {
namespace {

std::vector<Page> pages_of(const Study& study, Paper paper) {
  SheetOptions options;
  options.paper = paper;
  return elevation_sheet({study.event, study.built, study.order.count, study.palettes->palettes}, options);
}

Exported files_for(const std::filesystem::path& file, std::size_t pages) {
  const auto format = format_of(file);
  if (!format) return {{}, sentence_about_ending(file)};
  if (pages == 0) return {{}, "The event has no area, so there is nothing to draw."};
  Exported planned{drawing_files(file, *format, pages), {}};
  if (const auto fault = would_replace({}, planned.files)) return {{}, *fault};
  return planned;
}

}  // namespace

Exported plan_export(const Study& study, const std::filesystem::path& file, Paper paper) {
  return files_for(file, pages_of(study, paper).size());
}

Exported export_drawing(const Study& study, const std::filesystem::path& file, Paper paper) {
  const auto pages = pages_of(study, paper);
  const Exported planned = files_for(file, pages.size());
  if (!planned.fault.empty()) return planned;
  Exported done;
  for (std::size_t i = 0; i < planned.files.size() && done.fault.empty(); ++i) {
    const auto bytes = drawing_bytes(pages, i, *format_of(file), {study.event.title, study.event.date});
    done.fault = bytes ? safe_write(planned.files[i], *bytes, Backup::none).value_or("")
                       : planned.files[i].string() + ": " + bytes.error;
    if (done.fault.empty()) done.files.push_back(planned.files[i]);
  }
  return done;
}

}  // namespace quadrille
