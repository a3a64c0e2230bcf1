// The event as the parts of the window have it.
#include <utility>

#include "studio/arrange/selection.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/form/colour_choices.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/window/canvas/gesture.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/toolkit/held_mouse.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

const Event& MainWindow::event() const { return document_->event(); }

const std::filesystem::path& MainWindow::file() const { return document_->file(); }

const Area* MainWindow::area() const { return document_ ? find_area(document_->event(), area_) : nullptr; }

const std::vector<Palette>& MainWindow::palettes() const { return document_->palettes()->palettes; }

/// Those that an event without a file draws from.
std::shared_ptr<const LoadedPalettes> MainWindow::standard_palettes() const {
  return std::make_shared<const LoadedPalettes>(load_palettes(standard_palette_folders(executable_, {})));
}

std::shared_ptr<const LoadedPalettes> MainWindow::loaded_palettes() const {
  return document_ ? document_->palettes() : standard_palettes();
}

bool MainWindow::may_edit_event() {
  if (!document_) return false;
  if (document_->read_only()) say("This event was written by a newer version and can only be looked at.");
  return !document_->read_only();
}

bool MainWindow::can_edit() const { return document_ && !document_->read_only(); }

/// A drag that goes on ends where it is: from where it began, it would take the change back.
void MainWindow::commit(const std::string& name, Event event) {
  end_drags();
  document_->edit().commit(name, std::move(event));
  event_changed();
}

void MainWindow::end_drags() {
  if (hand_->from || site_drag_from_) let_go_of_mouse();
}

void MainWindow::amend(const std::string& name, Event event) {
  document_->edit().amend(name, std::move(event));
  event_changed();
}

void MainWindow::settle() {
  document_->edit().settle();
  show_state();
}

void MainWindow::say(const std::string& sentence) {
  const wxString text = shown(sentence);
  if (GetStatusBar()->GetStatusText() != text) SetStatusText(text);
}

void MainWindow::inform(const std::string& sentence) { info_->ShowMessage(shown(sentence), wxICON_INFORMATION); }

const PlacedPiece* MainWindow::lead_piece() const {
  return document_ ? find_piece(document_->event(), lead()) : nullptr;
}

std::vector<SlotField> MainWindow::lead_slots() const {
  if (lead_piece() == nullptr || !types_ || !can_edit()) return {};
  return slot_fields(document_->event(), {lead()}, types_->tables(), last_built());
}

void MainWindow::colour_lead(std::size_t slot, const ColourReference& colour) {
  if (lead_piece() == nullptr || !may_edit_event()) return;
  const PieceIds lead_alone{lead()};
  const std::string name = step_name("Colour", document_->event(), lead_alone);
  commit(name, with_chosen_colour(document_->event(), lead_alone, slot, colour));
}

}  // namespace quadrille
