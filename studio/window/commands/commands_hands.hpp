// The parts of the menus that put hands on the selected pieces.
#pragma once

#include "studio/window/commands/commands.hpp"

namespace quadrille {

/// Cut, copy, paste.
void append_clipboard(wxMenu& menu);
/// What makes more of the selected pieces, turns, lines up and orders them.
void append_hands(wxMenu& menu);
/// Name, lock, hide, remove.
void append_states(wxMenu& menu);
void append_repertoire(wxMenu& menu);

/// What of all these can be done.
void refresh_hands(wxMenuBar& bar, const MenuState& state);

}  // namespace quadrille
