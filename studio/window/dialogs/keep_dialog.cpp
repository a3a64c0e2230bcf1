#include "studio/window/dialogs/keep_dialog.hpp"

#include <wx/sizer.h>

#include "studio/model/money.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

KeepDialog::KeepDialog(wxWindow* parent, const std::string& name, std::optional<std::int64_t> price_minor,
                       const std::string& currency)
    : wxDialog(parent, wxID_ANY, "Save to the repertoire"), currency_(currency) {
  auto* fields = new wxFlexGridSizer(2, FromDIP(wxSize(12, 4)));
  fields->AddGrowableCol(1);
  const auto add = [&](const wxString& label, const std::string& text, const wxString& spoken) {
    fields->Add(new wxStaticText(this, wxID_ANY, label), wxSizerFlags().CentreVertical());
    auto* field = new wxTextCtrl(this, wxID_ANY, shown(text));
    set_accessible_name(field, spoken, "");
    fields->Add(field, wxSizerFlags().Expand());
    return field;
  };
  const auto add_fault = [&] {
    fields->AddSpacer(0);
    auto* fault = new wxStaticText(this, wxID_ANY, "");
    fields->Add(fault, wxSizerFlags().Expand());
    return fault;
  };
  name_ = add("Name", name, "Name in the repertoire");
  name_fault_ = add_fault();
  price_ = add("Price in " + shown(currency), price_minor ? print_figure(*price_minor, currency) : "",
               "Price in " + shown(currency) + "; empty: as it is reckoned");
  price_->SetHint("empty: reckoned from the costs");
  price_fault_ = add_fault();
  auto* words =
      new wxStaticText(this, wxID_ANY,
                       "Kept are the measures, the colours and the note, in your house file. Where the same piece\n"
                       "stands in an event without a price of its own, it is quoted at the price given here.");
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(words, wxSizerFlags().Border(wxALL, FromDIP(12)));
  sizer->Add(fields, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  FindWindow(wxID_OK)->SetLabel("&Save");
  SetSizerAndFit(sizer);
  CentreOnParent();
  Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& event) {
        if (check()) event.Skip();
      },
      wxID_OK);
  name_->SetFocus();
  name_->SelectAll();
}

std::string KeepDialog::name() const { return text_of(name_->GetValue().Strip(wxString::both)); }

std::optional<std::int64_t> KeepDialog::price_minor() const {
  return parse_money(text_of(price_->GetValue().Strip(wxString::both)), currency_).value;
}

bool KeepDialog::check() {
  const std::string typed = text_of(price_->GetValue().Strip(wxString::both));
  const auto price = parse_money(typed, currency_);
  std::string price_fault;
  if (!typed.empty() && !price) price_fault = price.error;
  if (price && *price < 0) price_fault = "A price is 0 or more.";
  const bool named = !name().empty();
  name_fault_->SetLabelText(named ? "" : "A name is needed, by which you find it again.");
  price_fault_->SetLabelText(shown(price_fault));
  price_fault_->Wrap(FromDIP(360));
  Fit();
  if (!named)
    name_->SetFocus();
  else if (!price_fault.empty())
    price_->SetFocus();
  return named && price_fault.empty();
}

}  // namespace quadrille
