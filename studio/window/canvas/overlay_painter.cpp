#include "studio/window/canvas/overlay_painter.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

const wxColour selection_colour(30, 92, 168), guide_colour(164, 30, 110), halo(255, 255, 255, 200);

/// Keeps what lies far outside the window from overflowing the whole numbers of pixels.
int whole(double pixels) { return wxRound(std::clamp(pixels, -30000.0, 30000.0)); }

void paint_chip(wxDC& dc, const OverlayPlace& place, const Chip& chip, const wxColour& ground, const wxColour& ink,
                const wxColour& edge) {
  dc.SetFont(place.window.GetFont());
  dc.SetBrush(wxBrush(ground));
  dc.SetPen(wxPen(edge));
  dc.DrawRoundedRectangle(chip.box, place.window.FromDIP(4));
  dc.SetTextForeground(ink);
  dc.DrawLabel(chip.text, chip.box, wxALIGN_CENTRE);
}

void paint_guide_chip(wxDC& dc, const OverlayPlace& place, const Chip& chip) {
  paint_chip(dc, place, chip, *wxWHITE, guide_colour, guide_colour);
}

void arrow_head(wxDC& dc, wxPoint tip, int along, int size) {
  const std::array<wxPoint, 3> points{tip, tip + wxPoint(-along * size, -size / 2),
                                      tip + wxPoint(-along * size, size / 2)};
  dc.DrawPolygon(static_cast<int>(points.size()), points.data());
}

GuideMarks marks_of(const OverlayPlace& place, const Guide& guide, double level_m, int chip_bottom) {
  GuideMarks marks;
  if (guide.kind != GuideKind::gap) {
    const int x = place.pixel({guide.at_m, 0}).x;
    marks.lines.push_back({{x, place.paper.GetTop()}, {x, place.paper.GetBottom()}, false});
    marks.words = chip_above(place, x, chip_bottom, shown(guide.words));
    return marks;
  }
  for (const Guide::Gap& gap : guide.gaps)
    marks.lines.push_back({place.pixel({gap.from_m, level_m}), place.pixel({gap.to_m, level_m}), true});
  if (marks.lines.empty()) return marks;
  const auto& first = marks.lines.front();
  marks.words =
      chip_above(place, (first.from.x + first.to.x) / 2, first.from.y - place.window.FromDIP(8), shown(guide.words));
  return marks;
}

}  // namespace

wxPoint OverlayPlace::pixel(Point2 place_m) const {
  const Point2 at = view.to_pixels(place_m.x, place_m.y);
  return {whole(at.x), whole(at.y)};
}

wxRect OverlayPlace::on_screen(const Extent& extent) const {
  return {pixel({extent.left, extent.top}), pixel({extent.right, extent.floor})};
}

Chip chip_above(const OverlayPlace& place, int middle_x, int bottom, const wxString& text) {
  const wxSize size = place.window.GetTextExtent(text) + place.window.FromDIP(wxSize(16, 8));
  const wxRect& room = place.paper;
  const int gap = place.window.FromDIP(8);
  const int x = std::clamp(middle_x - size.x / 2, room.x + gap, std::max(room.x + gap, room.GetRight() - gap - size.x));
  const int y = std::clamp(bottom - size.y, room.y + gap, std::max(room.y + gap, room.GetBottom() - size.y));
  return {text, wxRect(wxPoint(x, y), size)};
}

wxRect frame_around(const OverlayPlace& place, const Extent& piece) {
  return place.on_screen(piece).Inflate(place.window.FromDIP(6));
}

std::vector<wxRect> GuideMarks::boxes(const OverlayPlace& place) const {
  std::vector<wxRect> all{words.box};
  for (const Line& line : lines) all.push_back(wxRect(line.from, line.to).Inflate(place.window.FromDIP(6)));
  return all;
}

std::vector<GuideMarks> guide_marks(const OverlayPlace& place, const std::vector<Guide>& guides, double level_m) {
  constexpr std::size_t most = 4;
  std::vector<GuideMarks> all;
  const int gap = place.window.FromDIP(6), row = place.window.GetTextExtent("X").y + place.window.FromDIP(8) + gap;
  int bottom = place.paper.GetTop() + gap + row;
  for (const Guide& guide : guides) {
    if (guide.in_depth || all.size() == most) continue;
    all.push_back(marks_of(place, guide, level_m, bottom));
    if (guide.kind != GuideKind::gap) bottom += row;  // one under the other: several lie at the same place
  }
  return all;
}

void paint_frame(wxDC& dc, const OverlayPlace& place, const wxRect& frame, FrameKind kind) {
  const wxWindow& window = place.window;
  dc.SetBrush(*wxTRANSPARENT_BRUSH);
  dc.SetPen(wxPen(selection_colour, window.FromDIP(1),
                  kind == FrameKind::last_picked ? wxPENSTYLE_SOLID : wxPENSTYLE_SHORT_DASH));
  dc.DrawRectangle(frame);
  dc.SetBrush(wxBrush(selection_colour));
  dc.SetPen(*wxTRANSPARENT_PEN);
  const int side = window.FromDIP(7);
  for (const int x : {frame.GetLeft(), frame.GetRight()})
    for (const int y : {frame.GetTop(), frame.GetBottom()}) dc.DrawRectangle(x - side / 2, y - side / 2, side, side);
}

void paint_label(wxDC& dc, const OverlayPlace& place, const Chip& chip) {
  paint_chip(dc, place, chip, selection_colour, *wxWHITE, selection_colour);
}

void paint_guides(wxDC& dc, const OverlayPlace& place, const std::vector<GuideMarks>& guides) {
  const int head = place.window.FromDIP(7);
  for (const GuideMarks& guide : guides) {
    for (const GuideMarks::Line& line : guide.lines) {
      dc.SetPen(wxPen(halo, place.window.FromDIP(3)));
      dc.DrawLine(line.from, line.to);
      dc.SetPen(wxPen(guide_colour, place.window.FromDIP(1), line.arrows ? wxPENSTYLE_SOLID : wxPENSTYLE_LONG_DASH));
      dc.DrawLine(line.from, line.to);
      if (!line.arrows) continue;
      dc.SetBrush(wxBrush(guide_colour));
      arrow_head(dc, line.from, -1, head);
      arrow_head(dc, line.to, 1, head);
    }
  }
  for (const GuideMarks& guide : guides)
    if (!guide.words.text.empty()) paint_guide_chip(dc, place, guide.words);
}

int handle_reach(const wxWindow& window) { return window.FromDIP(9); }

void paint_handle(wxDC& dc, const OverlayPlace& place, const ShownHandle& handle, bool focused) {
  const wxPoint at = place.pixel(handle.at_m);
  const int half = place.window.FromDIP(6), tick = place.window.FromDIP(11);
  const auto shape = [&](int size) {
    if (handle.axis == -1) return dc.DrawCircle(at, size);
    const std::array<wxPoint, 4> points{at + wxPoint(size, 0), at + wxPoint(0, size), at + wxPoint(-size, 0),
                                        at + wxPoint(0, -size)};
    dc.DrawPolygon(static_cast<int>(points.size()), points.data());
  };
  const wxPoint way = handle.axis == 0 ? wxPoint(tick, 0) : wxPoint(0, tick);
  for (const bool under : {true, false}) {
    const wxColour& colour = under ? halo : selection_colour;
    dc.SetPen(wxPen(colour, place.window.FromDIP(under ? 5 : 2)));
    if (handle.axis != -1) dc.DrawLine(at - way, at + way);
    dc.SetBrush(wxBrush(focused ? selection_colour : *wxWHITE));
    shape(half);
  }
  if (!focused) return;
  // A ring around it, apart from it, is where the keyboard is.
  dc.SetBrush(*wxTRANSPARENT_BRUSH);
  dc.SetPen(wxPen(selection_colour, place.window.FromDIP(2)));
  shape(half + place.window.FromDIP(5));
}

Chip handle_chip(const OverlayPlace& place, const ShownHandle& handle, const wxString& text) {
  const wxPoint at = place.pixel(handle.at_m);
  return chip_above(place, at.x, at.y - place.window.FromDIP(16), text);
}

void paint_way(wxDC& dc, const OverlayPlace& place, Point2 from_m, Point2 to_m) {
  dc.SetPen(wxPen(halo, place.window.FromDIP(3)));
  dc.DrawLine(place.pixel(from_m), place.pixel(to_m));
  dc.SetPen(wxPen(selection_colour, place.window.FromDIP(1), wxPENSTYLE_SHORT_DASH));
  dc.DrawLine(place.pixel(from_m), place.pixel(to_m));
}

void paint_band(wxDC& dc, const OverlayPlace& place, const Band& band, BandTakes takes) {
  const wxPoint a = place.pixel({band.x1_m, band.height1_m}), b = place.pixel({band.x2_m, band.height2_m});
  const wxRect box(wxPoint(std::min(a.x, b.x), std::min(a.y, b.y)), wxPoint(std::max(a.x, b.x), std::max(a.y, b.y)));
  const bool inside = takes == BandTakes::what_lies_inside;
  dc.SetBrush(wxBrush(wxColour(selection_colour.Red(), selection_colour.Green(), selection_colour.Blue(), 26)));
  dc.SetPen(wxPen(selection_colour, place.window.FromDIP(1), inside ? wxPENSTYLE_SOLID : wxPENSTYLE_SHORT_DASH));
  dc.DrawRectangle(box);
  const wxString words = inside ? "takes what lies inside" : "takes what it touches";
  paint_label(dc, place, chip_above(place, box.x + box.width / 2, box.y - place.window.FromDIP(4), words));
}

void paint_placing(wxDC& dc, const OverlayPlace& place, double x_m, const std::optional<Extent>& room,
                   const wxString& words) {
  const wxPoint foot = place.pixel({x_m, 0});
  if (room) {
    dc.SetBrush(wxBrush(wxColour(selection_colour.Red(), selection_colour.Green(), selection_colour.Blue(), 18)));
    dc.SetPen(wxPen(selection_colour, place.window.FromDIP(1), wxPENSTYLE_SHORT_DASH));
    dc.DrawRectangle(place.on_screen(*room));
  }
  const int top = room ? place.on_screen(*room).y : place.pixel({x_m, figure_height_m}).y;
  const int size = place.window.FromDIP(9);
  paint_way(dc, place, {x_m, 0}, place.view.to_metres(foot.x, top));
  const std::array<wxPoint, 3> mark{foot, foot + wxPoint(-size, size), foot + wxPoint(size, size)};
  dc.SetPen(wxPen(selection_colour));
  dc.SetBrush(wxBrush(selection_colour));
  dc.DrawPolygon(static_cast<int>(mark.size()), mark.data());
  paint_label(dc, place, chip_above(place, foot.x, top - place.window.FromDIP(6), words));
}

}  // namespace quadrille
