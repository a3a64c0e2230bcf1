// Names for screen readers on windows that draw themselves.
#pragma once

#include <wx/window.h>

namespace quadrille {

/// Tells assistive technology what `window` is. On GTK the toolkit gives a window it did not draw no name of its own;
/// elsewhere, and where GTK is not to be found, this does nothing beyond the window's name.
void set_accessible_name(wxWindow* window, const wxString& name, const wxString& description);

/// The same name for the window and for all that it is made of, such as the field and the button of a date.
void set_accessible_names(wxWindow* window, const wxString& name);

/// What assistive technology is told of it: the name that was set, or the native control's own, such as its label. Empty
/// where it has none, and where GTK is not to be found.
wxString accessible_name_of(const wxWindow* window);

}  // namespace quadrille
