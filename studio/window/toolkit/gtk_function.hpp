// GTK's own functions, found at run time in what wxWidgets has loaded, so that no GTK headers are needed to build.
#pragma once

#include <wx/dynlib.h>

namespace quadrille {

/// The function of this name, to be called with the types that GTK's manual gives it; null where there is none.
template <class Function>
Function gtk_function(const char* symbol) {
  return reinterpret_cast<Function>(wxDynamicLibrary::RawGetSymbol(wxDynamicLibrary::GetProgramHandle(), symbol));
}

}  // namespace quadrille
