#include "studio/window/toolkit/open_dialogs.hpp"

#include <algorithm>

namespace quadrille {

bool OpenDialogs::any() const {
  return std::ranges::any_of(open_, [](const wxWeakRef<wxDialog>& dialog) { return dialog.get() != nullptr; });
}

int OpenDialogs::Enter(wxDialog* dialog) {
  std::erase_if(open_, [](const wxWeakRef<wxDialog>& one) { return one.get() == nullptr; });
  open_.emplace_back(dialog);
  return wxID_NONE;
}

void OpenDialogs::Exit(wxDialog* dialog) {
  std::erase_if(open_,
                [dialog](const wxWeakRef<wxDialog>& one) { return one.get() == nullptr || one.get() == dialog; });
}

}  // namespace quadrille
