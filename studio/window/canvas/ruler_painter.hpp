// Paints the two rulers around the paper, in the desktop's colours.
#pragma once

#include <wx/dc.h>
#include <wx/window.h>

#include <optional>

#include "studio/drawing/view.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

struct RulerMarks {
  const View& view;
  Units units = Units::feet;
  std::optional<Extent> selected;  ///< shaded on both rulers [m]
  std::optional<wxPoint> pointer;  ///< shown by a line on both rulers [px of the window]
  bool numbered = true;            ///< false: empty rulers, nothing is shown
};

/// Width of the left and height of the top ruler in this window [px].
wxSize ruler_size(const wxWindow& window);

void paint_rulers(wxDC& dc, const wxWindow& window, const RulerMarks& marks);

}  // namespace quadrille
