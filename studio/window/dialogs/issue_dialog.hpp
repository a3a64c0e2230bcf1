// Asks for what is needed to give a quote: the day and the decorator's own number.
#pragma once

#include <wx/datectrl.h>
#include <wx/dateevt.h>
#include <wx/dialog.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <string>

namespace quadrille {

class IssueDialog : public wxDialog {
 public:
  /// `today` in ISO 8601 stands in it at first; the quote is good for `valid_days` from the day that is chosen.
  IssueDialog(wxWindow* parent, const std::string& total, const std::string& today, std::int64_t valid_days);

  /// ISO 8601.
  std::string date() const;
  std::string number() const;
  wxTextCtrl& number_field() { return *number_; }
  wxDatePickerCtrl& date_field() { return *date_; }

 private:
  void show_validity();

  std::int64_t valid_days_;
  wxDatePickerCtrl* date_;
  wxTextCtrl* number_;
  wxStaticText* validity_;
};

/// Today by the desktop's clock, in ISO 8601.
std::string today();

}  // namespace quadrille
