#include "studio/window/dialogs/details_dialog.hpp"

#include <wx/button.h>
#include <wx/sizer.h>

#include <algorithm>
#include <utility>

#include "studio/form/event_form.hpp"
#include "studio/model/event_edits.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

DetailsDialog::DetailsDialog(wxWindow* parent, Event event, std::shared_ptr<const LoadedPalettes> palettes)
    : wxDialog(parent, wxID_ANY, "Details of the event", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      event_(std::move(event)),
      palettes_(std::move(palettes)) {
  fields_ = new FactRows(this, [this](const std::string& key, const std::string& text) -> std::optional<std::string> {
    auto changed = with_event_field(event_, key, text);
    if (!changed) return changed.error;
    event_ = std::move(*changed.value);
    show_fields();
    return std::nullopt;
  });
  auto* heading = new wxStaticText(this, wxID_ANY, "Palettes it draws from");
  heading->SetFont(GetFont().Bold());
  list_ = new wxCheckListBox(this, wxID_ANY);
  set_accessible_name(list_, "Palettes it draws from", "");
  for (const Palette& palette : palettes_->palettes) {
    const int at = list_->Append(shown(palette.name));
    list_->Check(static_cast<unsigned>(at), std::ranges::find(event_.palettes, palette.key) != event_.palettes.end());
  }
  list_->Bind(wxEVT_CHECKLISTBOX, [this](wxCommandEvent& told) { toggle(static_cast<unsigned>(told.GetInt())); });
  fault_ = new wxStaticText(this, wxID_ANY, "");
  auto* right = new wxBoxSizer(wxVERTICAL);
  right->Add(heading, wxSizerFlags().Border(wxALL, FromDIP(10)));
  right->Add(list_, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT, FromDIP(10)));
  right->Add(fault_, wxSizerFlags().Expand().Border(wxALL, FromDIP(10)));
  auto* halves = new wxBoxSizer(wxHORIZONTAL);
  halves->Add(fields_, wxSizerFlags(3).Expand());
  halves->Add(right, wxSizerFlags(2).Expand());
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(halves, wxSizerFlags(1).Expand().Border(wxTOP, FromDIP(6)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  FindWindow(wxID_OK)->SetLabel("&Keep");
  SetSizer(sizer);
  SetMinSize(FromDIP(wxSize(560, 360)));
  SetSize(FromDIP(wxSize(760, 600)));
  show_fields();
  Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& told) {
        if (settle()) told.Skip();
      },
      wxID_OK);
  if (wxWindow* title = fields_->input("title")) title->SetFocus();
}

void DetailsDialog::show_fields() { fields_->show(event_fields(event_), "event", true); }

bool DetailsDialog::settle() {
  if (fields_->settle()) return true;
  fields_->focus_fault();
  return false;
}

void DetailsDialog::toggle(unsigned number) {
  if (number >= palettes_->palettes.size()) return;
  const Palette& palette = palettes_->palettes[number];
  wxString fault;
  if (list_->IsChecked(number)) {
    event_ = with_palette(std::move(event_), palette.key);
  } else if (uses_palette(event_, palette.key)) {
    list_->Check(number, true);
    fault = shown("Pieces have colours of “" + palette.name + "”: it stays until they have others.");
  } else {
    event_ = without_palette(std::move(event_), palette.key);
  }
  fault_->SetLabelText(fault);
  fault_->Wrap(std::max(FromDIP(120), list_->GetSize().x));
  Layout();
}

}  // namespace quadrille
