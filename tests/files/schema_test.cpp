// The schemas against an independent validator: xmllint of libxml2.
#include <doctest/doctest.h>

#include <cstdlib>

#include "random_house.hpp"
#include "scratch.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/house_file.hpp"
#include "studio/files/palette_file.hpp"
#include "tests/places.hpp"

using namespace quadrille;
namespace fs = std::filesystem;

namespace {

const fs::path source = source_place();

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
  CHECK(all_valid("house.rng", source / "tests/files/fixtures", "quadrille-house"));
  CHECK(all_valid("house.rng", source / "examples", "quadrille-house"));
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
  CHECK(is_valid(event_with("<job travel-m=\"18500\" crew=\"2\" discount-ppm=\"50000\"/>")));
  CHECK_FALSE(is_valid(event_with("<job crew=\"0\"/>")));
  CHECK_FALSE(is_valid(event_with("<job discount-ppm=\"5 %\"/>")));
  const auto quote = [](const std::string& inside) {
    return event_with(
        "<quote net-minor=\"1\" tax-minor=\"0\" total-minor=\"1\" deposit-minor=\"0\" balance-minor=\"1\">" + inside +
        "</quote>");
  };
  CHECK(is_valid(quote("<charge kind=\"set-up\" net-minor=\"1\"/><x:y/><figure key=\"wage\" value=\"\"/>")));
  CHECK_FALSE(is_valid(quote("<charge kind=\"gift\" net-minor=\"1\"/>")));
  CHECK_FALSE(is_valid(quote("<charge kind=\"piece\"/>")));
  CHECK_FALSE(is_valid(event_with("<quote total-minor=\"1\"/>")));
  CHECK_FALSE(is_valid(event_with("stray words")));
}

TEST_CASE("whatever house is written is valid") {
  if (!has_xmllint()) return;
  const ScratchFolder folder;
  int number = 0;
  CHECK(rc::check([&] { put(folder / (std::to_string(++number) + ".quadrille-house"), write_house(any_house())); }));
  CHECK(number >= 100);
  put(folder / "standard.quadrille-house", write_house(standard_house("KWD")));
  CHECK(all_valid("house.rng", folder.path(), "quadrille-house"));
}

TEST_CASE("a palette that is written is valid") {
  if (!has_xmllint()) return;
  const ScratchFolder folder;
  put(folder / "p.xml", write_palette({"k",
                                       "<&\"",
                                       "USD",
                                       {{"a", "A", 1, 2, 3, Finish::clear, {{5, 1, 0}, {11, 25, 450}, {11, 100, 1500}}},
                                        {"b", "", 255, 0, 0, Finish::matte, {}}}}));
  CHECK(all_valid("palette.rng", folder.path(), "xml"));
}

TEST_CASE("the schema of a house lets other namespaces through, and nothing unknown of ours") {
  if (!has_xmllint()) return;
  const auto is_valid_house = [](const std::string& inside, const std::string& attributes = "currency=\"USD\"") {
    const ScratchFolder folder;
    put(folder / "h.quadrille-house",
        "<house xmlns=\"urn:quadrille:house:1\" xmlns:x=\"urn:x\" version=\"1.0\" reader=\"1.0\" " + attributes + ">" +
            inside + "</house>");
    return all_valid("house.rng", folder.path(), "quadrille-house");
  };
  CHECK(is_valid_house(""));
  CHECK(is_valid_house("<x:a/><supplies x:b=\"c\"><x:d/></supplies><pricing><tax x:e=\"f\"/><x:g/></pricing><jobs/>"));
  CHECK(is_valid_house("<failures><failure rate=\"0.9\"/></failures><rates><rate key=\"tie\" value=\"0.5\"/></rates>"));
  CHECK_FALSE(is_valid_house("", ""));
  CHECK_FALSE(is_valid_house("", "currency=\"dollars\""));
  CHECK_FALSE(is_valid_house("<cellar/>"));
  CHECK_FALSE(is_valid_house("<supplies/><supplies/>"));
  CHECK_FALSE(is_valid_house("<work crew=\"0\"/>"));
  CHECK_FALSE(is_valid_house("<pricing><labour wage-per-hour-minor=\"-1\"/></pricing>"));
  CHECK_FALSE(is_valid_house("<pricing><labour wage-per-hour-minor=\"1.5\"/></pricing>"));
  CHECK_FALSE(is_valid_house("<rates><rate key=\"tie\" value=\"-1\"/></rates>"));
  CHECK_FALSE(is_valid_house("<failures><failure rate=\"1\"/></failures>"));
  CHECK_FALSE(is_valid_house("<supplies><supply key=\"a\" price-minor=\"1\" pack=\"0\"/></supplies>"));
  CHECK_FALSE(is_valid_house("<supplies><supply key=\"a\"/></supplies>"));
  CHECK_FALSE(is_valid_house("<jobs><job><rate key=\"tie\"/></job></jobs>"));
  CHECK_FALSE(is_valid_house("<supplies>stray words</supplies>"));
}
