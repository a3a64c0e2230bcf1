#include "studio/window/panels/pattern_picture.hpp"

#include <wx/dcclient.h>
#include <wx/settings.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int least_side = 13, most_side = 20;  // [DIP]; letters can be read from 13 on

}  // namespace

wxColour no_colour() { return {190, 190, 190}; }

wxColour slot_colour(const std::vector<wxColour>& colours, std::uint32_t slot) {
  return slot < colours.size() ? colours[slot] : no_colour();
}

void paint_slot(wxDC& dc, const wxPoint& middle, int diameter, const wxColour& colour, std::uint32_t slot) {
  dc.SetPen(wxPen(wxColour(118, 118, 118), 1));
  dc.SetBrush(wxBrush(colour));
  dc.DrawCircle(middle, diameter / 2);
  const wxString letter = shown(slot_name(slot));
  const wxSize size = dc.GetTextExtent(letter);
  dc.SetTextForeground(colour.GetLuminance() > 0.5 ? *wxBLACK : *wxWHITE);
  dc.DrawText(letter, middle.x - size.x / 2, middle.y - size.y / 2);
}

PatternPicture::PatternPicture(wxWindow* parent) : wxWindow(parent, wxID_ANY) {
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    Refresh();
  });
}

void PatternPicture::show(std::vector<PatternCell> cells, std::size_t clusters, int places,
                          std::vector<wxColour> colours) {
  cells_ = std::move(cells), clusters_ = clusters, places_ = std::max(places, 1), colours_ = std::move(colours);
  for (const PatternCell& cell : cells_) places_ = std::max(places_, static_cast<int>(cell.place) + 1);
  SetMinSize(wxSize(FromDIP(80), FromDIP(most_side) * (2 * places_ + 1) / 2 + 2 * GetCharHeight()));
  set_accessible_name(this, "The pattern unrolled", words());
  Refresh();
}

int PatternPicture::cell_side() const {
  if (clusters_ == 0) return FromDIP(most_side);
  const int fitting = GetClientSize().x / static_cast<int>(std::min<std::size_t>(clusters_, 1000));
  return std::clamp(fitting, FromDIP(least_side), FromDIP(most_side));
}

std::size_t PatternPicture::clusters_shown() const {
  return std::min(clusters_, static_cast<std::size_t>(std::max(GetClientSize().x / cell_side(), 0)));
}

wxString PatternPicture::words() const {
  if (clusters_ == 0) return "No row yet";
  const std::size_t some = clusters_shown();
  const wxString first = some == 1 ? wxString("Unrolled: cluster 1") : wxString("Unrolled: clusters 1 to ") << some;
  return some < clusters_ ? first + " of " + (wxString() << clusters_) : first;
}

void PatternPicture::paint() {
  wxPaintDC dc(this);  // on what lies behind
  const int side = cell_side();
  const std::size_t some = clusters_shown();
  wxFont font = GetFont();
  font.SetPixelSize(wxSize(0, side * 6 / 10));
  dc.SetFont(font);
  for (const PatternCell& cell : cells_) {
    if (cell.row >= some) continue;
    // Round the rod: the first half place is at the bottom, as the rows of the field are read from it upwards.
    const int x = static_cast<int>(cell.row) * side + side / 2;
    const int y = static_cast<int>(std::lround((places_ - 0.5 - cell.across) * side)) + side / 2;
    paint_slot(dc, {x, y}, side, slot_colour(colours_, cell.slot), cell.slot);
  }
  dc.SetFont(GetFont());
  dc.SetTextForeground(GetForegroundColour());
  const int below = clusters_ == 0 ? FromDIP(3) : (2 * places_ + 1) * side / 2 + FromDIP(3);
  dc.DrawText(words(), 0, below);
}

}  // namespace quadrille
