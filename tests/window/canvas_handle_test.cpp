// Drag handles and placing on the canvas.
#include <algorithm>

#include "by_hand.hpp"
#include "studio/window/commands/commands.hpp"

namespace quadrille {
namespace {

const ShownHandle& handle(Canvas& canvas, const std::string& key, std::size_t point = 0) {
  for (const ShownHandle& one : canvas.handles())
    if (one.name == HandleName{key, point}) return one;
  FAIL("no such handle");
  return canvas.handles().front();
}

double number_of(OpenWindow& window, const std::string& id, const std::string& key) {
  const ValueMap& values = piece(window, id).values;
  const auto value = values.find(key);
  REQUIRE(value != values.end());
  return value->second.number;
}

std::size_t points_of(Canvas& canvas) {
  return static_cast<std::size_t>(std::ranges::count(canvas.handles(), -1, &ShownHandle::axis));
}

/// The event with its first arch selected.
Canvas& open_arch(OpenWindow& window, const ScratchFolder& folder) {
  window.open(put_event(folder));
  window->select("a1", "p1");
  return window->canvas();
}

/// The event with a garland more, which is selected and as large as it can be.
Canvas& open_garland(OpenWindow& window, const ScratchFolder& folder) {
  window.open(put_event(folder));
  window->add_piece("garland");
  window.settle();
  window->canvas().fit_pieces({window->selected_piece()});
  return window->canvas();
}

/// The command that adds a piece of this type.
int add_command(OpenWindow& window, const std::string& type) {
  const auto& types = window->study()->types->types;
  for (std::size_t i = 0; i < types.size(); ++i)
    if (types[i].id == type) return command_add + static_cast<int>(i);
  FAIL("no such piece type");
  return 0;
}

}  // namespace

TEST_CASE("dragging a handle changes its measure live, as one step, and Escape gives it up") {
  ScratchFolder folder;
  OpenWindow window;
  Canvas& canvas = open_arch(window, folder);
  Hand hand(canvas);
  const wxPoint at = canvas.to_window(handle(canvas, "span").at_m);
  const wxPoint to = at + wxPoint(wxRound(0.25 * canvas.view().pixels_per_metre), 0);
  hand.pull(at, to);
  // By hand: the span's ends move apart, so it grows by twice the way: 2.40 m + 2 × 0.25 m.
  CHECK(number_of(window, "p1", "span") == doctest::Approx(2.9).epsilon(0.02));
  CHECK(canvas.drag_shown().words.starts_with("Span 2."));
  // The handle stays under the pointer, and the shape follows while the button is down.
  CHECK(std::abs(canvas.to_window(handle(canvas, "span").at_m).x - to.x) <= 3);
  const double width = canvas.scene()->pieces[0].extent.width();
  CHECK(window.pump_until([&] { return canvas.scene()->pieces[0].extent.width() > width + 0.3; }));
  hand.key(WXK_ESCAPE);
  CHECK(number_of(window, "p1", "span") == 2.4);
  CHECK(!window->document()->history().has_changes());

  window.settle();
  hand.drag(at, to);
  CHECK(window->document()->history().undo_name() == "Change Span of Door arch");
  window.command(wxID_UNDO);
  CHECK(!window->document()->history().can_undo());
  CHECK(number_of(window, "p1", "span") == 2.4);
}

TEST_CASE("there are handles for one piece only, and none for a locked one") {
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) { area.pieces[1].edit([](PlacedPiece& placed) { placed.locked = true; }); });
  OpenWindow window;
  window.open(put_event(folder, event));
  window->select("a1", "p1");
  CHECK(!window->canvas().handles().empty());
  CHECK(window->GetMenuBar()->IsEnabled(command_next_handle));
  window->select("a1", PieceIds{"p1", "p2"});
  CHECK(window->canvas().handles().empty());
  window->select("a1", "p2");
  CHECK(window->canvas().handles().empty());
  CHECK(!window->GetMenuBar()->IsEnabled(command_next_handle));
}

TEST_CASE("the keyboard goes from handle to handle, and arrows change what the handle holds by one step") {
  ScratchFolder folder;
  OpenWindow window;
  Canvas& canvas = open_arch(window, folder);
  Hand hand(canvas);
  CHECK(!canvas.focused_handle());
  for (std::size_t i = 0; i < canvas.handles().size(); ++i) {
    window.command(command_next_handle);
    CHECK(canvas.focused_handle() == canvas.handles()[i].name);
  }
  window.command(command_next_handle);
  CHECK(canvas.focused_handle() == canvas.handles()[0].name);
  window.command(command_previous_handle);
  CHECK(canvas.focused_handle() == canvas.handles().back().name);
  canvas.focus_handle(HandleName{"span", 0});
  for (int i = 0; i < 2; ++i) hand.key_down(WXK_RIGHT);
  hand.key_up(WXK_RIGHT);
  CHECK(number_of(window, "p1", "span") == 2.42);
  CHECK(place_of(window->document()->event(), "p1") == 2.0);
  CHECK(window->GetStatusBar()->GetStatusText() == "Span 2.42 m");
  window.settle();
  CHECK(canvas.focused_handle() == HandleName{"span", 0});
  hand.key(WXK_UP);  // not its way
  CHECK(number_of(window, "p1", "span") == 2.42);
  window.command(wxID_UNDO);
  CHECK(!window->document()->history().can_undo());
  hand.key(WXK_ESCAPE);
  CHECK(!canvas.focused_handle());
  CHECK(window->selected_piece() == "p1");
}

TEST_CASE("points are put into a path and taken out by hand, by key and by menu; a path keeps two") {
  ScratchFolder folder;
  OpenWindow window;
  Canvas& canvas = open_garland(window, folder);
  Hand hand(canvas);
  const std::size_t points = points_of(canvas);
  REQUIRE(points >= 2);
  hand.double_click(canvas.to_window(handle(canvas, "path", 0).at_m));
  CHECK(points_of(canvas) == points + 1);
  CHECK(canvas.focused_handle() == HandleName{"path", 1});
  // By hand: halfway between its neighbours.
  const Point2 a = handle(canvas, "path", 0).at_m, b = handle(canvas, "path", 1).at_m,
               c = handle(canvas, "path", 2).at_m;
  CHECK(b.x == doctest::Approx((a.x + c.x) / 2));
  CHECK(b.y == doctest::Approx((a.y + c.y) / 2));
  hand.key(WXK_UP);
  CHECK(handle(canvas, "path", 1).at_m.y == doctest::Approx(b.y + 0.01));
  window.settle();
  hand.key(WXK_DELETE);
  CHECK(points_of(canvas) == points);
  hand.key(WXK_ESCAPE);
  window.command(command_add_point);  // without a choice: in the longest stretch
  CHECK(points_of(canvas) == points + 1);
  REQUIRE(canvas.focused_handle());
  window.command(command_remove_point);
  CHECK(points_of(canvas) == points);
  for (std::size_t left = points; left > 2; --left) window.command(command_remove_point);
  CHECK(points_of(canvas) == 2);
  window.command(command_remove_point);
  CHECK(points_of(canvas) == 2);
  CHECK(window->GetStatusBar()->GetStatusText() == "A path keeps two points.");
  CHECK(window->context_menu()->FindItem(command_add_point) != nullptr);
  while (window->document()->history().can_undo()) window.command(wxID_UNDO);
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("a point of a path is dragged any way") {
  ScratchFolder folder;
  OpenWindow window;
  Canvas& canvas = open_garland(window, folder);
  Hand hand(canvas);
  const Point2 before = handle(canvas, "path", 1).at_m;
  const wxPoint at = canvas.to_window(before);
  hand.drag(at, at + wxPoint(20, -30));
  window.settle();
  const Point2 after = handle(canvas, "path", 1).at_m;
  const double metre = canvas.view().pixels_per_metre;
  CHECK(after.x == doctest::Approx(before.x + 20 / metre).epsilon(0.01));
  CHECK(after.y == doctest::Approx(before.y + 30 / metre).epsilon(0.01));
}

TEST_CASE("choosing a type has the pointer carry a piece, and a click puts it down there") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  Hand hand(canvas);
  const std::size_t before = window->document()->event().areas[0]->pieces.size();
  const auto count = [&] { return window->document()->event().areas[0]->pieces.size(); };
  window.command(add_command(window, "arch"));
  CHECK(canvas.is_placing());
  CHECK(count() == before);
  const wxPoint at = canvas.to_window({4.2, 1.0});
  hand.move(at, alt_key);
  CHECK(canvas.drag_shown().words.find("along") != std::string::npos);
  // As soon as it is known how large it is, that is seen, and goes with the pointer.
  REQUIRE(window.pump_until([&] { return canvas.placing_room().has_value(); }));
  const Extent before_move = *canvas.placing_room();
  hand.move(at + wxPoint(30, 0), alt_key);
  CHECK(canvas.placing_room()->left > before_move.left);
  hand.move(at, alt_key);
  const Extent outline = *canvas.placing_room();
  hand.click(at, alt_key);
  CHECK(!canvas.is_placing());
  REQUIRE(count() == before + 1);
  // To a pixel, and the centimetre that places are rounded to.
  const double pixel = 1 / canvas.view().pixels_per_metre;
  CHECK(std::abs(place_of(window->document()->event(), window->selected_piece()) - 4.2) <= pixel + 0.005);
  CHECK(window->document()->history().undo_name().starts_with("Add "));
  window.settle();
  const auto stands = std::ranges::find(canvas.scene()->pieces, window->selected_piece(), &ScenePiece::id);
  REQUIRE(stands != canvas.scene()->pieces.end());
  CHECK(outline.left == doctest::Approx(stands->standing().left));
  CHECK(outline.right == doctest::Approx(stands->standing().right));
  CHECK(outline.top == doctest::Approx(stands->standing().top));

  // Escape leaves nothing behind; Enter puts it down where the line is, which begins in the middle.
  window.command(add_command(window, "arch"));
  CHECK(!window->GetStatusBar()->GetStatusText().empty());  // it says what to do
  hand.key(WXK_ESCAPE);
  CHECK(!canvas.is_placing());
  CHECK(window->GetStatusBar()->GetStatusText().empty());
  CHECK(count() == before + 1);
  window.command(command_snapping);
  window.command(add_command(window, "arch"));
  hand.key(WXK_RIGHT);
  hand.key(WXK_RETURN);
  REQUIRE(count() == before + 2);
  const wxRect paper = canvas.paper();
  const double middle = canvas.view().to_metres(paper.x + paper.width / 2.0, 0).x;
  // By hand: the middle to a centimetre, and one key of 10 cm.
  CHECK(place_of(window->document()->event(), window->selected_piece()) == doctest::Approx(middle + 0.1).epsilon(0.01));
}

TEST_CASE("what is being placed is drawn to the middle of the wall too") {
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) { area.wall_width_m = 8, area.wall_height_m = 4; });
  OpenWindow window;
  window.open(put_event(folder, event));
  Canvas& canvas = window->canvas();
  window.command(add_command(window, "arch"));
  const wxPoint at = canvas.to_window({4.0, 1.0}) + wxPoint(1, 0);
  Hand(canvas).click(at);
  CHECK(place_of(window->document()->event(), window->selected_piece()) == doctest::Approx(4).epsilon(1e-9));
}

}  // namespace quadrille
