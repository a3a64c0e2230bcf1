// Drawings out of the window into files.
#include "toolkit.hpp"

namespace quadrille {

TEST_CASE("a drawing is never exported over an event") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const auto other = put_event(folder, harvest_event(), "drawing-2.svg");
  const std::string before = contents(other);
  Dialogs dialogs({wxID_OK});
  window->export_to(folder / "drawing.svg");
  REQUIRE(dialogs.said().size() == 1);
  CHECK(dialogs.said().back().find("holds an event") != std::string::npos);
  CHECK(contents(other) == before);
  CHECK(!std::filesystem::exists(folder / "drawing-1.svg"));
}

TEST_CASE("drawings are exported with a page for each area") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->export_to(folder / "drawing.pdf");
  CHECK(contents(folder / "drawing.pdf").starts_with("%PDF-"));
  window->export_to(folder / "drawing.svg");
  CHECK(!std::filesystem::exists(folder / "drawing.svg"));  // an SVG holds one page, and there are several
  CHECK(contents(folder / "drawing-1.svg").find("<svg") != std::string::npos);
  CHECK(std::filesystem::exists(folder / "drawing-2.svg"));
  window->export_to(folder / "drawing.png");
  CHECK(contents(folder / "drawing-1.png").starts_with("\x89PNG"));

  Dialogs dialogs({wxID_OK});
  window->export_to(folder / "drawing.txt");
  REQUIRE(dialogs.said().size() == 1);
  CHECK(dialogs.said()[0].find(".pdf, .svg or .png") != std::string::npos);
}

TEST_CASE("an export that is asked for while pieces are being built is made from the finished ones") {
  ScratchFolder folder;
  OpenWindow window;
  REQUIRE(window->open_file(put_event(folder)));
  window->export_to(folder / "early.pdf");
  CHECK(window.pump_until([&] { return std::filesystem::exists(folder / "early.pdf"); }));
  CHECK(!window->updating());
}

}  // namespace quadrille
