// Sentences to the user in dialogs.
#pragma once

#include <wx/window.h>

#include <string>

namespace quadrille {

/// Says `heading` ("The event could not be saved") and the sentence that explains it.
void tell_error(wxWindow* parent, const wxString& heading, const std::string& sentence);

enum class Answer { yes, no, cancel };

/// Asks with the verbs on the buttons; closing the dialog is `cancel`.
Answer ask(wxWindow* parent, const wxString& heading, const std::string& sentence, const wxString& yes,
           const wxString& no, const wxString& cancel = "&Cancel");
/// Asks yes or cancel.
bool ask_whether(wxWindow* parent, const wxString& heading, const std::string& sentence, const wxString& yes);

}  // namespace quadrille
