// A native list with columns of text, told apart from what it shows.
#pragma once

#include <wx/bmpbndl.h>
#include <wx/dataview.h>

#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace quadrille {

struct TableColumn {
  wxString title;
  int width = 80;            ///< [DIP]; 0 = the rest of the room
  bool numbers = false;      ///< aligned to the right
  bool with_swatch = false;  ///< shows the row's swatch before its text
  bool box = false;          ///< a box that is ticked where the cell has any text, and that the user ticks
  bool grows = false;        ///< takes room that is over, beside others that do; none: the last column takes it
};

/// The column, growing.
inline TableColumn growing(TableColumn column) {
  column.grows = true;
  return column;
}

struct TableRow {
  std::vector<wxString> cells;
  wxBitmapBundle swatch;
  std::string swatch_key;  ///< equal keys have equal swatches
  bool operator==(const TableRow& other) const { return cells == other.cells && swatch_key == other.swatch_key; }
};

/// Rows as the control asks for them.
class TableModel : public wxDataViewVirtualListModel {
 public:
  explicit TableModel(std::vector<TableColumn> columns) : columns_(std::move(columns)) {}

  /// Shows `rows`; where only cells differ, scroll place and selection stay.
  void set_rows(std::vector<TableRow> rows);
  const std::vector<TableRow>& rows() const { return rows_; }
  /// `ticked` hears of a box that the user ticks or clears. The row stays as it is until set_rows says otherwise.
  void on_tick(std::function<void(unsigned int row, bool on)> ticked) { ticked_ = std::move(ticked); }

 private:
  unsigned int GetColumnCount() const override { return static_cast<unsigned int>(columns_.size()); }
  wxString GetColumnType(unsigned int column) const override;
  void GetValueByRow(wxVariant& value, unsigned int row, unsigned int column) const override;
  bool SetValueByRow(const wxVariant& value, unsigned int row, unsigned int column) override;

  std::vector<TableColumn> columns_;
  std::vector<TableRow> rows_;
  std::function<void(unsigned int, bool)> ticked_;
};

/// A list and the model it shows; the window owns the list, the list owns the model.
struct Table {
  wxDataViewCtrl* list = nullptr;
  TableModel* model = nullptr;
  /// Row of the selection; -1 where there is none.
  int selected() const;
};

/// `name` is what a screen reader says.
Table make_table(wxWindow* parent, std::vector<TableColumn> columns, const wxString& name);

/// Lays `window` out only while it has some room: a native list complains on the standard error output when it is made
/// smaller than its heads, as windows are before they come to the screen.
void lay_out_with_room(wxWindow* window);

/// A round sample of a colour, outlined so that white shows on white.
wxBitmapBundle make_swatch(const wxColour& colour);

}  // namespace quadrille
