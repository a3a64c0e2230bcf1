#include "studio/window/commands/commands_hands.hpp"

namespace quadrille {
namespace {

wxMenu* depth_menu() {
  auto* menu = new wxMenu;
  menu->Append(command_to_front, "To the &front\tCtrl+Shift+Up", "Put the selected pieces before all others");
  menu->Append(command_forward, "F&orward\tCtrl+Shift+PgUp",
               "Put the selected pieces before the next one in front of them");
  menu->Append(command_backward, "B&ackward\tCtrl+Shift+PgDn",
               "Put the selected pieces behind the next one behind them");
  menu->Append(command_to_back, "To the &back\tCtrl+Shift+Down", "Put the selected pieces behind all others");
  return menu;
}

wxMenu* align_menu() {
  auto* menu = new wxMenu;
  menu->Append(command_align_left, "&Left edges", "Left edges to that of the leftmost piece");
  menu->Append(command_align_centre, "&Centres", "Middles to the middle of the room that they take");
  menu->Append(command_align_right, "&Right edges", "Right edges to that of the rightmost piece");
  menu->AppendSeparator();
  menu->Append(command_align_front, "&Foremost", "All as near to the audience as the foremost piece");
  menu->Append(command_align_back, "&Hindmost", "All as far from the audience as the hindmost piece");
  menu->Append(command_align_front_line, "Front l&ine", "All onto the area's front line");
  return menu;
}

wxMenu* spread_menu() {
  auto* menu = new wxMenu;
  menu->Append(command_spread_gaps, "Equal &gaps", "The same room between neighbours; the outermost stay");
  menu->Append(command_spread_centres, "Equal &steps", "The same step from middle to middle; the outermost stay");
  menu->Append(command_spread_depth, "In &depth", "The same room between neighbours, from front to back");
  return menu;
}

}  // namespace

void append_clipboard(wxMenu& menu) {
  menu.Append(wxID_CUT, "Cu&t\tCtrl+X", "Take the selected pieces out and keep them for pasting");
  menu.Append(wxID_COPY, "&Copy\tCtrl+C", "Keep the selected pieces for pasting, here or in another event");
  menu.Append(wxID_PASTE, "&Paste\tCtrl+V", "Put in what was cut or copied: at the pointer, or beside where it stood");
}

void append_hands(wxMenu& menu) {
  menu.Append(command_duplicate, "&Duplicate\tCtrl+D", "A copy beside the selected pieces");
  menu.Append(command_array, wxString::FromUTF8("Arra&y…\tCtrl+Shift+D"),
              "Copies in even steps along the front line and in depth, such as columns along an aisle");
  menu.Append(command_mirror, "&Mirror\tCtrl+M", "Turn the selected pieces left for right where they stand");
  menu.AppendSubMenu(align_menu(), "A&lign", "Line the selected pieces up");
  menu.AppendSubMenu(spread_menu(), "&Spread evenly", "Spread the selected pieces over the room that they take");
  menu.AppendSubMenu(depth_menu(), "&Order in depth", "Which piece stands before which");
}

void append_states(wxMenu& menu) {
  menu.AppendSeparator();
  menu.Append(command_rename, wxString::FromUTF8("Re&name…\tF2"), "Give the selected pieces a name");
  menu.Append(command_lock, "Loc&k\tCtrl+K", "A locked piece stays where and as it is");
  menu.Append(command_hide, "&Hide\tCtrl+U", "A hidden piece is neither drawn nor counted");
  menu.Append(command_show_all, "Sho&w all hidden\tCtrl+Alt+U", "Show every hidden piece of this area");
  menu.Append(wxID_DELETE, "&Remove\tCtrl+Del", "Take the selected pieces out of the event");
}

void append_repertoire(wxMenu& menu) {
  menu.AppendSeparator();
  menu.Append(command_keep, wxString::FromUTF8("Save to the repertoir&e…"),
              "Keep the selected piece, with its price, to use it again in any event");
  menu.Append(command_repertoire, wxString::FromUTF8("Insert from the re&pertoire…\tCtrl+R"),
              "Your own pieces, in pictures");
}

void refresh_hands(wxMenuBar& bar, const MenuState& state) {
  const bool some = state.can_edit && state.selected > 0;
  for (const int id : {int{command_mirror}, int{command_to_front}, int{command_forward}, int{command_backward},
                       int{command_to_back}, int{wxID_DELETE}, int{wxID_CUT}, int{command_align_front_line}})
    bar.Enable(id, state.can_change_piece);
  for (int id = command_align_left; id < command_align_front_line; ++id)
    bar.Enable(id, state.can_change_piece && state.selected > 1);
  for (int id = command_spread_gaps; id <= command_spread_depth; ++id)
    bar.Enable(id, state.can_change_piece && state.selected > 2);
  for (const int id :
       {int{command_duplicate}, int{command_array}, int{command_lock}, int{command_hide}, int{command_rename}})
    bar.Enable(id, some);
  bar.Enable(wxID_COPY, state.selected > 0);
  bar.Enable(wxID_PASTE, state.can_edit);
  bar.Enable(command_show_all, state.can_edit && state.any_hidden);
  bar.Enable(command_keep, state.selected == 1);
  bar.Enable(command_repertoire, state.can_edit);
  bar.SetLabel(command_lock, state.all_locked ? "Unloc&k\tCtrl+K" : "Loc&k\tCtrl+K");
  bar.SetLabel(command_hide, state.all_hidden ? "S&how\tCtrl+U" : "&Hide\tCtrl+U");
}

}  // namespace quadrille
