// The README: its commands run as they stand there, its pictures are there, and no verb is missing from it.
#include <doctest/doctest.h>

#include <regex>

#include "scene.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

std::string readme() { return bytes_of(QUADRILLE_SOURCE_DIR "/README.md"); }

/// Every match of the pattern's first group.
std::vector<std::string> all_matches(const std::string& text, const std::string& pattern) {
  const std::regex regex(pattern);
  std::vector<std::string> found;
  for (std::sregex_iterator at(text.begin(), text.end(), regex), end; at != end; ++at) found.push_back((*at)[1]);
  return found;
}

TEST_CASE("every command of the README runs as it is typed there") {
  const Folder folder;
  fs::create_directory_symlink(QUADRILLE_SOURCE_DIR "/examples", folder.path() / "examples");
  fs::create_directory_symlink(QUADRILLE_BINARY_DIR, folder.path() / "build");
  const auto lines = all_matches(readme(), "    (build/bin/quadrille [^#\n]*)");
  CHECK(lines.size() >= 6);
  for (const std::string& line : lines) {
    CAPTURE(line);
    const std::string script = "cd '" + folder.path().string() + "' && " + line;
    const Outcome outcome = run_in(folder, "bash", {"-c", script}, environment_in(folder));
    CAPTURE(outcome.err);
    CHECK(outcome.exit >= 0);
    CHECK(outcome.exit <= 1);  // 1: done, but an example has something to mend
  }
  CHECK(bytes_of(folder / "fair.pdf").starts_with("%PDF-"));
}

TEST_CASE("the README shows every verb that there is") {
  const Folder folder;
  const std::string text = readme();
  const auto verbs = all_matches(quadrille_in(folder, {"--help"}).out, "\n +quadrille ([a-z]+)");
  CHECK(verbs.size() >= 6);
  for (const std::string& verb : verbs) {
    CAPTURE(verb);
    CHECK(text.find("    build/bin/quadrille " + verb) != std::string::npos);
  }
}

TEST_CASE("pictures and files that the README names are there, and the pictures are small") {
  const std::string text = readme();
  const auto pictures = all_matches(text, "!\\[[^\\]]+\\]\\(([^)]+)\\)");
  REQUIRE(pictures.size() >= 1);
  for (const std::string& picture : pictures) {
    CAPTURE(picture);
    const std::string bytes = bytes_of(QUADRILLE_SOURCE_DIR "/" + picture);
    CHECK(bytes.starts_with("\x89PNG\r\n\x1a\n"));  // Source: PNG specification (third edition), 5.2
    CHECK(bytes.size() < 150'000);
  }
  for (const std::string& named :
       all_matches(text, "((?:examples|studio|tests|palettes)/[A-Za-z0-9./-]*[A-Za-z0-9/])")) {
    CAPTURE(named);
    CHECK(fs::exists(QUADRILLE_SOURCE_DIR "/" + named));
  }
}

}  // namespace
}  // namespace quadrille
