// Both rulers by the same steps: one runs to the right from x = 0, the other up from the floor.
#include "studio/window/canvas/ruler_painter.hpp"

#include <wx/settings.h>

#include <algorithm>
#include <cmath>

#include "studio/window/canvas/ruler.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

struct RulerColours {
  wxColour ground = wxSystemSettings::GetColour(wxSYS_COLOUR_BTNFACE);
  wxColour text = wxSystemSettings::GetColour(wxSYS_COLOUR_BTNTEXT);
  wxColour line, shade;
  RulerColours() {
    const auto mixed = [this](double share) {
      const auto part = [share](unsigned char a, unsigned char b) {
        return static_cast<unsigned char>(std::lround(a + (b - a) * share));
      };
      return wxColour(part(ground.Red(), text.Red()), part(ground.Green(), text.Green()),
                      part(ground.Blue(), text.Blue()));
    };
    line = mixed(0.45);
    shade = mixed(0.14);
  }
};

/// One ruler: places along it in pixels of the window, and how to draw across it.
struct Ruler {
  wxDC& dc;
  wxRect box;
  bool across;       ///< the top one
  double origin_px;  ///< where 0 falls
  double pixels_per_metre;

  double place(double metres) const {
    return across ? origin_px + metres * pixels_per_metre : origin_px - metres * pixels_per_metre;
  }
  int first() const { return across ? box.GetLeft() : box.GetTop(); }
  int last() const { return across ? box.GetRight() : box.GetBottom(); }
  /// A mark that reaches `length` from the paper's edge into the ruler.
  void mark(int at, int length) const {
    if (across)
      dc.DrawLine(at, box.GetBottom() - length, at, box.GetBottom());
    else
      dc.DrawLine(box.GetRight() - length, at, box.GetRight(), at);
  }
};

void paint_labels(const Ruler& ruler, const wxWindow& window, Units units, const RulerColours& colours) {
  const RulerStep step = ruler_step(ruler.pixels_per_metre, units, window.FromDIP(56));
  const double division_px = step.step_m / step.divisions * ruler.pixels_per_metre;
  const double a = (ruler.first() - ruler.origin_px) / division_px, b = (ruler.last() - ruler.origin_px) / division_px;
  const double low = std::floor(ruler.across ? a : -b), high = std::ceil(ruler.across ? b : -a);
  const int gap = window.FromDIP(3);
  for (double k = low; k <= high; ++k) {
    const long division = std::lround(k);
    const int at = wxRound(ruler.place(k * step.step_m / step.divisions));
    const bool labelled = division % step.divisions == 0;
    if (at < ruler.first() || at > ruler.last()) continue;
    ruler.dc.SetPen(wxPen(colours.line));
    ruler.mark(at, window.FromDIP(labelled ? 10 : 4));
    if (!labelled) continue;
    const wxString label = shown(ruler_label(division / step.divisions, step, units));
    const wxSize text = ruler.dc.GetTextExtent(label);
    if (ruler.across) {
      if (at + gap + text.x < ruler.last()) ruler.dc.DrawText(label, at + gap, ruler.box.y + window.FromDIP(2));
    } else if (at - text.y - 1 > ruler.first()) {
      ruler.dc.DrawText(label, ruler.box.GetRight() - text.x - window.FromDIP(8), at - text.y - 1);
    }
  }
}

void paint_ruler(const Ruler& ruler, const wxWindow& window, const RulerMarks& marks, const RulerColours& colours) {
  wxDC& dc = ruler.dc;
  const wxRect& box = ruler.box;
  dc.SetClippingRegion(box);
  dc.SetPen(*wxTRANSPARENT_PEN);
  dc.SetBrush(wxBrush(colours.ground));
  dc.DrawRectangle(box);
  if (marks.selected) {
    const Extent& e = *marks.selected;
    const int from = wxRound(ruler.place(ruler.across ? e.left : e.top));
    const int to = wxRound(ruler.place(ruler.across ? e.right : e.floor));
    dc.SetBrush(wxBrush(colours.shade));
    if (ruler.across)
      dc.DrawRectangle(from, box.y, to - from, box.height);
    else
      dc.DrawRectangle(box.x, from, box.width, to - from);
  }
  if (marks.numbered) paint_labels(ruler, window, marks.units, colours);
  dc.SetPen(wxPen(colours.line));
  if (ruler.across)
    dc.DrawLine(box.GetLeft(), box.GetBottom(), box.GetRight() + 1, box.GetBottom());
  else
    dc.DrawLine(box.GetRight(), box.GetTop(), box.GetRight(), box.GetBottom() + 1);
  if (marks.pointer) {
    dc.SetPen(wxPen(colours.text));
    ruler.mark(ruler.across ? marks.pointer->x : marks.pointer->y, ruler.across ? box.height : box.width);
  }
  dc.DestroyClippingRegion();
}

}  // namespace

wxSize ruler_size(const wxWindow& window) { return window.FromDIP(wxSize(52, 26)); }

void paint_rulers(wxDC& dc, const wxWindow& window, const RulerMarks& marks) {
  const RulerColours colours;
  const wxSize size = window.GetClientSize(), rulers = ruler_size(window);
  dc.SetFont(window.GetFont().Smaller());
  dc.SetTextForeground(colours.text);
  const View& view = marks.view;
  const wxRect top(rulers.x, 0, size.x - rulers.x, rulers.y), left(0, rulers.y, rulers.x, size.y - rulers.y);
  paint_ruler({dc, top, true, view.origin_x_px, view.pixels_per_metre}, window, marks, colours);
  paint_ruler({dc, left, false, view.origin_y_px, view.pixels_per_metre}, window, marks, colours);

  const wxRect corner(0, 0, rulers.x, rulers.y);
  dc.SetPen(*wxTRANSPARENT_PEN);
  dc.SetBrush(wxBrush(colours.ground));
  dc.DrawRectangle(corner);
  if (marks.numbered) dc.DrawLabel(shown(ruler_unit(marks.units)), corner, wxALIGN_CENTRE);
  dc.SetPen(wxPen(colours.line));
  dc.DrawLine(0, corner.GetBottom(), corner.GetRight() + 1, corner.GetBottom());
  dc.DrawLine(corner.GetRight(), 0, corner.GetRight(), corner.GetBottom() + 1);
}

}  // namespace quadrille
