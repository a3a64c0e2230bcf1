#include "studio/window/dialogs/house_dialog.hpp"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include <algorithm>
#include <utility>

#include "studio/labour/calibration.hpp"
#include "studio/window/dialogs/house_entry_dialog.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

HouseDialog::HouseDialog(wxWindow* parent, HouseDialogContent content)
    : wxDialog(parent, wxID_ANY, "House settings", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER | wxMAXIMIZE_BOX),
      content_(std::move(content)) {
  const std::vector<Palette>& palettes = content_.palettes->palettes;
  pages_ = new wxListBox(this, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(176, -1)));
  set_accessible_name(pages_, "Pages of the house settings", "");
  book_ = new wxSimplebook(this, wxID_ANY);
  for (const HousePage page : house_pages) {
    auto* fields = new HouseFields(
        book_, {[this, page](const std::string& key, const std::string& text) -> std::optional<std::string> {
                  auto changed = with_house_field(content_.house, page, key, text);
                  if (!changed) return changed.error;
                  change(std::move(*changed.value));
                  return std::nullopt;
                },
                [this, page](const std::string& key) { change(with_house_default(content_.house, page, key)); }});
    fields_.push_back(fields);
    add_page(fields, shown(std::string(name_of(page))));
  }
  for (const HouseList list : house_lists) {
    HouseListAnswers answers{[this, list](std::optional<std::size_t> row) { change_entry(list, row); },
                             [this, list](std::size_t row) { remove_entry(list, row); },
                             {},
                             [this] { change(with_rates(content_.house, calibrated_rates(content_.house))); }};
    if (content_.this_event) answers.add_this_event = [this] { add_this_event(); };
    lists_.push_back(new HouseListPage(book_, list, content_.house, palettes, std::move(answers)));
    add_page(lists_.back(), shown(table_of(content_.house, list, palettes).title));
  }
  pages_->Bind(wxEVT_LISTBOX, [this](wxCommandEvent&) {
    if (pages_->GetSelection() >= 0) book_->ChangeSelection(static_cast<std::size_t>(pages_->GetSelection()));
  });
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  across->Add(pages_, wxSizerFlags().Expand());
  across->Add(book_, wxSizerFlags(1).Expand().Border(wxLEFT, FromDIP(8)));
  auto* where = new wxStaticText(this, wxID_ANY, wxControl::EscapeMnemonics(shown(content_.where)), wxDefaultPosition,
                                 wxDefaultSize, wxST_ELLIPSIZE_MIDDLE);
  where->SetToolTip(shown(content_.where));
  auto* all = new wxBoxSizer(wxVERTICAL);
  all->Add(across, wxSizerFlags(1).Expand().Border(wxALL, FromDIP(10)));
  all->Add(where, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  all->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  SetSizer(all);
  FindWindow(wxID_OK)->SetLabel("&Save");
  FindWindow(wxID_OK)->Enable(content_.can_be_saved);
  SetSize(FromDIP(wxSize(1060, 680)));
  Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& event) {
        if (settle()) event.Skip();
      },
      wxID_OK);
  change(content_.house);
  show_page(0);
  pages_->SetFocus();
}

void HouseDialog::add_page(wxWindow* window, const wxString& name) {
  book_->AddPage(window, name);
  pages_->Append(name);
}

void HouseDialog::show_page(std::size_t number) {
  pages_->SetSelection(static_cast<int>(number));
  book_->ChangeSelection(number);
}

/// Every page follows, since a change on one can show on another.
void HouseDialog::change(House house) {
  content_.house = std::move(house);
  for (const HousePage page : house_pages) fields(page).show(page_of(content_.house, page));
  for (HouseListPage* page : lists_) page->show(content_.house, content_.palettes->palettes);
}

bool HouseDialog::settle() {
  for (std::size_t i = 0; i < fields_.size(); ++i)
    if (!fields_[i]->settle()) return show_page(i), fields_[i]->settle();
  return true;
}

void HouseDialog::change_entry(HouseList list, std::optional<std::size_t> row) {
  HouseEntryDialog dialog(this, content_.house, list, row, content_.palettes->palettes);
  if (dialog.ShowModal() != wxID_OK || !dialog.changed()) return;
  change(House(*dialog.changed()));
  const std::size_t rows = this->list(list).table().model->rows().size();
  this->list(list).select(row.value_or(rows - 1));
}

void HouseDialog::remove_entry(HouseList list, std::size_t row) {
  change(without_entry(content_.house, list, row));
  const std::size_t rows = this->list(list).table().model->rows().size();
  if (rows > 0) this->list(list).select(std::min(row, rows - 1));
}

void HouseDialog::add_this_event() {
  House house = content_.house;
  house.jobs.push_back(*content_.this_event);
  HouseEntryDialog dialog(this, house, HouseList::jobs, house.jobs.size() - 1, content_.palettes->palettes);
  if (dialog.ShowModal() != wxID_OK || !dialog.changed()) return;
  change(House(*dialog.changed()));
  list(HouseList::jobs).select(content_.house.jobs.size() - 1);
}

}  // namespace quadrille
