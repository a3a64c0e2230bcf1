#include "studio/window/job/sheet_export.hpp"

#include <exception>
#include <optional>
#include <utility>

#include "sdk/quantity.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/files/own_file.hpp"
#include "studio/paint/drawing_file.hpp"
#include "studio/window/job/sheet_pages.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

std::vector<const SheetKind*> kinds_of(const SheetExport& wanted) {
  std::vector<const SheetKind*> kinds;
  for (const std::string& key : wanted.kinds)
    if (const SheetKind* kind = find_sheet_kind(key)) kinds.push_back(kind);
  return kinds;
}

fs::path file_of(const SheetExport& wanted, const SheetKind& kind) {
  return wanted.folder / (wanted.name + "-" + std::string(kind.key) + ".pdf");
}

/// The bytes of each sheet; nothing where it was given up.
std::optional<std::vector<std::string>> make(const SheetExport& wanted, const std::vector<const SheetKind*>& kinds,
                                             const Stale& given_up,
                                             const std::function<void(const SheetProgress&)>& told,
                                             std::string& fault) {
  SheetMaker maker(wanted.study);
  SheetOptions options;
  options.paper = wanted.paper;
  std::vector<std::string> made;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const double begun = static_cast<double>(i) / static_cast<double>(kinds.size()),
                 step = 1.0 / static_cast<double>(kinds.size());
    told({begun, std::string(kinds[i]->title)});
    const auto pages = maker.pages(*kinds[i], options, given_up, [&](std::size_t done, std::size_t of) {
      told({begun + step * 0.9 * static_cast<double>(done) / static_cast<double>(of),
            "How the pieces stand: " + std::to_string(done) + " of " + std::to_string(of)});
    });
    if (!pages || given_up()) return std::nullopt;
    if (pages->empty()) {
      fault = std::string(kinds[i]->title) + ": the event has nothing that would stand on it.";
      return made;
    }
    const auto bytes =
        drawing_bytes(*pages, 0, DrawingFormat::pdf, {wanted.study->event.title, wanted.study->event.date});
    if (!bytes) {
      fault = std::string(kinds[i]->title) + ": " + bytes.error;
      return made;
    }
    made.push_back(*bytes.value);
    if (given_up()) return std::nullopt;
  }
  return made;
}

SheetsExported export_all(const SheetExport& wanted, const Stale& given_up,
                          const std::function<void(const SheetProgress&)>& told) {
  SheetsExported done;
  const auto kinds = kinds_of(wanted);
  if (const auto fault = would_replace({}, files_of(wanted))) return {{}, *fault, false};
  const auto made = make(wanted, kinds, given_up, told, done.fault);
  if (!made) return {{}, {}, true};
  for (std::size_t i = 0; i < made->size() && done.fault.empty(); ++i) {
    const fs::path file = file_of(wanted, *kinds[i]);
    done.fault = safe_write(file, (*made)[i], Backup::none).value_or("");
    if (done.fault.empty()) done.files.push_back(file);
  }
  told({1, "Done"});
  return done;
}

}  // namespace

std::vector<fs::path> files_of(const SheetExport& wanted) {
  std::vector<fs::path> files;
  for (const SheetKind* kind : kinds_of(wanted)) files.push_back(file_of(wanted, *kind));
  return files;
}

std::string file_stem_of(const std::string& title) {
  std::string name;
  for (const char c : title) {
    const bool plain =
        is_digit(c) || (to_lower(c) >= 'a' && to_lower(c) <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (plain)
      name += to_lower(c);
    else if (!name.empty() && name.back() != '-')
      name += '-';
  }
  while (name.ends_with('-')) name.pop_back();
  return name.empty() ? "event" : name;
}

SheetsExported export_sheets(const SheetExport& wanted, const Stale& given_up,
                             const std::function<void(const SheetProgress&)>& told) {
  try {
    return export_all(wanted, given_up, told);
  } catch (const std::exception& error) {
    return {{}, "A sheet could not be made: " + std::string(error.what()) + ".", false};
  }
}

}  // namespace quadrille
