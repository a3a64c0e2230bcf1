// Unsaved work: kept after each edit, away from the main thread, and offered when the studio ended without saving it.
#include <wx/datetime.h>

#include <utility>

#include "studio/window/job/document.hpp"
#include "studio/window/job/recovery_writer.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int keep_every_ms = 400;  ///< while a drag goes on

std::string now() { return text_of(wxDateTime::Now().Format("%Y-%m-%d %H:%M")); }

std::string title_of(const RecoveryEntry& kept) {
  if (!kept.event.title.empty()) return kept.event.title;
  return kept.file.empty() ? "an event without a title" : kept.file.filename().string();
}

std::string question_about(const RecoveryEntry& kept) {
  std::string text = "It was last changed at " + kept.changed;
  text += kept.file.empty() ? ", and had never been saved." : ", and belongs to " + kept.file.string() + ".";
  return text +
         " Restoring opens it with these changes; nothing on the disk is replaced until you save. Discarding "
         "forgets the changes for good.";
}

}  // namespace

void MainWindow::start_recovery() {
  recovery_ = std::make_unique<RecoveryWriter>(recovery_folder(), [this](std::string fault) {
    CallAfter([this, fault] {
      info_->ShowMessage(shown("Unsaved work cannot be kept for the case that the studio ends unexpectedly: " + fault +
                               " Save the event often."),
                         wxICON_WARNING);
    });
  });
  keep_timer_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) {
    if (std::exchange(keep_later_, false)) keep_for_recovery();
  });
}

/// The first of several edits at once, then the last of each moment.
void MainWindow::keep_for_recovery() {
  if (!recovery_ || !document_) return;
  if (document_->read_only() || !document_->history().has_changes()) {
    keep_later_ = false;
    return recovery_->forget();
  }
  if (keep_timer_.IsRunning()) {
    keep_later_ = true;
    return;
  }
  recovery_->keep([entry = document_->to_keep(now())] { return entry; });
  keep_timer_.StartOnce(keep_every_ms);
}

void MainWindow::end_recovery(bool keep_what_is_unsaved) {
  keep_timer_.Stop();
  if (!recovery_) return;
  const bool unsaved = document_ && !document_->read_only() && document_->history().has_changes();
  if (keep_what_is_unsaved && unsaved)
    recovery_->end([entry = document_->to_keep(now())] { return entry; });
  else
    recovery_->end({});
  recovery_.reset();
}

bool MainWindow::offer_recovery(const std::filesystem::path& only) {
  for (LeftBehind& left : left_behind(recovery_folder(), only)) {
    if (!left.entry) {
      if (ask(this, "What the studio kept of unsaved work cannot be read", left.entry.error, "&Leave it there",
              "&Discard", "&Later") == Answer::no)
        left.discard();
      continue;
    }
    const auto heading = shown("The studio ended without saving “" + title_of(*left.entry) + "”");
    const Answer answer = ask(this, heading, question_about(*left.entry), "&Restore", "&Discard", "&Later");
    if (answer == Answer::no) left.discard();
    if (answer != Answer::yes) continue;
    if (!settle_changes()) return false;
    const RecoveryEntry kept = *left.entry;
    take(Document::restored(kept, executable_));
    if (!document_->has_file() && !kept.file.empty())
      info_->ShowMessage(shown(kept.file.string() + " was changed or removed since, so the restored event has no file "
                                                    "yet: save it under a name of its own."),
                         wxICON_INFORMATION);
    if (document_->has_file()) remember(document_->file());
    left.discard();  // the window keeps it from now on
    return true;
  }
  return false;
}

}  // namespace quadrille
