// A path or a mix as a small table whose cells are typed into.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <array>
#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include "studio/form/list_cells.hpp"

namespace quadrille {

struct ListEditorAnswers {
  std::function<void(const Value&)> changed;  ///< the list as the user made it
  std::function<void()> grown;                ///< it needs more or less room
  std::function<void()> focused;              ///< one of its cells has the focus
};

/// Tab goes from cell to cell, the arrow keys up and down; Insert adds a row after the present one, Ctrl+Delete removes it.
class ListEditor : public wxPanel {
 public:
  ListEditor(wxWindow* parent, ListEditorAnswers answers);

  void show(const Parameter& parameter, const Value& value, Units units);
  /// Wraps sentences to this width [px].
  void wrap(int width);

  std::size_t row_count() const { return shown_rows_; }
  /// False where there are more rows than are shown.
  bool is_whole() const { return !more_->IsShown(); }
  /// The field of this cell, which is there; a list that has no row yet has none: null.
  wxTextCtrl* cell(std::size_t row, std::size_t column) const;
  wxButton* add_button(std::size_t row) const { return row < rows_.size() ? rows_[row].add : nullptr; }
  wxButton* remove_button(std::size_t row) const { return row < rows_.size() ? rows_[row].remove : nullptr; }
  wxString fault() const { return shown_fault_; }

 private:
  static constexpr std::size_t columns = 3;
  /// Rows are made as they are needed and only ever hidden: the one whose key is being handled stays.
  struct Row {
    wxStaticText* number = nullptr;
    std::array<wxTextCtrl*, columns> cells{};
    std::array<wxString, columns> shown;  ///< what stood in them when they were last filled
    wxButton *add = nullptr, *remove = nullptr;
  };
  void make_row();
  wxTextCtrl* make_cell(std::size_t row, std::size_t column);
  void take(std::size_t row, std::size_t column);
  void add_after(std::size_t row);
  void remove(std::size_t row);
  void say(const std::string& fault);
  void give_up(std::size_t row, std::size_t column);

  ListEditorAnswers answers_;
  Parameter parameter_;
  Value value_;
  Units units_ = Units::metric;
  std::array<wxStaticText*, columns> heads_{};
  wxFlexGridSizer* grid_;
  wxStaticText *fault_, *more_;
  wxString shown_fault_;
  std::vector<Row> rows_;
  std::size_t shown_rows_ = 0;
  int width_ = 0;
  bool telling_ = true;  ///< false while the program fills the cells
};

}  // namespace quadrille
