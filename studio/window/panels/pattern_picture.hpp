// The unrolled pattern as a small picture: one column of balloons per cluster, from the first on the left.
#pragma once

#include <wx/window.h>

#include <cstddef>
#include <vector>

#include "studio/form/row_grid.hpp"

namespace quadrille {

/// Grey: what a slot without a colour is shown in.
wxColour no_colour();

/// The slot's, 0 = A; no_colour() for those beyond `colours`.
wxColour slot_colour(const std::vector<wxColour>& colours, std::uint32_t slot);

/// A balloon of the pattern with its letter; `middle` and `diameter` in pixels.
void paint_slot(wxDC& dc, const wxPoint& middle, int diameter, const wxColour& colour, std::uint32_t slot);

class PatternPicture : public wxWindow {
 public:
  explicit PatternPicture(wxWindow* parent);

  /// `cells` as unrolled() gives them, of `clusters` clusters of up to `places` balloons. As many clusters are shown as
  /// there is room for.
  void show(std::vector<PatternCell> cells, std::size_t clusters, int places, std::vector<wxColour> colours);

  /// Clusters that there is room for.
  std::size_t clusters_shown() const;
  /// What the picture shows, in words.
  wxString words() const;
  /// It is looked at; nothing can be done in it.
  bool AcceptsFocus() const override { return false; }

 private:
  int cell_side() const;
  void paint();

  std::vector<PatternCell> cells_;
  std::size_t clusters_ = 0;
  int places_ = 4;
  std::vector<wxColour> colours_;
};

}  // namespace quadrille
