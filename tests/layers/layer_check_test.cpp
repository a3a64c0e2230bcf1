// The layer test itself, tried on made-up houses: each fault must be found, and a clean house must pass.
#include "layer_check.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace layers;

namespace {

const std::string table_text = std::string("# Title\n\nSome prose | with a bar.\n\n") + std::string(table_head) +
                               "\n|---|---|---|---|---|\n"
                               "| 0 | `sdk` | contract | – | Eigen |\n"
                               "| 1 | `studio/model` | values | `sdk` | – |\n"
                               "| 2 | `studio/files` | files | `sdk`, `studio/model` | tinyxml2, POSIX |\n"
                               "| 2 | `studio/host` | plugins | `sdk`, `studio/model` | Boost.DLL |\n"
                               "| 3 | `studio/drawing` | sheets | `sdk`, `studio/model`, `studio/host` | Cairo |\n"
                               "| – | `plugins/*` | piece types | `sdk` | Eigen, Boost.Math |\n"
                               "\nMore prose.\n";

/// A house in which every row has a folder and every include is allowed.
std::vector<File> clean_house() {
  return {
      {"sdk/abi.h", "#include <stdint.h>\n"},
      {"sdk/vec.hpp", "#include <Eigen/Core>\n#include <vector>\n#include \"sdk/abi.h\"\n"},
      {"studio/model/event.hpp", "#include <string>\n  #  include \"sdk/vec.hpp\"  // frame\n"},
      {"studio/files/read.cpp", "#include <tinyxml2.h>\n#include <sys/stat.h>\n#include \"studio/model/event.hpp\"\n"},
      {"studio/host/load.cpp", "#include <boost/dll/shared_library.hpp>\n"},
      {"studio/drawing/draw.cpp", "#include <cairo.h>\n#include \"studio/host/load.hpp\"\n"},
      {"studio/host/load.hpp", ""},
      {"plugins/arch/arch.cpp", "#include \"plugins/arch/frame.hpp\"\n#include <boost/math/tools/roots.hpp>\n"},
      {"plugins/arch/frame.hpp", "#include \"sdk/vec.hpp\"\n"}};
}

std::vector<std::string> faults_with(const File& file) {
  auto house = clean_house();
  house.push_back(file);
  return faults_of_house(read_layer_table(table_text).layers, house);
}

/// Checks that this one file is found at fault, once, in these words.
void check_fault(const std::string& path, const std::string& text, const std::string& words) {
  CAPTURE(path);
  CAPTURE(text);
  const auto faults = faults_with({path, text});
  REQUIRE(faults.size() == 1);
  CAPTURE(faults[0]);
  CHECK(faults[0].find(words) != std::string::npos);
}

}  // namespace

TEST_CASE("the table is read from among the prose") {
  const LayerTable table = read_layer_table(table_text);
  CHECK(table.faults.empty());
  REQUIRE(table.layers.size() == 6);
  CHECK(table.layers[0].level == 0);
  CHECK(table.layers[0].may_include.empty());
  CHECK(table.layers[2].folder == "studio/files");
  CHECK(table.layers[2].may_include == std::vector<std::string>{"sdk", "studio/model"});
  CHECK(table.layers[2].libraries == std::vector<std::string>{"tinyxml2", "POSIX"});
  CHECK(!table.layers[5].level);
}

TEST_CASE("a table that is missing or broken is said to be") {
  CHECK(read_layer_table("# No table here\n").faults.size() == 1);
  const std::string head = std::string(table_head) + "\n|---|---|---|---|---|\n";
  CHECK(read_layer_table(head + "| 0 | `sdk` | contract |\n").faults.size() == 2);  // that row, and then no table
  CHECK(read_layer_table(head + "| 0 | `sdk` | a | – | – |\n| 1 |  | a | – | – |\n").faults.size() == 1);
}

TEST_CASE("a clean house passes") {
  CHECK(faults_of_house(read_layer_table(table_text).layers, clean_house()) == std::vector<std::string>{});
}

TEST_CASE("upward and sideways includes are found, with file and line") {
  check_fault("sdk/x.hpp", "#include <vector>\n\n#include \"studio/model/event.hpp\"\n", "sdk/x.hpp:3: upward");
  check_fault("studio/model/x.cpp", "#include \"studio/host/load.hpp\"\n", "upward");
  check_fault("studio/files/x.cpp", "#include \"studio/host/load.hpp\"\n", "sideways");
  check_fault("studio/files/x.cpp", "#include \"plugins/arch/frame.hpp\"\n", "upward");
  check_fault("plugins/column/x.cpp", "#include \"plugins/arch/frame.hpp\"\n", "sideways");
  check_fault("plugins/arch/x.cpp", "#include \"studio/model/event.hpp\"\n", "not allowed");
}

TEST_CASE("a lower folder that the row does not name is found") {
  check_fault("studio/drawing/x.cpp", "#include \"studio/files/read.cpp\"\n", "not allowed");
}

TEST_CASE("foreign libraries are found where they have no business") {
  check_fault("studio/model/x.cpp", "#include <wx/wx.h>\n", "wxWidgets is not for studio/model");
  check_fault("studio/model/x.cpp", "#include <Eigen/Core>\n", "Eigen");
  check_fault("studio/model/x.cpp", "#include <eigen3/Eigen/Core>\n", "Eigen");
  check_fault("studio/host/x.cpp", "#include <tinyxml2.h>\n", "tinyxml2");
  check_fault("studio/files/x.cpp", "#include <cairo/cairo-pdf.h>\n", "Cairo");
  check_fault("studio/files/x.cpp", "#include <boost/dll.hpp>\n", "Boost.DLL");
  check_fault("studio/host/x.cpp", "#include <boost/math/constants/constants.hpp>\n", "Boost.Math");
  check_fault("studio/host/x.cpp", "#include <unistd.h>\n", "POSIX");
  check_fault("studio/drawing/x.cpp", "#include <pango/pangocairo.h>\n", "Pango");
  check_fault("studio/drawing/x.cpp", "#include <gdk-pixbuf/gdk-pixbuf.h>\n", "gdk-pixbuf");
  check_fault("studio/drawing/x.cpp", "#include <CLI/CLI.hpp>\n", "CLI11");
  check_fault("studio/drawing/x.cpp", "#include <nlohmann/json.hpp>\n", "nlohmann-json");
  check_fault("studio/drawing/x.cpp", "#include <somebody/else.hpp>\n", "no library that the layer test knows");
  check_fault("studio/drawing/x.cpp", "#include <boost/geometry.hpp>\n", "no library that the layer test knows");
}

TEST_CASE("includes that are not written from the repository root are found") {
  check_fault("studio/model/x.cpp", "#include \"event.hpp\"\n", "repository root");
  check_fault("studio/model/x.cpp", "#include \"../../sdk/abi.h\"\n", "repository root");
  check_fault("studio/model/x.cpp", "#include \"studio/model/gone.hpp\"\n", "repository root");
  check_fault("studio/model/x.cpp", "#include \"wx/wx.h\"\n", "repository root");
  check_fault("studio/model/x.cpp", "#include <sdk/abi.h>\n", "no library");
  check_fault("studio/model/x.cpp", "#include HEADER\n", "without a plain name");
}

TEST_CASE("a folder without a row and a row without a folder are found") {
  check_fault("studio/extra/x.cpp", "", "studio/extra has no row");
  check_fault("studio/model/inner/x.cpp", "", "studio/model/inner has no row");
  check_fault("studio/x.cpp", "", "studio has no row");
  auto house = clean_house();
  std::erase_if(house, [](const File& file) { return file.path.starts_with("studio/files/"); });
  const auto faults = faults_of_house(read_layer_table(table_text).layers, house);
  CHECK(faults == std::vector<std::string>{"the row studio/files has no folder"});
}

TEST_CASE("a table that would allow an upward include is found") {
  const Layer sdk{0, "sdk", {}, {}}, model{1, "studio/model", {"sdk"}, {}};
  CHECK(faults_of_table({sdk, model}).empty());
  CHECK(faults_of_table({{0, "sdk", {"studio/model"}, {}}, model}).size() == 1);
  CHECK(faults_of_table({sdk, model, {1, "studio/files", {"studio/model"}, {}}}).size() == 1);
  CHECK(faults_of_table({sdk, {1, "studio/model", {"studio/gone"}, {}}}).size() == 1);
  CHECK(faults_of_table({sdk, model, {std::nullopt, "plugins/*", {}, {}}, {2, "studio/host", {"plugins/*"}, {}}})
            .size() == 1);
  CHECK(faults_of_table({sdk, sdk}).size() == 1);
}

TEST_CASE("a test file that no target builds is found") {
  const File test{"tests/model/history_test.cpp", ""},
      built{"tests/model/CMakeLists.txt", "quadrille_add_test(model)\n"};
  CHECK(faults_of_tests({test, built}).empty());
  CHECK(faults_of_tests({test}).size() == 1);
  CHECK(faults_of_tests({test, {"tests/model/CMakeLists.txt", "# quadrille_add_test(model)\n"}}).size() == 1);
  CHECK(faults_of_tests({{"tests/model/deep/x_test.cpp", ""}, built}).size() == 1);
  CHECK(faults_of_tests({{"tests/x_test.cpp", ""}, built}).size() == 1);
}

TEST_CASE("wxWidgets is looked for by the window alone") {
  const std::string looks = "find_package(wxWidgets 3.2 REQUIRED)\n";
  CHECK(faults_of_build_files({{"studio/window/CMakeLists.txt", looks}, {"CMakeLists.txt", ""}}).empty());
  CHECK(faults_of_build_files({{"CMakeLists.txt", looks}}).size() == 1);
  CHECK(faults_of_build_files({{"studio/drawing/CMakeLists.txt", looks}}).size() == 1);
}
