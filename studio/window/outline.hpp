// The outline: a native tree of areas and pieces with their counts and remarks; the drawing's twin for the keyboard and
// for screen readers.
#pragma once

#include <wx/dataview.h>
#include <wx/panel.h>

#include <functional>
#include <memory>
#include <string>

#include "studio/window/outline_model.hpp"

namespace quadrille {

struct OutlineAnswers {
  std::function<void(const std::string& area, const std::string& piece)> picked;  ///< ids; piece empty: the area
  std::function<void(const std::string& area, const std::string& piece)> opened;  ///< Enter or a double click
};

class Outline : public wxPanel {
 public:
  Outline(wxWindow* parent, OutlineAnswers answers);

  /// Shows these areas; what was selected and is still there stays so.
  void show(std::vector<OutlineArea> areas);
  /// Marks an area, or a piece in it, as selected; tells nobody.
  void select(const std::string& area, const std::string& piece);

  const OutlineModel& model() const { return *model_; }
  wxDataViewCtrl* tree() const { return tree_; }

 private:
  void answer(const wxDataViewItem& item, const std::function<void(const std::string&, const std::string&)>& to) const;

  OutlineAnswers answers_;
  wxDataViewCtrl* tree_;
  OutlineModel* model_;
  std::string area_, piece_;
  bool telling_ = true;  ///< false while the selection is set by the program
};

}  // namespace quadrille
