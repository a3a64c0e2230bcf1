// Table files as a spreadsheet program reads them: LibreOffice, without a display.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "scene.hpp"
#include "studio/command/list_table.hpp"
#include "studio/command/xlsx.hpp"

namespace quadrille {
namespace {

/// One table cell of a flat OpenDocument sheet: its attributes and what is shown in it.
struct ShownCell {
  std::string attributes, text;
};

/// Converts `file` to a flat OpenDocument sheet and returns that; empty, with a message, where LibreOffice is missing.
std::string flat_sheet(const Folder& folder, const std::string& file, const std::vector<std::string>& filter = {}) {
  if (!std::filesystem::exists("/usr/bin/soffice")) {
    MESSAGE("not checked: LibreOffice (package libreoffice-calc-nogui) is missing");
    return {};
  }
  std::vector<std::string> words{"-env:UserInstallation=file://" + folder / "office", "--headless"};
  words.insert(words.end(), filter.begin(), filter.end());
  for (const char* word : {"--convert-to", "fods", "--outdir"}) words.push_back(word);
  words.push_back(folder / "flat");
  words.push_back(file);
  const Ran ran = run_in(folder, "soffice", words, environment_in(folder));
  CAPTURE(ran.err);
  CHECK(ran.exit == 0);
  const auto stem = std::filesystem::path(file).stem().string();
  const std::string flat = bytes_of(folder / ("flat/" + stem + ".fods"));
  REQUIRE_FALSE(flat.empty());
  return flat;
}

/// The cells that show `text`.
std::vector<ShownCell> cells_with(const std::string& flat, const std::string& text) {
  std::vector<ShownCell> found;
  const std::string mark = "<text:p>" + text + "</text:p>";
  for (auto at = flat.find(mark); at != std::string::npos; at = flat.find(mark, at + 1)) {
    const auto open = flat.rfind("<table:table-cell", at);
    found.push_back({flat.substr(open, flat.find('>', open) - open), text});
  }
  return found;
}

bool is_text(const ShownCell& cell) { return cell.attributes.find("value-type=\"string\"") != std::string::npos; }
bool is_number(const ShownCell& cell, const std::string& value) {
  return cell.attributes.find("value-type=\"float\"") != std::string::npos &&
         cell.attributes.find("office:value=\"" + value + "\"") != std::string::npos;
}

/// Texts that a spreadsheet would run if it could, numbers, and amounts of 0, 2 and 3 digits.
std::vector<ListTable> tables() {
  return {{"row",
           "First",
           {"text", "number", "dollars", "yen", "dinars"},
           {{text_cell("=1+1"), number_cell(0.2286), money_cell(1495, "USD"), money_cell(1250, "JPY"),
             money_cell(12'345, "KWD")},
            {text_cell("+41"), number_cell(-2.5), money_cell(-5, "USD"), Cell{}, Cell{}},
            {text_cell("@SUM(B2)"), whole_cell(132), money_cell(std::nullopt, "USD"), Cell{}, Cell{}},
            {text_cell("-7, \"so\""), whole_cell(0), money_cell(990, "USD"), Cell{}, Cell{}},
            {text_cell("0049"), whole_cell(1), Cell{}, Cell{}, Cell{}}}}};
}

TEST_CASE("a workbook has numbers as numbers, text as text, and no formula") {
  const Folder folder;
  const auto bytes = xlsx_of(tables());
  REQUIRE_MESSAGE(bytes, bytes.error);
  put_file(folder.path() / "book.xlsx", *bytes);
  const std::string flat = flat_sheet(folder, folder / "book.xlsx");
  if (flat.empty()) return;
  CHECK(flat.find("table:formula") == std::string::npos);
  CHECK(flat.find("table:name=\"First\"") != std::string::npos);
  for (const char* text : {"=1+1", "+41", "@SUM(B2)", "0049"}) {
    CAPTURE(text);
    const auto cells = cells_with(flat, text);
    REQUIRE(cells.size() == 1);
    CHECK(is_text(cells[0]));
  }
  REQUIRE(cells_with(flat, "14.95").size() == 1);
  CHECK(is_number(cells_with(flat, "14.95")[0], "14.95"));
  CHECK(is_number(cells_with(flat, "-0.05").at(0), "-0.05"));
  CHECK(is_number(cells_with(flat, "9.90").at(0), "9.9"));
  CHECK(is_number(cells_with(flat, "1250").at(0), "1250"));
  CHECK(is_number(cells_with(flat, "12.345").at(0), "12.345"));
  CHECK(is_number(cells_with(flat, "132").at(0), "132"));
  CHECK(flat.find("office:value=\"0.2286\"") != std::string::npos);
}

TEST_CASE("comma-separated lists open with numbers as numbers, and what begins like a formula is text") {
  const Folder folder;
  put_file(folder.path() / "list.csv", csv_of(tables()));
  // Comma, quote, UTF-8, from line 1; the program's own reading of numbers, and formulas evaluated where there are any.
  const std::string flat = flat_sheet(folder, folder / "list.csv",
                                      {"--infilter=CSV:44,34,76,1,,1033,false,true,false,false,false,0,false,true"});
  if (flat.empty()) return;
  CHECK(flat.find("table:formula") == std::string::npos);
  for (const char* text : {"&apos;=1+1", "&apos;+41", "&apos;@SUM(B2)"}) {
    CAPTURE(text);
    auto cells = cells_with(flat, text);
    if (cells.empty()) cells = cells_with(flat, std::string("'") + std::string(text).substr(6));
    REQUIRE(cells.size() == 1);
    CHECK(is_text(cells[0]));
  }
  CHECK(is_number(cells_with(flat, "14.95").at(0), "14.95"));
  CHECK(is_number(cells_with(flat, "-0.05").at(0), "-0.05"));
  CHECK(is_number(cells_with(flat, "12.345").at(0), "12.345"));
  CHECK(is_number(cells_with(flat, "132").at(0), "132"));
}

TEST_CASE("the workbook of a count holds the numbers of its JSON") {
  const Folder folder;
  const std::string event = put_scene(folder);
  REQUIRE(quadrille_in(folder, {"count", event, "--xlsx", folder / "c.xlsx", "--csv", folder / "c.csv"}).exit == 0);
  CHECK(bytes_of(folder / "c.csv").starts_with("list,name,"));
  const std::string flat = flat_sheet(folder, folder / "c.xlsx");
  if (flat.empty()) return;
  for (const char* sheet : {"Balloons", "Order", "Supplies", "Pieces"})
    CHECK(flat.find(std::string("table:name=\"") + sheet + "\"") != std::string::npos);
  // Two colours of 132 in two lists each, and as many in each of the two pieces.
  const auto used = cells_with(flat, "132");
  CHECK(used.size() == 6);
  for (const ShownCell& cell : used) CHECK(is_number(cell, "132"));
  REQUIRE(cells_with(flat, "=Poppy, &quot;red&quot;").size() + cells_with(flat, "=Poppy, \"red\"").size() == 2);
  CHECK(flat.find("table:formula") == std::string::npos);
}

TEST_CASE("plan and quote write workbooks too, and the same lists give the same bytes") {
  const Folder folder;
  const std::string event = put_scene(folder);
  for (const std::string verb : {"plan", "quote"}) {
    REQUIRE(quadrille_in(folder, {verb, event, "--xlsx", folder / "a.xlsx"}).exit == 0);
    REQUIRE(quadrille_in(folder, {verb, event, "--xlsx", folder / "b.xlsx"}).exit == 0);
    CHECK(bytes_of(folder / "a.xlsx").starts_with("PK\x03\x04"));  // a zip archive: ISO/IEC 29500-2
    CHECK(bytes_of(folder / "a.xlsx") == bytes_of(folder / "b.xlsx"));
  }
  CHECK(quadrille_in(folder, {"quote", event, "--xlsx", folder / "no/q.xlsx"}).exit == 4);
  CHECK(quadrille_in(folder, {"quote", event, "--xlsx", event}).exit == 2);
  CHECK(bytes_of(event) == event_text());
}

TEST_CASE("nothing is left where temporary files go") {
  const Folder folder;
  auto environment = environment_in(folder);
  environment["TMPDIR"] = folder / "temporary";
  std::filesystem::create_directory(folder / "temporary");
  CHECK(
      run_in(folder, quadrille_program, {"count", put_scene(folder), "--xlsx", folder / "c.xlsx"}, environment).exit ==
      0);
  CHECK(std::filesystem::is_empty(folder / "temporary"));
}

TEST_CASE("a workbook cannot be made where temporary files have no place, and says so") {
  const Folder folder;
  auto environment = environment_in(folder);
  environment["TMPDIR"] = folder / "nowhere";
  const Ran outcome =
      run_in(folder, quadrille_program, {"count", put_scene(folder), "--xlsx", folder / "c.xlsx"}, environment);
  CHECK(outcome.exit == 4);
  CHECK(outcome.err.find("TMPDIR") != std::string::npos);
}

TEST_CASE("a text with what no sheet can hold is still a sheet") {
  std::string long_text(40'000, 'x');
  long_text += "é";
  CHECK(xlsx_of({{"row", "One", {"a"}, {{text_cell(long_text)}, {text_cell("bell\x07")}, {text_cell("")}}}}));
}

}  // namespace
}  // namespace quadrille
