#include "studio/window/toolkit/held_mouse.hpp"

#include <wx/window.h>

namespace quadrille {

void let_go_of_mouse() {
  wxWindow* const holder = wxWindow::GetCapture();
  if (holder == nullptr) return;
  holder->ReleaseMouse();
  wxMouseCaptureLostEvent lost(holder->GetId());
  lost.SetEventObject(holder);
  holder->ProcessWindowEvent(lost);
}

}  // namespace quadrille
