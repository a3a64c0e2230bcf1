// A piece type that throws each time it is asked to build: the window says so, and the event lives on.
#include <algorithm>

#include "tests/places.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

/// Only this plugin is looked for besides those that come with the studio.
class OnlyPlugin {
 public:
  OnlyPlugin(const ScratchFolder& folder, const char* name) {
    const auto place = folder / "pieces";
    std::filesystem::create_directory(place);
    std::filesystem::copy_file(std::filesystem::path(build_place("tests/host/plugins")) / name, place / name);
    ::setenv("QUADRILLE_PIECES_PATH", place.c_str(), 1);
  }
  ~OnlyPlugin() { ::unsetenv("QUADRILLE_PIECES_PATH"); }
};

}  // namespace

TEST_CASE("a plugin that throws while its piece is changed is told as a problem, and the document lives on") {
  ScratchFolder folder;
  OnlyPlugin plugin(folder, "throws.so");
  Event event = harvest_event();
  Area area = *event.areas[0];
  PlacedPiece thrower;
  thrower.id = "t1", thrower.name = "Thrower", thrower.type = "misbehaves", thrower.x_m = 4;
  area.pieces.push_back(thrower);
  event.areas[0] = area;
  const auto file = put_event(folder, event);
  OpenWindow window;
  window.open(file);
  const auto is_told = [&] {
    return std::ranges::any_of(window->study()->findings, [](const Finding& finding) {
      return finding.piece == "t1" && finding.weight == Weight::problem &&
             finding.text.find("out of balloons") != std::string::npos;
    });
  };
  CHECK(is_told());
  window->select("a1", "t1");
  for (int i = 0; i < 5; ++i) window->move_selected(0.1);
  window->duplicate_selected();  // built anew, and it throws anew
  window.settle();
  CHECK(is_told());
  CHECK(find_piece(window->document()->event(), "t1")->x_m == doctest::Approx(4.5));
  CHECK(window->study()->built.at("p1")->status == Status::ok);  // the others are as they were
  REQUIRE(window->save());
  CHECK(find_piece(open_event(file)->event, "t1")->x_m == doctest::Approx(4.5));
}

}  // namespace quadrille
