// Message dialogs with a heading and an explanation.
#include "studio/window/toolkit/notices.hpp"

#include <wx/msgdlg.h>

#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

void tell_error(wxWindow* parent, const wxString& heading, const std::string& sentence) {
  wxMessageDialog dialog(parent, heading, "Quadrille", wxOK | wxICON_ERROR | wxCENTRE);
  dialog.SetExtendedMessage(shown(sentence));
  dialog.ShowModal();
}

Answer ask(wxWindow* parent, const wxString& heading, const std::string& sentence, const wxString& yes,
           const wxString& no, const wxString& cancel) {
  wxMessageDialog dialog(parent, heading, "Quadrille", wxYES_NO | wxCANCEL | wxICON_WARNING | wxCENTRE);
  dialog.SetExtendedMessage(shown(sentence));
  dialog.SetYesNoCancelLabels(yes, no, cancel);
  switch (dialog.ShowModal()) {
    case wxID_YES:
      return Answer::yes;
    case wxID_NO:
      return Answer::no;
    default:
      return Answer::cancel;
  }
}

bool ask_whether(wxWindow* parent, const wxString& heading, const std::string& sentence, const wxString& yes) {
  wxMessageDialog dialog(parent, heading, "Quadrille", wxOK | wxCANCEL | wxCANCEL_DEFAULT | wxICON_WARNING | wxCENTRE);
  dialog.SetExtendedMessage(shown(sentence));
  dialog.SetOKCancelLabels(yes, "&Cancel");
  return dialog.ShowModal() == wxID_OK;
}

}  // namespace quadrille
