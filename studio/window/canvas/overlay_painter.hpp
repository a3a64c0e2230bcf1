// What lies over the drawing while one works on it: frames, labels, guide lines, handles, the rubber band. Laid out
// first, so that it is known what must be painted anew, and then painted. Everything differs in shape, not in colour alone.
#pragma once

#include <wx/dc.h>
#include <wx/window.h>

#include <vector>

#include "studio/drawing/view.hpp"
#include "studio/window/canvas/canvas_answers.hpp"

namespace quadrille {

/// Where the marks lie: on the paper of a window that shows a view.
struct OverlayPlace {
  const wxWindow& window;
  const View& view;
  wxRect paper;

  wxPoint pixel(Point2 place_m) const;
  wxRect on_screen(const Extent& extent) const;
};

/// A short text on a ground of its own.
struct Chip {
  wxString text;
  wxRect box;
};

/// A chip centred at `middle_x` with its foot at `bottom`, held on the paper.
Chip chip_above(const OverlayPlace& place, int middle_x, int bottom, const wxString& text);
/// The frame around a selected piece: a little larger than the piece.
wxRect frame_around(const OverlayPlace& place, const Extent& piece);

/// A guide: lines with or without arrow heads, and what it says.
struct GuideMarks {
  struct Line {
    wxPoint from, to;
    bool arrows = false;
  };
  std::vector<Line> lines;
  Chip words;
  /// All that it covers.
  std::vector<wxRect> boxes(const OverlayPlace& place) const;
};
/// Guides along x, at most four of them; gaps are shown `level_m` above the floor.
std::vector<GuideMarks> guide_marks(const OverlayPlace& place, const std::vector<Guide>& guides, double level_m);

enum class FrameKind { only, last_picked, other };
/// A frame with solid corners; dashed but for the one picked last of several.
void paint_frame(wxDC& dc, const OverlayPlace& place, const wxRect& frame, FrameKind kind);
/// White on the selection's colour.
void paint_label(wxDC& dc, const OverlayPlace& place, const Chip& chip);
void paint_guides(wxDC& dc, const OverlayPlace& place, const std::vector<GuideMarks>& guides);

/// A measure's handle is a lozenge with a tick each way that it goes, a point's a disc; the focused one is filled.
void paint_handle(wxDC& dc, const OverlayPlace& place, const ShownHandle& handle, bool focused);
/// How far from its middle a handle is taken hold of [px].
int handle_reach(const wxWindow& window);
Chip handle_chip(const OverlayPlace& place, const ShownHandle& handle, const wxString& text);
/// The line along which a handle went from where it was.
void paint_way(wxDC& dc, const OverlayPlace& place, Point2 from_m, Point2 to_m);

/// Solid where the band takes what lies inside, dashed where it takes what it touches, and it says which.
void paint_band(wxDC& dc, const OverlayPlace& place, const Band& band, BandTakes takes);

/// Where a piece that is being placed would stand: a line over the floor, and the room it takes where that is known.
void paint_placing(wxDC& dc, const OverlayPlace& place, double x_m, const std::optional<Extent>& room,
                   const wxString& words);

}  // namespace quadrille
