// What is done with the selected pieces: copies, mirror images, lining up, order, name, lock, hiding, removing.
#include <wx/textdlg.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "studio/arrange/aligning.hpp"
#include "studio/arrange/arraying.hpp"
#include "studio/arrange/cut_out.hpp"
#include "studio/arrange/depth_order.hpp"
#include "studio/arrange/mirroring.hpp"
#include "studio/arrange/selection.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/window/canvas/ruler.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/array_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr double gap_m = 0.3;  // between a piece and its copy

/// The room that the pieces take; there is one at least.
PieceBox room_of(const Event& event, const PieceIds& pieces, const BuiltEvent& built) {
  std::vector<PieceBox> boxes;
  for (const std::string& id : pieces)
    if (const PlacedPiece* piece = find_piece(event, id)) boxes.push_back(box_of(*piece, built));
  return box_around(boxes).value_or(PieceBox{});
}

const char* verb_of(DepthStep step) {
  switch (step) {
    case DepthStep::to_front:
      return "To the front:";
    case DepthStep::forward:
      return "Forward:";
    case DepthStep::backward:
      return "Backward:";
    case DepthStep::to_back:
      break;
  }
  return "To the back:";
}

}  // namespace

void MainWindow::bind_arranging() {
  on(command_duplicate, [this] { duplicate_selected(); });
  on(command_array, [this] { ask_and_array(); });
  on(command_mirror, [this] { mirror_selected(); });
  for (const DepthStep step : {DepthStep::to_front, DepthStep::forward, DepthStep::backward, DepthStep::to_back})
    on(command_to_front + static_cast<int>(step), [this, step] { order_selected(step); });
  for (const Alignment alignment :
       {Alignment::left, Alignment::centre, Alignment::right, Alignment::front, Alignment::back, Alignment::front_line})
    on(command_align_left + static_cast<int>(alignment), [this, alignment] { align_selected(alignment); });
  on(command_spread_gaps, [this] { spread_selected(Spacing::gaps, FloorAxis::along); });
  on(command_spread_centres, [this] { spread_selected(Spacing::centres, FloorAxis::along); });
  on(command_spread_depth, [this] { spread_selected(Spacing::gaps, FloorAxis::depth); });
  on(command_rename, [this] { ask_and_rename(); });
  on(command_lock, [this] { lock_selected(); });
  on(command_hide, [this] { hide_selected(); });
  on(command_show_all, [this] { show_hidden(); });
  on(wxID_DELETE, [this] { remove_selected(); });
}

/// Commits what `edit` makes of those selected pieces that are not locked, and tells of the others.
void MainWindow::change_free(const char* verb, const PiecesEdit& edit) {
  if (!may_edit_event() || pieces_.empty()) return;
  const Event before = document_->event();
  const Grasp held = grasp(before, pieces_);
  if (held.free.empty())
    return say(held.locked.size() == 1 ? find_piece(before, held.locked.front())->name + " is locked: unlock it first."
                                       : "All selected pieces are locked: unlock them first.");
  Event after = edit(before, held.free);
  const bool changes = after != before;
  if (changes) commit(step_name(verb, before, held.free), std::move(after));
  say(changes || !held.locked.empty() ? left_out_words(before, held.locked)
                                      : "There is nothing to change: it is so already.");
}

/// Commits what `edit` makes of all selected pieces, which a lock does not guard against it.
void MainWindow::change_all(const char* verb, const PiecesEdit& edit) {
  if (!may_edit_event() || pieces_.empty()) return;
  const Event before = document_->event();
  commit(step_name(verb, before, pieces_), edit(before, pieces_));
}

void MainWindow::remove_selected() {
  change_free("Remove", [](const Event& event, const PieceIds& pieces) { return without_pieces(event, pieces); });
}

void MainWindow::duplicate_selected() {
  if (!may_edit_event() || pieces_.empty()) return;
  const Event& event = document_->event();
  const double aside_m = rounded_place(room_of(event, pieces_, last_built()).width() + gap_m, event.units);
  Copies copies = duplicated(event, pieces_, aside_m, 0);
  if (copies.ids.empty()) return;
  commit(step_name("Duplicate", event, pieces_), std::move(copies.event));
  select(area_, copies.ids);
}

void MainWindow::mirror_selected() {
  if (!types_) return;
  change_free("Mirror", [this](const Event& event, const PieceIds& pieces) {
    return mirrored_in_place(event, pieces, types_->tables(), last_built());
  });
}

void MainWindow::order_selected(DepthStep step) {
  change_free(verb_of(step),
              [step](const Event& event, const PieceIds& pieces) { return in_depth(event, pieces, step); });
}

void MainWindow::rename_selected(const std::string& name) {
  change_all("Rename",
             [&name](const Event& event, const PieceIds& pieces) { return renamed_all(event, pieces, name); });
}

void MainWindow::lock_selected() {
  const bool locked = !menu_state().all_locked;
  change_all(locked ? "Lock" : "Unlock",
             [locked](const Event& event, const PieceIds& pieces) { return with_lock(event, pieces, locked); });
}

void MainWindow::hide_selected() {
  const bool hidden = !menu_state().all_hidden;
  change_all(hidden ? "Hide" : "Show",
             [hidden](const Event& event, const PieceIds& pieces) { return with_hidden(event, pieces, hidden); });
}

void MainWindow::show_hidden() {
  if (area() == nullptr || !may_edit_event()) return;
  const PieceIds hidden = hidden_in(*area());
  if (hidden.empty()) return;
  commit(step_name("Show", document_->event(), hidden), with_hidden(document_->event(), hidden, false));
  select(area_, hidden);
}

void MainWindow::align_selected(Alignment alignment) {
  if (!may_edit_event() || pieces_.empty()) return;
  const Event before = document_->event();
  // The locked ones stay, and the others come to them as to any.
  Event after = aligned(before, pieces_, last_built(), alignment);
  if (after == before) return say("They stand so already.");
  const Grasp held = grasp(before, pieces_);
  commit(step_name("Align", before, held.free), std::move(after));
  say(held.locked.empty() ? "" : "Locked pieces stayed where they are.");
}

void MainWindow::spread_selected(Spacing spacing, FloorAxis axis) {
  if (!may_edit_event()) return;
  auto spread = distributed(document_->event(), pieces_, last_built(), spacing, axis);
  if (!spread) return say(spread.error);
  commit(step_name("Spread", document_->event(), pieces_), std::move(*spread.value));
}

void MainWindow::array_selected(const ArrayPlan& plan) {
  if (!may_edit_event() || pieces_.empty() || !types_) return;
  const Event before = document_->event();
  Copies copies = arrayed(before, pieces_, plan, types_->tables(), last_built());
  if (copies.ids.empty()) return;
  PieceIds all = pieces_;
  all.insert(all.end(), copies.ids.begin(), copies.ids.end());
  commit(step_name("Array", before, pieces_), std::move(copies.event));
  select(area_, all);
  say(std::to_string(copies.ids.size()) + (copies.ids.size() == 1 ? " piece was added." : " pieces were added."));
}

void MainWindow::ask_and_array() {
  if (!may_edit_event() || pieces_.empty()) return;
  const Event& event = document_->event();
  const PieceBox room = room_of(event, pieces_, last_built());
  const FloorPlace steps{rounded_place(room.width() + gap_m, event.units),
                         rounded_place(room.depth() + gap_m, event.units)};
  ArrayDialog dialog(this, pieces_.size(), steps, event.units);
  if (dialog.ShowModal() != wxID_OK) return;
  if (const auto plan = dialog.plan()) array_selected(*plan);
}

void MainWindow::ask_and_rename() {
  if (!may_edit_event() || pieces_.empty()) return;
  const std::string present = find_piece(document_->event(), lead())->name;
  wxTextEntryDialog dialog(this,
                           pieces_.size() == 1 ? wxString("Name of the piece")
                                               : wxString("Name of the pieces; from the second on a number is added"),
                           "Rename", shown(present));
  if (dialog.ShowModal() == wxID_OK) rename_selected(text_of(dialog.GetValue().Strip(wxString::both)));
}

}  // namespace quadrille
