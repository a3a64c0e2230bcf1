// The house as it stands: the level table of DEVELOPERS.md against every #include, and every test file against the
// build.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "layer_check.hpp"
#include "tests/places.hpp"

using namespace layers;
namespace fs = std::filesystem;

namespace {

const fs::path root = quadrille::source_place();

std::string text_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE_MESSAGE(file, path.string());
  return {std::istreambuf_iterator<char>(file), {}};
}

bool is_source(const fs::path& path) {
  const auto ending = path.extension();
  return ending == ".h" || ending == ".hpp" || ending == ".c" || ending == ".cpp" || ending == ".cc" ||
         ending == ".hxx";
}

/// Files below `folder` that `wanted` takes, by path from the repository root, sorted.
template <class Wanted>
std::vector<File> files_below(const std::string& folder, Wanted wanted) {
  std::vector<File> files;
  const auto options = fs::directory_options::follow_directory_symlink;
  for (const auto& entry : fs::recursive_directory_iterator(root / folder, options))
    if (entry.is_regular_file() && wanted(entry.path()))
      files.push_back({entry.path().lexically_relative(root).generic_string(), text_of(entry.path())});
  std::ranges::sort(files, {}, &File::path);
  return files;
}

void check_none(const std::vector<std::string>& faults) {
  for (const std::string& fault : faults) FAIL_CHECK(fault);
}

}  // namespace

TEST_CASE("every include follows the level table of DEVELOPERS.md") {
  const LayerTable table = read_layer_table(text_of(root / "DEVELOPERS.md"));
  check_none(table.faults);
  std::vector<File> files;
  for (const char* folder : {"sdk", "studio", "plugins"})
    for (File& file : files_below(folder, is_source)) files.push_back(std::move(file));
  CHECK(files.size() > 50);  // the walk found the house
  check_none(faults_of_house(table.layers, files));
}

TEST_CASE("every test file is built") {
  const auto files = files_below("tests", [](const fs::path& path) {
    return path.filename() == "CMakeLists.txt" || path.filename().string().ends_with("_test.cpp");
  });
  CHECK(files.size() > 10);
  check_none(faults_of_tests(files));
}

TEST_CASE("no build file but the window's looks for wxWidgets") {
  const auto is_build_file = [](const fs::path& path) { return path.filename() == "CMakeLists.txt"; };
  std::vector<File> files{{"CMakeLists.txt", text_of(root / "CMakeLists.txt")}};
  for (const char* folder : {"sdk", "studio", "plugins", "tests"})
    for (File& file : files_below(folder, is_build_file)) files.push_back(std::move(file));
  check_none(faults_of_build_files(files));
}

TEST_CASE("assertions stay armed in every kind of build") {
  // Two of the three kinds of optimised builds still disarmed them, so that a mistake passed there in silence.
  for (const std::string flags : {QUADRILLE_FLAGS, QUADRILLE_C_FLAGS}) {
    CAPTURE(flags);
    CHECK(flags.find("-O") != std::string::npos);  // these are the flags
    CHECK(flags.find("NDEBUG") == std::string::npos);
  }
#ifdef NDEBUG
  FAIL_CHECK("this build disarms them");
#endif
}
