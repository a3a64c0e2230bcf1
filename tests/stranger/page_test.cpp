// The page "Write a piece type" of DEVELOPERS.md: what it quotes stands so in examples/hoop.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "tests/places.hpp"

namespace {

namespace fs = std::filesystem;

const fs::path root = quadrille::source_place();

std::string text_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE_MESSAGE(file, path.string());
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The part of a page from this heading of the second level to the next.
std::string section(const std::string& page, const std::string& heading) {
  const auto from = page.find("\n## " + heading + "\n");
  REQUIRE(from != std::string::npos);
  return page.substr(from, page.find("\n## ", from + 1) - from);
}

/// What stands between fences, without them.
std::vector<std::string> quoted_blocks(const std::string& text) {
  std::vector<std::string> blocks;
  for (auto at = text.find("\n```"); at != std::string::npos; at = text.find("\n```", at)) {
    const auto from = text.find('\n', at + 1) + 1, to = text.find("\n```", from);
    REQUIRE(to != std::string::npos);
    blocks.push_back(text.substr(from, to + 1 - from));
    at = to + 4;
  }
  return blocks;
}

std::vector<std::string> hoop_files() {
  std::vector<std::string> files;
  for (const auto& entry : fs::directory_iterator(root / "examples" / "hoop")) files.push_back(text_of(entry.path()));
  return files;
}

}  // namespace

TEST_CASE("every block of the page on piece types stands verbatim in examples/hoop") {
  const auto blocks = quoted_blocks(section(text_of(root / "DEVELOPERS.md"), "Write a piece type"));
  const auto files = hoop_files();
  CHECK(blocks.size() >= 8);
  for (const std::string& block : blocks) {
    CAPTURE(block);
    CHECK(block.size() > 20);
    // Whole lines: the block begins where a line does.
    CHECK(std::ranges::any_of(files, [&](const std::string& file) {
      return file.starts_with(block) || file.find("\n" + block) != std::string::npos;
    }));
  }
}
