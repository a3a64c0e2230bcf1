// Keys that native lists would take before the menus are asked.
#pragma once

class wxWindow;

namespace quadrille {

/// Gives Ctrl+N and Ctrl+P, which lists of GTK take for the next row and the one before, to the menu items of `list`'s
/// window that have them. Nothing changes where no item has the key, or it is off.
void leave_keys_to_menus(wxWindow* list);

}  // namespace quadrille
