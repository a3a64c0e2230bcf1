// The window on a screen: what it shows is what takeoff counts, and what it edits is what is saved.
#include <clocale>

#include "by_hand.hpp"
#include "studio/model/edits.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/panels/totals_panel.hpp"
#include "studio/window/toolkit/words.hpp"
#include "studio/window/toolkit/wx_text.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

/// Takes hold of the piece and moves it by `right_px`; the button stays down. Returns where the hand is then.
wxPoint pull(OpenWindow& window, const std::string& id, int right_px) {
  Canvas& canvas = window->canvas();
  const wxPoint start = grip_of(canvas, id), end = start + wxPoint(right_px, 0);
  const double before = place_of(window->document()->event(), id);
  Hand(canvas).pull(start, end);
  REQUIRE(canvas.HasCapture());
  REQUIRE(place_of(window->document()->event(), id) > before + 0.05);
  return end;
}

void let_go(OpenWindow& window, wxPoint at) {
  Hand(window->canvas()).release(at);
  REQUIRE(!window->canvas().HasCapture());
}

}  // namespace

TEST_CASE("the suite runs with the decimal mark that it was asked to run with") {
  Toolkit::instance();
  const bool comma = std::getenv("QUADRILLE_TEST_COMMA") != nullptr;
  CHECK(std::string(std::localeconv()->decimal_point) == (comma ? "," : "."));
}

TEST_CASE("the totals list shows what takeoff counts, line by line") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const Study& study = *window->study();
  // Invariant: counted afresh from the same event and pieces, outside the window.
  const EventCount count = count_event(window->document()->event(), study.built, study.palettes->palettes);
  const auto& rows = window->totals().balloons().model->rows();
  REQUIRE(rows.size() == count.balloons.size());
  REQUIRE(!rows.empty());
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK(text_of(rows[i].cells[0]) == count.balloons[i].colour_name);
    CHECK(text_of(rows[i].cells[4]) == std::to_string(count.balloons[i].used));
    CHECK(text_of(rows[i].cells[5]) == std::to_string(count.balloons[i].spares));
    CHECK(text_of(rows[i].cells[6]) == std::to_string(count.balloons[i].order));
    sum += count.balloons[i].used;
  }
  CHECK(sum == count.total_balloons);
  CHECK(window->totals().headline() == shown(std::to_string(sum) + " balloons in 3 pieces"));
  const auto& supplies = window->totals().supplies().model->rows();
  REQUIRE(supplies.size() == count.supplies.size());
  for (std::size_t i = 0; i < supplies.size(); ++i) CHECK(text_of(supplies[i].cells[1]) == count.supplies[i].name);
}

TEST_CASE("the outline lists areas and pieces with their counts and remarks, and follows the selection both ways") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const auto& areas = window->outline().model().areas();
  REQUIRE(areas.size() == 2);
  REQUIRE(areas[0].pieces.size() == 2);
  CHECK(areas[0].pieces[0].name == "Door arch");
  CHECK(areas[1].pieces[0].balloons == "36");                   // as the event's file says of its last build
  CHECK(areas[1].pieces[0].remarks == "1 problem, 1 warning");  // no type, so no price

  Canvas& canvas = window->canvas();
  const wxPoint grip = grip_of(canvas, "p2");
  Hand(canvas).click(grip);
  CHECK(window->selected_piece() == "p2");
  const auto [area, piece] = window->outline().model().ids_of(window->outline().tree()->GetSelection());
  CHECK(area == "a1");
  CHECK(piece == "p2");

  window->outline().tree()->SetFocus();
  window->outline().tree()->UnselectAll();
  const wxDataViewItem tower = window->outline().model().item_of("a2", "p3");
  const wxRect row = window->outline().tree()->GetItemRect(tower);
  wxUIActionSimulator mouse;
  mouse.MouseMove(window->outline().tree()->ClientToScreen(row.GetPosition() + wxPoint(60, row.height / 2)));
  mouse.MouseClick();
  CHECK(window.pump_until([&] { return window->selected_piece() == "p3" && window->shown_area() == "a2"; }));
}

TEST_CASE("dragging a piece moves it along the floor as one step, and undoing gives the file back byte for byte") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  const std::string before = contents(file);
  OpenWindow window;
  window.open(file);
  Canvas& canvas = window->canvas();
  const wxPoint grip = grip_of(canvas, "p1");
  const auto moved_px = wxRound(0.5 * canvas.view().pixels_per_metre);

  const wxPoint end = grip + wxPoint(moved_px, -15);
  Hand hand(canvas);
  hand.pull(grip, end);
  REQUIRE(canvas.HasCapture());
  REQUIRE(place_of(window->document()->event(), "p1") > 2.4);
  hand.release(end);
  REQUIRE(!canvas.HasCapture());
  window.settle();

  // By hand: half a metre to the right of 2 m, to a pixel and the centimetre that places are rounded to.
  const PlacedPiece& piece = *find_piece(window->document()->event(), "p1");
  CHECK(piece.x_m == doctest::Approx(2.5).epsilon(0.01));
  CHECK(piece.y_m == 0);
  CHECK(piece.x_m * 100 == doctest::Approx(std::round(piece.x_m * 100)).epsilon(1e-12));
  CHECK(window->document()->history().undo_name() == "Move Door arch");
  CHECK(window->GetTitle().StartsWith("*"));
  CHECK(wxMenuItem::GetLabelText(window->GetMenuBar()->GetLabel(wxID_UNDO)) == "Undo Move Door arch");
  window.command(wxID_SAVE);
  CHECK(contents(file) != before);
  CHECK(!window->GetTitle().StartsWith("*"));

  window.command(wxID_UNDO);
  CHECK(!window->document()->history().can_undo());  // the whole drag was one step
  CHECK(place_of(window->document()->event(), "p1") == 2.0);
  window.command(wxID_SAVE);
  CHECK(contents(file) == before);
  window.command(wxID_REDO);
  CHECK(place_of(window->document()->event(), "p1") == piece.x_m);
}

TEST_CASE("two drags of one piece are two steps, and Escape gives a drag up") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  let_go(window, pull(window, "p1", 40));
  const double first = place_of(window->document()->event(), "p1");
  let_go(window, pull(window, "p1", 40));
  window.command(wxID_UNDO);
  CHECK(place_of(window->document()->event(), "p1") == first);
  CHECK(window->document()->history().can_undo());

  window.settle();
  const wxPoint end = pull(window, "p2", 40);
  wxKeyEvent escape(wxEVT_KEY_DOWN);
  escape.m_keyCode = WXK_ESCAPE;
  window->canvas().ProcessWindowEvent(escape);
  CHECK(place_of(window->document()->event(), "p2") == 6.0);
  CHECK(!window->canvas().HasCapture());
  Hand(window->canvas()).release(end);
  window.pump_until([] { return true; });
  CHECK(place_of(window->document()->event(), "p2") == 6.0);
}

TEST_CASE("a drag that is going on when the window closes ends first") {
  ScratchFolder folder;
  {
    OpenWindow window;
    window.open(put_event(folder));
    pull(window, "p1", 40);
    Dialogs asked({wxID_CANCEL});
    window->Close();
    CHECK(asked.said().size() == 1);
    CHECK(!window->canvas().HasCapture());
    CHECK(window->document()->history().undo_name() == "Move Door arch");  // and the window stays open with it
    pull(window, "p1", 40);
  }
  CHECK(wxWindow::GetCapture() == nullptr);
}

TEST_CASE("the keyboard moves the selected piece by a centimetre or an inch; a locked one stays") {
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) { area.pieces[1].edit([](PlacedPiece& piece) { piece.locked = true; }); });
  OpenWindow window;
  window.open(put_event(folder, event));
  window->select("a1", "p1");
  window.command(command_move_right);
  CHECK(place_of(window->document()->event(), "p1") == 2.01);
  window.command(command_units_feet);
  window.command(command_move_left);
  // By hand: 2.01 m less 0.0254 m is 1.9846 m, and the nearest half inch to it is 156.5 × 0.0127 m → 156 × 0.0127 m.
  CHECK(place_of(window->document()->event(), "p1") == 1.9812);
  window->select("a1", "p2");
  window.command(command_move_right);
  CHECK(place_of(window->document()->event(), "p2") == 6.0);
}

TEST_CASE("changing the units is an edit of the event, and the lists follow") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  CHECK(window->totals().balloons().model->rows()[0].cells[3].EndsWith(" cm"));
  window.command(command_units_feet);
  window.settle();
  CHECK(window->document()->event().units == Units::feet);
  CHECK(window->document()->history().undo_name() == "Change units");
  CHECK(window->totals().balloons().model->rows()[0].cells[3].EndsWith(" in"));
}

TEST_CASE("a file that is no event is told in words, and the open event stays") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  put(folder / "broken.quadrille", "no event at all");
  Dialogs dialogs({wxID_OK, wxID_OK});
  CHECK(!window->open_file(folder / "broken.quadrille"));
  CHECK(!window->open_file(folder / "nowhere.quadrille"));
  REQUIRE(dialogs.said().size() == 2);
  CHECK(dialogs.said()[0].find("broken.quadrille") != std::string::npos);
  CHECK(dialogs.said()[1].find("nowhere.quadrille") != std::string::npos);
  CHECK(window->document()->event().title == "Harvest supper");
}

TEST_CASE("closing asks about unsaved changes: cancel keeps the window, discard keeps the file") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  const std::string before = contents(file);
  OpenWindow window;
  window.open(file);
  window->select("a1", "p1");
  window.command(command_move_right);
  {
    Dialogs dialogs({wxID_CANCEL});
    CHECK(!window->Close());
    CHECK(window.reference());
  }
  Dialogs dialogs({wxID_NO});
  CHECK(window->Close());
  CHECK(window.pump_until([&] { return !window.reference(); }));
  CHECK(contents(file) == before);
}

TEST_CASE("closing while pieces are being built ends cleanly") {
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    for (int i = 0; i < 60; ++i)
      area.pieces.emplace_back(half_circle("q" + std::to_string(i), "Arch", 0.1 * i, 2.0 + 0.01 * i));
  });
  OpenWindow window;
  REQUIRE(window->open_file(put_event(folder, event)));
  CHECK(window->updating());
  window->Close(true);
  CHECK(window.pump_until([&] { return !window.reference(); }));
}

TEST_CASE("an answer that is older than the event is not shown") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", "p1");
  for (int i = 0; i < 20; ++i) window.command(command_move_right);
  CHECK(window->updating());
  CHECK(window->totals().headline().Contains(wxString::FromUTF8("updating…")));
  window.settle();
  CHECK(window->study()->event == window->document()->event());
  CHECK(!window->totals().headline().Contains(wxString::FromUTF8("updating…")));
}

TEST_CASE("an event of a newer version is shown, exported and copied, but neither changed nor saved over") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  std::string bytes = contents(file);
  for (const std::string name : {"version", "reader"}) {
    const auto at = bytes.find(" " + name + "=\"1.0\"", bytes.find("<event"));
    REQUIRE(at != std::string::npos);
    bytes.replace(at, name.size() + 7, " " + name + "=\"2.0\"");
  }
  put(file, bytes);
  OpenWindow window;
  window.open(file);
  REQUIRE(window->document()->read_only());
  CHECK(window->GetTitle().Contains("[read-only]"));
  window->select("a1", "p1");
  window.command(command_move_right);
  window.command(command_units_feet);
  CHECK(!window->document()->history().has_changes());
  CHECK(window->save_as(folder / "copy.quadrille"));
  CHECK(contents(folder / "copy.quadrille") == bytes);
  Dialogs dialogs({wxID_OK});
  CHECK(!window->save());
  CHECK(dialogs.said()[0].find("newer version") != std::string::npos);
  CHECK(contents(file) == bytes);
}

TEST_CASE("a handler that throws is told in words, and the event is still there") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const auto fail = [] { throw std::runtime_error("a fault made for this test"); };
  window->Bind(
      wxEVT_MENU, [fail](wxCommandEvent&) { fail(); }, wxID_PREVIEW);
  Dialogs dialogs({wxID_OK, wxID_OK});
  wxCommandEvent command(wxEVT_MENU, wxID_PREVIEW);
  window->HandleWindowEvent(command);  // as the toolkit hands over what a user does
  window->CallAfter(fail);             // as an answer of the worker comes
  CHECK(window.pump_until([&] { return dialogs.said().size() == 2; }));
  for (const std::string& said : dialogs.said()) CHECK(said.find("a fault made for this test") != std::string::npos);
  CHECK(window->document()->event().title == "Harvest supper");
}

TEST_CASE("a file name of other scripts opens, saves and stands in the title") {
  ScratchFolder folder;
  const auto file = put_event(folder, harvest_event(), "Fête à l'école – ünï.quadrille");
  OpenWindow window;
  window.open(file);
  window->select("a1", "p1");
  window.command(command_move_right);
  CHECK(window->save());
  CHECK(window->GetTitle().Contains(wxString::FromUTF8("Fête à l'école – ünï.quadrille")));
}

}  // namespace quadrille
