#include "studio/window/panels/list_editor.hpp"

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// As many as one would type by hand; what is longer is told, and stands in the field above.
constexpr std::size_t most_rows = 40;

wxButton* small_button(wxWindow* parent, const char* sign) {
  return new wxButton(parent, wxID_ANY, wxString::FromUTF8(sign), wxDefaultPosition, parent->FromDIP(wxSize(22, 26)),
                      wxBU_EXACTFIT | wxBORDER_NONE);
}

}  // namespace

ListEditor::ListEditor(wxWindow* parent, ListEditorAnswers answers) : wxPanel(parent), answers_(std::move(answers)) {
  grid_ = new wxFlexGridSizer(6, FromDIP(wxSize(3, 3)));
  for (std::size_t column = 1; column <= columns; ++column) grid_->AddGrowableCol(column, 1);
  grid_->AddSpacer(0);
  for (wxStaticText*& head : heads_) grid_->Add(head = new wxStaticText(this, wxID_ANY, ""));
  grid_->AddSpacer(0), grid_->AddSpacer(0);
  fault_ = new wxStaticText(this, wxID_ANY, "");
  more_ = new wxStaticText(this, wxID_ANY, "");
  fault_->Hide(), more_->Hide();
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(grid_, wxSizerFlags().Expand());
  sizer->Add(more_, wxSizerFlags().Expand());
  sizer->Add(fault_, wxSizerFlags().Expand().Border(wxTOP, FromDIP(2)));
  SetSizer(sizer);
}

void ListEditor::make_row() {
  const std::size_t row = rows_.size();
  Row made;
  const wxString number = wxString() << (row + 1);
  made.number = new wxStaticText(this, wxID_ANY, number);
  grid_->Add(made.number, wxSizerFlags().CentreVertical().Right());
  for (std::size_t column = 0; column < columns; ++column) {
    made.cells[column] = make_cell(row, column);
    grid_->Add(made.cells[column], wxSizerFlags(1).Expand());
  }
  made.add = small_button(this, "+");
  made.remove = small_button(this, "−");
  set_accessible_name(made.add, "Add a row after row " + number, "");
  set_accessible_name(made.remove, "Remove row " + number, "");
  made.add->Bind(wxEVT_BUTTON, [this, row](wxCommandEvent&) { add_after(row); });
  made.remove->Bind(wxEVT_BUTTON, [this, row](wxCommandEvent&) { remove(row); });
  grid_->Add(made.add, wxSizerFlags().CentreVertical());
  grid_->Add(made.remove, wxSizerFlags().CentreVertical());
  rows_.push_back(std::move(made));
}

wxTextCtrl* ListEditor::make_cell(std::size_t row, std::size_t column) {
  auto* cell = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(48, -1)), wxTE_PROCESS_ENTER);
  cell->Bind(wxEVT_TEXT_ENTER, [this, row, column](wxCommandEvent&) { take(row, column); });
  cell->Bind(wxEVT_SET_FOCUS, [this](wxFocusEvent& event) {
    event.Skip();
    answers_.focused();
  });
  cell->Bind(wxEVT_KILL_FOCUS, [this, row, column](wxFocusEvent& event) {
    event.Skip();
    take(row, column);
  });
  cell->Bind(wxEVT_KEY_DOWN, [this, row, column](wxKeyEvent& event) {
    const int key = event.GetKeyCode();
    if (key == WXK_INSERT || key == WXK_NUMPAD_INSERT) return add_after(row);
    if (event.ControlDown() && (key == WXK_DELETE || key == WXK_NUMPAD_DELETE)) return remove(row);
    if (key == WXK_ESCAPE) return give_up(row, column);
    if (key == WXK_UP && row > 0) return rows_[row - 1].cells[column]->SetFocus();
    if (key == WXK_DOWN && row + 1 < shown_rows_) return rows_[row + 1].cells[column]->SetFocus();
    event.Skip();
  });
  return cell;
}

void ListEditor::show(const Parameter& parameter, const Value& value, Units units) {
  parameter_ = parameter, value_ = value, units_ = units;
  const CellTable table = cell_table(parameter, value, units);
  const std::size_t count = std::min(table.rows.size(), most_rows), before = shown_rows_;
  telling_ = false;
  while (rows_.size() < count) make_row();
  for (std::size_t column = 0; column < table.columns.size() && column < columns; ++column) {
    const CellColumn& head = table.columns[column];
    heads_[column]->SetLabelText(shown(head.label + (head.unit.empty() ? "" : " [" + head.unit + "]")));
  }
  shown_rows_ = count;
  const bool fewest = table.rows.size() <= (parameter.kind == Kind::path ? 2u : 1u);
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    Row& own = rows_[row];
    const bool there = row < count;
    for (wxWindow* window :
         {static_cast<wxWindow*>(own.number), static_cast<wxWindow*>(own.add), static_cast<wxWindow*>(own.remove)})
      window->Show(there);
    own.remove->Enable(!fewest);
    for (std::size_t column = 0; column < columns; ++column) {
      wxTextCtrl* const cell = own.cells[column];
      cell->Show(there);
      if (!there) continue;
      const wxString text = shown(table.rows[row][column]);
      const bool refused = cell->GetValue() != own.shown[column] && (cell->HasFocus() || !shown_fault_.empty());
      if (!refused && cell->GetValue() != text) cell->ChangeValue(text);
      if (!refused) own.shown[column] = text;
      set_accessible_name(cell, heads_[column]->GetLabel() + ", row " + (wxString() << (row + 1)), "");
    }
  }
  more_->Show(table.rows.size() > count);
  if (table.rows.size() > count)
    more_->SetLabelText(wxString() << "and " << (table.rows.size() - count) << " more in the field above");
  telling_ = true;
  if (before != shown_rows_) answers_.grown();
}

void ListEditor::take(std::size_t row, std::size_t column) {
  if (!telling_ || row >= shown_rows_) return;
  Row& own = rows_[row];
  const wxString typed = own.cells[column]->GetValue();
  if (typed == own.shown[column]) return;
  const auto value = with_cell(parameter_, value_, row, column, text_of(typed), units_);
  if (!value) return say(value.error);
  say("");
  own.shown[column] = typed;  // taken; what is shown follows
  if (!(*value == value_)) return answers_.changed(*value);
  show(parameter_, value_, units_);
}

void ListEditor::give_up(std::size_t row, std::size_t column) {
  rows_[row].cells[column]->ChangeValue(rows_[row].shown[column]);
  say("");
}

void ListEditor::add_after(std::size_t row) {
  say("");
  if (row >= shown_rows_ || shown_rows_ >= most_rows) return;
  answers_.changed(with_row_after(value_, row));
  if (row + 1 < shown_rows_) rows_[row + 1].cells[0]->SetFocus();
}

void ListEditor::remove(std::size_t row) {
  say("");
  const Value shorter = without_list_row(value_, row);
  if (shorter == value_) return;
  // The keyboard stays in the list.
  if (wxTextCtrl* const stays = cell(row > 0 ? row - 1 : 0, 0)) stays->SetFocus();
  answers_.changed(shorter);
}

void ListEditor::say(const std::string& fault) {
  if (shown(fault) == shown_fault_) return;
  shown_fault_ = shown(fault);
  fault_->Show(!fault.empty());
  wrap(width_);
  answers_.grown();
}

void ListEditor::wrap(int width) {
  width_ = width;
  if (shown_fault_.empty()) return;
  fault_->SetLabelText(wxString::FromUTF8("⚠ ") + shown_fault_);
  fault_->Wrap(std::max(width, FromDIP(120)));
}

wxTextCtrl* ListEditor::cell(std::size_t row, std::size_t column) const {
  return row < shown_rows_ && column < columns ? rows_[row].cells[column] : nullptr;
}

}  // namespace quadrille
