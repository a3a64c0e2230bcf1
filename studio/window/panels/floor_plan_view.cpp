#include "studio/window/panels/floor_plan_view.hpp"

#include <wx/dcclient.h>
#include <wx/settings.h>

#include <cmath>
#include <utility>

#include "studio/arrange/site_moves.hpp"
#include "studio/drawing/floor_plan_marks.hpp"
#include "studio/paint/painter.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int border = 26, drag_threshold = 4;  // [DIP]
constexpr double wheel_factor = 1.15, zoom_step = 1.25;

wxCursor cursor_of(const std::optional<PlanHit>& hit) {
  if (!hit) return wxNullCursor;
  if (hit->grip == SiteGrip::left || hit->grip == SiteGrip::right) return wxCursor(wxCURSOR_SIZEWE);
  if (hit->grip == SiteGrip::front || hit->grip == SiteGrip::back) return wxCursor(wxCURSOR_SIZENS);
  return wxCursor(wxCURSOR_HAND);
}

}  // namespace

FloorPlanView::FloorPlanView(wxWindow* parent, FloorPlanAnswers answers) : answers_(std::move(answers)) {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  Create(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxBORDER_NONE | wxFULL_REPAINT_ON_RESIZE | wxWANTS_CHARS,
         "floor plan");
  SetLayoutDirection(wxLayout_LeftToRight);
  SetMinClientSize(FromDIP(wxSize(200, 120)));
  set_accessible_name(this, "Plan from above", "The list beside it has the same things, with fields for their places.");
  bind_events();
}

void FloorPlanView::show(std::optional<FloorPlan> plan, Units units, const std::string& of) {
  const bool other = of != of_ || !plan_ != !plan;
  plan_ = std::move(plan);
  units_ = units;
  of_ = of;
  if (other || (fitted_ && grip_ == Grip::none && sticks_out())) fit_all();
  Refresh();
}

void FloorPlanView::select(std::optional<SiteObject> object, std::string words) {
  if (object == selected_ && words == words_) return;
  selected_ = std::move(object);
  words_ = std::move(words);
  Refresh();
}

void FloorPlanView::fit_all() {
  fitted_ = true;
  const wxSize size = GetClientSize();
  if (!plan_ || size.x < 40 || size.y < 40) return;
  view_ = fit_plan(*plan_, size.x, size.y, FromDIP(border));
  Refresh();
}

bool FloorPlanView::sticks_out() const {
  if (!plan_) return false;
  const Point2 corner = view_.to_pixels(plan_->extent.left, plan_->extent.top);
  const Point2 end = view_.to_pixels(plan_->extent.right, plan_->extent.floor);
  return corner.x < 0 || corner.y < 0 || end.x > GetClientSize().x || end.y > GetClientSize().y;
}

void FloorPlanView::zoom(double factor) {
  fitted_ = false;
  view_ = zoomed(view_, factor, GetClientSize().x / 2.0, GetClientSize().y / 2.0);
  Refresh();
}

SitePlace FloorPlanView::place_at(const wxPoint& at) const {
  const Point2 p = view_.to_metres(at.x, at.y);
  const double step = plan_step_m(units_, false);
  return {std::round(p.x / step) * step, std::round(p.y / step) * step};
}

SitePlace FloorPlanView::middle() const { return place_at({GetClientSize().x / 2, GetClientSize().y / 2}); }

void FloorPlanView::paint() {
  wxPaintDC dc(this);
  dc.SetBackground(*wxWHITE_BRUSH);
  dc.Clear();
  auto* cairo = static_cast<cairo_t*>(dc.GetImpl()->GetCairoContext());
  const wxSize size = GetClientSize();
  if (cairo != nullptr && plan_ && size.x > 20 && size.y > 20) {
    const double mm = 1 / screen_pixels_per_mm;
    const PlanLook look{units_, {0, 0, size.x * mm, size.y * mm}, selected_, words_};
    paint_marks(cairo, floor_plan_marks(*plan_, placement_of(view_), look), stamps_, screen_pixels_per_mm);
  }
  if (!HasFocus()) return;
  dc.SetBrush(*wxTRANSPARENT_BRUSH);
  dc.SetPen(wxPen(wxSystemSettings::GetColour(wxSYS_COLOUR_HIGHLIGHT), FromDIP(2)));
  dc.DrawRectangle(GetClientRect());
}

void FloorPlanView::bind_events() {
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    if (fitted_) fit_all();
    event.Skip();
  });
  Bind(wxEVT_LEFT_DOWN, &FloorPlanView::press, this);
  Bind(wxEVT_MIDDLE_DOWN, &FloorPlanView::press, this);
  Bind(wxEVT_MOTION, &FloorPlanView::move, this);
  const auto release = [this](wxMouseEvent& event) {
    if (grip_ != Grip::none && (grip_ == Grip::panning || event.LeftUp())) end_grip();
  };
  Bind(wxEVT_LEFT_UP, release);
  Bind(wxEVT_MIDDLE_UP, release);
  Bind(wxEVT_MOUSE_CAPTURE_LOST, [this](wxMouseCaptureLostEvent&) { end_grip(); });
  Bind(wxEVT_LEAVE_WINDOW, [this](wxMouseEvent&) { answers_.pointing(std::nullopt); });
  Bind(wxEVT_MOUSEWHEEL, [this](wxMouseEvent& event) {
    if (!plan_ || event.GetWheelDelta() <= 0) return;
    wheel_left_ += event.GetWheelRotation();
    const int quarters = wheel_left_ * 4 / event.GetWheelDelta();
    if (quarters == 0) return;
    wheel_left_ -= quarters * event.GetWheelDelta() / 4;
    fitted_ = false;
    view_ = zoomed(view_, std::pow(wheel_factor, quarters / 4.0), event.GetX(), event.GetY());
    Refresh();
  });
  Bind(wxEVT_CONTEXT_MENU, [this](wxContextMenuEvent& event) {
    if (!plan_) return;
    const wxPoint at = event.GetPosition();
    if (at == wxDefaultPosition) return answers_.wants_menu(middle());  // from the keyboard
    const wxPoint here = ScreenToClient(at);
    if (const auto hit = plan_hit(*plan_, view_, here.x, here.y, FromDIP(6))) answers_.picked(hit->object);
    answers_.wants_menu(place_at(here));
  });
  Bind(wxEVT_KEY_DOWN, &FloorPlanView::press_key, this);
  for (const auto& focus : {wxEVT_SET_FOCUS, wxEVT_KILL_FOCUS})
    Bind(focus, [this](wxFocusEvent& event) {
      Refresh();
      event.Skip();
    });
}

void FloorPlanView::press(wxMouseEvent& event) {
  SetFocus();
  if (!plan_ || grip_ != Grip::none) return;
  grip_at_ = last_at_ = event.GetPosition();
  held_ = event.MiddleDown() ? std::nullopt : plan_hit(*plan_, view_, event.GetX(), event.GetY(), FromDIP(6));
  grip_ = held_ ? Grip::pressed : Grip::panning;
  CaptureMouse();
  if (!event.MiddleDown()) answers_.picked(held_ ? std::optional(held_->object) : std::nullopt);
}

void FloorPlanView::move(wxMouseEvent& event) {
  const wxPoint at = event.GetPosition(), gone = at - grip_at_;
  if (grip_ == Grip::panning && at != last_at_) {
    fitted_ = false;
    view_ = panned(view_, at.x - last_at_.x, at.y - last_at_.y);
    Refresh();
  }
  if (grip_ == Grip::pressed && std::abs(gone.x) + std::abs(gone.y) > FromDIP(drag_threshold)) grip_ = Grip::dragging;
  if (grip_ == Grip::dragging && held_)
    answers_.dragged(held_->object, held_->grip, gone.x / view_.pixels_per_metre, -gone.y / view_.pixels_per_metre,
                     event.ShiftDown());
  if (grip_ == Grip::none && plan_) SetCursor(cursor_of(plan_hit(*plan_, view_, at.x, at.y, FromDIP(6))));
  last_at_ = at;
  if (plan_) point(at);
}

void FloorPlanView::point(const wxPoint& at) {
  const Point2 p = view_.to_metres(at.x, at.y);
  answers_.pointing(SitePlace{p.x, p.y});
}

void FloorPlanView::end_grip() {
  const bool dragged = grip_ == Grip::dragging;
  grip_ = Grip::none;
  held_.reset();
  if (HasCapture()) ReleaseMouse();
  if (dragged) answers_.let_go();
}

/// Back to where the drag began, which is then no step at all.
void FloorPlanView::give_up_drag() {
  answers_.dragged(held_->object, held_->grip, 0, 0, false);
  end_grip();
}

void FloorPlanView::nudge(double right, double back, bool fine) {
  if (!selected_) return;
  const double step = plan_step_m(units_, fine);
  answers_.dragged(*selected_, SiteGrip::whole, right * step, back * step, fine);
  answers_.let_go();
}

void FloorPlanView::press_key(wxKeyEvent& event) {
  if (!plan_ || event.ControlDown() || event.AltDown()) return event.Skip();
  const bool fine = event.ShiftDown();
  switch (event.GetKeyCode()) {
    case WXK_ESCAPE:
      if (grip_ == Grip::dragging) return give_up_drag();
      return answers_.picked(std::nullopt);
    case WXK_LEFT:
      return nudge(-1, 0, fine);
    case WXK_RIGHT:
      return nudge(1, 0, fine);
    case WXK_UP:
      return nudge(0, 1, fine);
    case WXK_DOWN:
      return nudge(0, -1, fine);
    case WXK_DELETE:
    case WXK_NUMPAD_DELETE:
      return answers_.removed();
    case WXK_HOME:
      return fit_all();
    case '+':
    case '=':
    case WXK_NUMPAD_ADD:
      return zoom(zoom_step);
    case '-':
    case WXK_NUMPAD_SUBTRACT:
      return zoom(1 / zoom_step);
    case WXK_TAB:
      Navigate(fine ? wxNavigationKeyEvent::IsBackward : wxNavigationKeyEvent::IsForward);
      return;
    default:
      event.Skip();
  }
}

}  // namespace quadrille
