// The canvas's paint event: paper, scene, what lies over it, rulers; and painting anew only what a drag changed.
#include <wx/dcclient.h>
#include <wx/settings.h>

#include <algorithm>
#include <utility>

#include "studio/model/lengths.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/overlay_painter.hpp"
#include "studio/window/canvas/ruler_painter.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// "Welcome arch   8' 6" wide, 7' 2" high"
wxString label_of(const ScenePiece& piece, Units units) {
  const LengthStyle style = lengths_in(units);
  wxString label = piece.name.empty() ? wxString("Unnamed piece") : shown(piece.name);
  if (piece.size_known)
    label += shown("   " + print_length(piece.extent.width(), style) + " wide, " +
                   print_length(piece.extent.height(), style) + " high");
  return label;
}

const ScenePiece* find_in(const Scene& scene, const std::string& id) {
  const auto piece = std::ranges::find(scene.pieces, id, &ScenePiece::id);
  return piece == scene.pieces.end() ? nullptr : &*piece;
}

/// Where the equal gaps beside the piece are drawn: at half its height.
double gap_level(const Scene& scene, const PieceIds& selected) {
  const ScenePiece* const piece = selected.empty() ? nullptr : find_in(scene, selected.back());
  return piece == nullptr ? 1 : (piece->extent.floor + piece->extent.top) / 2;
}

/// True where all that does not move with the pieces is drawn alike.
bool same_surroundings(const Scene& a, const Scene& b) {
  const auto same_structure = [](const SceneStructure& s, const SceneStructure& t) {
    return s.x_m == t.x_m && s.drawn_height_m == t.drawn_height_m;
  };
  const auto same_far = [](const SceneFarOff& s, const SceneFarOff& t) {
    return s.name == t.name && s.beyond_m == t.beyond_m;
  };
  return a.pieces.size() == b.pieces.size() && std::ranges::equal(a.structures, b.structures, same_structure) &&
         std::ranges::equal(a.far_off, b.far_off, same_far) && a.walkways.size() == b.walkways.size();
}

/// The handle whose label is shown: the one that is held or has the keyboard, else the one under the pointer.
const ShownHandle* spoken_of(const std::vector<ShownHandle>& handles, const std::optional<HandleName>& chosen,
                             const std::optional<HandleName>& hovered) {
  for (const auto& name : {chosen, hovered}) {
    const auto handle = name ? std::ranges::find(handles, *name, &ShownHandle::name) : handles.end();
    if (handle != handles.end()) return &*handle;
  }
  return nullptr;
}

struct MovingBoxes {
  const OverlayPlace& place;
  const Scene& scene;
  const PieceIds& selected;
  std::vector<wxRect> boxes;

  /// The drawn pieces with their frames, labels and lines.
  void add_pieces() {
    for (const std::string& id : selected)
      if (const ScenePiece* piece = find_in(scene, id)) {
        const wxRect frame = frame_around(place, around(piece->extent, piece->standing()));
        boxes.push_back(wxRect(frame).Inflate(place.window.FromDIP(14)));
      }
    for (const SceneItem& item : scene.items)
      if (const auto* line = std::get_if<SceneLine>(&item.shape))
        if (std::ranges::find(selected, scene.pieces[line->piece].id) != selected.end()) add_line(*line);
  }
  void add_line(const SceneLine& line) {
    const wxPoint a = place.pixel(line.from_m), b = place.pixel(line.to_m);
    const wxPoint least(std::min(a.x, b.x), std::min(a.y, b.y)), most(std::max(a.x, b.x), std::max(a.y, b.y));
    boxes.push_back(wxRect(least, most).Inflate(place.window.FromDIP(24)));
  }
};

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
    SceneLook look = look_;
    look.photo = PhotoLook::whole;
    if (cairo != nullptr) paint_scene(cairo, *scene_, view_, room.GetRight() + 1, look, stamps_);
    if (cairo != nullptr && bent_) paint_deflection(cairo, *bent_, view_, stamps_);
    paint_over(dc);
    if (overlay_) overlay_(dc);
  }
  if (!hint_.empty() && !placing_) paint_hint(dc);
  if (HasFocus()) paint_focus(dc);
  paint_rulers(dc);
}

/// A line around the paper while keys go to it.
void Canvas::paint_focus(wxDC& dc) const {
  const int width = FromDIP(2);
  dc.SetBrush(*wxTRANSPARENT_BRUSH);
  dc.SetPen(wxPen(wxSystemSettings::GetColour(wxSYS_COLOUR_HIGHLIGHT), width));
  dc.DrawRectangle(wxRect(paper()).Deflate(width / 2));
}

void Canvas::paint_hint(wxDC& dc) const {
  dc.SetFont(GetFont().Larger());
  dc.SetTextForeground(wxColour(110, 112, 120));
  wxRect above_figure = paper();
  above_figure.height /= 2;
  dc.DrawLabel(hint_, above_figure, wxALIGN_CENTRE);
}

void Canvas::paint_over(wxDC& dc) const {
  const OverlayPlace place{*this, view_, paper()};
  paint_guides(dc, place, guide_marks(place, shown_.guides, gap_level(*scene_, selected_)));
  for (const std::string& id : selected_)
    if (const ScenePiece* piece = find_in(*scene_, id)) {
      const bool last = id == selected_.back();
      const FrameKind kind = !last                   ? FrameKind::other
                             : selected_.size() == 1 ? FrameKind::only
                                                     : FrameKind::last_picked;
      paint_frame(dc, place, frame_around(place, piece->extent), kind);
    }
  if (const auto chip = selection_chip(place)) paint_label(dc, place, *chip);
  paint_handles(dc, place);
  if (const auto drawn = band())
    paint_band(dc, place, *drawn,
               drawn->x2_m >= drawn->x1_m ? BandTakes::what_lies_inside : BandTakes::what_it_touches);
  if (placing_) paint_placing(dc, place, placing_->x_m, placing_->room, shown(placing_->name + "   " + shown_.words));
}

/// The label of the piece picked last; while it is dragged, what the drag says.
std::optional<Chip> Canvas::selection_chip(const OverlayPlace& place) const {
  const ScenePiece* const piece = selected_.empty() ? nullptr : find_in(*scene_, selected_.back());
  if (piece == nullptr || placing_) return std::nullopt;
  // A handle's own label takes its place.
  const bool moves = grip_ == Grip::pieces && going_;
  if (grip_ == Grip::handle || (!moves && spoken_of(handles_, focused_, hovered_) != nullptr)) return std::nullopt;
  wxString text = label_of(*piece, units_);
  if (!shown_.words.empty()) text = shown(shown_.words);
  if (selected_.size() > 1 && shown_.words.empty()) text << "   (1 of " << selected_.size() << " selected)";
  const wxRect frame = frame_around(place, piece->extent);
  return chip_above(place, frame.x + frame.width / 2, frame.y - FromDIP(8), text);
}

void Canvas::paint_handles(wxDC& dc, const OverlayPlace& place) const {
  if (grip_ == Grip::pieces && going_) return;
  const bool held = grip_ == Grip::handle;
  for (const ShownHandle& handle : handles_) {
    const bool here = held ? handle.name == grip_handle_ : focused_ == handle.name;
    if (held && going_ && !here) continue;  // where the others will be is not known yet
    if (here && held && going_) paint_way(dc, place, grip_from_m_, handle.at_m);
    paint_handle(dc, place, handle, here);
  }
  const ShownHandle* const spoken = spoken_of(handles_, held ? std::optional(grip_handle_) : focused_, hovered_);
  if (spoken == nullptr) return;
  const bool dragged = held && !shown_.words.empty();
  paint_label(dc, place, handle_chip(place, *spoken, shown(dragged ? shown_.words : spoken->text)));
}

void Canvas::paint_rulers(wxDC& dc) const {
  RulerMarks marks{view_, units_, std::nullopt, pointer_, scene_.has_value()};
  if (scene_ && !selected_.empty())
    if (const ScenePiece* piece = find_in(*scene_, selected_.back())) marks.selected = piece->extent;
  quadrille::paint_rulers(dc, *this, marks);
}

void Canvas::show_moved(Scene scene, DragShown drag) {
  if (!scene_ || bent_ || !same_surroundings(*scene_, scene)) {
    scene_ = std::move(scene);
    shown_ = std::move(drag);
    return Refresh();
  }
  // The figure stands still meanwhile: at the end of the drag it goes where there is room.
  scene.figure_x_m = scene_->figure_x_m;
  refresh_moving();
  scene_ = std::move(scene);
  shown_ = std::move(drag);
  refresh_moving();
}

/// Has everything painted anew that goes along with the selected pieces, as they are now.
void Canvas::refresh_moving() {
  const OverlayPlace place{*this, view_, paper()};
  MovingBoxes moving{place, *scene_, selected_, {}};
  moving.add_pieces();
  if (const auto chip = selection_chip(place)) moving.boxes.push_back(chip->box);
  for (const GuideMarks& guide : guide_marks(place, shown_.guides, gap_level(*scene_, selected_)))
    for (const wxRect& box : guide.boxes(place)) moving.boxes.push_back(box);
  const wxSize size = GetClientSize();
  moving.boxes.emplace_back(0, 0, size.x, place.paper.y);
  moving.boxes.emplace_back(0, 0, place.paper.x, size.y);
  for (const wxRect& box : moving.boxes) RefreshRect(wxRect(box).Inflate(2), false);
}

}  // namespace quadrille
