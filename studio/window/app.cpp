// Start and rescue.
#include "studio/window/app.hpp"

#include <wx/image.h>
#include <wx/uilocale.h>

#include <exception>
#include <iostream>
#include <system_error>

#include "studio/window/main_window.hpp"
#include "studio/window/panels/start_page.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

// The base class would only read the command line, which main has done.
bool App::OnInit() {
  SetAppName("quadrille");
  SetAppDisplayName("Quadrille");
  // Dates and the toolkit's own words follow the desktop; our numbers never do (sdk/number.hpp).
  wxUILocale::UseDefault();
  auto* window = new MainWindow(executable_);
  SetTopWindow(window);
  window->Show();
  // A question about unsaved work is best asked over the window, not before it.
  window->CallAfter([window, event = event_] {
    std::error_code unknown;
    const auto file = event ? std::filesystem::absolute(*event, unknown).lexically_normal() : std::filesystem::path();
    if (!window->offer_recovery(file) && event) window->open_file(*event);
    if (window->document() == nullptr) window->start().begin_button().SetFocus();
  });
  return true;
}

bool App::OnExceptionInMainLoop() {
  std::string what = "an unknown fault";
  try {
    throw;
  } catch (const std::exception& error) {
    what = error.what();
  } catch (...) {
  }
  tell_error(GetTopWindow(), "The last command failed",
             "The studio met a fault it did not expect: " + what +
                 ". The event is still open; save it under another name to be safe.");
  return true;
}

void App::OnAssertFailure(const wxChar* file, int line, const wxChar* function, const wxChar* condition,
                          const wxChar* message) {
  const wxString text = wxString() << file << ":" << line << ": " << function << ": " << condition << " " << message;
  std::cerr << "quadrille-studio: " << text_of(text) << std::endl;
}

}  // namespace quadrille
