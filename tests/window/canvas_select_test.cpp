// Selecting on the canvas: clicks, what is covered, the rubber band, keys.
#include "by_hand.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/window/commands/commands.hpp"

namespace quadrille {
namespace {

/// A place on the paper where nothing lies.
wxPoint empty_place(Canvas& canvas) { return canvas.paper().GetTopRight() + wxPoint(-6, 6); }

Extent extent_of(Canvas& canvas, const std::string& id) {
  for (const ScenePiece& piece : canvas.scene()->pieces)
    if (piece.id == id) return piece.extent;
  FAIL("the scene has no such piece");
  return {};
}

}  // namespace

TEST_CASE("a click selects, with Shift or Ctrl it adds and takes away, and on empty paper it selects nothing") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const wxPoint first = grip_of(canvas, "p1"), second = grip_of(canvas, "p2");
  hand.click(first);
  CHECK(window->selected_pieces() == PieceIds{"p1"});
  hand.click(second, shift_key);
  CHECK(window->selected_pieces() == PieceIds{"p1", "p2"});
  hand.click(first, control_key);
  CHECK(window->selected_pieces() == PieceIds{"p2"});
  hand.click(empty_place(canvas), shift_key);
  CHECK(window->selected_pieces() == PieceIds{"p2"});
  hand.click(empty_place(canvas));
  CHECK(window->selected_pieces().empty());
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("further clicks at one place go down through what is covered; a hidden piece is not there, a locked one is") {
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    for (const auto& [id, y] : {std::pair{"behind", 2.0}, {"unseen", -2.0}}) {
      PlacedPiece piece = *area.pieces[0];
      piece.id = id, piece.y_m = y;
      area.pieces.emplace_back(std::move(piece));
    }
  });
  event = with_hidden(with_lock(std::move(event), {"behind"}, true), {"unseen"}, true);
  OpenWindow window;
  window.open(put_event(folder, event));
  Hand hand(window->canvas());
  const wxPoint at = grip_of(window->canvas(), "p1");
  for (const char* next : {"p1", "behind", "p1", "behind"}) {
    hand.click(at);
    CHECK(window->selected_pieces() == PieceIds{next});
  }
  // A locked one cannot be dragged.
  hand.drag(at, at + wxPoint(60, 0));
  CHECK(!window->document()->history().has_changes());
  CHECK(window->GetStatusBar()->GetStatusText().Contains("locked"));
}

TEST_CASE("a rubber band to the right takes what lies inside, one to the left what it touches") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const Extent one = extent_of(canvas, "p1"), two = extent_of(canvas, "p2");
  const wxPoint above = canvas.to_window({one.left - 0.2, one.top + 0.2});
  const wxPoint between = canvas.to_window({(one.right + two.left) / 2, -0.05});
  const wxPoint within_two = canvas.to_window({two.left + 0.3, two.top + 0.2});
  hand.drag(above, between);
  CHECK(window->selected_pieces() == PieceIds{"p1"});
  hand.drag(within_two, canvas.to_window({two.right + 0.1, -0.05}));  // not wholly inside
  CHECK(window->selected_pieces().empty());
  hand.drag(within_two, canvas.to_window({one.right - 0.1, -0.05}));
  CHECK(window->selected_pieces() == PieceIds{"p1", "p2"});
  hand.click(empty_place(canvas));
  hand.drag(above, between);
  hand.drag(canvas.to_window({two.left - 0.1, two.top + 0.2}), canvas.to_window({two.right + 0.1, -0.05}), shift_key);
  CHECK(window->selected_pieces() == PieceIds{"p1", "p2"});
  // Escape leaves the selection as it was before the band.
  hand.pull(above, between);
  hand.key(WXK_ESCAPE);
  CHECK(!canvas.HasCapture());
  CHECK(window->selected_pieces() == PieceIds{"p1", "p2"});
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("Ctrl+A selects the area's pieces, Escape none, and Tab goes from piece to piece and on to the next pane") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->canvas().SetFocus();
  REQUIRE(window.pump_until([&] { return window->canvas().HasFocus(); }));
  window.command(wxID_SELECTALL);
  CHECK(window->selected_pieces() == PieceIds{"p1", "p2"});
  Hand hand(window->canvas());
  hand.key(WXK_ESCAPE);
  CHECK(window->selected_pieces().empty());
  hand.key(WXK_TAB);
  CHECK(window->selected_pieces() == PieceIds{"p1"});
  hand.key(WXK_TAB);
  CHECK(window->selected_pieces() == PieceIds{"p2"});
  hand.key(WXK_TAB, shift_key);
  CHECK(window->selected_pieces() == PieceIds{"p1"});
  wxKeyEvent beyond(wxEVT_KEY_DOWN);
  beyond.m_keyCode = WXK_TAB;
  beyond.SetShiftDown(true);
  window->canvas().ProcessWindowEvent(beyond);
  CHECK(beyond.GetSkipped());  // the toolkit goes on with it
  window.command(command_select_none);
  CHECK(window->selected_pieces().empty());
  // The key itself, as the toolkit hands it over.
  wxUIActionSimulator().Char('A', wxMOD_CONTROL);
  CHECK(window.pump_until([&] { return window->selected_pieces().size() == 2; }));
}

TEST_CASE("fitting the selection and a double click bring the pieces near") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  window->select("a1", PieceIds{"p1", "p2"});
  window.command(command_fit_piece);
  const Extent one = extent_of(canvas, "p1"), two = extent_of(canvas, "p2");
  CHECK(canvas.paper().Contains(canvas.to_window({one.left, one.top})));
  CHECK(canvas.paper().Contains(canvas.to_window({two.right, two.floor})));
  // As near as they go: the larger of both shares of the paper is all of it but for the border.
  const double both = canvas.view().pixels_per_metre;
  CHECK(both * (two.right - one.left) > 0.8 * canvas.paper().width);
  Hand(canvas).double_click(grip_of(canvas, "p2"));
  CHECK(window->selected_pieces() == PieceIds{"p2"});
  CHECK(canvas.view().pixels_per_metre > 1.2 * both);
}

TEST_CASE("the canvas's own menu offers what the menu bar has for the selection, in the same words and states") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const auto ids_of = [](const wxMenu& menu) {
    std::vector<int> ids;
    for (const wxMenuItem* item : menu.GetMenuItems()) {
      const wxMenuItemList items = item->IsSubMenu() ? item->GetSubMenu()->GetMenuItems() : wxMenuItemList();
      for (const wxMenuItem* within : items) ids.push_back(within->GetId());
      if (!item->IsSeparator() && !item->IsSubMenu()) ids.push_back(item->GetId());
    }
    return ids;
  };
  const auto nothing = window->context_menu();
  CHECK(nothing->FindItem(command_add) != nullptr);
  CHECK(nothing->FindItem(command_duplicate) == nullptr);
  window->select("a1", PieceIds{"p1"});
  const auto one = window->context_menu();
  CHECK(one->FindItem(wxID_DELETE) != nullptr);
  CHECK(one->FindItem(command_fit_piece) != nullptr);
  CHECK(one->FindItem(command_add_point) == nullptr);  // an arch has no path
  for (const int id :
       {int{wxID_COPY}, int{wxID_PASTE}, int{command_array}, int{command_align_front_line}, int{command_spread_gaps},
        int{command_to_back}, int{command_rename}, int{command_lock}, int{command_hide}}) {
    CAPTURE(id);
    CHECK(one->FindItem(id) != nullptr);
  }
  const auto state_of = [&](const wxMenu& menu, int id) { return menu.FindItem(id)->IsEnabled(); };
  CHECK(!state_of(*one, command_align_left));  // with itself alone there is nothing to line up
  CHECK(state_of(*one, command_align_front_line));
  for (const int id : ids_of(*one)) {
    REQUIRE(window->GetMenuBar()->FindItem(id) != nullptr);
    CHECK(one->FindItem(id)->GetItemLabel() == window->GetMenuBar()->FindItem(id)->GetItemLabel());
    CHECK(one->IsEnabled(id) == window->GetMenuBar()->IsEnabled(id));
  }
}

}  // namespace quadrille
