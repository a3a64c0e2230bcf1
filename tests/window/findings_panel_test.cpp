// Findings as they are read in the window.
#include "studio/window/wx_text.hpp"
#include "toolkit.hpp"

namespace quadrille {

TEST_CASE("a finding is read with the names of its area and piece, whatever these are") {
  // A piece named "is" was once not named at all, since the sentence had an "is" in it.
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[1].edit(
      [](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.name = "is", piece.last_built.reset(); }); });
  OpenWindow window;
  window.open(put_event(folder, event));
  const auto& rows = window->findings().table().model->rows();
  REQUIRE(!rows.empty());  // worst first: the piece whose type nobody has
  CHECK(text_of(rows[0].cells[0]) == "Problem");
  CHECK(text_of(rows[0].cells[1]) == "Hall, is");
  CHECK(text_of(rows[0].cells[2]).starts_with("The piece type 'no-such-type' is not available"));
  CHECK(text_of(window->findings().details()).starts_with("Hall, is: The piece type 'no-such-type'"));
  CHECK(window->outline().model().areas()[1].pieces[0].balloons == "not built");
}

}  // namespace quadrille
