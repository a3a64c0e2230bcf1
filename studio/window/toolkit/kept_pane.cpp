#include "studio/window/toolkit/kept_pane.hpp"

#include <algorithm>
#include <memory>

namespace quadrille {
namespace {

/// Of a size, what is shared out between the panes.
int along(const wxSplitterWindow& splitter, const wxSize& size) {
  return splitter.GetSplitMode() == wxSPLIT_VERTICAL ? size.x : size.y;
}

}  // namespace

void keep_second_pane(wxSplitterWindow* splitter, int extent) {
  auto kept = std::make_shared<int>(extent);
  splitter->Bind(wxEVT_SIZE, [kept, splitter](wxSizeEvent& event) {
    const int room = along(*splitter, event.GetSize()), least = splitter->GetMinimumPaneSize();
    if (room < least) return;  // not on the screen yet: nothing to lay out
    if (room > *kept) splitter->SetSashPosition(std::max(room - *kept, least));
    event.Skip();
  });
  splitter->Bind(wxEVT_SPLITTER_SASH_POS_CHANGING, [kept, splitter](wxSplitterEvent& event) {
    // Events of splitters inside this one come by here too.
    if (event.GetEventObject() == splitter)
      *kept = along(*splitter, splitter->GetClientSize()) - event.GetSashPosition();
    event.Skip();
  });
}

}  // namespace quadrille
