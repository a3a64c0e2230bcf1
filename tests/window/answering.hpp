// Fills dialogs in and closes them in place of a user.
#pragma once

#include <wx/dialog.h>

#include <deque>
#include <functional>
#include <utility>

#include "toolkit.hpp"

namespace quadrille {

/// Each dialog that is shown is handed to the next of `answers`, which fills it in and says how it was closed; one too many
/// is cancelled and fails the test.
class Answering : public wxModalDialogHook {
 public:
  using Act = std::function<int(wxDialog& dialog)>;
  explicit Answering(std::deque<Act> answers) : answers_(std::move(answers)) { Register(); }
  ~Answering() override {
    Unregister();
    CHECK_MESSAGE(answers_.empty(), "fewer dialogs were shown than were expected");
  }
  /// Whether each answer was asked for.
  bool done() const { return answers_.empty(); }

 private:
  int Enter(wxDialog* dialog) override {
    if (answers_.empty()) {
      FAIL_CHECK("an unexpected dialog: " << dialog->GetTitle().utf8_string());
      return wxID_CANCEL;
    }
    const Act act = std::move(answers_.front());
    answers_.pop_front();
    return act(*dialog);
  }
  std::deque<Act> answers_;
};

/// The answer to a dialog of kind D; another one is cancelled and fails the test.
template <class D>
Answering::Act on_dialog(std::function<int(D& dialog)> act) {
  return [act = std::move(act)](wxDialog& dialog) {
    auto* const wanted = dynamic_cast<D*>(&dialog);
    if (wanted != nullptr) return act(*wanted);
    FAIL_CHECK("an unexpected dialog: " << dialog.GetTitle().utf8_string());
    return int{wxID_CANCEL};
  };
}

/// Presses the button as a user does.
inline void press(wxWindow& dialog, int id) {
  wxWindow* const button = dialog.FindWindow(id);
  REQUIRE(button != nullptr);
  tell(*button, wxEVT_BUTTON);
}

}  // namespace quadrille
