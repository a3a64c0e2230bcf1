// The dialog of piece types.
#include "studio/window/dialogs/pieces_dialog.hpp"

#include "studio/window/toolkit/wx_text.hpp"
#include "toolkit.hpp"

namespace quadrille {

TEST_CASE("the dialog lists types and refused files with their reasons, and gives crashed ones another chance") {
  OpenWindow window;
  auto types = std::make_shared<PieceTypes>();
  types->types.emplace_back();
  types->types[0].id = "post", types->types[0].name = "Post";
  types->refused.push_back({"/pieces/letter.so", RefusalReason::not_a_library, "It is no library.", {}});
  int asked = 0;
  PiecesDialog dialog(window.reference().get(), [&] { ++asked; });
  dialog.show(types);
  REQUIRE(dialog.found().model->rows().size() == 1);
  CHECK(text_of(dialog.found().model->rows()[0].cells[0]) == "Post");
  REQUIRE(dialog.refused().model->rows().size() == 1);
  CHECK(text_of(dialog.refused().model->rows()[0].cells[0]) == "letter.so");

  auto* again = dynamic_cast<wxButton*>(wxWindow::FindWindowByLabel("&Try crashed ones again", &dialog));
  REQUIRE(again != nullptr);
  CHECK(!again->IsEnabled());
  auto crashed = std::make_shared<PieceTypes>(*types);
  crashed->refused.push_back({"/pieces/bang.so", RefusalReason::crashed_before, "It ended the program.", {}});
  dialog.show(crashed);
  REQUIRE(again->IsEnabled());
  tell(*again, wxEVT_BUTTON);
  CHECK(asked == 1);
  CHECK(!again->IsEnabled());  // until it is known what came of it
}

}  // namespace quadrille
