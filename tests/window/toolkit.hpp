// Runs the toolkit inside a test: events are pumped until something is so, never for a length of time.
#pragma once

#include <wx/evtloop.h>
#include <wx/init.h>
#include <wx/modalhook.h>
#include <wx/msgdlg.h>
#include <wx/uiaction.h>
#include <wx/uilocale.h>
#include <wx/weakref.h>

#include <chrono>
#include <deque>
#include <functional>
#include <string>
#include <vector>

#include "scratch.hpp"
#include "studio/window/app.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/start_page.hpp"

namespace quadrille {

/// The toolkit, started once for all tests of the process. What it asserts fails the test that is running.
class Toolkit {
 public:
  static Toolkit& instance() {
    static Toolkit toolkit;
    return toolkit;
  }

  /// Handles events until `done` holds; false where that takes longer than half a minute.
  bool pump_until(const std::function<bool()>& done) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(30);
    while (!done()) {
      if (std::chrono::steady_clock::now() > end) return false;
      turn();
    }
    turn();
    return done();
  }
  /// Handles what is there to be handled now; an exception goes where the toolkit's own loop takes it.
  void turn() {
    try {
      wxTheApp->ProcessPendingEvents();
      loop_.DispatchTimeout(5);
      while (loop_.Pending()) loop_.Dispatch();
      loop_.ProcessIdle();
    } catch (...) {
      if (!wxTheApp->OnExceptionInMainLoop()) throw;
    }
  }

 private:
  Toolkit() {
    // Nothing of the test may end up in the user's folders.
    ::setenv("XDG_STATE_HOME", (state_ / "state").c_str(), 1);
    ::setenv("XDG_DATA_HOME", (state_ / "data").c_str(), 1);
    wxApp::SetInstance(new App(studio_program(), std::nullopt));
    start_ = std::make_unique<wxInitializer>();
    REQUIRE(start_->IsOk());
    wxUILocale::UseDefault();
    wxSetAssertHandler([](const wxString& file, int line, const wxString&, const wxString& condition,
                          const wxString& message) {
      const std::string text = (wxString() << file << ":" << line << " " << condition << " " << message).utf8_string();
      FAIL_CHECK(text);
    });
    wxEventLoopBase::SetActive(&loop_);
  }
  ~Toolkit() { wxEventLoopBase::SetActive(nullptr); }

  ScratchFolder state_;
  std::unique_ptr<wxInitializer> start_;
  wxGUIEventLoop loop_;
};

/// Answers dialogs in place of a user, in the order of `answers`; one too many is cancelled and fails the test.
class Dialogs : public wxModalDialogHook {
 public:
  explicit Dialogs(std::deque<int> answers) : answers_(std::move(answers)) { Register(); }
  ~Dialogs() override {
    Unregister();
    CHECK_MESSAGE(answers_.empty(), "fewer dialogs were shown than were expected");
  }
  /// What each message dialog said: heading and explanation.
  const std::vector<std::string>& said() const { return said_; }

 private:
  int Enter(wxDialog* dialog) override {
    std::string text = dialog->GetTitle().utf8_string();
    if (const auto* message = dynamic_cast<wxMessageDialogBase*>(dialog))
      text = (message->GetMessage() + ": " + message->GetExtendedMessage()).utf8_string();
    said_.push_back(text);
    if (answers_.empty()) {
      FAIL_CHECK("an unexpected dialog: " << text);
      return wxID_CANCEL;
    }
    const int answer = answers_.front();
    answers_.pop_front();
    return answer;
  }
  std::deque<int> answers_;
  std::vector<std::string> said_;
};

/// A window of the studio on the screen; closed at the end, discarding changes.
class OpenWindow {
 public:
  OpenWindow() : toolkit_(Toolkit::instance()), window_(new MainWindow(studio_program())) {
    window_->Show();
    REQUIRE(toolkit_.pump_until([this] { return window_->start().IsShownOnScreen(); }));
    window_->canvas().Bind(wxEVT_PAINT, [this](wxPaintEvent& event) {
      painted_ = window_->canvas().GetClientSize();
      event.Skip();
    });
  }
  ~OpenWindow() {
    if (window_) window_->Close(true);
    CHECK(toolkit_.pump_until([this] { return !window_; }));
  }
  OpenWindow(const OpenWindow&) = delete;
  OpenWindow& operator=(const OpenWindow&) = delete;

  /// Opens the event and waits until all is worked out and the drawing stands at its full size: a click that was aimed
  /// while it was still growing missed.
  void open(const std::filesystem::path& file) {
    REQUIRE(window_->open_file(file));
    settle();
    Canvas& canvas = window_->canvas();
    REQUIRE(toolkit_.pump_until(
        [&] { return painted_ == canvas.GetClientSize() && painted_ == canvas.GetParent()->GetClientSize(); }));
  }
  void settle() {
    REQUIRE(toolkit_.pump_until([this] { return !window_->updating(); }));
  }
  bool pump_until(const std::function<bool()>& done) { return toolkit_.pump_until(done); }
  /// What the menu item does.
  void command(int id) { window_->ProcessWindowEvent(*std::make_unique<wxCommandEvent>(wxEVT_MENU, id)); }

  MainWindow* operator->() { return window_.get(); }
  wxWeakRef<MainWindow>& reference() { return window_; }

 private:
  Toolkit& toolkit_;
  wxWeakRef<MainWindow> window_;
  wxSize painted_;  ///< of the canvas, when it was painted last
};

/// The piece in the open event.
inline const PlacedPiece& piece(OpenWindow& window, const std::string& id) {
  const PlacedPiece* placed = find_piece(window->document()->event(), id);
  REQUIRE(placed != nullptr);
  return *placed;
}

/// Tells the control's handlers what the control itself tells of once a user has done this to it.
inline void tell(wxWindow& control, wxEventType type) {
  wxCommandEvent event(type, control.GetId());
  event.SetEventObject(&control);
  control.ProcessWindowEvent(event);
}

}  // namespace quadrille
