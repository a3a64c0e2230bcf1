// Sheets into a folder: off the main thread, with progress, and given up without a trace.
#include "studio/window/dialogs/export_sheets_dialog.hpp"

#include <doctest/doctest.h>

#include "studio/sheets/sheet_kinds.hpp"
#include "studio/window/job/sheet_export.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

std::size_t files_in(const std::filesystem::path& folder) {
  std::size_t count = 0;
  for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(folder)) ++count;
  return count;
}

std::vector<std::string> all_kinds() {
  std::vector<std::string> keys;
  for (const SheetKind& kind : sheet_kinds()) keys.emplace_back(kind.key);
  return keys;
}

/// Opens the event; the folder for its sheets, which is empty.
std::filesystem::path open_for_sheets(OpenWindow& window, const ScratchFolder& folder) {
  window.open(put_event(folder));
  const auto target = folder / "sheets";
  std::filesystem::create_directory(target);
  return target;
}

}  // namespace

TEST_CASE("every sheet is exported to a PDF of its own while the window goes on") {
  ScratchFolder folder;
  OpenWindow window;
  const auto target = open_for_sheets(window, folder);
  ExportSheetsDialog dialog(window.reference().get(), window->study_shared(), Paper::a4, target, "harvest");
  dialog.choose(all_kinds(), Paper::letter, target);
  REQUIRE(dialog.begin());
  CHECK(dialog.working());
  CHECK(!dialog.begin());  // one at a time
  REQUIRE(window.pump_until([&] { return !dialog.working(); }));
  CHECK(dialog.done().fault.empty());
  CHECK(dialog.done().files.size() == sheet_kinds().size());
  for (const SheetKind& kind : sheet_kinds())
    CHECK(contents(target / ("harvest-" + std::string(kind.key) + ".pdf")).starts_with("%PDF-"));
  CHECK(files_in(target) == sheet_kinds().size());

  Dialogs dialogs({wxID_CANCEL});
  CHECK(!dialog.begin());  // what is there is not replaced unasked
  CHECK(dialogs.said().at(0).find("already") != std::string::npos);
}

TEST_CASE("an export that is given up writes nothing") {
  ScratchFolder folder;
  OpenWindow window;
  const auto target = open_for_sheets(window, folder);
  ExportSheetsDialog dialog(window.reference().get(), window->study_shared(), Paper::a4, target, "harvest");
  dialog.choose(all_kinds(), Paper::a4, target);
  REQUIRE(dialog.begin());
  dialog.give_up();
  REQUIRE(window.pump_until([&] { return !dialog.working(); }));
  CHECK(dialog.done().given_up);
  CHECK(dialog.words() == "Given up; nothing was written.");
  CHECK(std::filesystem::is_empty(target));
}

TEST_CASE("giving up between any two steps leaves the folder empty") {
  ScratchFolder folder;
  OpenWindow window;
  const auto target = open_for_sheets(window, folder);
  const SheetExport wanted{window->study_shared(), {"client", "build", "safety"}, Paper::a4, target, "harvest"};
  for (int step = 0; step < 6; ++step) {
    std::atomic<int> asked = 0;
    const auto done = export_sheets(
        wanted, [&] { return ++asked > step; }, [](const SheetProgress&) {});
    CHECK(done.given_up);
    CHECK(done.files.empty());
    CHECK(std::filesystem::is_empty(target));
  }
}

TEST_CASE("an event is never replaced by a sheet, and a folder is made where there can be one") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const auto other = put_event(folder, harvest_event(), "harvest-client.pdf");
  const std::string before = contents(other);
  const auto refused = export_sheets(
      {window->study_shared(), {"client"}, Paper::a4, folder / "", "harvest"}, [] { return false; },
      [](const SheetProgress&) {});
  CHECK(refused.fault.find("holds an event") != std::string::npos);
  CHECK(contents(other) == before);
  {
    ExportSheetsDialog dialog(window.reference().get(), window->study_shared(), Paper::a4, other / "inside", "harvest");
    CHECK(!dialog.begin());  // that is a file
    CHECK(dialog.words().Contains("cannot be made"));
  }
  ExportSheetsDialog dialog(window.reference().get(), window->study_shared(), Paper::a4, folder / "new" / "sheets",
                            "harvest");
  REQUIRE(dialog.begin());
  REQUIRE(window.pump_until([&] { return !dialog.working(); }));
  CHECK(dialog.done().fault.empty());
  CHECK(std::filesystem::exists(folder / "new" / "sheets"));
}

TEST_CASE("files are named after the event's title") {
  CHECK(file_stem_of("Spring fair, 2nd day!") == "spring-fair-2nd-day");
  CHECK(file_stem_of("Été") == "Été");
  CHECK(file_stem_of("?!") == "event");
}

}  // namespace quadrille
