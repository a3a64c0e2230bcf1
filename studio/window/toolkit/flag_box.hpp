// A native box for a yes or no in which several things may differ.
#pragma once

#include <wx/checkbox.h>

#include <optional>

namespace quadrille {

/// Shows the flag; nothing: it differs. The box is made with wxCHK_3STATE.
inline void show_flag(wxCheckBox& box, std::optional<bool> flag) {
  box.Set3StateValue(!flag ? wxCHK_UNDETERMINED : *flag ? wxCHK_CHECKED : wxCHK_UNCHECKED);
}

/// What a click on the box means that showed `before`: where they differ, yes for all. GTK clears such a box, which would
/// be no for all.
inline bool flag_after_click(const wxCheckBox& box, std::optional<bool> before) {
  return !before || box.Get3StateValue() == wxCHK_CHECKED;
}

}  // namespace quadrille
