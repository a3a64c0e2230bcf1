// GTK's own functions, found at run time in what wxWidgets has loaded, so that no GTK headers are needed to build.
#include "studio/window/accessible_name.hpp"

#include <wx/dynlib.h>
#include <wx/platform.h>

namespace quadrille {

void set_accessible_name([[maybe_unused]] wxWindow* window, [[maybe_unused]] const wxString& name,
                         [[maybe_unused]] const wxString& description) {
#ifdef __WXGTK__
  using Accessible = void* (*)(void* widget);
  using SetText = void (*)(void* accessible, const char* text);
  const auto find = [](const char* symbol) {
    return wxDynamicLibrary::RawGetSymbol(wxDynamicLibrary::GetProgramHandle(), symbol);
  };
  const auto accessible_of = reinterpret_cast<Accessible>(find("gtk_widget_get_accessible"));
  const auto set_name = reinterpret_cast<SetText>(find("atk_object_set_name"));
  const auto set_description = reinterpret_cast<SetText>(find("atk_object_set_description"));
  if (accessible_of == nullptr || set_name == nullptr || set_description == nullptr) return;
  void* accessible = accessible_of(window->GetHandle());
  if (accessible == nullptr) return;
  set_name(accessible, name.utf8_str());
  set_description(accessible, description.utf8_str());
#endif
}

}  // namespace quadrille
