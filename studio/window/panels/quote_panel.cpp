#include "studio/window/panels/quote_panel.hpp"

#include <wx/sizer.h>
#include <wx/statline.h>

#include <algorithm>
#include <utility>

#include "studio/quote/quote_findings.hpp"
#include "studio/quote/quote_words.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// The line as it was given, where it was given otherwise; "new" where it was not.
wxString given(const Study& study, const QuoteLine& line) {
  if (!study.changes) return {};
  for (const LineChange& change : study.changes->lines)
    if (change.is == line)
      return change.was ? shown(print_figure(change.was->total_minor(), study.event.issued->quote.currency))
                        : wxString("new");
  return {};
}

std::vector<TableRow> rows_of(const Study& study) {
  const Quote& quote = study.quoted.quote;
  const auto money = [&](Minor amount) { return shown(print_figure(amount, quote.currency)); };
  std::vector<TableRow> rows;
  for (const QuoteLine& line : quote.lines)
    rows.push_back({{shown(line.text), money(line.net_minor), shown(print_share(line.tax)), money(line.tax_minor),
                     money(line.total_minor()), given(study, line)},
                    {},
                    ""});
  if (study.changes)
    for (const LineChange& change : study.changes->lines)
      if (change.was && !change.is)
        rows.push_back({{shown(change.was->text), "", "", "", "taken out",
                         shown(print_figure(change.was->total_minor(), study.event.issued->quote.currency))},
                        {},
                        ""});
  if (rows.empty()) return rows;
  const Quote* const was = study.event.issued ? &study.event.issued->quote : nullptr;
  const auto sum = [&](const char* what, Minor amount, Minor Quote::*of, Minor net, Minor tax, bool with_tax) {
    const bool differs = was != nullptr && (was->*of != amount || was->currency != quote.currency);
    rows.push_back({{what, with_tax ? money(net) : wxString(), "", with_tax ? money(tax) : wxString(), money(amount),
                     differs ? shown(print_figure(was->*of, was->currency)) : wxString()},
                    {},
                    ""});
  };
  sum("Total", quote.total_minor, &Quote::total_minor, quote.net_minor, quote.tax_minor, true);
  if (quote.deposit_minor != 0) {
    sum("Deposit", quote.deposit_minor, &Quote::deposit_minor, 0, 0, false);
    sum("Balance", quote.balance_minor, &Quote::balance_minor, 0, 0, false);
  }
  return rows;
}

wxString issued_words(const Study& study) {
  if (!study.event.issued) return "No quote has been given yet.";
  std::string text = print_issued(*study.event.issued);
  if (study.changes && !study.changes->empty())
    text += " · it would be another one today; the client keeps what was given";
  return shown(text);
}

}  // namespace

QuotePanel::QuotePanel(wxWindow* parent, std::function<void()> issue) : wxPanel(parent) {
  headline_ = new wxStaticText(this, wxID_ANY, "");
  headline_->SetFont(GetFont().Bold());
  issued_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END);
  issue_ = new wxButton(this, wxID_ANY, wxString::FromUTF8("&Issue quote…"));
  issue_->SetToolTip("Keep this quote in the event as the one that the client was given");
  issue_->Bind(wxEVT_BUTTON, [heard = std::move(issue)](wxCommandEvent&) { heard(); });
  lines_ = make_table(this,
                      {growing({"What the client is asked", 240}),
                       {"Without tax", 100, true},
                       {"Tax rate", 78, true},
                       {"Tax", 80, true},
                       {"With tax", 90, true},
                       {"As given", 100, true}},
                      "Lines of the quote");
  earnings_ = make_table(this, {growing({"For you alone", 280}), {"", 110, true}}, "What the quote costs and earns");
  auto* halves = new wxBoxSizer(wxHORIZONTAL);
  halves->Add(lines_.list, wxSizerFlags(1).Expand());
  halves->Add(new wxStaticLine(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxLI_VERTICAL),
              wxSizerFlags().Expand());
  halves->Add(earnings_.list, wxSizerFlags().Expand());
  earnings_.list->SetMinSize(FromDIP(wxSize(400, -1)));
  auto* top = new wxBoxSizer(wxHORIZONTAL);
  top->Add(headline_, wxSizerFlags().CentreVertical().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  top->Add(issued_, wxSizerFlags(1).CentreVertical());
  top->Add(issue_, wxSizerFlags().CentreVertical().Border(wxALL, FromDIP(4)));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(top, wxSizerFlags().Expand());
  sizer->Add(halves, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  lay_out_with_room(this);
  say();
}

void QuotePanel::show(const Study* study, bool may_edit) {
  std::vector<TableRow> lines, earnings;
  words_.clear();
  wxString issued;
  can_issue_ = false;
  if (study) {
    lines = rows_of(*study);
    for (const EarningsLine& line : earnings_lines(study->quoted))
      earnings.push_back({{shown(line.what), shown(line.figure)}, {}, ""});
    words_ = lines.empty() ? wxString("Nothing is quoted.")
                           : shown(print_money(study->quoted.quote.total_minor, study->quoted.quote.currency));
    issued = issued_words(*study);
    can_issue_ = may_edit && !study->quoted.quote.lines.empty() && may_be_issued(study->quoted);
  }
  lines_.model->set_rows(std::move(lines));
  earnings_.model->set_rows(std::move(earnings));
  if (issued_->GetLabel() != issued) issued_->SetLabelText(issued);
  say();
}

void QuotePanel::set_stale(bool stale) {
  stale_ = stale;
  say();
}

void QuotePanel::say() {
  wxString text = words_;
  if (stale_) text += (text.empty() ? "" : "   ") + wxString::FromUTF8("updating…");
  if (headline_->GetLabel() != text) headline_->SetLabelText(text);
  issue_->Enable(can_issue_ && !stale_);
  Layout();
}

}  // namespace quadrille
