// The room that a native list has: which columns take what is over, and texts that do not fit.
#pragma once

#include <wx/dataview.h>

namespace quadrille {

/// Lets the column take part of the room that is left over in its list; without one the last column takes all of it.
void let_grow(wxDataViewColumn& column);

/// The whole text of a cell that is not wide enough for it; empty where it is, or there is no text.
wxString cut_text(const wxDataViewCtrl& list, const wxDataViewItem& item, const wxDataViewColumn& column);

/// Has the list show such a text as a tip while the pointer is over its cell.
void show_cut_texts(wxDataViewCtrl* list);

}  // namespace quadrille
