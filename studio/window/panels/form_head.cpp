#include "studio/window/panels/form_head.hpp"

#include <algorithm>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/flag_box.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

FormHead::FormHead(wxWindow* parent, wxSizer& rows, bool several, const FormAnswers& answers) : answers_(answers) {
  const int edge = parent->FromDIP(10);
  heading_ = new wxStaticText(parent, wxID_ANY, "");
  heading_->SetFont(parent->GetFont().Bold().Larger());
  rows.Add(heading_, wxSizerFlags().Expand().Border(wxALL, edge));
  auto* line = new wxBoxSizer(wxHORIZONTAL);
  if (several) {
    names_ = new wxStaticText(parent, wxID_ANY, "");
    rows.Add(names_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, edge));
  } else {
    name_ = new wxTextCtrl(parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_PROCESS_ENTER);
    set_accessible_name(name_, "Name of the piece", "");
    name_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) { take_name(); });
    name_->Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
      event.Skip();
      take_name();
    });
    line->Add(name_, wxSizerFlags(1).CentreVertical().Border(wxRIGHT, parent->FromDIP(8)));
  }
  locked_ = new wxCheckBox(parent, wxID_ANY, "Locked", wxDefaultPosition, wxDefaultSize, wxCHK_3STATE);
  hidden_ = new wxCheckBox(parent, wxID_ANY, "Hidden", wxDefaultPosition, wxDefaultSize, wxCHK_3STATE);
  set_accessible_name(locked_, "Locked", "It stays where it stands");
  set_accessible_name(hidden_, "Hidden", "It is neither drawn nor counted");
  locked_->Bind(wxEVT_CHECKBOX,
                [this](wxCommandEvent&) { answers_.locked(flag_after_click(*locked_, shown_locked_)); });
  hidden_->Bind(wxEVT_CHECKBOX,
                [this](wxCommandEvent&) { answers_.hidden(flag_after_click(*hidden_, shown_hidden_)); });
  line->Add(locked_, wxSizerFlags().CentreVertical());
  line->Add(hidden_, wxSizerFlags().CentreVertical().Border(wxLEFT, parent->FromDIP(8)));
  rows.Add(line, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, edge));
}

void FormHead::take_name() {
  if (!telling_ || name_ == nullptr || !name_->IsModified()) return;
  const wxString name = name_->GetValue().Strip(wxString::both);
  name_->DiscardEdits();
  if (name != shown_name_) answers_.renamed(text_of(shown_name_ = name));
}

void FormHead::fill(const FormContent& content) {
  heading_->SetLabelText(shown(content.heading));
  const wxString name = shown(content.name);
  if (name_ && !name_->IsModified() && name_->GetValue() != name) name_->ChangeValue(name);
  shown_name_ = name;
  show_flag(*locked_, shown_locked_ = content.locked);
  show_flag(*hidden_, shown_hidden_ = content.hidden);
  for (wxWindow* window :
       {static_cast<wxWindow*>(name_), static_cast<wxWindow*>(locked_), static_cast<wxWindow*>(hidden_)})
    if (window != nullptr) window->Enable(content.may_edit);
}

void FormHead::wrap(int width) {
  if (names_ == nullptr) return;
  names_->SetLabelText(shown_name_);
  names_->Wrap(std::max(width, names_->FromDIP(120)));
}

}  // namespace quadrille
