// What the canvas shows, and its view.
#include "studio/window/canvas.hpp"

#include <wx/dcclient.h>

#include <algorithm>
#include <utility>

#include "studio/window/accessible_name.hpp"
#include "studio/window/ruler_painter.hpp"
#include "studio/window/wx_text.hpp"

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
  scene_ = std::move(scene);
  units_ = units;
  hint_ = std::move(hint);
  Refresh();
}

void Canvas::select(const std::string& piece) {
  selected_ = piece;
  Refresh();
}

void Canvas::set_look(const SceneLook& look) {
  look_ = look;
  Refresh();
}

void Canvas::set_view(const View& view) {
  fitted_ = false;
  view_ = view;
  Refresh();
}

void Canvas::fit_all() {
  fitted_ = true;
  fit_again();
}

void Canvas::fit_again() {
  if (!scene_ || paper().width < 50 || paper().height < 50) return;
  view_ = fit_into(*scene_, paper(), FromDIP(border));
  Refresh();
}

void Canvas::fit_piece(const std::string& piece) {
  if (!scene_) return;
  for (const ScenePiece& shown : scene_->pieces) {
    if (shown.id != piece) continue;
    Scene alone;
    alone.extent = shown.extent;
    set_view(fit_into(alone, paper(), FromDIP(border)));
  }
}

void Canvas::zoom(double factor) {
  const wxRect room = paper();
  set_view(zoomed(view_, factor, room.x + room.width / 2.0, room.y + room.height / 2.0));
}

void Canvas::pan(double right, double down) {
  const wxRect room = paper();
  set_view(panned(view_, right * room.width, down * room.height));
}

}  // namespace quadrille
