// The schemas against an independent validator: xmllint of libxml2.
#include <doctest/doctest.h>

#include <cstdlib>

#include "random_event.hpp"
#include "scratch.hpp"
#include "studio/files/event_file.hpp"

using namespace quadrille;
namespace fs = std::filesystem;

namespace {

const fs::path source = QUADRILLE_SOURCE_DIR;

bool has_xmllint() {
  if (std::system("xmllint --version >/dev/null 2>&1") == 0) return true;
  MESSAGE("xmllint (package libxml2-utils) is not installed: the schemas are not checked");
  return false;
}

/// Validates all files of a folder with this extension in one process.
bool all_valid(const std::string& schema, const fs::path& folder, const std::string& extension) {
  const std::string rules = (source / "studio/files" / schema).string();
  const std::string files = "'" + folder.string() + "'/*." + extension;
  return std::system(("xmllint --noout --relaxng '" + rules + "' " + files + " >/dev/null 2>&1").c_str()) == 0;
}

bool is_valid(const std::string& bytes) {
  const ScratchFolder folder;
  put(folder / "e.quadrille", bytes);
  return all_valid("event.rng", folder.path(), "quadrille");
}

std::string event_with(const std::string& inside) {
  return "<event xmlns=\"urn:quadrille:event:1\" xmlns:x=\"urn:x\" version=\"1.0\" reader=\"1.0\">" + inside +
         "</event>";
}

}  // namespace

TEST_CASE("fixtures, examples and palettes are valid") {
  if (!has_xmllint()) return;
  CHECK(all_valid("event.rng", source / "tests/files/fixtures", "quadrille"));
  CHECK(all_valid("palette.rng", source / "palettes", "xml"));
  const ScratchFolder folder;
  std::size_t examples = 0;
  if (fs::exists(source / "examples"))
    for (const auto& entry : fs::recursive_directory_iterator(source / "examples"))
      if (entry.path().extension() == ".quadrille")
        fs::copy_file(entry.path(), folder / (std::to_string(++examples) + ".quadrille"));
  if (examples > 0) CHECK(all_valid("event.rng", folder.path(), "quadrille"));
}

TEST_CASE("whatever event is written is valid") {
  if (!has_xmllint()) return;
  const ScratchFolder folder;
  int number = 0;
  CHECK(rc::check([&] { put(folder / (std::to_string(++number) + ".quadrille"), write_event(any_event())); }));
  CHECK(number >= 100);
  CHECK(all_valid("event.rng", folder.path(), "quadrille"));
}

TEST_CASE("the schema lets other namespaces through, and nothing unknown of ours") {
  if (!has_xmllint()) return;
  CHECK(is_valid(event_with("")));
  CHECK(is_valid(
      event_with("<x:a b=\"c\"><d>e</d></x:a><area id=\"a1\" x:f=\"g\"><x:h/><piece id=\"p1\" type=\"t\"><x:i/>"
                 "<set key=\"k\" length=\"1\"><x:j/></set></piece></area><x:l/>")));
  CHECK_FALSE(is_valid(event_with("<banquet/>")));
  CHECK_FALSE(is_valid(event_with("<area id=\"a1\" mood=\"soft\"/>")));
  CHECK_FALSE(is_valid(event_with("<area name=\"without id\"/>")));
  CHECK_FALSE(is_valid(event_with("<area id=\"a1\"><site ground=\"marble\"/></area>")));
  CHECK_FALSE(is_valid(event_with("<area id=\"a1\"><site gust-m-s=\"1,5\"/></area>")));
  CHECK_FALSE(is_valid(event_with("<area id=\"a1\"><piece id=\"p1\" type=\"t\"><set key=\"k\"/></piece></area>")));
  CHECK_FALSE(is_valid(event_with(
      "<area id=\"a1\"><piece id=\"p1\" type=\"t\"><set key=\"k\" length=\"1\" count=\"1\"/></piece></area>")));
  CHECK_FALSE(is_valid(event_with("<day date=\"19 June\"/>")));
  CHECK_FALSE(is_valid(event_with("stray words")));
}
