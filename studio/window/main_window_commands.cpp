// What menus and keys do, and the edits that the canvas asks for.
#include <wx/aboutdlg.h>
#include <wx/generic/aboutdlgg.h>
#include <wx/scopeguard.h>
#include <wx/utils.h>

#include <algorithm>
#include <utility>

#include "sdk/abi.h"
#include "studio/host/piece_type.hpp"
#include "studio/model/edits.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/ruler.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/pieces_dialog.hpp"
#include "studio/window/house_hands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/worker.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/checklist_panel.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/panels/plan_panel.hpp"
#include "studio/window/panels/quote_panel.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/panels/standing_panel.hpp"
#include "studio/window/panels/totals_panel.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/repertoire_hands.hpp"
#include "studio/window/sheet_hands.hpp"
#include "studio/window/toolkit/held_mouse.hpp"
#include "studio/window/toolkit/icon.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr double zoom_step = 1.25, pan_step = 0.1;

}  // namespace

/// `act` answers the command of this id.
void MainWindow::on(int id, std::function<void()> act) {
  Bind(
      wxEVT_MENU, [act = std::move(act)](wxCommandEvent&) { act(); }, id);
}

void MainWindow::bind_commands() {
  bind_areas();
  on(wxID_NEW, [this] { ask_and_begin(); });
  on(wxID_OPEN, [this] { choose_and_open(); });
  on(wxID_SAVE, [this] { save(); });
  on(wxID_SAVEAS, [this] { choose_and_save(); });
  on(command_export, [this] { sheet_hands_->choose_and_export(); });
  on(wxID_PRINT, [this] { sheet_hands_->print(); });
  on(command_export_sheets, [this] { sheet_hands_->export_sheets(); });
  on(command_house, [this] { house_hands_->show_settings(); });
  on(command_recover, [this] {
    if (!offer_recovery()) SetStatusText("There is no unsaved work to restore.");
  });
  on(wxID_EXIT, [this] { Close(); });
  on(wxID_UNDO, [this] { undo(); });
  on(wxID_REDO, [this] { redo(); });
  on(command_move_left, [this] {
    if (document_) move_selected(-small_move(document_->event().units));
  });
  on(command_move_right, [this] {
    if (document_) move_selected(small_move(document_->event().units));
  });
  on(command_units_feet, [this] { set_units(Units::feet); });
  on(command_units_metric, [this] { set_units(Units::metric); });
  for (const Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid})
    on(command_paper_a4 + static_cast<int>(paper), [this, paper] { sheet_hands_->choose_paper(paper); });
  on(wxID_ZOOM_IN, [this] { canvas_->zoom(zoom_step); });
  on(wxID_ZOOM_OUT, [this] { canvas_->zoom(1 / zoom_step); });
  on(wxID_ZOOM_FIT, [this] { canvas_->fit_all(); });
  on(command_pan_left, [this] { canvas_->pan(pan_step, 0); });
  on(command_pan_right, [this] { canvas_->pan(-pan_step, 0); });
  on(command_pan_up, [this] { canvas_->pan(0, pan_step); });
  on(command_pan_down, [this] { canvas_->pan(0, -pan_step); });
  on(command_letters, [this] { canvas_->set_look((look_.letters = !look_.letters, look_)), show_state(); });
  on(command_figure, [this] { canvas_->set_look((look_.figure = !look_.figure, look_)), show_state(); });
  on(command_previous_area, [this] { step_area(-1); });
  on(command_next_area, [this] { step_area(1); });
  on(command_next_pane, [this] { next_pane(); });
  for (int i = 0; i <= command_recent_last - command_recent; ++i)
    on(command_recent + i, [this, i] { open_recent(static_cast<std::size_t>(i)); });
  for (std::size_t i = 0; i < samples_.size() && i <= command_sample_last - command_sample; ++i)
    on(command_sample + static_cast<int>(i), [this, i] { open_copy(samples_[i]); });
  for (int i = 0; i <= command_add_last - command_add; ++i)
    on(command_add + i, [this, i] {
      const auto number = static_cast<std::size_t>(i);
      if (types_ && number < types_->types.size()) begin_placing(types_->types[number].id);
    });
  on(command_photo_choose, [this] { photo_hands_->choose(); });
  on(command_photo_paste, [this] { photo_hands_->paste(); });
  on(command_photo_calibrate, [this] { photo_hands_->begin_calibration(); });
  on(command_photo_move, [this] { photo_hands_->begin_moving(); });
  on(command_photo_fade, [this] { photo_hands_->fade(); });
  on(command_photo_lock, [this] {
    if (const Backdrop* const photo = photo_hands_->photo()) photo_hands_->lock(!photo->locked);
  });
  on(command_photo_show, [this] {
    if (const Backdrop* const photo = photo_hands_->photo()) photo_hands_->hide(!photo->hidden);
  });
  on(command_photo_colour, [this] { photo_hands_->begin_picking_colour(); });
  on(command_photo_remove, [this] { photo_hands_->remove(); });
  bind_arranging();
  bind_clipboard();
  on(command_keep, [this] {
    if (pieces_.size() == 1) repertoire_hands_->ask_and_keep();
  });
  on(command_repertoire, [this] { repertoire_hands_->choose_and_insert(); });
  on(command_next_finding, [this] { step_finding(1); });
  on(command_previous_finding, [this] { step_finding(-1); });
  on(command_apply_remedy, [this] { apply_remedy(findings_->selected()); });
  on(command_keys, [this] { show_keys(); });
  on(command_piece_types, [this] { show_piece_types(); });
  on(wxID_ABOUT, [this] { show_about(); });
  bind_canvas_commands();
}

void MainWindow::undo() {
  if (!document_ || document_->read_only() || !document_->history().can_undo()) return;
  let_go_of_mouse();
  const std::string name = document_->history().undo_name();
  document_->edit().undo();
  event_changed();
  say("Undone: " + name);
}

void MainWindow::redo() {
  if (!document_ || document_->read_only() || !document_->history().can_redo()) return;
  const std::string name = document_->history().redo_name();
  let_go_of_mouse();
  document_->edit().redo();
  event_changed();
  say("Done again: " + name);
}

/// True where the piece may be changed; otherwise the status bar says why not.
bool MainWindow::may_edit(const std::string& piece) {
  const PlacedPiece* placed = document_ ? find_piece(document_->event(), piece) : nullptr;
  if (placed == nullptr || !may_edit_event()) return false;
  if (placed->locked) say(placed->name + " is locked in its place.");
  return !placed->locked;
}

void MainWindow::set_units(Units units) {
  if (!document_ || document_->read_only() || document_->event().units == units) return;
  Event event = document_->event();
  event.units = units;
  commit("Change units", std::move(event));
}

void MainWindow::step_area(int by) {
  if (!document_ || document_->event().areas.empty()) return;
  const auto& areas = document_->event().areas;
  const auto here = std::ranges::find_if(areas, [this](const auto& area) { return area->id == area_; });
  const auto index = (here == areas.end() ? 0 : here - areas.begin()) + by;
  if (index >= 0 && index < std::ssize(areas)) select(areas[static_cast<std::size_t>(index)]->id, "");
}

/// Outline, elevation, strip, and round again.
void MainWindow::next_pane() {
  const wxWindow* focus = wxWindow::FindFocus();
  const auto holds_focus = [focus](const wxWindow* pane) {
    for (const wxWindow* window = focus; window != nullptr; window = window->GetParent())
      if (window == pane) return true;
    return false;
  };
  if (holds_focus(outline_))
    canvas_->SetFocus();
  else if (holds_focus(canvas_))
    focus_strip();
  else
    outline_->tree()->SetFocus();
}

/// The list of the page in front.
void MainWindow::focus_strip() {
  const wxWindow* page = strip_->GetCurrentPage();
  const std::pair<const wxWindow*, wxWindow*> lists[] = {
      {totals_, totals_->balloons().list},    {site_, site_->objects().list}, {standing_, standing_->pieces().list},
      {checklist_, checklist_->table().list}, {plan_, plan_->tasks().list},   {quote_, quote_->lines().list},
      {findings_, findings_->table().list}};
  for (const auto& [panel, list] : lists)
    if (panel == page) list->SetFocus();
}

void MainWindow::show_piece_types() {
  PiecesDialog dialog(this, [this] { try_crashed_again(); });
  dialog.show(types_);
  pieces_dialog_ = &dialog;
  wxON_BLOCK_EXIT_NULL(pieces_dialog_);
  dialog.ShowModal();
}

/// A file that ends the program again takes the unsaved changes with it, so these are asked about first.
void MainWindow::try_crashed_again() {
  if (!settle_changes()) {
    if (pieces_dialog_) pieces_dialog_->show(types_);
    return;
  }
  reckon_anew();
  worker_->reload(true);
}

void MainWindow::show_about() {
  wxAboutDialogInfo about;
  about.SetName("Quadrille");
  about.SetIcon(make_icon(96));
  about.SetVersion(QUADRILLE_VERSION);
  const std::string contract = std::to_string(QUADRILLE_ABI_MAJOR) + "." + std::to_string(QUADRILLE_ABI_MINOR);
  wxString text = "A design studio for balloon decorators.\n\n";
  text += shown("Contract for piece types: version " + contract + "\n");
  text += wxGetLibraryVersionInfo().GetVersionString() + "\n";
  if (types_)
    for (const PieceType& type : types_->types)
      text += shown(type.name + ": " + type.plugin_id + " " + type.plugin_version + "\n");
  text +=
      "\nFigures are a planning aid, no engineering certificate:\nlocal code, the venue's rules and a licensed "
      "professional decide.";
  about.SetDescription(text);
  wxGenericAboutDialog(about, this).ShowModal();
}

}  // namespace quadrille
