// Every key and what it does.
#pragma once

#include <wx/dialog.h>

#include <utility>
#include <vector>

#include "studio/window/toolkit/table.hpp"

namespace quadrille {

class KeysDialog : public wxDialog {
 public:
  KeysDialog(wxWindow* parent, const std::vector<std::pair<wxString, wxString>>& keys);
  const Table& table() const { return table_; }

 private:
  Table table_;
};

}  // namespace quadrille
