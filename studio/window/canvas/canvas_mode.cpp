// Its handlers are bound after the canvas's own, and so are asked before them.
#include "studio/window/canvas/canvas_mode.hpp"

#include <wx/utils.h>

#include <algorithm>
#include <utility>

#include "studio/window/canvas/canvas.hpp"
#include "studio/window/commands/commands.hpp"

namespace quadrille {
namespace {

constexpr int coarse_px = 8;

}  // namespace

CanvasMode::CanvasMode(Canvas& canvas, wxString hint, std::function<void()> over)
    : canvas_(canvas), hint_(std::move(hint)), over_(std::move(over)) {
  canvas_.Bind(wxEVT_LEFT_DOWN, &CanvasMode::on_press, this);
  canvas_.Bind(wxEVT_LEFT_DCLICK, &CanvasMode::on_press, this);
  canvas_.Bind(wxEVT_MOTION, &CanvasMode::on_move, this);
  canvas_.Bind(wxEVT_LEFT_UP, &CanvasMode::on_release, this);
  canvas_.Bind(wxEVT_MOUSE_CAPTURE_LOST, &CanvasMode::on_lost, this);
  canvas_.Bind(wxEVT_KEY_DOWN, &CanvasMode::on_key, this);
  // Arrow keys alone come as the command that pans.
  canvas_.Bind(wxEVT_MENU, &CanvasMode::on_pan, this, command_pan_left, command_pan_down);
  canvas_.set_overlay([this](wxDC& dc) {
    paint(dc);
    paint_hint(dc);
  });
  canvas_.SetCursor(wxCursor(wxCURSOR_CROSS));
  canvas_.SetFocus();
}

CanvasMode::~CanvasMode() {
  canvas_.Unbind(wxEVT_LEFT_DOWN, &CanvasMode::on_press, this);
  canvas_.Unbind(wxEVT_LEFT_DCLICK, &CanvasMode::on_press, this);
  canvas_.Unbind(wxEVT_MOTION, &CanvasMode::on_move, this);
  canvas_.Unbind(wxEVT_LEFT_UP, &CanvasMode::on_release, this);
  canvas_.Unbind(wxEVT_MOUSE_CAPTURE_LOST, &CanvasMode::on_lost, this);
  canvas_.Unbind(wxEVT_KEY_DOWN, &CanvasMode::on_key, this);
  canvas_.Unbind(wxEVT_MENU, &CanvasMode::on_pan, this, command_pan_left, command_pan_down);
  if (held_ && canvas_.HasCapture()) canvas_.ReleaseMouse();
  canvas_.set_overlay(nullptr);
  canvas_.SetCursor(wxNullCursor);
}

void CanvasMode::set_hint(const wxString& hint) {
  hint_ = hint;
  canvas_.Refresh();
}

Point2 CanvasMode::place_of(const wxMouseEvent& event) const {
  return canvas_.view().to_metres(event.GetX(), event.GetY());
}

void CanvasMode::on_press(wxMouseEvent& event) {
  // With Space held the canvas pans, as always; its rulers are its own.
  if (wxGetKeyState(WXK_SPACE) || !canvas_.paper().Contains(event.GetPosition())) return event.Skip();
  canvas_.SetFocus();
  held_ = true;
  if (!canvas_.HasCapture()) canvas_.CaptureMouse();
  press(place_of(event));
  canvas_.Refresh();
}

void CanvasMode::on_move(wxMouseEvent& event) {
  move(place_of(event), held_);
  canvas_.Refresh();
  event.Skip();
}

void CanvasMode::on_release(wxMouseEvent& event) {
  if (!std::exchange(held_, false)) return event.Skip();
  if (canvas_.HasCapture()) canvas_.ReleaseMouse();
  let_go();
}

void CanvasMode::on_lost(wxMouseCaptureLostEvent& event) {
  if (!std::exchange(held_, false)) return event.Skip();
  let_go();
}

void CanvasMode::on_pan(wxCommandEvent& event) {
  const int across = event.GetId() == command_pan_left ? -1 : event.GetId() == command_pan_right ? 1 : 0;
  const int up = event.GetId() == command_pan_down ? -1 : event.GetId() == command_pan_up ? 1 : 0;
  step(across * coarse_px, up * coarse_px);
  canvas_.Refresh();
}

void CanvasMode::on_key(wxKeyEvent& event) {
  if (event.HasModifiers()) return event.Skip();  // Ctrl, Alt
  const int by = event.ShiftDown() ? 1 : coarse_px;
  switch (event.GetKeyCode()) {
    case WXK_LEFT:
      step(-by, 0);
      break;
    case WXK_RIGHT:
      step(by, 0);
      break;
    case WXK_UP:
      step(0, by);
      break;
    case WXK_DOWN:
      step(0, -by);
      break;
    case WXK_RETURN:
    case WXK_NUMPAD_ENTER:
      confirm();
      break;
    case WXK_ESCAPE:
      if (!step_back()) return over_();
      break;
    default:
      return event.Skip();
  }
  canvas_.Refresh();
}

void CanvasMode::paint_cross(wxDC& dc, Point2 place) const {
  const Point2 at = canvas_.view().to_pixels(place.x, place.y);
  const int x = wxRound(at.x), y = wxRound(at.y), arm = canvas_.FromDIP(13), gap = canvas_.FromDIP(3);
  for (const auto& [width, colour] :
       {std::pair(canvas_.FromDIP(4), *wxWHITE), std::pair(canvas_.FromDIP(2), wxColour(20, 20, 24))}) {
    dc.SetPen(wxPen(colour, width));
    dc.DrawLine(x - arm, y, x - gap, y);
    dc.DrawLine(x + gap, y, x + arm, y);
    dc.DrawLine(x, y - arm, x, y - gap);
    dc.DrawLine(x, y + gap, x, y + arm);
  }
}

void CanvasMode::paint_hint(wxDC& dc) const {
  if (hint_.empty()) return;
  const wxRect room = canvas_.paper();
  dc.SetFont(canvas_.GetFont());
  const wxSize text = dc.GetMultiLineTextExtent(hint_), chip = text + canvas_.FromDIP(wxSize(20, 12));
  const int x = room.x + std::max(0, (room.width - chip.x) / 2), y = room.y + canvas_.FromDIP(8);
  dc.SetPen(*wxTRANSPARENT_PEN);
  dc.SetBrush(wxBrush(wxColour(38, 40, 48)));
  dc.DrawRoundedRectangle(x, y, chip.x, chip.y, canvas_.FromDIP(4));
  dc.SetTextForeground(*wxWHITE);
  dc.DrawLabel(hint_, wxRect(x, y, chip.x, chip.y), wxALIGN_CENTRE);
}

}  // namespace quadrille
