// Looking into library files without loading them: sound ones, other things of that name, cut and damaged ones.
#include "studio/host/elf_check.hpp"

#include <sys/stat.h>

#include <cstring>
#include <random>

#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {
const std::string symbol = "quadrille_pieces_v1";
}

TEST_CASE("the table of a sound plugin is found with its first words, stripped or not") {
  for (const char* name : {"post", "stripped", "plain"}) {
    CAPTURE(name);
    const LibraryLook look = look_into_library(plugin(name), symbol);
    CHECK(look.damage == "");
    REQUIRE(look.exported);
    CHECK(look.symbol_size == sizeof(quadrille_pieces));
    REQUIRE(look.first_words);
    CHECK(*look.first_words == std::array<std::uint32_t, 3>{sizeof(quadrille_pieces), 1, 1});
  }
}

TEST_CASE("a symbol that is not there, is a function, or only begins alike is not taken for the table") {
  CHECK_FALSE(look_into_library(plugin("no_symbol"), symbol).exported);
  CHECK_FALSE(look_into_library(plugin("function_symbol"), symbol).exported);
  CHECK_FALSE(look_into_library(plugin("post"), "quadrille_pieces").exported);
  CHECK_FALSE(look_into_library(plugin("post"), "quadrille_pieces_v12").exported);
  CHECK(look_into_library(plugin("no_symbol"), symbol).damage == "");
}

TEST_CASE("a library cut at any length is called damaged") {
  const TempFolder folder;
  const std::string whole = read(plugin("plain"));
  const auto file = folder.path() / "cut.so";
  std::size_t cuts = 0;
  for (std::size_t length = 0; length < whole.size(); length += length < 1200 ? 1 : 97, ++cuts) {
    write(file, whole.substr(0, length));
    const LibraryLook look = look_into_library(file, symbol);
    if (look.damage.empty() || look.exported) FAIL("a cut at ", length, " bytes passed");
  }
  CHECK(cuts > 1000);
}

TEST_CASE("flipped bytes never do harm, wherever they are, and those that decide are noticed") {
  // The check here once could not fail: a damaged file is never said to export anything.
  const TempFolder folder;
  const std::string whole = read(plugin("plain"));
  const auto file = folder.path() / "flipped.so";
  std::mt19937 random(20'27);
  std::size_t taken = 0, noticed = 0;
  const auto try_with = [&](const std::string& bytes) {
    write(file, bytes);
    const LibraryLook look = look_into_library(file, symbol);
    ++(look.exported ? taken : noticed);
    return look;
  };
  // System V ABI, chapter 4: the mark (0-3), class (4) and order (5) of the file, its type (16, 17) and machine (18,
  // 19); where its segments (32-39) and sections (40-47) stand, and how long an entry of theirs is (54, 55; 58, 59).
  const auto decides = [](std::size_t i) {
    return i < 6 || (i >= 16 && i < 20) || (i >= 32 && i < 48) || i == 54 || i == 55 || i == 58 || i == 59;
  };
  // Every byte of the file header, of the program headers behind it, and of the section headers, to extremes.
  std::uint64_t section_headers = 0;
  std::memcpy(&section_headers, whole.data() + 40, sizeof section_headers);  // e_shoff of a 64-bit ELF header
  REQUIRE(section_headers < whole.size());
  for (std::size_t i = 0; i < whole.size(); i == 1023 ? i = section_headers : ++i)
    for (const int flipped : {0x00, 0xFF, ~whole[i] & 0xFF}) {
      std::string bytes = whole;
      bytes[i] = static_cast<char>(flipped);
      const LibraryLook look = try_with(bytes);
      if (decides(i) && bytes[i] != whole[i]) {
        CAPTURE(i);
        CHECK_FALSE(look.exported);
      }
    }
  for (int round = 0; round < 2000; ++round) {
    std::string bytes = whole;
    for (int flips = 0; flips < 20; ++flips) bytes[random() % bytes.size()] = static_cast<char>(random());
    try_with(bytes);
  }
  CHECK(taken > 100);  // most bytes say nothing about the table
  CHECK(noticed > 100);
}

TEST_CASE("what is no library says what it is") {
  const TempFolder folder;
  const auto damage = [&](const std::string& name) { return look_into_library(folder.path() / name, symbol).damage; };
  write(folder.path() / "text.so", "These are notes on balloons, not a library.\n");
  write(folder.path() / "empty.so", "");
  std::filesystem::create_directory(folder.path() / "folder.so");
  std::filesystem::create_symlink("nowhere", folder.path() / "dangling.so");
  REQUIRE(::mkfifo((folder.path() / "pipe.so").c_str(), 0600) == 0);  // opening it plainly would wait for ever
  CHECK(damage("text.so") == "It is not a library: it does not begin as one does.");
  CHECK(damage("empty.so") == "It is empty.");
  CHECK(damage("folder.so") == "It is a folder, not a library.");
  CHECK(damage("dangling.so") == "It is a link to a file that is not there.");
  CHECK(damage("pipe.so") == "It is not a regular file.");
  CHECK(look_into_library("/proc/self/exe", symbol).exported == false);
}

TEST_CASE("a library for another machine is told from a damaged one") {
  const TempFolder folder;
  std::string bytes = read(plugin("plain"));
  bytes[18] = static_cast<char>(0xF7);  // e_machine: 247 is EM_BPF in the ELF registry
  bytes[19] = 0;
  write(folder.path() / "other.so", bytes);
  CHECK(look_into_library(folder.path() / "other.so", symbol).damage == "It is a library for another kind of machine.");
}
