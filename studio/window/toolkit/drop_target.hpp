// Files dropped onto a window.
#pragma once

#include <wx/dnd.h>
#include <wx/event.h>

#include <filesystem>
#include <functional>

namespace quadrille {

/// A target that hands the first dropped file to `open`, after the drop is over (a dialog within it would block the
/// program that the file comes from). `owner` runs it and is never called when it is gone; the window that the target
/// is set on owns the target.
wxDropTarget* make_drop_target(wxEvtHandler* owner, std::function<void(const std::filesystem::path&)> open);

}  // namespace quadrille
