// quadrille-studio [EVENT]: the arguments as the system gives them, then the window.
#include <wx/app.h>
#include <wx/init.h>

#include <cstdlib>
#include <iostream>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>
#include <vector>

#include "studio/window/app.hpp"

namespace {

constexpr std::string_view help =
    "quadrille-studio [EVENT]\n"
    "Opens the studio's window, on an event's file where one is given.\n\n"
    "  --version   print the version and end\n"
    "  --help      print this and end\n\n"
    "Exit status: 0 closed by the user, 2 bad usage, 3 there is no display to open a window on.\n"
    "Without a display, 'quadrille draw EVENT --out FILE.pdf' draws the same event.\n";

constexpr int bad_usage = 2, no_display = 3;

int refuse(int status, std::string_view sentence) {
  std::cerr << "quadrille-studio: " << sentence << '\n';
  return status;
}

bool is_set(const char* variable) {
  const char* value = std::getenv(variable);
  return value != nullptr && *value != '\0';
}

std::filesystem::path own_path() {
  std::error_code unknown;
  auto path = std::filesystem::canonical("/proc/self/exe", unknown);
  return unknown ? std::filesystem::path() : path;
}

/// The toolkit's life around `app`. Only the program's name is passed on: it would take options of its own from the
/// arguments, and misread file names where the locale is not UTF-8.
int show_window(quadrille::App* app, char* name) {
  wxApp::SetInstance(app);
  int count = 1;
  char* arguments[] = {name, nullptr};
  const wxInitializer toolkit(count, arguments);
  if (!toolkit.IsOk())
    return refuse(no_display, "The display could not be opened. Start it from a desktop, or use 'quadrille draw'.");
  if (!app->CallOnInit()) return refuse(no_display, "The window could not be made.");
  app->OnRun();
  app->OnExit();
  return 0;
}

}  // namespace

int main(int count, char** arguments) {
  std::vector<std::string> events;
  bool options_end = false;
  for (int i = 1; i < count; ++i) {
    const std::string word = arguments[i];
    if (!options_end && word == "--help") return std::cout << help, 0;
    if (!options_end && word == "--version") return std::cout << "quadrille-studio " QUADRILLE_VERSION "\n", 0;
    if (!options_end && word == "--")
      options_end = true;
    else if (!options_end && word.size() > 1 && word.starts_with('-'))
      return refuse(bad_usage, "There is no option '" + word + "'; there are --help and --version.");
    else
      events.push_back(word);
  }
  if (events.size() > 1) return refuse(bad_usage, "One event can be open at a time; give one file.");
  if (!is_set("DISPLAY") && !is_set("WAYLAND_DISPLAY"))
    return refuse(no_display,
                  "There is no display to open a window on (neither DISPLAY nor WAYLAND_DISPLAY is set). "
                  "Start it from a desktop, or use 'quadrille draw EVENT --out FILE.pdf'.");
  std::optional<std::filesystem::path> event;
  if (!events.empty()) event = events.front();
  // The toolkit owns the application from here on and deletes it.
  return show_window(new quadrille::App(own_path(), std::move(event)), arguments[0]);
}
