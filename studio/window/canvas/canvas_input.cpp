// The mouse on the canvas. A press takes hold of a handle, a piece, the figure or the paper; it is a drag once the pointer
// has gone far enough, and a click otherwise.
#include <wx/settings.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/arrange/selecting.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/overlay_painter.hpp"

namespace quadrille {
namespace {

constexpr int drag_threshold = 4;         // [DIP]
constexpr int pick_reach = 4;             // beside rods and plates [DIP]
constexpr double wheel_factor = 1.15;     // per notch
constexpr double wheel_pan_share = 0.08;  // of the paper, per notch

int distance(wxPoint a, wxPoint b) { return std::abs(a.x - b.x) + std::abs(a.y - b.y); }

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
  Bind(wxEVT_LEFT_DCLICK, &Canvas::double_click, this);
  Bind(wxEVT_MOTION, &Canvas::move, this);
  Bind(wxEVT_MOUSEWHEEL, &Canvas::turn_wheel, this);
  Bind(wxEVT_CONTEXT_MENU, &Canvas::ask_menu, this);
  Bind(wxEVT_LEAVE_WINDOW, [this](wxMouseEvent&) {
    if (grip_ == Grip::none && std::exchange(hovered_, std::nullopt)) Refresh();
    point(std::nullopt);
  });
  Bind(wxEVT_MOUSE_CAPTURE_LOST, [this](wxMouseCaptureLostEvent&) { let_go(); });
  Bind(wxEVT_KEY_DOWN, &Canvas::press_key, this);
  Bind(wxEVT_KEY_UP, &Canvas::release_key, this);
  Bind(wxEVT_SET_FOCUS, [this](wxFocusEvent& event) {
    Refresh();
    event.Skip();
  });
  Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
    space_held_ = false;
    if (std::exchange(nudging_, false)) answers_.let_go();
    if (grip_ == Grip::none && !placing_) SetCursor(wxNullCursor);
    Refresh();
    event.Skip();
  });
  Bind(wxEVT_SYS_COLOUR_CHANGED, [this](wxSysColourChangedEvent& event) {
    Refresh();
    event.Skip();
  });
}

PieceIds Canvas::under(wxPoint at) const {
  return answers_.under(view_.to_metres(at.x, at.y), FromDIP(pick_reach) / view_.pixels_per_metre);
}

/// The nearest handle within reach; null where there is none.
const ShownHandle* Canvas::handle_at(wxPoint at) const {
  const ShownHandle* nearest = nullptr;
  double least = handle_reach(*this);
  for (const ShownHandle& handle : handles_) {
    const wxPoint gone = at - to_window(handle.at_m);
    const double far = std::hypot(gone.x, gone.y);
    if (far <= least) least = far, nearest = &handle;
  }
  return nearest;
}

bool Canvas::is_on_figure(wxPoint at) const {
  const auto x = figure_x_m();
  const Point2 place = view_.to_metres(at.x, at.y);
  return x && std::abs(place.x - *x) <= figure_width_m / 2 && place.y >= 0 && place.y <= figure_height_m;
}

/// The rubber band that is being drawn.
std::optional<Band> Canvas::band() const {
  if (grip_ != Grip::paper || !going_) return std::nullopt;
  const Point2 from = view_.to_metres(grip_at_.x, grip_at_.y), to = view_.to_metres(last_at_.x, last_at_.y);
  return Band{from.x, from.y, to.x, to.y};
}

void Canvas::pick(const PieceIds& pieces) {
  if (pieces != selected_) answers_.picked(pieces);
}

void Canvas::press(wxMouseEvent& event) {
  SetFocus();
  if (!scene_ || grip_ != Grip::none) return;
  const wxPoint at = event.GetPosition();
  grip_at_ = last_at_ = at;
  going_ = false;
  if (event.MiddleDown() || space_held_) return begin_pan(at);
  if (!paper().Contains(at)) return;
  if (placing_) {
    answers_.placing(view_.to_metres(at.x, at.y).x, {!event.AltDown(), near_m()});
    return answers_.placed();
  }
  if (const ShownHandle* handle = handle_at(at)) {
    grip_ = Grip::handle;
    grip_handle_ = handle->name, grip_from_m_ = handle->at_m;
    focus_handle(handle->name);
  } else {
    focus_handle(std::nullopt);
    press_piece(under(at), event.ShiftDown() || event.ControlDown());
    if (grip_under_.empty()) grip_ = is_on_figure(at) ? Grip::figure : Grip::paper;
    grip_x_m_ = figure_x_m().value_or(0);
  }
  CaptureMouse();
}

void Canvas::press_piece(const PieceIds& under, bool adds) {
  before_ = selected_, grip_under_ = under, adds_ = adds;
  if (under.empty()) return;
  grip_ = Grip::pieces;
  pick(pressed(selected_, under, adds));
}

void Canvas::double_click(wxMouseEvent& event) {
  if (!scene_ || placing_ || grip_ != Grip::none || !paper().Contains(event.GetPosition())) return;
  if (const ShownHandle* handle = handle_at(event.GetPosition())) {
    if (handle->axis == -1) answers_.add_point(HandleName(handle->name));
  } else if (!under(event.GetPosition()).empty()) {
    fit_pieces(selected_);
  }
}

void Canvas::begin_pan(wxPoint at) {
  grip_ = Grip::panning;
  last_at_ = at;
  SetCursor(wxCursor(wxCURSOR_SIZING));
  CaptureMouse();
}

void Canvas::move(wxMouseEvent& event) {
  const wxPoint at = event.GetPosition();
  if (grip_ == Grip::panning)
    set_view(panned(view_, at.x - last_at_.x, at.y - last_at_.y));
  else if (grip_ != Grip::none && !going_ && distance(at, grip_at_) > FromDIP(drag_threshold))
    begin_going();
  last_at_ = at;
  if (grip_ == Grip::none)
    hover(at, !event.AltDown());
  else if (going_)
    go(at, !event.AltDown());
  point(at);
}

void Canvas::begin_going() {
  going_ = true;
  last_click_.reset();
  if (grip_ == Grip::handle || grip_ == Grip::paper) SetCursor(wxCursor(wxCURSOR_CROSS));
  if (grip_ == Grip::pieces || grip_ == Grip::figure) SetCursor(wxCursor(wxCURSOR_SIZEWE));
}

/// What the grip makes of the pointer's place.
void Canvas::go(wxPoint at, bool snapping) {
  const Point2 way{(at.x - grip_at_.x) / view_.pixels_per_metre, (grip_at_.y - at.y) / view_.pixels_per_metre};
  if (grip_ == Grip::pieces) answers_.dragged(way.x, {snapping, near_m()});
  if (grip_ == Grip::handle) answers_.handle_dragged(grip_handle_, way);
  if (grip_ == Grip::figure) answers_.figure_moved(grip_x_m_ + way.x);
  if (grip_ == Grip::paper) Refresh();
}

void Canvas::hover(wxPoint at, bool snapping) {
  if (!scene_ || !paper().Contains(at)) return;
  if (placing_) return answers_.placing(view_.to_metres(at.x, at.y).x, {snapping, near_m()});
  const ShownHandle* const handle = handle_at(at);
  const std::optional<HandleName> over = handle ? std::optional(handle->name) : std::nullopt;
  if (over == hovered_) return;
  hovered_ = over;
  const wxStockCursor ways[] = {wxCURSOR_SIZING, wxCURSOR_SIZEWE, wxCURSOR_DEFAULT, wxCURSOR_SIZENS};
  if (handle && !space_held_)
    SetCursor(wxCursor(ways[static_cast<std::size_t>(handle->axis + 1)]));
  else if (!space_held_)
    SetCursor(wxNullCursor);
  Refresh();
}

void Canvas::release(wxMouseEvent& event) {
  // The other button's release does not end a grip: it would drop a piece half way.
  const bool ends = grip_ == Grip::panning || event.LeftUp();
  if (grip_ == Grip::none || !ends) return;
  last_at_ = event.GetPosition();
  if (!going_) click();
  end_grip();
}

/// A press and a release at one place.
void Canvas::click() {
  if (grip_ == Grip::paper) pick(clicked(before_, {}, adds_, false));
  if (grip_ != Grip::pieces) return;
  const bool again = last_click_ && distance(*last_click_, grip_at_) <= FromDIP(drag_threshold);
  pick(clicked(before_, grip_under_, adds_, again));
  last_click_ = grip_at_;
}

void Canvas::end_grip() {
  const Grip ended = grip_;
  const auto drawn = band();
  grip_ = Grip::none;
  if (HasCapture()) ReleaseMouse();
  SetCursor(space_held_ ? wxCursor(wxCURSOR_HAND) : wxNullCursor);
  if (!std::exchange(going_, false)) return;
  shown_ = {};
  Refresh();
  if (ended == Grip::pieces || ended == Grip::handle) answers_.let_go();
  if (!drawn) return;
  const BandTakes takes = drawn->x2_m >= drawn->x1_m ? BandTakes::what_lies_inside : BandTakes::what_it_touches;
  const PieceIds taken = answers_.within(*drawn, takes);
  pick(adds_ ? with_more(selected_, taken) : taken);
}

/// The menu is about what lies under the pointer, or, when asked for by a key, about what is selected.
void Canvas::ask_menu(wxContextMenuEvent& event) {
  if (grip_ != Grip::none || placing_) return;
  const wxRect room = paper();
  wxPoint at = room.GetPosition() + room.GetSize() / 2;
  if (event.GetPosition() == wxDefaultPosition) {
    if (scene_ && !selected_.empty()) {
      const auto piece = std::ranges::find(scene_->pieces, selected_.back(), &ScenePiece::id);
      if (piece != scene_->pieces.end())
        at = to_window({(piece->extent.left + piece->extent.right) / 2, (piece->extent.floor + piece->extent.top) / 2});
    }
    at.x = std::clamp(at.x, room.GetLeft(), room.GetRight()), at.y = std::clamp(at.y, room.GetTop(), room.GetBottom());
  } else {
    at = ScreenToClient(event.GetPosition());
    if (!scene_ || !room.Contains(at)) return event.Skip();
    if (const ShownHandle* handle = handle_at(at))
      focus_handle(HandleName(handle->name));
    else if (const PieceIds lying = under(at); !lying.empty() || !selected_.empty())
      pick(lying.empty() ? PieceIds{} : pressed(selected_, lying, false));
  }
  answers_.menu(at);
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

void Canvas::point(std::optional<wxPoint> at) {
  pointer_ = at && paper().Contains(*at) ? at : std::nullopt;
  const wxSize size = GetClientSize();
  const wxRect room = paper();
  RefreshRect(wxRect(0, 0, size.x, room.y), false);
  RefreshRect(wxRect(0, 0, room.x, size.y), false);
  tell_place();
}

/// Where the pointer is in the area, which changes with the view as well.
void Canvas::tell_place() {
  if (!pointer_ || !scene_) return answers_.pointing(std::nullopt);
  answers_.pointing(view_.to_metres(pointer_->x, pointer_->y));
}

}  // namespace quadrille
