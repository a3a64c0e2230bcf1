#include "studio/window/dialogs/issue_dialog.hpp"

#include <wx/sizer.h>

#include "studio/form/facts.hpp"
#include "studio/model/calendar.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

IssueDialog::IssueDialog(wxWindow* parent, const std::string& total, const std::string& today, std::int64_t valid_days,
                         Units units)
    : wxDialog(parent, wxID_ANY, "Issue the quote"), valid_days_(valid_days), units_(units) {
  date_ = new wxTextCtrl(this, wxID_ANY, shown(print_date(today)));
  number_ = new wxTextCtrl(this, wxID_ANY, "");
  validity_ = new wxStaticText(this, wxID_ANY, "");
  set_accessible_name(date_, "Day on which the quote is given", "");
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
  date_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { show_validity(); });
  show_validity();
  number_->SetFocus();
}

std::string IssueDialog::date() const {
  const auto day = read_day("The day", text_of(date_->GetValue()), units_);
  return day ? *day : std::string();
}

std::string IssueDialog::number() const { return text_of(number_->GetValue().Strip(wxString::both)); }

void IssueDialog::show_validity() {
  const std::string day = date();
  validity_->SetLabelText(shown(day.empty()
                                    ? "Write the day as 19 June 2027 or 2027-06-19."
                                    : print_date(days_after(day, valid_days_)) + ", given on " + print_date(day)));
  FindWindow(wxID_OK)->Enable(!day.empty());
}

std::string today() { return text_of(wxDateTime::Today().FormatISODate()); }

}  // namespace quadrille
