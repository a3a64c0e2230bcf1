// Mouse and keys on the canvas. A press on a piece picks it, and drags it once the pointer has gone far enough.
#include <wx/settings.h>

#include <cmath>

#include "studio/window/canvas.hpp"

namespace quadrille {
namespace {

constexpr int drag_threshold = 4;         // [DIP]
constexpr double wheel_factor = 1.15;     // per notch
constexpr double wheel_pan_share = 0.08;  // of the paper, per notch

}  // namespace

void Canvas::bind_events() {
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    if (fitted_) fit_again();
    event.Skip();
  });
  Bind(wxEVT_LEFT_DOWN, &Canvas::press, this);
  Bind(wxEVT_MIDDLE_DOWN, &Canvas::press, this);
  Bind(wxEVT_LEFT_UP, &Canvas::release, this);
  Bind(wxEVT_MIDDLE_UP, &Canvas::release, this);
  Bind(wxEVT_MOTION, &Canvas::move, this);
  Bind(wxEVT_MOUSEWHEEL, &Canvas::turn_wheel, this);
  Bind(wxEVT_LEAVE_WINDOW, [this](wxMouseEvent&) { point(std::nullopt); });
  Bind(wxEVT_LEFT_DCLICK, [this](wxMouseEvent& event) {
    if (!scene_) return;
    if (const auto piece = piece_at(*scene_, view_, event.GetX(), event.GetY())) fit_piece(*piece);
  });
  Bind(wxEVT_MOUSE_CAPTURE_LOST, [this](wxMouseCaptureLostEvent&) { end_grip(); });
  Bind(wxEVT_KEY_DOWN, &Canvas::press_key, this);
  Bind(wxEVT_KEY_UP, &Canvas::release_key, this);
  Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
    space_held_ = false;
    if (grip_ == Grip::none) SetCursor(wxNullCursor);
    event.Skip();
  });
  Bind(wxEVT_SYS_COLOUR_CHANGED, [this](wxSysColourChangedEvent& event) {
    Refresh();
    event.Skip();
  });
}

void Canvas::press(wxMouseEvent& event) {
  SetFocus();
  if (!scene_ || grip_ != Grip::none) return;
  grip_at_ = last_at_ = event.GetPosition();
  if (event.MiddleDown() || space_held_) return begin_pan(event.GetPosition());
  if (!paper().Contains(event.GetPosition())) return;
  const auto piece = piece_at(*scene_, view_, event.GetX(), event.GetY());
  grip_piece_ = piece.value_or("");
  if (piece) {
    grip_ = Grip::pressed;
    CaptureMouse();
  }
  answers_.picked(grip_piece_);
}

void Canvas::begin_pan(wxPoint at) {
  grip_ = Grip::panning;
  last_at_ = at;
  SetCursor(wxCursor(wxCURSOR_SIZING));
  CaptureMouse();
}

void Canvas::move(wxMouseEvent& event) {
  const wxPoint at = event.GetPosition(), gone = at - grip_at_;
  if (grip_ == Grip::panning) set_view(panned(view_, at.x - last_at_.x, at.y - last_at_.y));
  if (grip_ == Grip::pressed && std::abs(gone.x) + std::abs(gone.y) > FromDIP(drag_threshold)) {
    grip_ = Grip::dragging;
    SetCursor(wxCursor(wxCURSOR_SIZEWE));
  }
  if (grip_ == Grip::dragging) answers_.dragged(grip_piece_, gone.x / view_.pixels_per_metre);
  last_at_ = at;
  point(at);
}

void Canvas::release(wxMouseEvent& event) {
  // The other button's release does not end a grip: it would drop a piece half way.
  const bool ends = grip_ == Grip::panning || event.LeftUp();
  if (grip_ != Grip::none && ends) end_grip();
}

void Canvas::end_grip() {
  const bool dragged = grip_ == Grip::dragging;
  grip_ = Grip::none;
  if (HasCapture()) ReleaseMouse();
  SetCursor(space_held_ ? wxCursor(wxCURSOR_HAND) : wxNullCursor);
  if (dragged) answers_.let_go();
}

/// Back to where the drag began, which is then no step at all.
void Canvas::give_up_drag() {
  answers_.dragged(grip_piece_, 0);
  end_grip();
}

void Canvas::turn_wheel(wxMouseEvent& event) {
  if (!scene_ || event.GetWheelDelta() <= 0) return;
  wheel_left_ += event.GetWheelRotation();
  const int delta = event.GetWheelDelta();
  // Touch pads send parts of a notch; a quarter is moved by at once, so that it feels smooth.
  const int quarters = wheel_left_ * 4 / delta;
  if (quarters == 0) return;
  wheel_left_ -= quarters * delta / 4;
  const double notches = quarters / 4.0, step = wheel_pan_share * notches;
  if (event.GetWheelAxis() == wxMOUSE_WHEEL_HORIZONTAL)
    pan(-step, 0);
  else if (event.ShiftDown())
    pan(step, 0);
  else if (event.ControlDown())
    pan(0, step);
  else
    set_view(zoomed(view_, std::pow(wheel_factor, notches), event.GetX(), event.GetY()));
  point(event.GetPosition());
}

void Canvas::press_key(wxKeyEvent& event) {
  if (event.GetKeyCode() == WXK_SPACE && !event.HasAnyModifiers()) {
    space_held_ = true;
    if (grip_ == Grip::none) SetCursor(wxCursor(wxCURSOR_HAND));
    return;
  }
  if (event.GetKeyCode() == WXK_ESCAPE && grip_ == Grip::dragging) return give_up_drag();
  event.Skip();
}

void Canvas::release_key(wxKeyEvent& event) {
  if (event.GetKeyCode() == WXK_SPACE) {
    space_held_ = false;
    if (grip_ == Grip::none) SetCursor(wxNullCursor);
  }
  event.Skip();
}

void Canvas::point(std::optional<wxPoint> at) {
  pointer_ = at && paper().Contains(*at) ? at : std::nullopt;
  const wxSize size = GetClientSize();
  const wxRect room = paper();
  RefreshRect(wxRect(0, 0, size.x, room.y), false);
  RefreshRect(wxRect(0, 0, room.x, size.y), false);
  if (!pointer_ || !scene_) return answers_.pointing(std::nullopt);
  answers_.pointing(view_.to_metres(pointer_->x, pointer_->y));
}

}  // namespace quadrille
