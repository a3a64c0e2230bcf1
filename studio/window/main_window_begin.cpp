// The ways in: a new event, a copy of a sample, one that was open before; and the list of keys.
#include <wx/sizer.h>

#include <system_error>
#include <utility>

#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/gesture.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/keys_dialog.hpp"
#include "studio/window/dialogs/new_event_dialog.hpp"
#include "studio/window/house_hands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/standing_worker.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/checklist_panel.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/panels/standing_panel.hpp"
#include "studio/window/panels/start_page.hpp"
#include "studio/window/panels/totals_panel.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/sheet_hands.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

void MainWindow::make_start(wxWindow* parent) {
  start_ = new StartPage(parent,
                         {[this] { ask_and_begin(); }, [this] { choose_and_open(); },
                          [this](const std::filesystem::path& file) { open_copy(file); },
                          [this](const std::filesystem::path& file) { open_file(file); }},
                         samples_);
  remember({});
}

/// Makes the document the one that is open; the window shows it from now on.
void MainWindow::take(Document document) {
  photo_hands_->end_mode();
  canvas_->let_go();  // while what it has hold of is still there
  canvas_->end_placing();
  document_ = std::make_unique<Document>(std::move(document));
  study_.reset();
  pieces_.clear();
  sheet_hands_->forget();
  hand_->from.reset(), hand_->held.reset(), hand_->live.reset();
  hand_->figures.clear();
  site_object_.reset(), site_drag_from_.reset();
  led_to_site_ = false;
  area_ = document_->event().areas.empty() ? std::string() : document_->event().areas.front()->id;
  if (start_->IsShown()) {
    start_->Hide();
    canvas_->Show();
    canvas_->GetParent()->Layout();
  }
  totals_->show(nullptr);
  show_findings();
  house_hands_->load();
  show_reckoned();
  reports_.clear();
  standing_->forget();
  checklist_->forget();
  outline_->show(outline_of(document_->event(), {}, {}));
  outline_->select(area_, PieceIds{});
  if (document_->read_only())
    info_->ShowMessage(
        "This event was written by a newer version of the studio. It can be looked at, copied and exported, but not "
        "changed or saved over.",
        wxICON_INFORMATION);
  else
    info_->Dismiss();
  event_changed();
  canvas_->fit_all();
  canvas_->SetFocus();
}

bool MainWindow::begin(Event event) {
  if (!settle_changes()) return false;
  take(Document::fresh(std::move(event), executable_));
  return true;
}

bool MainWindow::open_copy(const std::filesystem::path& file) {
  auto opened = open_event(file);
  if (!opened) {
    tell_error(this, "The event could not be opened", opened.error);
    return false;
  }
  return begin(std::move(opened->event));
}

void MainWindow::ask_and_begin() {
  NewEventDialog dialog(this, standard_palettes(), types_);
  if (dialog.ShowModal() != wxID_OK) return;
  if (const auto answers = dialog.answers()) begin(new_event(*answers));
}

void MainWindow::open_recent(std::size_t number) {
  if (number >= recent_.files().size()) return;
  const std::filesystem::path file = recent_.files()[number];
  std::error_code unknown;
  if (!open_file(file) && !std::filesystem::exists(file, unknown) && !unknown) {
    recent_.forget(file);
    remember({});
  }
}

/// Puts the file, where there is one, on top of the list, and shows that in the menu and on the start page.
void MainWindow::remember(const std::filesystem::path& file) {
  if (!file.empty()) recent_.opened(file);
  std::vector<std::string> names;
  for (const auto& known : recent_.files()) names.push_back(known.filename().string());
  show_recent(*GetMenuBar(), names);
  start_->show_recent(recent_.files());
}

void MainWindow::show_keys() {
  KeysDialog dialog(this, keys_in_words(*GetMenuBar()));
  dialog.ShowModal();
}

}  // namespace quadrille
