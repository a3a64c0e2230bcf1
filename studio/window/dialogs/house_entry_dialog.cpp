#include "studio/window/dialogs/house_entry_dialog.hpp"

#include <wx/button.h>
#include <wx/sizer.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

HouseEntryDialog::HouseEntryDialog(wxWindow* parent, const House& house, HouseList list, std::optional<std::size_t> row,
                                   const std::vector<Palette>& palettes)
    : wxDialog(parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      house_(house),
      list_(list),
      row_(row),
      palettes_(palettes) {
  const std::string noun = table_of(house, list, palettes).entry;
  SetTitle(shown(row ? "Change the " + noun : "Add " + with_article(noun)));
  fields_ = new HouseFields(this, {});
  const auto entry = entry_of(house, list, row, palettes);
  fields_->show({{"", entry}});
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(fields_, wxSizerFlags(1).Expand().Border(wxALL, FromDIP(6)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  SetSizer(sizer);
  const int rows = std::min(static_cast<int>(entry.size()), 12);
  SetSize(FromDIP(wxSize(680, 110 + rows * 44)));
  Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& event) {
        if (accept()) event.Skip();
      },
      wxID_OK);
  if (!entry.empty()) fields_->input(entry.front().key)->SetFocus();
}

bool HouseEntryDialog::accept() {
  HouseEntryChange change = with_entry(house_, list_, row_, fields_->texts(), palettes_);
  for (const auto& [key, text] : fields_->texts()) fields_->say_fault(key, "");
  for (const HouseEntryFault& fault : change.faults) fields_->say_fault(fault.key, fault.sentence);
  if (!change.faults.empty()) fields_->input(change.faults.front().key)->SetFocus();
  changed_ = std::move(change.house);
  return changed_.has_value();
}

}  // namespace quadrille
