// Moving pieces by hand: several at once, snapping, small steps, the standing figure.
#include "by_hand.hpp"
#include "studio/arrange/piece_box.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/window/commands/commands.hpp"

namespace quadrille {
namespace {

/// The harvest with a wall of 8 m behind the porch.
Event before_wall() {
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) { area.wall_width_m = 8, area.wall_height_m = 4; });
  return event;
}

int pixels(Canvas& canvas, double metres) { return wxRound(metres * canvas.view().pixels_per_metre); }

/// Where the middle of the piece's room is [m].
double middle_of(OpenWindow& window, const std::string& id) {
  return box_of(*find_piece(window->document()->event(), id), window->study()->built).middle_x();
}

bool says(Canvas& canvas, const std::string& words) {
  return std::ranges::any_of(canvas.drag_shown().guides, [&](const Guide& guide) { return guide.words == words; });
}

}  // namespace

TEST_CASE("dragging one of several moves them as one body and as one step; a locked one stays") {
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    PlacedPiece fixed = half_circle("fixed", "Fixed arch", 10, 2);
    fixed.locked = true;
    area.pieces.emplace_back(std::move(fixed));
  });
  const auto file = put_event(folder, event);
  const std::string before = contents(file);
  OpenWindow window;
  window.open(file);
  window.command(command_snapping);
  window->select("a1", PieceIds{"p1", "fixed", "p2"});
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const wxPoint at = grip_of(canvas, "p1");
  hand.pull(at, at + wxPoint(pixels(canvas, 0.5), -20));
  CHECK(canvas.drag_shown().words.find("along") != std::string::npos);
  hand.release(at + wxPoint(pixels(canvas, 0.5), -20));
  const Event& moved = window->document()->event();
  CHECK(place_of(moved, "p1") - 2.0 == doctest::Approx(0.5).epsilon(0.03));
  CHECK(place_of(moved, "p2") - 6.0 == doctest::Approx(place_of(moved, "p1") - 2.0));
  CHECK(place_of(moved, "fixed") == 10);
  CHECK(window->document()->history().undo_name() == "Move 2 pieces");
  CHECK(canvas.drag_shown().words.empty());
  CHECK(window->selected_pieces() == PieceIds{"p1", "fixed", "p2"});
  window.command(wxID_UNDO);
  CHECK(!window->document()->history().can_undo());
  window.command(wxID_SAVE);
  CHECK(contents(file) == before);
}

TEST_CASE("what lies near draws a piece and a guide says so; Alt held, or the menu, lets nothing draw") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, before_wall()));
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const double near_m = 3 / canvas.view().pixels_per_metre;  // 3 pixels short of the middle
  const auto pull = [&](unsigned keys) {
    const wxPoint at = grip_of(canvas, "p1");
    const wxPoint to = at + wxPoint(pixels(canvas, 4 - near_m - middle_of(window, "p1")), 0);
    hand.pull(at, to, keys);
    return to;
  };
  wxPoint to = pull(no_key);
  CHECK(says(canvas, "middle of the wall"));
  CHECK(middle_of(window, "p1") == doctest::Approx(4).epsilon(1e-9));
  // The key may also be pressed and let go while dragging.
  hand.key_down(WXK_ALT, alt_key);
  CHECK(canvas.drag_shown().guides.empty());
  CHECK(middle_of(window, "p1") < 4 - near_m / 2);
  hand.key_up(WXK_ALT);
  CHECK(says(canvas, "middle of the wall"));
  hand.key(WXK_ESCAPE);
  CHECK(place_of(window->document()->event(), "p1") == 2.0);
  CHECK(!window->document()->history().has_changes());

  to = pull(alt_key);
  CHECK(canvas.drag_shown().guides.empty());
  hand.key(WXK_ESCAPE);
  window.command(command_snapping);
  CHECK(!window->GetMenuBar()->IsChecked(command_snapping));
  to = pull(no_key);
  CHECK(canvas.drag_shown().guides.empty());
  hand.release(to);
  CHECK(middle_of(window, "p1") < 4 - near_m / 2);
  CHECK(window->document()->history().undo_name() == "Move Door arch");
}

TEST_CASE("a drag step shows the piece at its new place at once, and the panels follow when it is let go") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const double left = canvas.scene()->pieces[0].extent.left;
  const wxPoint at = grip_of(canvas, "p1"), to = at + wxPoint(pixels(canvas, 0.7), 0);
  hand.pull(at, to, alt_key);
  CHECK(canvas.scene()->pieces[0].extent.left - left == doctest::Approx(0.7).epsilon(0.03));
  hand.release(to);
  CHECK(window->updating());
  window.settle();
  CHECK(window->study()->event == window->document()->event());
  // All of it is painted anew by what was left unpainted while it was dragged.
  CHECK(canvas.scene()->pieces[0].extent.left - left == doctest::Approx(0.7).epsilon(0.03));
}

TEST_CASE("arrow keys nudge all that is selected; keys that are held make one step") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", PieceIds{"p2", "p1"});
  Hand hand(window->canvas());
  for (int i = 0; i < 3; ++i) hand.key_down(WXK_RIGHT);
  hand.key_up(WXK_RIGHT);
  CHECK(place_of(window->document()->event(), "p1") == 2.03);
  CHECK(place_of(window->document()->event(), "p2") == 6.03);
  CHECK(window->document()->history().undo_name() == "Move 2 pieces");
  hand.key(WXK_LEFT, shift_key);
  CHECK(place_of(window->document()->event(), "p1") == 1.93);
  window.command(wxID_UNDO);
  CHECK(place_of(window->document()->event(), "p1") == 2.03);
  window.command(wxID_UNDO);
  CHECK(place_of(window->document()->event(), "p1") == 2.0);
  CHECK(!window->document()->history().can_undo());
  // Alt and the arrows do the same from anywhere in the window.
  window.command(command_move_left);
  CHECK(place_of(window->document()->event(), "p2") == 5.99);
  CHECK(place_of(window->document()->event(), "p1") == 1.99);
}

TEST_CASE("the standing figure is dragged along the floor without a change to the event") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  REQUIRE(canvas.figure_x_m());
  const double from = *canvas.figure_x_m();
  const wxPoint at = canvas.to_window({from, 1.0}), to = at - wxPoint(pixels(canvas, 0.4), 0);
  hand.drag(at, to);
  CHECK(*canvas.figure_x_m() == doctest::Approx(from - 0.4).epsilon(0.01));
  CHECK(!window->document()->history().has_changes());
  hand.pull(to, to + wxPoint(80, 0));
  hand.key(WXK_ESCAPE);
  CHECK(*canvas.figure_x_m() == doctest::Approx(from - 0.4).epsilon(0.01));
  window.command(command_figure_right);
  CHECK(*canvas.figure_x_m() == doctest::Approx(from - 0.15).epsilon(0.01));
  // Each area has its own.
  window->select("a2", "");
  window->select("a1", "");
  CHECK(*canvas.figure_x_m() == doctest::Approx(from - 0.15).epsilon(0.01));
  window.command(command_figure);
  CHECK(!canvas.figure_x_m());
}

}  // namespace quadrille
