// Asks for what is needed to give a quote: the day and the decorator's own number.
#pragma once

#include <wx/dialog.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <string>

#include "studio/model/event.hpp"

namespace quadrille {

class IssueDialog : public wxDialog {
 public:
  /// `today` in ISO 8601 stands in it at first; the quote is good for `valid_days` from the day that is chosen. `units`
  /// tell how days are typed (see read_day).
  IssueDialog(wxWindow* parent, const std::string& total, const std::string& today, std::int64_t valid_days,
              Units units);

  /// ISO 8601; empty while what is typed is no day.
  std::string date() const;
  std::string number() const;
  wxTextCtrl& number_field() { return *number_; }
  wxTextCtrl& date_field() { return *date_; }

 private:
  void show_validity();

  std::int64_t valid_days_;
  Units units_;
  wxTextCtrl* date_;
  wxTextCtrl* number_;
  wxStaticText* validity_;
};

/// Today by the desktop's clock, in ISO 8601.
std::string today();

}  // namespace quadrille
