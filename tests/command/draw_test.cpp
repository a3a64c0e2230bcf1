// `quadrille draw`: formats, areas, refusals.
#include <doctest/doctest.h>

#include "has_word.hpp"
#include "scene.hpp"

namespace quadrille {
namespace {

TEST_CASE("the ending says what the drawing becomes") {
  const Folder folder;
  const std::string event = put_scene(folder);
  for (const char* name : {"a.pdf", "b.PDF", "c.svg", "d.png"}) {
    const Ran outcome = quadrille_in(folder, {"draw", event, "--out", folder / name, "--area", "Barn"});
    CAPTURE(outcome.err);
    CHECK(outcome.exit == 0);
    CHECK(outcome.out.empty());
  }
  CHECK(bytes_of(folder / "a.pdf").starts_with("%PDF-"));
  CHECK(bytes_of(folder / "b.PDF") == bytes_of(folder / "a.pdf"));
  CHECK(bytes_of(folder / "c.svg").starts_with("<?xml"));
  CHECK(bytes_of(folder / "d.png").starts_with("\x89PNG\r\n\x1a\n"));  // ISO/IEC 15948, 5.2
}

TEST_CASE("several pages: one PDF, or numbered files with a word about it") {
  const Folder folder;
  const std::string event = put_scene(folder);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "all.pdf"}).exit == 0);

  const Ran numbered = quadrille_in(folder, {"draw", event, "--out", folder / "all.png"});
  CHECK(numbered.exit == 0);
  CHECK(numbered.err.find("all-1.png") != std::string::npos);
  CHECK(numbered.err.find("--area") != std::string::npos);
  int files = 0;
  while (std::filesystem::exists(folder / ("all-" + std::to_string(files + 1) + ".png"))) ++files;
  CHECK(files >= 2);
  CHECK_FALSE(std::filesystem::exists(folder / "all.png"));
  const Ran pages = run_in(folder, "pdfinfo", {folder / "all.pdf"}, environment_in(folder));
  REQUIRE_MESSAGE(pages.exit == 0, "pdfinfo (package poppler-utils) is needed");
  CHECK(has_line_with(pages.out, {"Pages", std::to_string(files)}));

  const Ran one = quadrille_in(folder, {"draw", event, "--out", folder / "yard.png", "--area", "a2"});
  CHECK(one.exit == 0);
  CHECK(one.err.empty());
  CHECK(std::filesystem::exists(folder / "yard.png"));
}

TEST_CASE("every paper and both units draw, and differ") {
  const Folder folder;
  const std::string event = put_scene(folder);
  std::vector<std::string> seen;
  for (const char* paper : {"a4", "letter", "a3", "tabloid"})
    for (const char* units : {"feet", "metric"}) {
      const std::string file = folder / "x.svg";
      CHECK(quadrille_in(folder, {"draw", event, "--out", file, "--area", "Yard", "--paper", paper, "--units", units,
                                  "--sheet", "elevation"})
                .exit == 0);
      const std::string bytes = bytes_of(file);
      for (const std::string& other : seen) CHECK(bytes != other);
      seen.push_back(bytes);
    }
}

TEST_CASE("the pdf holds the same counts as count") {
  const Folder folder;
  const std::string event = put_scene(folder);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "a.pdf", "--area", "Barn"}).exit == 0);
  const Ran text = run_in(folder, "pdftotext", {"-layout", folder / "a.pdf", "-"}, environment_in(folder));
  REQUIRE_MESSAGE(text.exit == 0, "pdftotext (package poppler-utils) is needed");
  // 66 of each colour in the arch of the area drawn (33 quads, two of each).
  CHECK(has_line_with(text.out, {"Fern", "66"}));
  CHECK(has_line_with(text.out, {"Poppy", "66"}));
  CHECK(has_word(text.out, "132"));
  CHECK(text.out.find("Harvest supper") != std::string::npos);
}

TEST_CASE("a drawing never replaces an event: draw E.pdf --out E.pdf once put the drawing in its place") {
  const Folder folder;
  put_scene(folder);
  const std::string event = folder / "supper.pdf", other = folder / "all-2.png", link = folder / "link.pdf";
  for (const std::string& file : {event, other}) put_file(file, event_text());
  std::filesystem::create_symlink(event, link);
  const auto refused = [&](const std::vector<std::string>& words, const std::string& named) {
    const Ran outcome = quadrille_in(folder, words);
    CAPTURE(outcome.err);
    CHECK(outcome.exit == 2);
    CHECK(outcome.err.find(named + ": this file holds") != std::string::npos);
    CHECK(outcome.err.find("another name") != std::string::npos);
  };
  refused({"draw", event, "--out", event}, event);
  refused({"draw", event, "--out", link}, link);
  refused({"draw", event, "--out", folder / "all.png"}, other);  // the second of its numbered pages
  CHECK_FALSE(std::filesystem::exists(folder / "all-1.png"));
  refused({"try", "arch", "--out", event}, event);
  refused({"count", event, "--csv", other}, other);
  CHECK(bytes_of(event) == event_text());
  CHECK(bytes_of(other) == event_text());
}

TEST_CASE("slot letters can be left out, and are there without a word about them") {
  const Folder folder;
  const std::string event = put_scene(folder);
  const auto drawn = [&](const std::vector<std::string>& more) {
    std::vector<std::string> words{"draw", event, "--out", folder / "x.svg", "--area", "Barn"};
    words.insert(words.end(), more.begin(), more.end());
    CHECK(quadrille_in(folder, words).exit == 0);
    return bytes_of(folder / "x.svg");
  };
  const std::string usual = drawn({});
  CHECK(drawn({"--letters"}) == usual);
  CHECK(drawn({"--no-letters"}) != usual);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "x.svg", "--letters", "--no-letters"}).exit == 2);
}

TEST_CASE("warnings are told while drawing, on the standard error and without a change of status") {
  const Folder folder;
  std::string event = event_text();
  event.replace(event.find("count=\"33\""), 10, "count=\"20\"");  // most of the rod stays bare
  const Ran outcome = quadrille_in(folder, {"draw", put_scene(folder, event), "--out", folder / "x.pdf"});
  CHECK(outcome.exit == 0);
  CHECK(outcome.err.find("warning: Barn, Arch p1: The frame shows at ") != std::string::npos);
}

TEST_CASE("what cannot be drawn is refused: 2 for the words, 3 for the event, 4 for the place") {
  const Folder folder;
  const std::string event = put_scene(folder);
  const Ran ending = quadrille_in(folder, {"draw", event, "--out", folder / "a.doc"});
  CHECK(ending.exit == 2);
  CHECK(ending.err.find(".pdf, .svg or .png") != std::string::npos);
  const Ran area = quadrille_in(folder, {"draw", event, "--out", folder / "a.pdf", "--area", "Cellar"});
  CHECK(area.exit == 2);
  CHECK(area.err.find("'Barn', 'Yard'") != std::string::npos);
  CHECK(quadrille_in(folder, {"draw", event}).exit == 2);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "a.pdf", "--paper", "b5"}).exit == 2);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "a.pdf", "--sheet", "side"}).exit == 2);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "a.pdf", "--units", "cubits"}).exit == 2);
  CHECK_FALSE(std::filesystem::exists(folder / "a.pdf"));
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "no/a.pdf"}).exit == 4);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "palettes"}).exit == 2);

  put_file(folder.path() / "bare.quadrille",
           "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\"/>\n");
  CHECK(quadrille_in(folder, {"draw", folder / "bare.quadrille", "--out", folder / "a.pdf"}).exit == 3);
}

}  // namespace
}  // namespace quadrille
