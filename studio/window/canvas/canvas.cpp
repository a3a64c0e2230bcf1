// What the canvas shows, and its view.
#include "studio/window/canvas/canvas.hpp"

#include <wx/dcclient.h>

#include <algorithm>
#include <utility>

#include "studio/window/canvas/ruler_painter.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int border = 40;  // around the scene when all is to fit [DIP]

/// Leaves room for rulers when a scene is fitted: fits into the paper, then moves to where the paper lies.
View fit_into(const Scene& scene, const wxRect& paper, double border_px) {
  const View view = fit_view(scene, paper.width, paper.height, border_px);
  return panned(view, paper.x, paper.y);
}

}  // namespace

Canvas::Canvas(wxWindow* parent, CanvasAnswers answers) : answers_(std::move(answers)) {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  Create(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxBORDER_NONE | wxFULL_REPAINT_ON_RESIZE, "elevation");
  SetLayoutDirection(wxLayout_LeftToRight);
  SetMinClientSize(FromDIP(wxSize(240, 160)));
  set_accessible_name(this, "Elevation", "The area drawn to scale. The outline lists the same pieces.");
  bind_events();
}

wxRect Canvas::paper() const {
  const wxSize size = GetClientSize(), rulers = ruler_size(*this);
  return {rulers.x, rulers.y, std::max(size.x - rulers.x, 1), std::max(size.y - rulers.y, 1)};
}

void Canvas::show(std::optional<Scene> scene, Units units, wxString hint) {
  const bool emptied = scene_ && scene && hint_.empty() && !hint.empty();
  scene_ = std::move(scene);
  units_ = units;
  hint_ = std::move(hint);
  if (emptied) fit_all();  // what is left, such as the figure, may stand half outside
  Refresh();
}

void Canvas::select(const PieceIds& pieces) {
  if (selected_ == pieces) return;
  selected_ = pieces;
  focused_.reset();
  describe();
  Refresh();
}

void Canvas::show_handles(std::vector<ShownHandle> handles) {
  if (handles_ == handles) return;
  handles_ = std::move(handles);
  const auto is_there = [this](const std::optional<HandleName>& name) {
    return name && std::ranges::find(handles_, *name, &ShownHandle::name) != handles_.end();
  };
  if (!is_there(focused_)) focused_.reset();
  if (!is_there(hovered_)) hovered_.reset();
  Refresh();
}

void Canvas::show_drag(DragShown drag) {
  shown_ = std::move(drag);
  Refresh();
}

void Canvas::begin_placing(const std::string& name) {
  let_go();
  const wxRect room = paper();
  placing_ = Placing{name, view_.to_metres(room.x + room.width / 2.0, room.y).x, std::nullopt};
  SetCursor(wxCursor(wxCURSOR_CROSS));
  SetFocus();
  answers_.placing(placing_->x_m, {true, near_m()});
}

void Canvas::end_placing() {
  if (!placing_) return;
  placing_.reset();
  shown_ = {};
  SetCursor(wxNullCursor);
  Refresh();
}

void Canvas::show_placing(double x_m, std::optional<Extent> room, DragShown drag) {
  if (!placing_) return;
  placing_->x_m = x_m, placing_->room = room;
  show_drag(std::move(drag));
}

void Canvas::set_look(const SceneLook& look) {
  look_ = look;
  Refresh();
}

void Canvas::show_bent(std::optional<Deflection> bent) {
  if (!bent && !bent_) return;
  bent_ = std::move(bent);
  Refresh();
}

void Canvas::set_overlay(std::function<void(wxDC&)> overlay) {
  overlay_ = std::move(overlay);
  Refresh();
}

void Canvas::set_view(const View& view) {
  fitted_ = false;
  view_ = view;
  last_click_.reset();  // what lay there lies elsewhere now
  if (pointer_) tell_place();
  Refresh();
}

void Canvas::fit_all() {
  fitted_ = true;
  fit_again();
}

void Canvas::fit_again() {
  if (!scene_ || paper().width < 50 || paper().height < 50) return;
  Scene all;
  all.extent = scene_->extent;
  if (const auto x = figure_x_m())
    all.extent = around(all.extent, {*x - figure_width_m / 2, *x + figure_width_m / 2, 0, figure_height_m});
  view_ = fit_into(all, paper(), FromDIP(border));
  last_click_.reset();
  if (pointer_) tell_place();
  Refresh();
}

void Canvas::fit_pieces(const PieceIds& pieces) {
  if (!scene_) return;
  std::optional<Extent> all;
  for (const ScenePiece& shown : scene_->pieces)
    if (std::ranges::find(pieces, shown.id) != pieces.end()) all = all ? around(*all, shown.extent) : shown.extent;
  if (!all) return;
  Scene alone;
  alone.extent = *all;
  set_view(fit_into(alone, paper(), FromDIP(border)));
}

void Canvas::zoom(double factor) {
  const wxRect room = paper();
  set_view(zoomed(view_, factor, room.x + room.width / 2.0, room.y + room.height / 2.0));
}

void Canvas::pan(double right, double down) {
  const wxRect room = paper();
  set_view(panned(view_, right * room.width, down * room.height));
}

void Canvas::let_go() {
  if (grip_ != Grip::none) end_grip();
}

std::optional<double> Canvas::figure_x_m() const {
  if (!scene_ || !look_.figure) return std::nullopt;
  return scene_->figure_x_m;
}

wxPoint Canvas::to_window(Point2 place_m) const {
  const Point2 at = view_.to_pixels(place_m.x, place_m.y);
  return {wxRound(at.x), wxRound(at.y)};
}

/// What lies within so many metres draws what is dragged.
double Canvas::near_m() const {
  constexpr int near = 7;  // [DIP]
  return FromDIP(near) / view_.pixels_per_metre;
}

}  // namespace quadrille
