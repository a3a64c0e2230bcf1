// What the Pieces menu does with several pieces at once.
#include <wx/textdlg.h>

#include <string>

#include "answering.hpp"
#include "studio/arrange/arraying.hpp"
#include "studio/arrange/depth_order.hpp"
#include "studio/arrange/piece_box.hpp"
#include "studio/model/edits.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/array_dialog.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// Four arches beside each other, one before the other; the second has stripes that only one hand knows.
Event row_event() {
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    area.pieces = {half_circle("p1", "First", 2, 2.0), half_circle("p2", "Second", 5, 2.0),
                   half_circle("p4", "Third", 9, 2.0), half_circle("p5", "Fourth", 14, 2.0)};
    for (std::size_t i = 0; i < area.pieces.size(); ++i)
      area.pieces[i].edit([i](PlacedPiece& piece) { piece.y_m = 2.0 - static_cast<double>(i); });
  });
  return event;
}

std::string undo_name(OpenWindow& window) { return window->document()->history().undo_name(); }
std::string status(OpenWindow& window) { return text_of(window->GetStatusBar()->GetStatusText()); }

}  // namespace

TEST_CASE("each command acts on all selected pieces as one step, and undone it leaves the event as it was") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, row_event()));
  const std::pair<int, const char*> commands[] = {{command_duplicate, "Duplicate 2 pieces"},
                                                  {command_mirror, "Mirror 2 pieces"},
                                                  {command_to_front, "To the front: 2 pieces"},
                                                  {command_forward, "Forward: 2 pieces"},
                                                  {command_lock, "Lock 2 pieces"},
                                                  {command_hide, "Hide 2 pieces"},
                                                  {command_align_left, "Align 2 pieces"},
                                                  {command_align_centre, "Align 2 pieces"},
                                                  {command_align_right, "Align 2 pieces"},
                                                  {command_align_front, "Align 2 pieces"},
                                                  {command_align_back, "Align 2 pieces"},
                                                  {command_align_front_line, "Align 2 pieces"},
                                                  {wxID_DELETE, "Remove 2 pieces"}};
  for (const auto& [command, name] : commands) {
    CAPTURE(name);
    window->select("a1", PieceIds{"p1", "p2"});
    window.command(command);
    CHECK(undo_name(window) == name);
    window->undo();
    CHECK(status(window) == std::string("Undone: ") + name);
    CHECK(!window->document()->history().can_undo());
    CHECK(window->document()->event() == row_event());
  }
  window->select("a1", PieceIds{"p4", "p5"});
  for (const auto& [command, name] : {std::pair<int, const char*>{command_to_back, "To the back: 2 pieces"},
                                      std::pair<int, const char*>{command_backward, "Backward: 2 pieces"}}) {
    window.command(command);
    CHECK(undo_name(window) == name);
    window->undo();
  }
  window->select("a1", PieceIds{"p1"});
  CHECK(status(window).empty());  // what was undone is not told for ever
  window.settle();
}

TEST_CASE("copies are selected, and stand clear of all that they are copies of") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, row_event()));
  window->select("a1", PieceIds{"p1", "p2"});
  window.command(command_duplicate);
  window.settle();
  const PieceIds copies = window->selected_pieces();
  REQUIRE(copies.size() == 2);
  const BuiltEvent& built = window->study()->built;
  CHECK(box_of(piece(window, copies[0]), built).left >= box_of(piece(window, "p2"), built).right);
  CHECK(piece(window, copies[1]).x_m - piece(window, copies[0]).x_m == doctest::Approx(3));  // as before
}

TEST_CASE("locked pieces are left out, and the status line says so") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, row_event()));
  window->select("a1", PieceIds{"p2"});
  window.command(command_lock);
  CHECK(undo_name(window) == "Lock Second");
  CHECK(wxMenuItem::GetLabelText(window->GetMenuBar()->GetLabel(command_lock)) == "Unlock");
  window.command(wxID_DELETE);
  CHECK(undo_name(window) == "Lock Second");
  CHECK(status(window) == "Second is locked: unlock it first.");
  window->select("a1", PieceIds{"p1", "p2", "p4"});
  CHECK(status(window).empty());
  window.command(wxID_DELETE);
  CHECK(undo_name(window) == "Remove 2 pieces");
  CHECK(status(window) == "Second is locked and was left out.");
  CHECK(window->selected_pieces() == PieceIds{"p2"});
  CHECK(window->document()->event().areas[0]->pieces.size() == 2);
  window.command(command_lock);
  CHECK(undo_name(window) == "Unlock Second");
  CHECK(status(window).empty());
  window.settle();
}

TEST_CASE("hidden pieces are shown again one by one, or all of the area at once") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, row_event()));
  CHECK(!window->GetMenuBar()->IsEnabled(command_show_all));
  window->select("a1", PieceIds{"p1", "p4"});
  window.command(command_hide);
  window.settle();
  CHECK(window->canvas().scene()->pieces.size() == 2);
  CHECK(wxMenuItem::GetLabelText(window->GetMenuBar()->GetLabel(command_hide)) == "Show");
  window->select("a1", PieceIds{"p2"});
  CHECK(window->GetMenuBar()->IsEnabled(command_show_all));
  window.command(command_show_all);
  CHECK(undo_name(window) == "Show 2 pieces");
  CHECK(window->selected_pieces() == PieceIds{"p1", "p4"});
  CHECK(window->document()->event() == row_event());
  window.settle();
}

TEST_CASE("a name is asked for and given to all") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, row_event()));
  window->select("a1", PieceIds{"p2", "p1"});
  {
    Answering answering({[](wxDialog& dialog) {
      auto& asked = dynamic_cast<wxTextEntryDialog&>(dialog);
      CHECK(asked.GetValue() == "First");
      asked.SetValue("Gate");
      return int{wxID_OK};
    }});
    window.command(command_rename);
  }
  CHECK(undo_name(window) == "Rename 2 pieces");
  CHECK(piece(window, "p1").name == "Gate");
  CHECK(piece(window, "p2").name == "Gate 2");
  window.settle();
}

TEST_CASE("three pieces are spread evenly; two cannot be, and that is said") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, row_event()));
  window->select("a1", PieceIds{"p1", "p2", "p5"});
  for (const int command : {int{command_spread_gaps}, int{command_spread_centres}}) {
    window.command(command);
    CHECK(undo_name(window) == "Spread 3 pieces");
    // By hand: arches of one size at 2 and 14; the middle between them is 8.
    CHECK(piece(window, "p2").x_m == doctest::Approx(8));
    window->undo();
  }
  window.command(command_spread_depth);
  // By hand: at 2 and -1 in depth; the middle is 0.5.
  CHECK(piece(window, "p2").y_m == doctest::Approx(0.5));
  window->select("a1", PieceIds{"p1", "p2"});
  CHECK(!window->GetMenuBar()->IsEnabled(command_spread_gaps));
  window.command(command_spread_gaps);
  CHECK(status(window) == "Three pieces or more can be spread evenly: select more.");
  window.settle();
}

TEST_CASE("an array is asked for, told in words while it is typed, and made as one step") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, row_event()));
  window->select("a1", PieceIds{"p1"});
  {
    Answering answering({[](wxDialog& dialog) {
      auto& array = dynamic_cast<ArrayDialog&>(dialog);
      array.along().step->SetValue("wide");
      CHECK(!array.along().fault->GetLabel().empty());
      CHECK(!array.plan());
      CHECK(array.preview().empty());
      array.along().step->SetValue("0");
      CHECK(array.along().fault->GetLabel().Contains("not 0"));
      array.along().step->SetValue("10ft / 2");
      CHECK(array.along().fault->GetLabel().empty());
      array.along().number->SetValue("2");
      array.depth().way->SetSelection(ArrayDialog::step_within_length);
      array.depth().step->SetValue("2 m");
      array.depth().length->SetValue("5 m");
      array.facing().SetValue(true);
      array.follow();
      CHECK(array.preview().StartsWith("6 pieces in all, 5 of them new"));
      array.depth().way->SetSelection(ArrayDialog::number_over_length);
      array.depth().number->SetValue("200");
      array.along().number->SetValue("200");
      CHECK(array.along().fault->GetLabel().Contains("40000"));
      array.along().number->SetValue("2");
      array.depth().way->SetSelection(ArrayDialog::step_within_length);
      array.follow();
      return int{wxID_OK};
    }});
    window.command(command_array);
  }
  CHECK(undo_name(window) == "Array First");
  CHECK(status(window) == "5 pieces were added.");
  CHECK(window->selected_pieces().size() == 6);
  const PlacedPiece& last = piece(window, window->selected_pieces().back());
  CHECK(last.x_m == doctest::Approx(2 + 1.524));     // 5 ft of 0.3048 m
  CHECK(last.y_m == doctest::Approx(2 + 4));         // what fits into 5 m: two steps of 2 m
  CHECK(last.values != piece(window, "p1").values);  // mirrored: the other hand
  window.settle();
  CHECK(window->study()->built.size() == 9);
  window->undo();
  CHECK(window->document()->event() == row_event());
  CHECK(window->selected_pieces() == PieceIds{"p1"});  // the copies are gone, and nothing that is gone is selected
  window.settle();
}

}  // namespace quadrille
