// The editor of pattern rows: the grid, what is done with its rows, and the pattern unrolled beside it.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>

#include <functional>
#include <vector>

#include "studio/window/panels/pattern_grid.hpp"
#include "studio/window/panels/pattern_picture.hpp"

namespace quadrille {

struct RowEditorAnswers {
  std::function<void(const RowGrid&)> changed;  ///< the rows as the user made them
  std::function<void()> grown;                  ///< it needs more or less room
  std::function<void()> focused;                ///< its grid has the focus
};

class RowEditor : public wxPanel {
 public:
  RowEditor(wxWindow* parent, RowEditorAnswers answers);

  /// `hand` as in unrolled(); `colours` are those of the slots.
  void show(const RowGrid& grid, int hand, const std::vector<wxColour>& colours);

  PatternGrid* grid() const { return grid_; }
  const PatternPicture& picture() const { return *picture_; }

 private:
  RowEditorAnswers answers_;
  PatternGrid* grid_;
  PatternPicture* picture_;
  std::size_t rows_ = 0;
};

}  // namespace quadrille
