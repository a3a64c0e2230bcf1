// `quadrille draw --sheet build`: the sheet from an event's file, with real piece types.
#include <doctest/doctest.h>

#include "has_word.hpp"
#include "scene.hpp"

namespace quadrille {
namespace {

TEST_CASE("the build sheet is drawn, and is another than the elevation") {
  const Folder folder;
  const std::string event = put_scene(folder);
  CHECK(quadrille_in(folder, {"draw", event, "--out", folder / "b.pdf", "--sheet", "build", "--area", "Barn"}).exit ==
        0);
  const Ran text = run_in(folder, "pdftotext", {"-layout", folder / "b.pdf", "-"}, environment_in(folder));
  REQUIRE_MESSAGE(text.exit == 0, "pdftotext (package poppler-utils) is needed");
  for (const char* part : {"Frame sections", "Cluster chart", "Running marks", "A balloon has burst", "Size gauge"})
    CHECK_MESSAGE(text.out.find(part) != std::string::npos, part);
  // 33 quads in the arch of the area, 66 balloons of each of its two colours.
  CHECK(has_line_with(text.out, {"Fern", "66"}));
  CHECK(has_line_with(text.out, {"Poppy", "66"}));
}

TEST_CASE("a sheet that there is not is refused with those that there are") {
  const Folder folder;
  const std::string event = put_scene(folder);
  const Ran outcome = quadrille_in(folder, {"draw", event, "--out", folder / "b.pdf", "--sheet", "poster"});
  CHECK(outcome.exit == 2);
  CHECK(outcome.err.find("build") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(folder / "b.pdf"));
}

}  // namespace
}  // namespace quadrille
