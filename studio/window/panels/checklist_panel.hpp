// The safety checklist of the shown area: what to see to, with boxes to tick, and why, on whose word.
#pragma once

#include <wx/panel.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <functional>
#include <string>
#include <vector>

#include "studio/standing/checklist.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

class ChecklistPanel : public wxPanel {
 public:
  /// `ticked` hears of a box that the user ticks or clears; what is shown then follows by show().
  ChecklistPanel(wxWindow* parent, std::function<void(const ChecklistLine& line, bool done)> ticked);

  /// Shows those lines that are of the area or of the whole event; `waiting` says that levels of wind are still to come.
  void show(const Event& event, const std::string& area, std::vector<ChecklistLine> lines, bool waiting);
  void forget();

  const Table& table() const { return table_; }
  const std::vector<ChecklistLine>& lines() const { return lines_; }
  wxString headline() const { return headline_->GetLabel(); }
  /// The selected line in full.
  wxString details() const { return details_->GetValue(); }

 private:
  void show_details();
  void tick(std::size_t row, bool done);
  void tick_selected();

  std::function<void(const ChecklistLine&, bool)> ticked_;
  std::vector<ChecklistLine> lines_;
  wxStaticText* headline_;
  Table table_;
  wxTextCtrl* details_;
};

}  // namespace quadrille
