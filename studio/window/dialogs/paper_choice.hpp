// The papers in a native choice.
#pragma once

#include <wx/choice.h>

#include "studio/paper/sheet.hpp"

namespace quadrille {

/// Fills an empty choice with the papers, in the order of Paper, and chooses this one.
inline void offer_papers(wxChoice& choice, Paper chosen) {
  for (const char* name : {"A4", "Letter", "A3", "Tabloid"}) choice.Append(name);
  choice.SetSelection(static_cast<int>(chosen));
}

}  // namespace quadrille
