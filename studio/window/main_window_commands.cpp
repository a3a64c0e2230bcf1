// What menus and keys do, and the edits that the canvas asks for.
#include <wx/aboutdlg.h>
#include <wx/utils.h>

#include <algorithm>
#include <utility>

#include "sdk/abi.h"
#include "studio/model/edits.hpp"
#include "studio/window/icon.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/notices.hpp"
#include "studio/window/ruler.hpp"
#include "studio/window/wx_text.hpp"

namespace quadrille {
namespace {

constexpr double zoom_step = 1.25, pan_step = 0.1;

std::string step_name(const char* verb, const PlacedPiece& piece) {
  return std::string(verb) + " " + (piece.name.empty() ? std::string("piece") : piece.name);
}

}  // namespace

void MainWindow::bind_commands() {
  const auto on = [this](int id, auto act) {
    Bind(
        wxEVT_MENU, [act](wxCommandEvent&) { act(); }, id);
  };
  on(wxID_OPEN, [this] { choose_and_open(); });
  on(wxID_SAVE, [this] { save(); });
  on(wxID_SAVEAS, [this] { choose_and_save(); });
  on(command_export, [this] { choose_and_export(); });
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
    on(command_paper_a4 + static_cast<int>(paper), [this, paper] { paper_ = paper; });
  on(wxID_ZOOM_IN, [this] { canvas_->zoom(zoom_step); });
  on(wxID_ZOOM_OUT, [this] { canvas_->zoom(1 / zoom_step); });
  on(wxID_ZOOM_FIT, [this] { canvas_->fit_all(); });
  on(command_fit_piece, [this] { canvas_->fit_piece(piece_); });
  on(command_pan_left, [this] { canvas_->pan(pan_step, 0); });
  on(command_pan_right, [this] { canvas_->pan(-pan_step, 0); });
  on(command_pan_up, [this] { canvas_->pan(0, pan_step); });
  on(command_pan_down, [this] { canvas_->pan(0, -pan_step); });
  on(command_letters, [this] { canvas_->set_look((look_.letters = !look_.letters, look_)), show_state(); });
  on(command_figure, [this] { canvas_->set_look((look_.figure = !look_.figure, look_)), show_state(); });
  on(command_previous_area, [this] { step_area(-1); });
  on(command_next_area, [this] { step_area(1); });
  on(command_next_pane, [this] { next_pane(); });
  on(command_piece_types, [this] { show_piece_types(); });
  on(wxID_ABOUT, [this] { show_about(); });
}

void MainWindow::commit(const std::string& name, Event event) {
  document_->edit().commit(name, std::move(event));
  event_changed();
}

void MainWindow::undo() {
  if (!document_ || document_->read_only() || !document_->history().can_undo()) return;
  SetStatusText("Undone: " + shown(document_->history().undo_name()));
  document_->edit().undo();
  event_changed();
}

void MainWindow::redo() {
  if (!document_ || document_->read_only() || !document_->history().can_redo()) return;
  SetStatusText("Done again: " + shown(document_->history().redo_name()));
  document_->edit().redo();
  event_changed();
}

/// True where the piece may be changed; otherwise the status bar says why not.
bool MainWindow::may_edit(const std::string& piece) {
  if (!document_) return false;
  const PlacedPiece* placed = find_piece(document_->event(), piece);
  if (placed == nullptr) return false;
  if (document_->read_only())
    SetStatusText("This event was written by a newer version and can only be looked at.");
  else if (placed->locked)
    SetStatusText(shown(placed->name + " is locked in its place."));
  return !document_->read_only() && !placed->locked;
}

void MainWindow::drag(const std::string& piece, double moved_m) {
  if (!may_edit(piece)) return;
  const PlacedPiece& placed = *find_piece(document_->event(), piece);
  if (!drag_from_m_) drag_from_m_ = placed.x_m;
  // Back at the start it stands exactly where it stood, however odd that place was.
  const double x_m = moved_m == 0 ? *drag_from_m_ : rounded_place(*drag_from_m_ + moved_m, document_->event().units);
  if (x_m == placed.x_m) return;
  document_->edit().amend(step_name("Move", placed), moved(document_->event(), piece, x_m, placed.y_m));
  event_changed();
}

void MainWindow::move_selected(double right_m) {
  if (!may_edit(piece_)) return;
  const PlacedPiece& placed = *find_piece(document_->event(), piece_);
  const double x_m = rounded_place(placed.x_m + right_m, document_->event().units);
  commit(step_name("Move", placed), moved(document_->event(), piece_, x_m, placed.y_m));
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
    (strip_->GetSelection() == 0 ? totals_->balloons().list : findings_->table().list)->SetFocus();
  else
    outline_->tree()->SetFocus();
}

void MainWindow::show_piece_types() {
  PiecesDialog dialog(this, [this] { try_crashed_again(); });
  dialog.show(types_);
  pieces_dialog_ = &dialog;
  dialog.ShowModal();
  pieces_dialog_ = nullptr;
}

/// A file that ends the program again takes the unsaved changes with it, so these are asked about first.
void MainWindow::try_crashed_again() {
  if (!settle_changes()) {
    if (pieces_dialog_) pieces_dialog_->show(types_);
    return;
  }
  if (document_) ++revision_;
  if (document_) worker_->ask({revision_, document_->event(), document_->palettes(), document_->opened_findings()});
  worker_->reload(true);
  show_stale();
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
      "\nFigures are a planning aid, no engineering certificate: local code, the venue's rules and a licensed "
      "professional decide.";
  about.SetDescription(text);
  wxAboutBox(about, this);
}

}  // namespace quadrille
