// The application: starts the one window and keeps it alive when a handler fails.
#pragma once

#include <wx/app.h>

#include <filesystem>
#include <optional>

namespace quadrille {

class App : public wxApp {
 public:
  App(std::filesystem::path executable, std::optional<std::filesystem::path> event)
      : executable_(std::move(executable)), event_(std::move(event)) {}

  bool OnInit() override;
  /// Tells the user what failed and goes on: the event is still there and can be saved.
  bool OnExceptionInMainLoop() override;
  /// A mistake of ours that the toolkit noticed: told on the standard error output, no dialog in a decorator's way.
  void OnAssertFailure(const wxChar* file, int line, const wxChar* function, const wxChar* condition,
                       const wxChar* message) override;

 private:
  std::filesystem::path executable_;
  std::optional<std::filesystem::path> event_;
};

}  // namespace quadrille
