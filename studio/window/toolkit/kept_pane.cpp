#include "studio/window/toolkit/kept_pane.hpp"

#include <algorithm>
#include <memory>
#include <optional>

namespace quadrille {
namespace {

/// Of a size, what is shared out between the panes.
int along(const wxSplitterWindow& splitter, const wxSize& size) {
  return splitter.GetSplitMode() == wxSPLIT_VERTICAL ? size.x : size.y;
}

}  // namespace

void keep_second_pane(wxSplitterWindow* splitter, int extent, double share) {
  auto kept = std::make_shared<std::optional<int>>();  // what the user gave it
  splitter->Bind(wxEVT_SIZE, [kept, splitter, extent, share](wxSizeEvent& event) {
    const int room = along(*splitter, event.GetSize()), least = splitter->GetMinimumPaneSize();
    if (room < least) return;  // not on the screen yet: nothing to lay out
    const int own = kept->value_or(std::max(extent, static_cast<int>(share * room)));
    if (room > own) splitter->SetSashPosition(std::max(room - own, least));
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
