// The quote: what the client is asked, what it earns, how it differs from the one that was given, and giving it.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>
#include <wx/stattext.h>

#include <functional>
#include <memory>

#include "studio/window/job/study.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

class QuotePanel : public wxPanel {
 public:
  /// `issue` hears that the user wants to give the quote that is shown.
  QuotePanel(wxWindow* parent, std::function<void()> issue);

  /// Shows the quote of `study`; null: nothing. Where `may_edit` is false it cannot be given.
  void show(const Study* study, bool may_edit);
  /// Says that newer figures are being worked out; what is shown then cannot be given.
  void set_stale(bool stale);

  const Table& lines() const { return lines_; }
  const Table& earnings() const { return earnings_; }
  wxString headline() const { return headline_->GetLabel(); }
  wxString issued() const { return issued_->GetLabel(); }
  wxButton& issue_button() { return *issue_; }

 private:
  void say();

  wxStaticText *headline_, *issued_;
  wxButton* issue_;
  Table lines_, earnings_;
  wxString words_;
  bool stale_ = false, can_issue_ = false;
};

}  // namespace quadrille
