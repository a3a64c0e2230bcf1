// An event with what this program does not know: drawn, counted, and saved as it was.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "has_word.hpp"
#include "scene.hpp"
#include "studio/files/event_file.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

/// The scene with a piece of a type that nobody has, last built with 36 balloons of slot A, and with elements, attributes,
/// comments and an instruction that no version knows.
std::string strange_event() {
  std::string text = event_text(
      "      <last-built width-m=\"3\" height-m=\"2\" depth-m=\"0.5\" clusters=\"9\">\n"
      "        <count nominal-in=\"11\" inflated-m=\"0.28\" slot=\"A\" balloons=\"36\"/>\n"
      "      </last-built>\n"
      "      <wave-data rows=\"3\"><crest at=\"1\"/></wave-data>\n");
  const auto put = [&](const std::string& before, const std::string& what) {
    const auto at = text.find(before);
    REQUIRE(at != std::string::npos);
    text.insert(at, what);
  };
  text.replace(text.find("type=\"arch\""), 11, "type=\"wave\"");
  put("<event", "<!-- sent by the venue -->\n<?xml-stylesheet href=\"event.css\"?>\n");
  put("  <area id=\"a1\"", "  <!-- the barn first -->\n  <weather-station id=\"w\"/>\n");
  put(" x-m=\"2\"", " mood=\"bright\"");
  return text;
}

TEST_CASE("an event with unknown types, elements, attributes and comments is drawn, counted and saved unchanged") {
  const Folder folder;
  const std::string event = put_scene(folder, strange_event());
  const Ran counted = quadrille_in(folder, {"count", event, "--json"});
  CAPTURE(counted.err);
  CHECK(counted.exit == 0);
  // 36 as last built, and the other arch's 33 quads.
  CHECK(Json::parse(counted.out)["total_balloons"] == 36 + 132);
  CHECK(counted.err.find("weather-station") != std::string::npos);

  const Ran drawn = quadrille_in(folder, {"draw", event, "--out", folder / "a.pdf"});
  CHECK(drawn.exit == 0);
  const Ran text = run_in(folder, "pdftotext", {"-layout", folder / "a.pdf", "-"}, environment_in(folder));
  REQUIRE_MESSAGE(text.exit == 0, "pdftotext (package poppler-utils) is needed");
  CHECK(has_line_with(text.out, {"All balloons", "168"}));
  CHECK(bytes_of(event) == strange_event());  // neither verb touches it

  const auto opened = open_event(event);
  REQUIRE(opened);
  CHECK(save_event(folder.path() / "saved.quadrille", opened->event, &*opened.value) == std::nullopt);
  CHECK(bytes_of(folder / "saved.quadrille") == strange_event());
  // Nor is any of it lost where the event was changed.
  Event renamed = opened->event;
  renamed.title = "Harvest dinner";
  CHECK(save_event(folder.path() / "saved.quadrille", renamed, &*opened.value) == std::nullopt);
  const std::string saved = bytes_of(folder / "saved.quadrille");
  for (const char* kept :
       {"<!-- sent by the venue -->", "<?xml-stylesheet href=\"event.css\"?>", "<!-- the barn first -->",
        "<weather-station id=\"w\"/>", "mood=\"bright\"", "<crest at=\"1\"/>", "type=\"wave\""})
    CHECK_MESSAGE(saved.find(kept) != std::string::npos, kept);
}

}  // namespace
}  // namespace quadrille
