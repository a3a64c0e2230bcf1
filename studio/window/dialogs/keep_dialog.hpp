// Asks under which name and at which price a piece goes into the repertoire.
#pragma once

#include <wx/dialog.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <cstdint>
#include <optional>
#include <string>

namespace quadrille {

class KeepDialog : public wxDialog {
 public:
  /// `name` and `price_minor` stand in it at first; the price is in the house's `currency` (ISO 4217).
  KeepDialog(wxWindow* parent, const std::string& name, std::optional<std::int64_t> price_minor,
             const std::string& currency);

  std::string name() const;
  /// Nothing: as it is reckoned.
  std::optional<std::int64_t> price_minor() const;
  wxTextCtrl& name_field() { return *name_; }
  wxTextCtrl& price_field() { return *price_; }
  wxString name_fault() const { return name_fault_->GetLabel(); }
  wxString price_fault() const { return price_fault_->GetLabel(); }
  /// True where both fields can be used; else what is wrong stands beside them.
  bool check();

 private:
  std::string currency_;
  wxTextCtrl *name_, *price_;
  wxStaticText *name_fault_, *price_fault_;
};

}  // namespace quadrille
