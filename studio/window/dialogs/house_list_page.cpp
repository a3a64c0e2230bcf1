#include "studio/window/dialogs/house_list_page.hpp"

#include <wx/dcclient.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// Columns of words share the room that is over; each is wide enough for its title.
Table make_house_table(wxWindow* parent, const HouseTable& content) {
  std::vector<TableColumn> columns;
  for (std::size_t i = 0; i < content.columns.size(); ++i) {
    const HouseColumn& column = content.columns[i];
    wxClientDC measured(parent);
    measured.SetFont(parent->GetFont().Bold());
    const int title = parent->ToDIP(measured.GetTextExtent(shown(column.title)).x) + 16;
    const int least = column.numbers ? 66 : i == 0 ? 150 : 92;
    TableColumn& made = columns.emplace_back();
    made.title = shown(column.title), made.width = std::max(title, least), made.numbers = column.numbers;
    made.grows = !column.numbers;
  }
  return make_table(parent, std::move(columns), shown(content.title));
}

void fill(const Table& table, const HouseTable& content) {
  std::vector<TableRow> rows;
  for (const auto& cells : content.rows) {
    TableRow& row = rows.emplace_back();
    for (const std::string& cell : cells) row.cells.push_back(shown(cell));
  }
  table.model->set_rows(std::move(rows));
}

wxStaticText* make_words(wxWindow* parent, const std::string& words) {
  auto* text = new wxStaticText(parent, wxID_ANY, wxControl::EscapeMnemonics(shown(words)));
  text->Wrap(parent->FromDIP(640));
  return text;
}

}  // namespace

HouseListPage::HouseListPage(wxWindow* parent, HouseList list, const House& house, const std::vector<Palette>& palettes,
                             HouseListAnswers answers)
    : wxPanel(parent), list_(list), answers_(std::move(answers)) {
  const HouseTable content = table_of(house, list, palettes);
  const int gap = FromDIP(8);
  table_ = make_house_table(this, content);
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  const auto add_button = [&](const wxString& label, const std::string& name, auto act) {
    auto* button = new wxButton(this, wxID_ANY, label);
    set_accessible_name(button, shown(name), "");
    button->Bind(wxEVT_BUTTON, [act](wxCommandEvent&) { act(); });
    buttons->Add(button, wxSizerFlags().Border(wxRIGHT, gap));
    return button;
  };
  const auto with_selected = [this](const auto& act) {
    if (const int row = table_.selected(); row >= 0) act(static_cast<std::size_t>(row));
  };
  add_ = add_button(wxString::FromUTF8("&Add…"), "Add " + with_article(content.entry), [this] { answers_.change({}); });
  change_ = add_button(wxString::FromUTF8("C&hange…"), "Change the " + content.entry,
                       [this, with_selected] { with_selected(answers_.change); });
  remove_ =
      add_button("&Remove", "Remove the " + content.entry, [this, with_selected] { with_selected(answers_.remove); });
  if (list == HouseList::jobs) {
    this_event_ = add_button("Add &this event", "Add this event as a finished job", [this] {
      if (answers_.add_this_event) answers_.add_this_event();
    });
    this_event_->SetToolTip("What is planned for the event that is open; then put in what a watch said");
    this_event_->Enable(bool(answers_.add_this_event));
  }
  table_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) { show_state(); });
  table_.list->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED,
                    [this, with_selected](wxDataViewEvent&) { with_selected(answers_.change); });
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(make_words(this, content.words), wxSizerFlags().Expand().Border(wxALL, gap));
  sizer->Add(table_.list, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT, gap));
  sizer->Add(buttons, wxSizerFlags().Border(wxALL, gap));
  if (list == HouseList::jobs) {
    const HouseTable learned = learned_rates(house);
    auto* heading = new wxStaticText(this, wxID_ANY, shown(learned.title));
    heading->SetFont(GetFont().Bold());
    learned_ = make_house_table(this, learned);
    use_ = new wxButton(this, wxID_ANY, "&Use these rates");
    use_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answers_.use_learned(); });
    sizer->Add(heading, wxSizerFlags().Border(wxLEFT | wxRIGHT, gap));
    sizer->Add(make_words(this, learned.words), wxSizerFlags().Expand().Border(wxALL, gap));
    sizer->Add(learned_.list, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT, gap));
    sizer->Add(use_, wxSizerFlags().Border(wxALL, gap));
  }
  SetSizer(sizer);
  lay_out_with_room(this);
  show(house, palettes);
}

void HouseListPage::show(const House& house, const std::vector<Palette>& palettes) {
  fill(table_, table_of(house, list_, palettes));
  if (learned_.list != nullptr) {
    fill(learned_, learned_rates(house));
    use_->Enable(!learned_.model->rows().empty());
  }
  show_state();
}

void HouseListPage::select(std::size_t row) {
  if (row < table_.model->rows().size()) table_.list->Select(table_.model->GetItem(static_cast<unsigned int>(row)));
  show_state();
}

void HouseListPage::show_state() {
  const bool selected = table_.selected() >= 0;
  change_->Enable(selected);
  remove_->Enable(selected);
}

}  // namespace quadrille
