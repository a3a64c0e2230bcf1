// The keyboard on the canvas: from piece to piece and from handle to handle, small steps, giving up.
#include <algorithm>
#include <utility>

#include "studio/arrange/selecting.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int many_steps = 10;        // with Shift
constexpr double pan_share = 0.1;     // of the paper, per key
constexpr double placing_step = 0.1;  // [m]

struct Arrow {
  int right = 0, up = 0;
};

std::optional<Arrow> arrow_of(int key) {
  switch (key) {
    case WXK_LEFT:
    case WXK_NUMPAD_LEFT:
      return Arrow{-1, 0};
    case WXK_RIGHT:
    case WXK_NUMPAD_RIGHT:
      return Arrow{1, 0};
    case WXK_UP:
    case WXK_NUMPAD_UP:
      return Arrow{0, 1};
    case WXK_DOWN:
    case WXK_NUMPAD_DOWN:
      return Arrow{0, -1};
    default:
      return std::nullopt;
  }
}

}  // namespace

void Canvas::press_key(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (key == WXK_SPACE && !event.HasAnyModifiers()) {
    space_held_ = true;
    if (grip_ == Grip::none) SetCursor(wxCursor(wxCURSOR_HAND));
    return;
  }
  if (key == WXK_ALT && going_ && grip_ == Grip::pieces) return go(last_at_, false);
  if (key == WXK_ESCAPE && !event.HasAnyModifiers()) return give_up();
  if (placing_ && press_while_placing(event)) return;
  if (key == WXK_TAB && !event.ControlDown() && !event.AltDown() && step_piece(event.ShiftDown() ? -1 : 1)) return;
  if (key == WXK_DELETE && !event.HasAnyModifiers() && grip_ == Grip::none) return press_delete();
  if (!press_arrow(event)) event.Skip();
}

/// Takes away what the keyboard is at: a point of a path, else the pieces. A measure cannot be taken away.
void Canvas::press_delete() {
  const auto handle = focused_ ? std::ranges::find(handles_, *focused_, &ShownHandle::name) : handles_.end();
  if (handle != handles_.end() && handle->axis == -1) return answers_.remove_point(HandleName(*focused_));
  if (!focused_ && !selected_.empty()) answers_.removed();
}

/// Arrows move what the keyboard is at: the handle, else the pieces to the sides, else the paper.
bool Canvas::press_arrow(const wxKeyEvent& event) {
  const auto arrow = arrow_of(event.GetKeyCode());
  if (!arrow || event.ControlDown() || event.AltDown() || grip_ != Grip::none) return false;
  const int times = event.ShiftDown() ? many_steps : 1;
  if (focused_) {
    nudging_ = true;
    answers_.handle_nudged(HandleName(*focused_), arrow->right * times, arrow->up * times);
  } else if (!selected_.empty() && arrow->right != 0) {
    nudging_ = true;
    answers_.nudged(arrow->right * times);
  } else {
    pan(-pan_share * arrow->right, pan_share * arrow->up);
  }
  return true;
}

bool Canvas::press_while_placing(const wxKeyEvent& event) {
  if (event.GetKeyCode() == WXK_RETURN || event.GetKeyCode() == WXK_NUMPAD_ENTER) {
    answers_.placed();
    return true;
  }
  const auto arrow = arrow_of(event.GetKeyCode());
  if (!arrow || event.ControlDown() || event.AltDown()) return false;
  const int times = event.ShiftDown() ? many_steps : 1;
  answers_.placing(placing_->x_m + arrow->right * times * placing_step, {false, 0});
  return true;
}

void Canvas::release_key(wxKeyEvent& event) {
  if (event.GetKeyCode() == WXK_SPACE) {
    space_held_ = false;
    if (grip_ == Grip::none) SetCursor(placing_ ? wxCursor(wxCURSOR_CROSS) : wxNullCursor);
  }
  if (event.GetKeyCode() == WXK_ALT && going_ && grip_ == Grip::pieces) go(last_at_, true);
  if (arrow_of(event.GetKeyCode()) && std::exchange(nudging_, false)) answers_.let_go();
  event.Skip();
}

/// The next piece to the right or left; false beyond the last one, where the key goes on to the next pane.
bool Canvas::step_piece(int by) {
  if (!scene_ || grip_ != Grip::none) return false;
  const std::string next = answers_.beside(selected_, by);
  if (next.empty()) return false;
  pick({next});
  return true;
}

/// Ends what is going on without a trace; else what is focused, else the selection.
void Canvas::give_up() {
  if (grip_ != Grip::none) {
    const Grip ended = grip_;
    const bool went = std::exchange(going_, false);
    grip_ = Grip::none;
    if (HasCapture()) ReleaseMouse();
    SetCursor(wxNullCursor);
    shown_ = {};
    Refresh();
    if (went && (ended == Grip::pieces || ended == Grip::handle)) answers_.given_up();
    if (went && ended == Grip::figure) answers_.figure_moved(grip_x_m_);
  } else if (placing_) {
    end_placing();
    answers_.not_placed();
  } else if (focused_) {
    focus_handle(std::nullopt);
  } else {
    pick({});
  }
}

void Canvas::step_handle(int by) {
  if (handles_.empty() || grip_ != Grip::none) return;
  SetFocus();
  const auto at = focused_ ? std::ranges::find(handles_, *focused_, &ShownHandle::name) : handles_.end();
  const auto count = std::ssize(handles_);
  const auto index = at == handles_.end() ? (by > 0 ? 0 : count - 1) : (at - handles_.begin() + by + count) % count;
  focus_handle(HandleName(handles_[static_cast<std::size_t>(index)].name));
}

void Canvas::focus_handle(std::optional<HandleName> handle) {
  if (focused_ == handle) return;
  focused_ = std::move(handle);
  describe();
  Refresh();
}

/// Tells a screen reader where the keyboard is.
void Canvas::describe() {
  wxString text = "The area drawn to scale. The outline lists the same pieces.";
  const auto handle = focused_ ? std::ranges::find(handles_, *focused_, &ShownHandle::name) : handles_.end();
  if (handle != handles_.end()) {
    text = "Handle: " + shown(handle->text);
  } else if (scene_ && !selected_.empty()) {
    const auto piece = std::ranges::find(scene_->pieces, selected_.back(), &ScenePiece::id);
    if (piece != scene_->pieces.end()) text = shown(piece->name) + " is selected";
    if (selected_.size() > 1) text << ", one of " << selected_.size();
  }
  set_accessible_name(this, "Elevation", text);
}

}  // namespace quadrille
