#include "studio/window/toolkit/wheel.hpp"

#include <algorithm>

namespace quadrille {

void leave_wheel_to(wxScrolledWindow* form, wxWindow* input) {
  // A native form scrolls by itself and not by events that are handed on to it.
  input->Bind(wxEVT_MOUSEWHEEL, [form, turned = 0](wxMouseEvent& event) mutable {
    if (event.GetWheelAxis() != wxMOUSE_WHEEL_VERTICAL || event.GetWheelDelta() <= 0) return;
    turned += event.GetWheelRotation();  // a touchpad turns it by less than a notch
    const int notches = turned / event.GetWheelDelta();
    turned -= notches * event.GetWheelDelta();
    const wxPoint start = form->GetViewStart();
    if (notches != 0) form->Scroll(-1, std::max(start.y - notches * std::max(event.GetLinesPerAction(), 1), 0));
  });
}

}  // namespace quadrille
