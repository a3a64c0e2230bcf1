// The README: its commands run as they stand there, its pictures are there, and no verb is missing from it.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "scene.hpp"
#include "tests/places.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

std::string readme() { return bytes_of(source_place("README.md")); }

/// What stands after each `begin`, up to the first of `ends`.
std::vector<std::string> all_after(const std::string& text, std::string_view begin, std::string_view ends) {
  std::vector<std::string> found;
  for (std::size_t at = text.find(begin); at != std::string::npos; at = text.find(begin, at + 1)) {
    const std::size_t first = at + begin.size();
    found.push_back(text.substr(first, std::min(text.find_first_of(ends, first), text.size()) - first));
  }
  return found;
}

TEST_CASE("every command of the README runs as it is typed there" * doctest::skip(sanitized)) {
  const Folder folder;
  fs::create_directory_symlink(source_place("examples"), folder.path() / "examples");
  fs::create_directory_symlink(build_place(), folder.path() / "build");
  const auto lines = all_after(readme(), "    build/bin/quadrille ", "#\n");
  CHECK(lines.size() >= 6);
  for (const std::string& line : lines) {
    CAPTURE(line);
    const std::string script = "cd '" + folder.path().string() + "' && build/bin/quadrille " + line;
    const Ran outcome = run_in(folder, "bash", {"-c", script}, environment_in(folder));
    CAPTURE(outcome.err);
    CHECK(outcome.exit >= 0);
    CHECK(outcome.exit <= 1);  // 1: done, but an example has something to mend
  }
  CHECK(bytes_of(folder / "fair.pdf").starts_with("%PDF-"));
}

TEST_CASE("the README shows every verb that there is") {
  const Folder folder;
  const std::string text = readme();
  const auto verbs = all_after(quadrille_in(folder, {"--help"}).out, "\n  quadrille ", " \n");
  CHECK(verbs.size() >= 6);
  for (const std::string& verb : verbs) {
    CAPTURE(verb);
    CHECK(text.find("    build/bin/quadrille " + verb) != std::string::npos);
  }
}

TEST_CASE("pictures and files that the README names are there, and the pictures are small") {
  const std::string text = readme();
  std::vector<std::string> pictures;
  for (const std::string& title : all_after(text, "![", "\n"))
    for (const std::string& picture : all_after(title, "](", ")")) pictures.push_back(picture);
  REQUIRE(pictures.size() >= 1);
  for (const std::string& picture : pictures) {
    CAPTURE(picture);
    const std::string bytes = bytes_of(source_place(picture));
    CHECK(bytes.starts_with("\x89PNG\r\n\x1a\n"));  // Source: PNG specification (third edition), 5.2
    CHECK(bytes.size() < 150'000);
  }
  for (const std::string folder : {"examples/", "studio/", "tests/", "palettes/"})
    for (std::string named : all_after(text, folder, " \n`'\")(]*,;:#")) {
      while (named.ends_with('.')) named.pop_back();
      named.insert(0, folder);
      CAPTURE(named);
      CHECK(fs::exists(source_place(named)));
    }
}

}  // namespace
}  // namespace quadrille
