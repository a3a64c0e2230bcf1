// A pane that keeps its size while the window around it changes.
#pragma once

#include <wx/splitter.h>

namespace quadrille {

/// The second pane of a splitter, which is split already, keeps `extent` pixels, or what the user gave it, however the
/// splitter changes; the first pane keeps its least size before that. Until the user has moved it, it takes `share` of the
/// splitter (0 to 1) where that is more. The toolkit's own way, by a share of what is gained
/// or lost, loses the size while a window is still growing to its first one.
void keep_second_pane(wxSplitterWindow* splitter, int extent, double share = 0);

}  // namespace quadrille
