// Totals: balloons by size and colour with spares and packs, and supplies.
#pragma once

#include <wx/panel.h>
#include <wx/stattext.h>

#include "studio/window/job/study.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

class TotalsPanel : public wxPanel {
 public:
  explicit TotalsPanel(wxWindow* parent);

  /// Shows the counts of `study`; null: nothing.
  void show(const Study* study);
  /// Says beside the sum that newer figures are being worked out.
  void set_stale(bool stale);

  const Table& balloons() const { return balloons_; }
  const Table& supplies() const { return supplies_; }
  wxString headline() const { return headline_->GetLabel(); }

 private:
  void say();

  wxStaticText* headline_;
  Table balloons_, supplies_;
  wxString sum_;
  bool stale_ = false;
};

}  // namespace quadrille
