// Names for screen readers on windows that draw themselves.
#pragma once

#include <wx/window.h>

namespace quadrille {

/// Tells assistive technology what `window` is. On GTK the toolkit gives a window it did not draw no name of its own;
/// elsewhere, and where GTK is not to be found, this does nothing beyond the window's name.
void set_accessible_name(wxWindow* window, const wxString& name, const wxString& description);

}  // namespace quadrille
