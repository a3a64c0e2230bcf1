// Putting new pieces down by hand, and what the canvas's own menu offers.
#include <initializer_list>
#include <optional>
#include <utility>

#include "studio/arrange/moving.hpp"
#include "studio/arrange/selection.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/new_event.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/gesture.hpp"
#include "studio/window/canvas/ruler.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/worker.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// An event with one area that holds this piece alone, in the middle of the front line.
Event event_of(PlacedPiece piece) {
  piece.id = "carried";
  piece.x_m = 0;
  Area area;
  area.pieces.emplace_back(std::move(piece));
  Event event;
  event.areas.emplace_back(std::move(area));
  return event;
}

/// The room that the only piece of `event` takes in the elevation, beside and above where it stands; nothing where it
/// could not be built.
std::optional<Extent> room_of_only(const Event& event, const BuiltEvent& built) {
  const Scene scene = scene_of(*event.areas.front(), built, {});
  if (scene.pieces.empty() || scene.pieces.front().shown != Shown::built) return std::nullopt;
  return scene.pieces.front().standing();
}

Extent moved_along(Extent room, double right_m) {
  room.left += right_m, room.right += right_m;
  return room;
}

/// A copy of a menu of the menu bar, with the same words and states.
void append_menu_like(wxMenu& menu, const wxMenuBar& bar, int first, int last, const wxString& label) {
  auto* copy = new wxMenu;
  bool any = false;
  for (int id = first; id <= last; ++id) {
    const wxMenuItem* const item = bar.FindItem(id);
    if (item == nullptr) continue;
    copy->Append(id, item->GetItemLabel(), item->GetHelp())->Enable(item->IsEnabled());
    any = any || item->IsEnabled();
  }
  menu.AppendSubMenu(copy, label)->Enable(any);
}

}  // namespace

void MainWindow::begin_placing(const std::string& type_id) {
  const PieceType* const type = types_ ? types_->find(type_id) : nullptr;
  if (!document_ || document_->read_only() || type == nullptr || area() == nullptr) return;
  photo_hands_->end_mode();  // the canvas's mouse is for one thing at a time
  hand_->placing_type = type_id;
  hand_->placing_room.reset();
  const int carrying = ++hand_->carried;
  canvas_->begin_placing(type->name);
  SetStatusText("Click where it is to stand. Enter puts it down where the line is, Esc gives it up.");
  // How much room it takes is known when it is built, which is done away from the main thread.
  const Event alone = event_of(new_piece(*type));
  worker_->build(alone, [this, alone, carrying](const BuiltEvent& built) {
    CallAfter([this, room = room_of_only(alone, built), carrying] { show_placing_room(room, carrying); });
  });
}

/// `carrying` counts the pieces that were carried: an answer may be of one that was put down since.
void MainWindow::show_placing_room(const std::optional<Extent>& room, int carrying) {
  if (hand_->carried != carrying || !canvas_->is_placing()) return;
  hand_->placing_room = room;
  show_placing(canvas_->drag_shown());
}

void MainWindow::show_placing(DragShown drag) {
  std::optional<Extent> room = hand_->placing_room;
  if (room) room = moved_along(*room, hand_->placing_x_m);
  canvas_->show_placing(hand_->placing_x_m, room, std::move(drag));
}

void MainWindow::place_near(double x_m, const DragRules& rules) {
  if (!document_ || area() == nullptr) return;
  Event event = document_->event();
  const Units units = event.units;
  PlacedPiece carried;
  carried.id = free_id(event, "p");
  carried.x_m = rounded_place(x_m, units);
  carried.last_built = LastBuilt{1e-6, 1e-6, 1e-6, 0, {}};  // only its middle is drawn to anything
  const PieceIds body{carried.id};
  const Area here = *find_area(with_piece(std::move(event), area_, carried), area_);
  const Snapped snapped =
      snap(here, last_built(), body, {}, {hand_->snapping && rules.snapping, rules.near_m, false}, units);
  hand_->placing_x_m = tidy(carried.x_m + snapped.way.right_m);
  show_placing({snapped.guides, print_length(hand_->placing_x_m, lengths_in(units)) + " along"});
}

void MainWindow::place_now() {
  const std::string type = hand_->placing_type;
  canvas_->end_placing();
  SetStatusText("");
  add_piece_at(type, hand_->placing_x_m);
}

/// One of the type as it comes, in the colours of the piece before it.
PlacedPiece MainWindow::new_piece(const PieceType& type) const {
  PlacedPiece piece;
  piece.name = type.name;
  piece.type = type.id;
  piece.colours = colours_for_new();
  piece.values = values_for_colours(type.parameters, piece.colours.size());
  return piece;
}

void MainWindow::add_piece_at(const std::string& type_id, double x_m) {
  const PieceType* const type = types_ ? types_->find(type_id) : nullptr;
  if (!document_ || document_->read_only() || type == nullptr || area() == nullptr) return;
  PlacedPiece piece = new_piece(*type);
  piece.x_m = x_m;
  put_in("Add", std::move(piece));
}

/// What can be done with what is selected, as the menu bar has it: the same words, keys and states.
std::unique_ptr<wxMenu> MainWindow::context_menu() const {
  const wxMenuBar& bar = *GetMenuBar();
  auto menu = std::make_unique<wxMenu>();
  const auto add = [&](std::initializer_list<int> ids) {
    for (const int id : ids)
      if (const wxMenuItem* const item = bar.FindItem(id))
        menu->Append(id, item->GetItemLabel(), item->GetHelp())->Enable(item->IsEnabled());
  };
  if (!pieces_.empty()) {
    add({wxID_CUT, wxID_COPY, wxID_PASTE, wxID_DELETE});
    menu->AppendSeparator();
    add({command_duplicate, command_array, command_mirror});
    append_menu_like(*menu, bar, command_align_left, command_align_front_line, "A&lign");
    append_menu_like(*menu, bar, command_spread_gaps, command_spread_depth, "&Spread evenly");
    append_menu_like(*menu, bar, command_to_front, command_to_back, "&Order in depth");
    menu->AppendSeparator();
    if (menu_state().has_path) {
      add({command_add_point, command_remove_point});
      menu->AppendSeparator();
    }
    add({command_rename, command_lock, command_hide});
    menu->AppendSeparator();
    add({command_fit_piece});
  } else {
    for (int id = command_add; id <= command_add_last && bar.FindItem(id) != nullptr; ++id)
      menu->Append(id, "Add " + wxMenuItem::GetLabelText(bar.GetLabel(id)))->Enable(menu_state().can_edit);
    if (menu->GetMenuItemCount() > 0) menu->AppendSeparator();
    add({wxID_PASTE});
    menu->AppendSeparator();
  }
  add({wxID_ZOOM_FIT, wxID_SELECTALL});
  return menu;
}

}  // namespace quadrille
