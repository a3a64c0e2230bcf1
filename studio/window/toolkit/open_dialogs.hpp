// Which dialogs the user has to answer before anything else.
#pragma once

#include <wx/dialog.h>
#include <wx/modalhook.h>
#include <wx/weakref.h>

#include <vector>

namespace quadrille {

/// Knows whether a modal dialog of the program is open. The toolkit keeps keys and clicks from the window behind one, but
/// not files that are dropped onto it.
class OpenDialogs : public wxModalDialogHook {
 public:
  OpenDialogs() { Register(); }
  ~OpenDialogs() override { Unregister(); }

  bool any() const;

 private:
  int Enter(wxDialog* dialog) override;
  void Exit(wxDialog* dialog) override;

  std::vector<wxWeakRef<wxDialog>> open_;  ///< one that was answered by another hook ends without a word
};

}  // namespace quadrille
