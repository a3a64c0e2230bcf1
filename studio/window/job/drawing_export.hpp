// The event's sheets into files, with the same pages as the command line. Knows no toolkit.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "studio/paper/sheet.hpp"
#include "studio/window/job/study.hpp"

namespace quadrille {

/// Where a drawing went, or the sentence that says why it did not.
struct Exported {
  std::vector<std::filesystem::path> files;
  std::string fault;  ///< empty where all were written
};

/// The files that the drawing would go to: `file` itself, or "F-1.png", "F-2.png"… where an SVG or PNG would need
/// several pages. Nothing written. A fault where the name ends in none of .pdf, .svg and .png, where the event has no
/// area, or where an event or a palette would be lost.
Exported plan_export(const Study& study, const std::filesystem::path& file, Paper paper);

/// Writes them; PNG at 200 dots per inch.
Exported export_drawing(const Study& study, const std::filesystem::path& file, Paper paper);

}  // namespace quadrille
