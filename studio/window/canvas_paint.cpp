// The canvas's paint event: paper, scene, selection, rulers.
#include <wx/dcclient.h>
#include <wx/settings.h>

#include <algorithm>

#include "studio/model/lengths.hpp"
#include "studio/window/canvas.hpp"
#include "studio/window/ruler_painter.hpp"
#include "studio/window/wx_text.hpp"

namespace quadrille {
namespace {

const wxColour selection_colour(30, 92, 168);

wxRect on_screen(const View& view, const Extent& extent) {
  const Point2 corner = view.to_pixels(extent.left, extent.top), end = view.to_pixels(extent.right, extent.floor);
  return {wxPoint(wxRound(corner.x), wxRound(corner.y)), wxPoint(wxRound(end.x), wxRound(end.y))};
}

/// "Welcome arch   8' 6" wide, 7' 2" high"
wxString label_of(const ScenePiece& piece, Units units) {
  const LengthStyle style = lengths_in(units);
  wxString label = piece.name.empty() ? wxString("Unnamed piece") : shown(piece.name);
  if (piece.size_known)
    label += shown("   " + print_length(piece.extent.width(), style) + " wide, " +
                   print_length(piece.extent.height(), style) + " high");
  return label;
}

}  // namespace

void Canvas::paint() {
  wxPaintDC dc(this);
  const wxSize least = ruler_size(*this), size = GetClientSize();
  if (size.x <= least.x || size.y <= least.y) return;
  dc.SetBackground(*wxWHITE_BRUSH);
  dc.Clear();
  const wxRect room = paper();
  // A moving pointer only changes the rulers; the balloons then stay as they are.
  if (scene_ && GetUpdateRegion().Contains(room) != wxOutRegion) {
    auto* cairo = static_cast<cairo_t*>(dc.GetImpl()->GetCairoContext());
    // A context that cannot be had leaves the paper white rather than ending the program.
    if (cairo != nullptr) paint_scene(cairo, *scene_, view_, room.GetRight() + 1, look_, stamps_);
    paint_selection(dc);
  }
  if (!hint_.empty()) paint_hint(dc);
  paint_rulers(dc);
}

void Canvas::paint_hint(wxDC& dc) const {
  dc.SetFont(GetFont().Larger());
  dc.SetTextForeground(wxColour(110, 112, 120));
  dc.DrawLabel(hint_, paper(), wxALIGN_CENTRE);
}

/// A frame around the piece with solid corners, and a label: seen without colour too.
void Canvas::paint_selection(wxDC& dc) const {
  const auto piece = std::ranges::find(scene_->pieces, selected_, &ScenePiece::id);
  if (selected_.empty() || piece == scene_->pieces.end()) return;
  const wxRect frame = on_screen(view_, piece->extent).Inflate(FromDIP(6));
  dc.SetBrush(*wxTRANSPARENT_BRUSH);
  dc.SetPen(wxPen(selection_colour, 1, wxPENSTYLE_SHORT_DASH));
  dc.DrawRectangle(frame);
  dc.SetBrush(wxBrush(selection_colour));
  dc.SetPen(*wxTRANSPARENT_PEN);
  const int side = FromDIP(7);
  for (const int x : {frame.GetLeft(), frame.GetRight()})
    for (const int y : {frame.GetTop(), frame.GetBottom()}) dc.DrawRectangle(x - side / 2, y - side / 2, side, side);

  dc.SetFont(GetFont());
  const wxString label = label_of(*piece, units_);
  const wxSize text = dc.GetTextExtent(label), chip = text + FromDIP(wxSize(16, 8));
  const wxRect room = paper();
  // Above the piece; held on the paper where the piece reaches beyond it.
  const int gap = FromDIP(8);
  const int x = std::clamp(frame.x + (frame.width - chip.x) / 2, room.x + gap,
                           std::max(room.x + gap, room.GetRight() - gap - chip.x));
  const int y = std::clamp(frame.y - chip.y - gap, room.y + gap, std::max(room.y + gap, room.GetBottom() - chip.y));
  dc.SetBrush(wxBrush(selection_colour));
  dc.DrawRoundedRectangle(x, y, chip.x, chip.y, FromDIP(4));
  dc.SetTextForeground(*wxWHITE);
  dc.DrawText(label, x + (chip.x - text.x) / 2, y + (chip.y - text.y) / 2);
}

void Canvas::paint_rulers(wxDC& dc) const {
  RulerMarks marks{view_, units_, std::nullopt, pointer_, scene_.has_value()};
  if (scene_) {
    const auto piece = std::ranges::find(scene_->pieces, selected_, &ScenePiece::id);
    if (!selected_.empty() && piece != scene_->pieces.end()) marks.selected = piece->extent;
  }
  quadrille::paint_rulers(dc, *this, marks);
}

}  // namespace quadrille
