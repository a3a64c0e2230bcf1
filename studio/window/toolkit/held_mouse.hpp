// The mouse while a window holds it during a drag.
#pragma once

namespace quadrille {

/// Ends the drag that is going on, if there is one, as the desktop does when it takes the mouse away: what was dragged so
/// far stays. Before a question is asked or the window closes, neither of which may meet a held mouse.
void let_go_of_mouse();

}  // namespace quadrille
