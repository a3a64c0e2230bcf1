// The outline with several pieces selected, and its keys.
#include "studio/window/panels/outline.hpp"

#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/toolkit/wx_text.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

PieceIds selected_rows(OpenWindow& window) {
  wxDataViewItemArray items;
  window->outline().tree()->GetSelections(items);
  PieceIds ids;
  for (const wxDataViewItem& item : items) ids.push_back(window->outline().model().ids_of(item).second);
  return ids;
}

/// As a click with the control key held.
void add_row(OpenWindow& window, const std::string& area, const std::string& piece) {
  Outline& outline = window->outline();
  const wxDataViewItem item = outline.model().item_of(area, piece);
  REQUIRE(item.IsOk());
  outline.tree()->Select(item);
  wxDataViewEvent event(wxEVT_DATAVIEW_SELECTION_CHANGED, outline.tree(), item);
  outline.tree()->ProcessWindowEvent(event);
}

void press_key(OpenWindow& window, int key) {
  wxKeyEvent event(wxEVT_CHAR_HOOK);
  event.m_keyCode = key;
  event.SetEventObject(window->outline().tree());
  window->outline().tree()->ProcessWindowEvent(event);
}

}  // namespace

TEST_CASE("several rows are selected at once, in step with the window both ways") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", PieceIds{"p1", "p2"});
  CHECK(selected_rows(window) == PieceIds{"p1", "p2"});
  window->select("a1", PieceIds{"p2"});
  CHECK(selected_rows(window) == PieceIds{"p2"});
  add_row(window, "a1", "p1");
  CHECK(window.pump_until([&] {
    return window->selected_pieces() == PieceIds{"p2", "p1"};
  }));  // picked last at the end
  // Another area's piece takes the selection there: one elevation is shown at a time.
  add_row(window, "a2", "p3");
  CHECK(window.pump_until([&] { return window->selected_pieces() == PieceIds{"p3"}; }));
  CHECK(window->shown_area() == "a2");
  CHECK(selected_rows(window) == PieceIds{"p3"});
  window->select("a1", "");
  CHECK(selected_rows(window) == PieceIds{""});  // the area itself
}

TEST_CASE("a click and another with the control key held select two pieces") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  wxDataViewCtrl& tree = *window->outline().tree();
  const auto place_of = [&](const char* id) {
    const wxRect row = tree.GetItemRect(window->outline().model().item_of("a1", id));
    return tree.ClientToScreen(row.GetPosition() + wxPoint(60, row.height / 2));
  };
  tree.SetFocus();
  wxUIActionSimulator user;
  user.MouseMove(place_of("p1"));
  user.MouseClick();
  REQUIRE(window.pump_until([&] { return window->selected_pieces() == PieceIds{"p1"}; }));
  user.KeyDown(WXK_CONTROL);
  user.MouseMove(place_of("p2"));
  user.MouseClick();
  user.KeyUp(WXK_CONTROL);
  CHECK(window.pump_until([&] { return window->selected_pieces() == PieceIds{"p1", "p2"}; }));
}

TEST_CASE("the space bar hides and shows, Delete removes; state stands in words") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, with_lock(harvest_event(), {"p2"}, true)));
  window->select("a1", PieceIds{"p1", "p2"});
  press_key(window, WXK_SPACE);
  CHECK(window->document()->history().undo_name() == "Hide 2 pieces");
  window.settle();
  CHECK(window->outline().model().areas()[0].pieces[0].name == "Door arch (hidden)");
  CHECK(window->outline().model().areas()[0].pieces[1].name == "Side arch (hidden, locked)");
  press_key(window, WXK_SPACE);
  CHECK(window->document()->history().undo_name() == "Show 2 pieces");
  press_key(window, WXK_DELETE);
  CHECK(window->document()->history().undo_name() == "Remove Door arch");
  window.settle();
  CHECK(window->outline().model().areas()[0].pieces.size() == 1);
  CHECK(selected_rows(window) == PieceIds{"p2"});
}

}  // namespace quadrille
