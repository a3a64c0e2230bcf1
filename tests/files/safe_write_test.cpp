// The one routine that writes: what stood there before stays whole until the new file is whole.
#include "studio/disk/safe_write.hpp"

#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <algorithm>
#include <csignal>

#include "scratch.hpp"
#include "studio/files/event_file.hpp"

using namespace quadrille;
namespace fs = std::filesystem;

namespace {

std::size_t entries(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

/// While it lives, files cannot grow beyond `bytes`: stands in for a full disk.
class SmallDisk {
 public:
  explicit SmallDisk(rlim_t bytes) {
    std::signal(SIGXFSZ, SIG_IGN);
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit small{bytes, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &small);
  }
  ~SmallDisk() { ::setrlimit(RLIMIT_FSIZE, &before_); }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;

 private:
  rlimit before_{};
};

bool says(const std::optional<std::string>& refused, std::string_view part) {
  return refused.has_value() && refused->find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a new file holds the bytes and leaves nothing beside it") {
  const ScratchFolder folder;
  CHECK(safe_write(folder / "new", std::string("a\0b\r\n", 5), Backup::keep_previous) == std::nullopt);
  CHECK(contents(folder / "new") == std::string("a\0b\r\n", 5));
  CHECK(entries(folder.path()) == 1);
}

TEST_CASE("the previous version is kept, and only where one is asked for and it differs") {
  const ScratchFolder folder;
  put(folder / "f", "one");
  CHECK(safe_write(folder / "f", "two", Backup::none) == std::nullopt);
  CHECK(entries(folder.path()) == 1);
  CHECK(safe_write(folder / "f", "three", Backup::keep_previous) == std::nullopt);
  CHECK(contents(folder / "f~") == "two");
  CHECK(safe_write(folder / "f", "three", Backup::keep_previous) == std::nullopt);
  CHECK(contents(folder / "f~") == "two");
  CHECK(safe_write(folder / "f", "four", Backup::keep_previous) == std::nullopt);
  CHECK(contents(folder / "f~") == "three");
  CHECK(contents(folder / "f") == "four");
  CHECK(entries(folder.path()) == 2);
}

TEST_CASE("where the write fails, the old file stays and no rubbish is left") {
  const ScratchFolder folder;
  put(folder / "f", "the old file");
  {
    const SmallDisk disk(4096);
    CHECK(says(safe_write(folder / "f", std::string(10'000, 'x'), Backup::keep_previous),
               "larger than the system allows"));
  }
  CHECK(contents(folder / "f") == "the old file");
  CHECK(entries(folder.path()) == 1);
  CHECK(says(safe_write("/dev/full", "x", Backup::none), "the disk is full"));
}

TEST_CASE("where an event cannot be saved, the old one stays") {
  const ScratchFolder folder;
  fs::copy_file(fixture("event-1.0.quadrille"), folder / "e.quadrille");
  const auto opened = open_event(folder / "e.quadrille");
  REQUIRE(opened.error == "");
  Event event = opened->event;
  event.title = "changed";
  {
    const SmallDisk disk(512);
    CHECK(says(save_event(folder / "e.quadrille", event, &*opened), "e.quadrille cannot be written"));
  }
  CHECK(contents(folder / "e.quadrille") == opened->bytes);
}

TEST_CASE("the previous version cannot be kept: then nothing is written") {
  const ScratchFolder folder;
  put(folder / "f", "old");
  fs::create_directory(folder / "f~");
  CHECK(says(safe_write(folder / "f", "new", Backup::keep_previous), "f~"));
  CHECK(contents(folder / "f") == "old");
  CHECK(entries(folder.path()) == 2);
}

TEST_CASE("symbolic links are followed and stay links") {
  const ScratchFolder folder;
  fs::create_directory(folder / "far");
  put(folder / "far/file", "old");
  fs::create_symlink("far/file", folder / "link");
  fs::create_symlink("link", folder / "second");
  fs::create_symlink("far/none-yet", folder / "dangling");
  CHECK(safe_write(folder / "second", "new", Backup::keep_previous) == std::nullopt);
  CHECK(fs::is_symlink(folder / "link"));
  CHECK(fs::is_symlink(folder / "second"));
  CHECK(contents(folder / "far/file") == "new");
  CHECK(contents(folder / "far/file~") == "old");
  CHECK(safe_write(folder / "dangling", "made", Backup::none) == std::nullopt);
  CHECK(contents(folder / "far/none-yet") == "made");
  fs::create_symlink("circle", folder / "circle");
  CHECK(says(safe_write(folder / "circle", "x", Backup::none), "circle"));
}

TEST_CASE("the mode of the file is kept; a new file has the mode that any new file has") {
  const ScratchFolder folder;
  const auto mode = [&](const char* name) {
    struct stat status {};
    ::stat((folder / name).c_str(), &status);
    return status.st_mode & 07777;
  };
  put(folder / "private", "old");
  ::chmod((folder / "private").c_str(), 0640);
  CHECK(safe_write(folder / "private", "new", Backup::keep_previous) == std::nullopt);
  CHECK(mode("private") == 0640);
  CHECK(mode("private~") == 0640);
  put(folder / "plain", "as any other");
  CHECK(safe_write(folder / "fresh", "new", Backup::none) == std::nullopt);
  CHECK(mode("fresh") == mode("plain"));
}

TEST_CASE("places where no file can be are refused by name") {
  const ScratchFolder folder;
  put(folder / "file", "x");
  CHECK(says(safe_write(folder.path(), "x", Backup::none), "it is a folder"));
  CHECK(says(safe_write(folder / "no/where", "x", Backup::none), "there is no folder"));
  // It was said of what stood there before, where nothing did, that it is unharmed.
  CHECK_FALSE(says(safe_write(folder / "no/where", "x", Backup::none), "unharmed"));
  CHECK(says(safe_write(folder.path(), "x", Backup::none), "unharmed"));
  CHECK(says(safe_write(folder / "file/inside", "x", Backup::none), "no folder"));
  CHECK(says(safe_write(folder / std::string(300, 'n'), "x", Backup::none), "too long"));
  CHECK(entries(folder.path()) == 1);
  if (::geteuid() != 0) {
    ::chmod((folder / "file").c_str(), 0444);
    CHECK(says(safe_write(folder / "file", "y", Backup::none), "write-protected"));
    CHECK(contents(folder / "file") == "x");
  }
}

TEST_CASE("a name of the greatest length and names that are not UTF-8 can be written") {
  const ScratchFolder folder;
  CHECK(safe_write(folder / std::string(255, 'n'), "x", Backup::none) == std::nullopt);
  CHECK(safe_write(folder / "na\xEFve", "y", Backup::none) == std::nullopt);
  CHECK(contents(folder / "na\xEFve") == "y");
}

// The backup's name would have had 256 bytes, and what bore such a name could never be saved again.
TEST_CASE("a file whose name is as long as a name can be is saved again, with its previous version beside it") {
  const ScratchFolder folder;
  // 255 bytes, the most of common file systems; the last but one character has two bytes, which must not be parted.
  const std::string plain(255, 'n'), accented = std::string(252, 'n') + "é" + "n";
  for (const auto& [name, kept] :
       {std::pair(plain, std::string(254, 'n') + "~"), std::pair(accented, std::string(252, 'n') + "é~"),
        std::pair(std::string(253, 'm') + "é", std::string(253, 'm') + "~")}) {
    put(folder / name, "one");
    CHECK(safe_write(folder / name, "two", Backup::keep_previous) == std::nullopt);
    CHECK(contents(folder / name) == "two");
    CHECK(contents(folder / kept) == "one");
  }
  CHECK(entries(folder.path()) == 6);
}
