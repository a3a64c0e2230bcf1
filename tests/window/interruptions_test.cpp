// What comes between: a file dropped while a question is open, a command during a drag, a close while something is typed.
#include "answering.hpp"
#include "by_hand.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/dialogs/details_dialog.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// As the desktop does when the file is let go over the drawing, and what follows from it.
void drop_on_canvas(OpenWindow& window, const std::filesystem::path& file) {
  auto* const target = dynamic_cast<wxFileDropTarget*>(window->canvas().GetDropTarget());
  REQUIRE(target != nullptr);
  wxArrayString files;
  files.Add(shown(file.string()));
  target->OnDropFiles(0, 0, files);
  wxTheApp->ProcessPendingEvents();
}

}  // namespace

TEST_CASE("a file that is dropped while a dialog is open does not put another event under the dialog's answer") {
  ScratchFolder folder;
  Event other_event = harvest_event();
  other_event.title = "Spring fair";
  const auto first = put_event(folder), other = put_event(folder, other_event, "other.quadrille");
  OpenWindow* open = nullptr;
  // Registered before the window, so that the window knows of the dialog as it does where nobody answers for the user.
  Answering answering({on_dialog<DetailsDialog>([&](DetailsDialog&) {
    drop_on_canvas(*open, other);
    CHECK((*open)->document()->file() == first);
    CHECK(text_of((*open)->GetStatusBar()->GetStatusText()).find("dialog") != std::string::npos);
    return wxID_CANCEL;
  })});
  OpenWindow window;
  open = &window;
  window.open(first);
  window.command(command_details);
  CHECK(answering.done());
  drop_on_canvas(window, other);  // now it is taken
  CHECK(window->document()->file() == other);
  CHECK(window->document()->event().title == "Spring fair");
}

TEST_CASE("a command during a drag ends the drag where it is, and what it changed stays") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window.command(command_snapping);
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const wxPoint at = grip_of(canvas, "p1"), half = at + wxPoint(40, 0), to = at + wxPoint(80, 0);
  hand.pull(at, half);
  const double dragged_to = place_of(window->document()->event(), "p1");
  REQUIRE(dragged_to > 2.0);
  window->lock_selected();
  CHECK(!canvas.HasCapture());
  hand.move(to);
  hand.release(to);
  CHECK(piece(window, "p1").locked);
  CHECK(place_of(window->document()->event(), "p1") == dragged_to);
  CHECK(window->document()->history().undo_name() == "Lock Door arch");
  window->undo();
  CHECK(!piece(window, "p1").locked);
  window->undo();
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("undoing during a drag takes the drag back, and the hand no longer holds what it had hold of") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const Event before = window->document()->event();
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const wxPoint at = grip_of(canvas, "p1");
  hand.pull(at, at + wxPoint(40, 0));
  window->undo();
  hand.move(at + wxPoint(80, 0));
  CHECK(window->document()->event() == before);
  hand.release(at + wxPoint(80, 0));
  CHECK(window->document()->event() == before);
}

TEST_CASE("printing and exporting sheets take what is typed first, and wait until it is worked out") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", "p1");
  Dialogs none({});  // one that opens shows the sheet without what was typed
  double span_m = 2.4;
  for (const int id : {int{wxID_PRINT}, int{command_export_sheets}}) {
    span_m += 0.1;
    auto* const span = dynamic_cast<wxTextCtrl*>(window->form().input("span"));
    REQUIRE(span != nullptr);
    span->ChangeValue(shown(std::to_string(span_m) + " m"));  // and no Enter
    window.command(id);
    CHECK(piece(window, "p1").values.at("span").number == doctest::Approx(span_m));
    CHECK(text_of(window->GetStatusBar()->GetStatusText()).find("still being built") != std::string::npos);
    window.settle();
  }
}

}  // namespace quadrille
