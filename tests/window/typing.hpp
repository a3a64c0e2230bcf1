// Types into the window's fields, and presses, ticks and chooses there, as a user does; what follows is worked out.
#pragma once

#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/dynlib.h>
#include <wx/textctrl.h>

#include "toolkit.hpp"

namespace quadrille {

/// The text, then Enter.
inline void type_into(OpenWindow& window, wxWindow* input, const wxString& text) {
  auto* const field = dynamic_cast<wxTextCtrl*>(input);
  REQUIRE(field != nullptr);
  field->ChangeValue(text);
  tell(*field, wxEVT_TEXT_ENTER);
  window.settle();
}

inline void press(OpenWindow& window, wxButton* button) {
  REQUIRE(button != nullptr);
  tell(*button, wxEVT_BUTTON);
  window.settle();
}

/// Does to the native box what a click or the space bar does.
inline void tick(OpenWindow& window, wxCheckBox* box) {
  REQUIRE(box != nullptr);
  const auto clicked = reinterpret_cast<void (*)(void*)>(
      wxDynamicLibrary::RawGetSymbol(wxDynamicLibrary::GetProgramHandle(), "gtk_button_clicked"));
  const bool found = clicked != nullptr;
  REQUIRE(found);
  clicked(box->GetHandle());
  window.settle();
}

inline void choose(OpenWindow& window, wxChoice& choice, int entry) {
  choice.SetSelection(entry);
  tell(choice, wxEVT_CHOICE);
  window.settle();
}
/// The entry with this label.
inline void choose(OpenWindow& window, wxWindow* input, const wxString& label) {
  auto* const choice = dynamic_cast<wxChoice*>(input);
  REQUIRE(choice != nullptr);
  const int entry = choice->FindString(label);
  REQUIRE(entry != wxNOT_FOUND);
  choose(window, *choice, entry);
}

}  // namespace quadrille
