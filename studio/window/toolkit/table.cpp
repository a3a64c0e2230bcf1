// The model behind a native list, and swatches.
#include "studio/window/toolkit/table.hpp"

#include <wx/image.h>

#include <algorithm>
#include <cmath>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/list_room.hpp"
#include "studio/window/toolkit/menu_keys.hpp"

namespace quadrille {
namespace {

wxDataViewRenderer* renderer_of(const TableColumn& column) {
  if (column.box) return new wxDataViewToggleRenderer("bool", wxDATAVIEW_CELL_ACTIVATABLE);
  if (column.with_swatch) return new wxDataViewIconTextRenderer;
  // In the middle of rows that a picture makes high.
  return new wxDataViewTextRenderer("string", wxDATAVIEW_CELL_INERT,
                                    (column.numbers ? wxALIGN_RIGHT : wxALIGN_LEFT) | wxALIGN_CENTRE_VERTICAL);
}

/// A disc with its outline in a square picture, `side` pixels wide.
wxImage swatch_image(const wxColour& colour, int side) {
  const double scale = side / 16.0, inner = 5.9 * scale, outer = 6.9 * scale;  // radii of the disc and the outline
  wxImage image(side, side);
  image.InitAlpha();
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      const double r = std::hypot(x + 0.5 - side / 2.0, y + 0.5 - side / 2.0);
      const double edge = std::clamp(r - inner + 0.5, 0.0, 1.0), alpha = std::clamp(outer + 0.5 - r, 0.0, 1.0);
      const auto mixed = [edge](unsigned char part) {
        return static_cast<unsigned char>(std::lround(part + (118 - part) * edge));
      };
      image.SetRGB(x, y, mixed(colour.Red()), mixed(colour.Green()), mixed(colour.Blue()));
      image.SetAlpha(x, y, static_cast<unsigned char>(std::lround(alpha * 255)));
    }
  return image;
}

}  // namespace

void TableModel::set_rows(std::vector<TableRow> rows) {
  if (rows.size() != rows_.size()) {
    rows_ = std::move(rows);
    Reset(static_cast<unsigned int>(rows_.size()));
    return;
  }
  std::vector<unsigned int> changed;
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (!(rows[i] == rows_[i])) changed.push_back(static_cast<unsigned int>(i));
  rows_ = std::move(rows);
  for (const unsigned int row : changed) RowChanged(row);
}

wxString TableModel::GetColumnType(unsigned int column) const {
  if (columns_[column].box) return "bool";
  return columns_[column].with_swatch ? "wxDataViewIconText" : "string";
}

void TableModel::GetValueByRow(wxVariant& value, unsigned int row, unsigned int column) const {
  // The control may ask once more for a row that has just gone.
  const bool there = row < rows_.size() && column < rows_[row].cells.size();
  const wxString text = there ? rows_[row].cells[column] : wxString();
  if (columns_[column].box)
    value = !text.empty();
  else if (columns_[column].with_swatch)
    value << wxDataViewIconText(text, there ? rows_[row].swatch : wxBitmapBundle());
  else
    value = text;
}

bool TableModel::SetValueByRow(const wxVariant& value, unsigned int row, unsigned int column) {
  if (!columns_[column].box || row >= rows_.size() || !ticked_) return false;
  ticked_(row, value.GetBool());
  return false;  // what is shown follows from what was told
}

int Table::selected() const {
  const wxDataViewItem item = list->GetSelection();
  return item.IsOk() ? static_cast<int>(model->GetRow(item)) : -1;
}

Table make_table(wxWindow* parent, std::vector<TableColumn> columns, const wxString& name) {
  Table table;
  table.list = new wxDataViewCtrl(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                  wxDV_ROW_LINES | wxDV_SINGLE | wxBORDER_NONE);
  table.model = new TableModel(columns);
  table.list->AssociateModel(table.model);
  table.model->DecRef();  // the list holds it now
  for (unsigned int i = 0; i < columns.size(); ++i) {
    const TableColumn& column = columns[i];
    wxDataViewRenderer* const renderer = renderer_of(column);
    if (!column.box && !column.with_swatch) renderer->EnableEllipsize(wxELLIPSIZE_END);
    auto* const made = new wxDataViewColumn(column.title, renderer, i,
                                            column.width > 0 ? parent->FromDIP(column.width) : wxCOL_WIDTH_DEFAULT,
                                            column.numbers ? wxALIGN_RIGHT : wxALIGN_LEFT, wxDATAVIEW_COL_RESIZABLE);
    table.list->AppendColumn(made);
    if (column.grows) let_grow(*made);
  }
  show_cut_texts(table.list);
  set_accessible_name(table.list, name, "");
  leave_keys_to_menus(table.list);
  return table;
}

void lay_out_with_room(wxWindow* window) {
  window->Bind(wxEVT_SIZE, [window](wxSizeEvent& event) {
    const wxSize least = window->FromDIP(wxSize(120, 100));
    if (event.GetSize().x >= least.x && event.GetSize().y >= least.y) event.Skip();
  });
}

wxBitmapBundle make_swatch(const wxColour& colour) {
  wxVector<wxBitmap> sizes;  // the larger one for screens of twice as many pixels
  for (const int side : {16, 32}) sizes.push_back(wxBitmap(swatch_image(colour, side)));
  return wxBitmapBundle::FromBitmaps(sizes);
}

}  // namespace quadrille
