#include "studio/window/dialogs/issue_dialog.hpp"

#include <wx/sizer.h>

#include "studio/model/calendar.hpp"
#include "studio/paper/page_frame.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

IssueDialog::IssueDialog(wxWindow* parent, const std::string& total, const std::string& today, std::int64_t valid_days)
    : wxDialog(parent, wxID_ANY, "Issue the quote"), valid_days_(valid_days) {
  wxDateTime day;
  if (!day.ParseISODate(shown(today))) day = wxDateTime::Today();
  date_ = new wxDatePickerCtrl(this, wxID_ANY, day);
  number_ = new wxTextCtrl(this, wxID_ANY, "");
  validity_ = new wxStaticText(this, wxID_ANY, "");
  set_accessible_names(date_, "Day on which the quote is given");
  set_accessible_name(number_, "Your own number of the quote", "");
  auto* fields = new wxFlexGridSizer(2, FromDIP(wxSize(12, 8)));
  fields->AddGrowableCol(1);
  const auto add = [&](const char* label, wxWindow* field) {
    fields->Add(new wxStaticText(this, wxID_ANY, label), wxSizerFlags().CentreVertical());
    fields->Add(field, wxSizerFlags().Expand());
  };
  add("Given on", date_);
  add("Your number", number_);
  add("Valid until", validity_);
  auto* words =
      new wxStaticText(this, wxID_ANY,
                       shown("The client is asked " + total +
                             ". The quote is kept in the event with the figures it is made from;\n"
                             "when prices change later you see the difference, and nothing changes by itself."));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(words, wxSizerFlags().Border(wxALL, FromDIP(12)));
  sizer->Add(fields, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  FindWindow(wxID_OK)->SetLabel("&Issue");
  SetSizerAndFit(sizer);
  date_->Bind(wxEVT_DATE_CHANGED, [this](wxDateEvent&) { show_validity(); });
  show_validity();
  number_->SetFocus();
}

std::string IssueDialog::date() const { return text_of(date_->GetValue().FormatISODate()); }

std::string IssueDialog::number() const { return text_of(number_->GetValue().Strip(wxString::both)); }

void IssueDialog::show_validity() { validity_->SetLabelText(shown(print_date(days_after(date(), valid_days_)))); }

std::string today() { return text_of(wxDateTime::Today().FormatISODate()); }

}  // namespace quadrille
