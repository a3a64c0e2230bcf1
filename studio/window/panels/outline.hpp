// The outline: a native tree of areas and pieces with their counts and remarks; the drawing's twin for the keyboard and
// for screen readers. Several pieces of one area may be selected at once.
#pragma once

#include <wx/dataview.h>
#include <wx/panel.h>

#include <functional>
#include <memory>
#include <string>

#include "studio/model/piece_edits.hpp"
#include "studio/window/panels/outline_model.hpp"

namespace quadrille {

struct OutlineAnswers {
  /// Ids of an area and of pieces in it, the one picked last at the end; no pieces: the area itself.
  std::function<void(const std::string& area, const PieceIds& pieces)> picked;
  std::function<void(const std::string& area, const std::string& piece)> opened;  ///< Enter or a double click
};

/// While the tree has the keyboard, Delete removes the selected pieces and the space bar hides or shows them, by the
/// window's own commands.
class Outline : public wxPanel {
 public:
  Outline(wxWindow* parent, OutlineAnswers answers);

  /// Shows these areas; what was selected and is still there stays so.
  void show(std::vector<OutlineArea> areas);
  /// Marks an area, or pieces in it, as selected; tells nobody.
  void select(const std::string& area, const PieceIds& pieces);

  const OutlineModel& model() const { return *model_; }
  wxDataViewCtrl* tree() const { return tree_; }

 private:
  void take_key(wxKeyEvent& event);
  void tell_later();
  void tell();
  PieceIds selected_in(const std::string& area) const;

  OutlineAnswers answers_;
  wxDataViewCtrl* tree_;
  OutlineModel* model_;
  std::string area_;
  PieceIds pieces_;
  std::string touched_area_;  ///< where the selection was changed last
  bool to_tell_ = false;
  bool telling_ = true;  ///< false while the selection is set by the program
};

}  // namespace quadrille
