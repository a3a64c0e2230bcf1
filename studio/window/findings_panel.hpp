// Findings: everything there is to say about the event, worst first, with the full sentence of the selected one below.
#pragma once

#include <wx/panel.h>
#include <wx/textctrl.h>

#include <functional>
#include <string>
#include <vector>

#include "studio/model/finding.hpp"
#include "studio/window/study.hpp"
#include "studio/window/table.hpp"

namespace quadrille {

class FindingsPanel : public wxPanel {
 public:
  /// `picked` hears of the finding that the user selects.
  FindingsPanel(wxWindow* parent, std::function<void(const Finding&)> picked);

  void show(const Study* study);
  const Table& table() const { return table_; }
  /// The selected finding in full.
  wxString details() const { return details_->GetValue(); }

 private:
  void show_details();

  std::function<void(const Finding&)> picked_;
  Findings findings_;                   ///< in the order shown
  std::vector<std::string> sentences_;  ///< of each, in full
  Table table_;
  wxTextCtrl* details_;
  bool telling_ = true;  ///< false while the selection is set by the program
};

}  // namespace quadrille
