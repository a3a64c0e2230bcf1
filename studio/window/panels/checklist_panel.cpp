#include "studio/window/panels/checklist_panel.hpp"

#include <wx/sizer.h>
#include <wx/statline.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

enum Column : unsigned { column_done, column_for, column_what };

std::string name_of_area(const Event& event, const std::string& id) {
  for (const auto& area : event.areas)
    if (area->id == id && !area->name.empty()) return area->name;
  return "This area";
}

/// What a line is of: the piece, the area, or everything.
wxString subject_of(const ChecklistLine& line, const Event& event) {
  if (const PlacedPiece* piece = find_piece(event, line.piece))
    return piece->name.empty() ? wxString("Unnamed piece") : shown(piece->name);
  return line.area.empty() ? wxString("Whole event") : shown(name_of_area(event, line.area));
}

}  // namespace

ChecklistPanel::ChecklistPanel(wxWindow* parent, std::function<void(const ChecklistLine&, bool)> ticked)
    : wxPanel(parent), ticked_(std::move(ticked)) {
  headline_ = new wxStaticText(this, wxID_ANY, "");
  headline_->SetFont(GetFont().Bold());
  std::vector<TableColumn> columns{{"Done", 56}, {"For", 170}, {"What to see to", 0}};
  columns[column_done].box = true;
  table_ = make_table(this, std::move(columns), "Safety checklist");
  table_.model->on_tick([this](unsigned int row, bool done) { tick(row, done); });
  details_ = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(-1, 56)),
                            wxTE_MULTILINE | wxTE_READONLY | wxTE_NO_VSCROLL | wxBORDER_NONE);
  set_accessible_name(details_, "The selected line in full, with its reason and source", "");
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(headline_, wxSizerFlags().Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(table_.list, wxSizerFlags(1).Expand());
  sizer->Add(new wxStaticLine(this), wxSizerFlags().Expand());
  sizer->Add(details_, wxSizerFlags().Expand().Border(wxALL, FromDIP(6)));
  SetSizer(sizer);
  lay_out_with_room(this);
  table_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) { show_details(); });
  // A double click on the words, Enter and the space bar tick as a click on the box does. The keys are taken here because
  // what the native list does with them depends on the column that has the focus.
  table_.list->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED, [this](wxDataViewEvent&) { tick_selected(); });
  table_.list->Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) {
    const int key = event.GetKeyCode();
    const bool ticks = key == WXK_SPACE || key == WXK_RETURN || key == WXK_NUMPAD_ENTER;
    if (ticks && !event.HasAnyModifiers())
      tick_selected();
    else
      event.Skip();
  });
  show_details();
}

void ChecklistPanel::show(const Event& event, const std::string& area, std::vector<ChecklistLine> lines, bool waiting) {
  const int row_before = table_.selected();
  const std::string before = row_before >= 0 ? lines_[static_cast<std::size_t>(row_before)].key : std::string();
  std::erase_if(lines, [&](const ChecklistLine& line) { return !line.area.empty() && line.area != area; });
  lines_ = std::move(lines);
  std::vector<TableRow> rows;
  std::ptrdiff_t done = 0;
  for (const ChecklistLine& line : lines_) {
    done += line.done ? 1 : 0;
    TableRow row;
    row.cells = {line.done ? "1" : "", subject_of(line, event), shown(line.text)};
    rows.push_back(std::move(row));
  }
  table_.model->set_rows(std::move(rows));
  const auto same = std::ranges::find(lines_, before, &ChecklistLine::key);
  if (same != lines_.end() && table_.selected() != same - lines_.begin()) {
    table_.list->UnselectAll();
    table_.list->Select(table_.model->GetItem(static_cast<unsigned int>(same - lines_.begin())));
  }
  std::string text =
      name_of_area(event, area) + ": " + std::to_string(done) + " of " + std::to_string(lines_.size()) + " done";
  if (waiting) text += " · the wind levels of some pieces are still being reckoned";
  if (headline_->GetLabel() != shown(text)) headline_->SetLabelText(shown(text));
  show_details();
}

void ChecklistPanel::forget() {
  lines_.clear();
  table_.model->set_rows({});
  headline_->SetLabelText("");
  show_details();
}

void ChecklistPanel::tick(std::size_t row, bool done) {
  if (row >= lines_.size()) return;
  const ChecklistLine line = lines_[row];  // show() may come while it is told
  ticked_(line, done);
}

void ChecklistPanel::tick_selected() {
  const int row = table_.selected();
  if (row >= 0 && row < static_cast<int>(lines_.size()))
    tick(static_cast<std::size_t>(row), !lines_[static_cast<std::size_t>(row)].done);
}

void ChecklistPanel::show_details() {
  const int row = table_.selected();
  std::string text = lines_.empty() ? "" : "Select a line to read it in full, with its reason and source.";
  if (row >= 0 && row < static_cast<int>(lines_.size())) {
    const ChecklistLine& line = lines_[static_cast<std::size_t>(row)];
    text = line.text + "\n" + line.reason + " (" + line.source + ")";
  }
  if (details_->GetValue() != shown(text)) details_->ChangeValue(shown(text));
}

}  // namespace quadrille
