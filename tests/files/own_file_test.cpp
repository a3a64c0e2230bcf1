// Outputs never replace events.
#include "studio/files/own_file.hpp"

#include <doctest/doctest.h>
#include <stdlib.h>

#include <fstream>
#include <vector>

namespace quadrille {
namespace {

using Path = std::filesystem::path;

/// A folder that goes with the object.
struct Folder {
  Path path;
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "quadrille-own-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path = name;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path, ignored);
  }
  Path put(const char* name, const std::string& bytes) const {
    std::ofstream(path / name, std::ios::binary) << bytes;
    return path / name;
  }
};

TEST_CASE("an event, under its own or another name, and other events, houses and palettes are not replaced") {
  const Folder folder;
  const Path odd = folder.put("odd.pdf", "<q:event xmlns:q='urn:something:else'/>");
  const Path link = folder.path / "link.pdf";
  std::filesystem::create_symlink(odd, link);
  const Path event = folder.put(
      "supper.pdf", "<!-- " + std::string(9000, '-') + "--><event xmlns=\"urn:quadrille:event:1\" version=\"1.0\"/>");
  const Path house = folder.put("mine.txt", "<house xmlns=\"urn:quadrille:house:1\" version=\"1.0\"/>");
  const Path palette = folder.put("garden.xml", "<palette xmlns=\"urn:quadrille:palette:1\" version=\"1.0\"/>");
  const auto said = [](const Path& from, const std::vector<Path>& outputs) {
    return would_replace(from, outputs).value_or("");
  };
  CHECK(said(odd, {odd}).find("the event itself") != std::string::npos);
  CHECK(said(odd, {folder.path / "free.pdf", link}).find("link.pdf: this file holds the event itself") !=
        std::string::npos);
  CHECK(said({}, {event}).find("holds an event") != std::string::npos);
  CHECK(said(odd, {house}).find("holds a house") != std::string::npos);
  CHECK(said(odd, {palette}).find("holds a palette") != std::string::npos);
}

TEST_CASE("earlier outputs, new names, folders and devices are left to the writing") {
  const Folder folder;
  const std::vector<Path> outputs{folder.put("old.pdf", "%PDF-1.7 ..."), folder.path / "new.pdf", folder.path,
                                  "/dev/full", folder.path / "no" / "where.pdf"};
  CHECK_FALSE(would_replace(folder.path / "supper.quadrille", outputs));
  CHECK_FALSE(would_replace({}, outputs));
}

}  // namespace
}  // namespace quadrille
