// GTK's own functions, found at run time in what wxWidgets has loaded, so that no GTK headers are needed to build.
#include "studio/window/toolkit/accessible_name.hpp"

#include <wx/dynlib.h>
#include <wx/platform.h>

namespace quadrille {
#ifdef __WXGTK__
namespace {

template <class Function>
Function find(const char* symbol) {
  return reinterpret_cast<Function>(wxDynamicLibrary::RawGetSymbol(wxDynamicLibrary::GetProgramHandle(), symbol));
}

/// The toolkit's accessible object; null where it has none.
void* accessible_of(const wxWindow* window) {
  const auto of = find<void* (*)(void* widget)>("gtk_widget_get_accessible");
  return of == nullptr || window->GetHandle() == nullptr ? nullptr : of(window->GetHandle());
}

}  // namespace
#endif

void set_accessible_name([[maybe_unused]] wxWindow* window, [[maybe_unused]] const wxString& name,
                         [[maybe_unused]] const wxString& description) {
#ifdef __WXGTK__
  using SetText = void (*)(void* accessible, const char* text);
  const auto set_name = find<SetText>("atk_object_set_name");
  const auto set_description = find<SetText>("atk_object_set_description");
  void* const accessible = accessible_of(window);
  if (accessible == nullptr || set_name == nullptr || set_description == nullptr) return;
  set_name(accessible, name.utf8_str());
  set_description(accessible, description.utf8_str());
#endif
}

void set_accessible_names(wxWindow* window, const wxString& name) {
  set_accessible_name(window, name, "");
  for (wxWindow* part : window->GetChildren()) set_accessible_names(part, name);
}

wxString accessible_name_of([[maybe_unused]] const wxWindow* window) {
#ifdef __WXGTK__
  const auto name_of = find<const char* (*)(void* accessible)>("atk_object_get_name");
  void* const accessible = accessible_of(window);
  const char* const name = accessible == nullptr || name_of == nullptr ? nullptr : name_of(accessible);
  if (name != nullptr) return wxString::FromUTF8(name);
#endif
  return {};
}

}  // namespace quadrille
