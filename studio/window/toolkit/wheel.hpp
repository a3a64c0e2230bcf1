// The wheel over a field of a form.
#pragma once

#include <wx/scrolwin.h>

namespace quadrille {

/// Has the wheel over `input` scroll `form`, which holds it. A native choice would take another entry instead, so that
/// scrolling a form past it would change what it stands for.
void leave_wheel_to(wxScrolledWindow* form, wxWindow* input);

}  // namespace quadrille
