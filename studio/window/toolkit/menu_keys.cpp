#include "studio/window/toolkit/menu_keys.hpp"

#include <wx/accel.h>
#include <wx/frame.h>
#include <wx/menu.h>

#include <memory>

namespace quadrille {
namespace {

/// The item with this key and Ctrl; null where there is none.
const wxMenuItem* item_with(const wxMenu& menu, int key) {
  for (const wxMenuItem* item : menu.GetMenuItems()) {
    if (const wxMenu* const inside = item->GetSubMenu()) {
      if (const wxMenuItem* const found = item_with(*inside, key)) return found;
      continue;
    }
    const std::unique_ptr<wxAcceleratorEntry> accelerator(item->GetAccel());
    if (accelerator && accelerator->GetFlags() == wxACCEL_CTRL && accelerator->GetKeyCode() == key) return item;
  }
  return nullptr;
}

const wxMenuItem* item_with(const wxMenuBar& bar, int key) {
  for (std::size_t i = 0; i < bar.GetMenuCount(); ++i)
    if (const wxMenuItem* const found = item_with(*bar.GetMenu(i), key)) return found;
  return nullptr;
}

}  // namespace

void leave_keys_to_menus(wxWindow* list) {
  list->Bind(wxEVT_CHAR_HOOK, [list](wxKeyEvent& event) {
    const int key = event.GetKeyCode();
    const auto* const frame = wxDynamicCast(wxGetTopLevelParent(list), wxFrame);
    if (event.GetModifiers() != wxMOD_CONTROL || (key != 'N' && key != 'P') || !frame || !frame->GetMenuBar())
      return event.Skip();
    const wxMenuItem* const item = item_with(*frame->GetMenuBar(), key);
    if (item == nullptr || !item->IsEnabled()) return event.Skip();
    wxCommandEvent command(wxEVT_MENU, item->GetId());
    list->ProcessWindowEvent(command);  // goes up to the window
  });
}

}  // namespace quadrille
