// Opening, saving and closing: every way a file is touched, and every question asked about it.
#include <wx/filedlg.h>

#include <utility>

#include "studio/takeoff/last_built.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/sheet_export.hpp"
#include "studio/window/job/standing_worker.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/job/worker.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/sheet_hands.hpp"
#include "studio/window/toolkit/file_names.hpp"
#include "studio/window/toolkit/held_mouse.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr const char* event_files = "Events (*.quadrille)|*.quadrille|All files|*";

wxString folder_of(const Document* document) {
  return document ? shown(document->file().parent_path().string()) : wxString();
}

std::string offered_name(const Document& document) {
  if (document.has_file()) return document.file().filename().string();
  return file_stem_of(document.event().title) + ".quadrille";
}

}  // namespace

bool MainWindow::open_file(const std::filesystem::path& file) {
  if (!settle_changes()) return false;
  auto opened = Document::open(file, executable_);
  if (!opened) {
    tell_error(this, "The event could not be opened", opened.error);
    return false;
  }
  take(std::move(*opened.value));
  remember(document_->file());
  return true;
}

void MainWindow::choose_and_open() {
  wxFileDialog dialog(this, "Open an event", folder_of(document_.get()), "", event_files,
                      wxFD_OPEN | wxFD_FILE_MUST_EXIST);
  if (dialog.ShowModal() == wxID_OK) open_file(path_of(dialog.GetPath()));
}

bool MainWindow::save() {
  if (!document_) return false;
  settle_fields();
  if (!document_->has_file()) return choose_and_save();
  if (document_->read_only()) return finish_save(document_->save());
  if (document_->changed_on_disk() &&
      !ask_whether(this, "The file was changed by another program",
                   document_->file().string() +
                       " is no longer as it was opened. Saving replaces it; what stands there now is kept beside it, "
                       "with a '~' after its name.",
                   "&Replace it"))
    return false;
  return finish_save(document_->save(built_now()));
}

bool MainWindow::save_as(const std::filesystem::path& file) {
  settle_fields();
  if (!document_ || !finish_save(document_->save_as(file, built_now()))) return false;
  remember(document_->file());
  return true;
}

/// What is built of the event as it now is; of what is still being worked out, the pieces that did not change.
BuiltEvent MainWindow::built_now() const {
  if (!study_ || !document_) return {};
  return still_true(study_->built, study_->event, document_->event());
}

bool MainWindow::finish_save(const std::optional<std::string>& fault) {
  show_state();
  if (fault) {
    tell_error(this, "The event could not be saved", *fault);
    return false;
  }
  keep_for_recovery();
  SetStatusText(shown("Saved " + document_->file().string()));
  return true;
}

bool MainWindow::choose_and_save() {
  if (!document_) return false;
  wxFileDialog dialog(this, "Save the event as", folder_of(document_.get()), shown(offered_name(*document_)),
                      event_files, wxFD_SAVE | wxFD_OVERWRITE_PROMPT);
  if (dialog.ShowModal() != wxID_OK) return false;
  const auto typed = path_of(dialog.GetPath()), file = with_ending(typed, ".quadrille");
  return may_become(this, typed, file) && save_as(file);
}

/// Takes what stands in a field and was not entered yet.
void MainWindow::settle_fields() {
  form_->settle();
  site_->settle();
}

/// Asks about unsaved changes; true where the event may go.
bool MainWindow::settle_changes() {
  let_go_of_mouse();
  settle_fields();
  if (!document_ || !document_->has_changes()) return true;
  switch (ask(this, "Save the changes first?",
              (document_->has_file() ? document_->file().filename().string() : "The new event") +
                  " has changes that are not saved.",
              "&Save", "&Discard")) {
    case Answer::yes:
      return save();
    case Answer::no:
      return true;
    case Answer::cancel:
      break;
  }
  return false;
}

void MainWindow::export_to(const std::filesystem::path& file) { sheet_hands_->export_to(file); }

void MainWindow::close(wxCloseEvent& event) {
  if (event.CanVeto() && !settle_changes()) return event.Veto();
  let_go_of_mouse();
  settle_fields();         // where nobody could be asked, what is typed is unsaved work as well
  sheet_hands_->forget();  // an answer on its way would export from a window that is gone
  Hide();                  // at once, even where a piece is still being built
  // Where the desktop ends and nobody could be asked, what is unsaved is offered at the next start.
  end_recovery(!event.CanVeto());
  standing_worker_.reset();
  worker_.reset();  // waits for it
  Destroy();
}

}  // namespace quadrille
