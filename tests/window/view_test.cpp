// Zoom, pan and fit of the canvas.
#include "by_hand.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/job/document.hpp"

namespace quadrille {
namespace {

wxPoint middle_of(const wxRect& rect) { return rect.GetPosition() + rect.GetSize() / 2; }

}  // namespace

TEST_CASE("fit all shows the whole scene inside the rulers") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  window.command(wxID_ZOOM_IN);
  window.command(command_pan_left);
  window.command(wxID_ZOOM_FIT);
  const Extent& all = canvas.scene()->extent;
  const Point2 top_left = canvas.view().to_pixels(all.left, all.top);
  const Point2 bottom_right = canvas.view().to_pixels(all.right, all.floor);
  const wxRect paper = canvas.paper();
  CHECK(top_left.x >= paper.GetLeft());
  CHECK(top_left.y >= paper.GetTop());
  CHECK(bottom_right.x <= paper.GetRight() + 1);
  CHECK(bottom_right.y <= paper.GetBottom() + 1);
}

TEST_CASE("an area that has lost its last piece is shown whole, with its figure") {
  // The figure moved with what is left and stood half outside.
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  window.command(wxID_ZOOM_IN);
  window.command(wxID_SELECTALL);
  window->remove_selected();
  window.settle();
  REQUIRE(window->document()->event().areas[0]->pieces.empty());
  REQUIRE(canvas.scene());
  const double foot = canvas.view().to_pixels(canvas.scene()->figure_x_m, 0).x;
  CHECK(foot > canvas.paper().GetLeft());
  CHECK(foot < canvas.paper().GetRight());
}

TEST_CASE("the wheel zooms with the point under the pointer staying where it is") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  const wxPoint at = middle_of(canvas.paper()) + wxPoint(70, -40);
  const View before = canvas.view();
  wxMouseEvent wheel(wxEVT_MOUSEWHEEL);
  wheel.SetPosition(at);
  wheel.m_wheelDelta = 120;
  wheel.m_wheelRotation = 120;
  canvas.ProcessWindowEvent(wheel);
  const View after = canvas.view();
  CHECK(after.pixels_per_metre > before.pixels_per_metre);
  // Invariant: the same place of the event lies under the pointer.
  CHECK(after.to_metres(at.x, at.y).x == doctest::Approx(before.to_metres(at.x, at.y).x));
  CHECK(after.to_metres(at.x, at.y).y == doctest::Approx(before.to_metres(at.x, at.y).y));

  // Eight eighths of a notch, as touch pads send them, zoom as far as one notch.
  wheel.m_wheelRotation = -15;
  for (int i = 0; i < 8; ++i) canvas.ProcessWindowEvent(wheel);
  CHECK(canvas.view().pixels_per_metre == doctest::Approx(before.pixels_per_metre));
}

TEST_CASE("zooming in and out again is where one began, and zoom is bounded") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  const View before = canvas.view();
  window.command(wxID_ZOOM_IN);
  window.command(wxID_ZOOM_OUT);
  CHECK(canvas.view().pixels_per_metre == doctest::Approx(before.pixels_per_metre));
  CHECK(canvas.view().origin_x_px == doctest::Approx(before.origin_x_px));
  for (int i = 0; i < 200; ++i) window.command(wxID_ZOOM_IN);
  CHECK(canvas.view().pixels_per_metre <= most_pixels_per_metre);
  for (int i = 0; i < 400; ++i) window.command(wxID_ZOOM_OUT);
  CHECK(canvas.view().pixels_per_metre >= least_pixels_per_metre);
}

TEST_CASE("the middle button drags the paper by as much as the pointer goes") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  const View before = canvas.view();
  const wxPoint start = middle_of(canvas.paper()), end = start + wxPoint(60, 25);
  Hand hand(canvas);
  hand.press_middle(start);
  REQUIRE(canvas.HasCapture());
  hand.move(end);
  CHECK(canvas.view() == panned(before, 60, 25));
  hand.release_middle(end);
  CHECK(!canvas.HasCapture());
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("arrow keys and plus and minus work while the canvas has the focus") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  const View before = canvas.view();
  canvas.SetFocus();
  REQUIRE(window.pump_until([&] { return canvas.HasFocus(); }));
  wxUIActionSimulator keys;
  keys.Char(WXK_LEFT);
  CHECK(window.pump_until([&] { return canvas.view().origin_x_px > before.origin_x_px; }));
  keys.Char('-');
  CHECK(window.pump_until([&] { return canvas.view().pixels_per_metre < before.pixels_per_metre; }));
}

}  // namespace quadrille
