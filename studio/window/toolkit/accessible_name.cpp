// What a screen reader says, kept by the toolkit beneath.
#include "studio/window/toolkit/accessible_name.hpp"

#include <wx/platform.h>

#include "studio/window/toolkit/gtk_function.hpp"

namespace quadrille {
#ifdef __WXGTK__
namespace {

/// The toolkit's accessible object; null where it has none.
void* accessible_of(const wxWindow* window) {
  const auto of = gtk_function<void* (*)(void* widget)>("gtk_widget_get_accessible");
  return of == nullptr || window->GetHandle() == nullptr ? nullptr : of(window->GetHandle());
}

}  // namespace
#endif

void set_accessible_name([[maybe_unused]] wxWindow* window, [[maybe_unused]] const wxString& name,
                         [[maybe_unused]] const wxString& description) {
#ifdef __WXGTK__
  using SetText = void (*)(void* accessible, const char* text);
  const auto set_name = gtk_function<SetText>("atk_object_set_name");
  const auto set_description = gtk_function<SetText>("atk_object_set_description");
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
  const auto name_of = gtk_function<const char* (*)(void* accessible)>("atk_object_get_name");
  void* const accessible = accessible_of(window);
  const char* const name = accessible == nullptr || name_of == nullptr ? nullptr : name_of(accessible);
  if (name != nullptr) return wxString::FromUTF8(name);
#endif
  return {};
}

}  // namespace quadrille
