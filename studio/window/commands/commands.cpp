// Menus and keys.
#include "studio/window/commands/commands.hpp"

#include <functional>
#include <iterator>

#include "studio/window/commands/commands_hands.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// The helps by which the submenus that are filled later are known.
constexpr const char* recent_mark = "The events that were open last";
constexpr const char* types_mark = "Add a piece to this area";

wxMenu* file_menu() {
  auto* paper = new wxMenu;
  paper->AppendRadioItem(command_paper_a4, "A&4");
  paper->AppendRadioItem(command_paper_letter, "&Letter");
  paper->AppendRadioItem(command_paper_a3, "A&3");
  paper->AppendRadioItem(command_paper_tabloid, "&Tabloid");
  auto* menu = new wxMenu;
  menu->Append(wxID_NEW, wxString::FromUTF8("&New event…\tCtrl+N"), "Begin an event with a few questions");
  menu->Append(wxID_OPEN, wxString::FromUTF8("&Open…\tCtrl+O"), "Open an event");
  menu->AppendSubMenu(new wxMenu, "Open &recent", recent_mark);
  menu->AppendSeparator();
  menu->Append(wxID_SAVE, "&Save\tCtrl+S", "Save the event to its file");
  menu->Append(wxID_SAVEAS, wxString::FromUTF8("Save &as…\tCtrl+Shift+S"), "Save the event to another file");
  menu->AppendSeparator();
  menu->Append(command_export, wxString::FromUTF8("&Export drawing…\tCtrl+E"),
               "Write the drawing to a PDF, SVG or PNG file");
  menu->Append(command_export_sheets, wxString::FromUTF8("Export s&heets…\tCtrl+Shift+E"),
               "Write the sheets that are handed out to PDF files");
  menu->Append(wxID_PRINT, wxString::FromUTF8("Prin&t…\tCtrl+P"), "Look at the sheets page by page, and print them");
  menu->AppendSubMenu(paper, "&Paper of drawings", "The paper that drawings are exported for");
  menu->AppendSeparator();
  menu->Append(command_house, wxString::FromUTF8("&House settings…\tCtrl+,"), "Your own stock, prices, rates and crew");
  menu->Append(command_recover, wxString::FromUTF8("Restore &unsaved work…"),
               "What the studio kept when it ended without saving");
  menu->AppendSeparator();
  menu->Append(wxID_EXIT, "&Quit\tCtrl+Q", "Close the window");
  return menu;
}

wxMenu* edit_menu() {
  auto* units = new wxMenu;
  units->AppendRadioItem(command_units_feet, "&Feet and inches");
  units->AppendRadioItem(command_units_metric, "&Metric");
  auto* menu = new wxMenu;
  menu->Append(wxID_UNDO, "&Undo\tCtrl+Z");
  menu->Append(wxID_REDO, "&Redo\tCtrl+Shift+Z");
  menu->AppendSeparator();
  append_clipboard(*menu);
  menu->AppendSeparator();
  menu->Append(wxID_SELECTALL, "Select &all\tCtrl+A", "Select all pieces of this area");
  menu->Append(command_select_none, "Select n&one\tCtrl+Shift+N");
  menu->AppendSeparator();
  menu->Append(command_move_left, "Move piece &left\tAlt+Left", "Move the selected pieces a little to the left");
  menu->Append(command_move_right, "Move piece &right\tAlt+Right", "Move the selected pieces a little to the right");
  menu->AppendCheckItem(command_snapping, "&Snap while dragging\tCtrl+Shift+G",
                        "Let edges, middles and equal gaps draw what is dragged; Alt held does without");
  menu->AppendSeparator();
  menu->Append(command_next_handle, "Next &handle\tCtrl+H", "Go to the selected piece's next handle; arrows change it");
  menu->Append(command_previous_handle, "Previous handle\tCtrl+Shift+H");
  menu->Append(command_add_point, "Add &path point\tCtrl+Shift+P",
               "Put a point into the path, behind the one that is chosen");
  menu->Append(command_remove_point, "Remove path point", "Take the chosen point out of the path");
  menu->AppendSeparator();
  menu->Append(command_next_finding, "Next &finding\tF8", "Go to the field that the next finding is about");
  menu->Append(command_previous_finding, "Previous f&inding\tShift+F8",
               "Go to the field that the finding before is about");
  menu->Append(command_apply_remedy, "&Apply its remedy\tCtrl+F8", "Make the change that mends the selected finding");
  menu->AppendSeparator();
  menu->AppendSubMenu(units, "U&nits", "The units that this event is shown and printed in");
  return menu;
}

wxMenu* view_menu() {
  auto* menu = new wxMenu;
  menu->Append(wxID_ZOOM_IN, "Zoom &in\tCtrl++");
  menu->Append(wxID_ZOOM_OUT, "Zoom &out\tCtrl+-");
  menu->Append(wxID_ZOOM_FIT, "&Fit all\tCtrl+0", "Show the whole area");
  menu->Append(command_fit_piece, "Fit selected &pieces\tCtrl+9",
               "Show the selected pieces as large as the window allows");
  menu->AppendSeparator();
  menu->AppendCheckItem(command_letters, "Slot &letters\tCtrl+L", "Show the letter of its colour slot on each balloon");
  menu->AppendCheckItem(command_figure, "Standing &figure\tCtrl+G", "Show a standing person for scale");
  menu->Append(command_figure_left, "Figure to the &left");
  menu->Append(command_figure_right, "Figure to the &right");
  menu->AppendSeparator();
  menu->Append(command_previous_area, "P&revious area\tCtrl+PgUp");
  menu->Append(command_next_area, "&Next area\tCtrl+PgDn");
  menu->AppendSeparator();
  menu->Append(command_next_pane, "Next p&ane\tF6", "Put the keyboard into the next pane");
  return menu;
}

wxMenu* pieces_menu() {
  auto* menu = new wxMenu;
  menu->AppendSubMenu(new wxMenu, "&Add", types_mark);
  menu->AppendSeparator();
  append_hands(*menu);
  append_states(*menu);
  append_repertoire(*menu);
  menu->AppendSeparator();
  menu->Append(command_piece_types, wxString::FromUTF8("Piece &types…"),
               "What kinds of pieces were found, and which files were refused");
  return menu;
}

wxMenu* photo_menu() {
  auto* menu = new wxMenu;
  menu->Append(command_photo_choose, wxString::FromUTF8("&Choose…\tCtrl+Shift+O"),
               "Put a photo of the place behind this area; a file can be dropped on the drawing too");
  menu->Append(command_photo_paste, "Pa&ste\tCtrl+Shift+V", "Put the picture on the clipboard behind this area");
  menu->AppendSeparator();
  menu->Append(command_photo_calibrate, wxString::FromUTF8("C&alibrate…\tCtrl+Shift+K"),
               "Give the photo its true size by two points and the length between them");
  menu->Append(command_photo_move, "&Move\tCtrl+Shift+M", "Move the photo with the mouse or the arrow keys");
  menu->Append(command_photo_fade, wxString::FromUTF8("&Fade…"), "Fade the photo, so that the pieces stand out");
  menu->AppendCheckItem(command_photo_lock, "&Lock", "Keep the photo from being moved, calibrated or removed");
  menu->AppendCheckItem(command_photo_show, "S&how", "Show the photo, here and on the sheets");
  menu->AppendSeparator();
  menu->Append(command_photo_colour, wxString::FromUTF8("&Pick a colour…\tCtrl+Shift+I"),
               "See which colours of the palettes look like a place in the photo");
  menu->AppendSeparator();
  menu->Append(command_photo_remove, "&Remove", "Take the photo out of the event");
  return menu;
}

wxMenu* help_menu(const std::vector<std::string>& samples) {
  auto* events = new wxMenu;
  constexpr std::size_t most = command_sample_last - command_sample + 1;
  for (std::size_t i = 0; i < samples.size() && i < most; ++i)
    events->Append(command_sample + static_cast<int>(i), wxControl::EscapeMnemonics(shown(samples[i])),
                   "Open a copy of this sample");
  auto* menu = new wxMenu;
  menu->AppendSubMenu(events, "&Sample events")->Enable(!samples.empty());
  menu->Append(command_keys, wxString::FromUTF8("&Keys…\tF1"), "Every key and what it does");
  menu->AppendSeparator();
  menu->Append(wxID_ABOUT, "&About Quadrille");
  return menu;
}

/// The submenu whose item bears this help, without its items; null where there is none.
wxMenu* emptied_submenu(wxMenuBar& bar, const wxString& mark) {
  for (std::size_t i = 0; i < bar.GetMenuCount(); ++i)
    for (wxMenuItem* item : bar.GetMenu(i)->GetMenuItems()) {
      wxMenu* const menu = item->GetHelp() == mark ? item->GetSubMenu() : nullptr;
      if (menu == nullptr) continue;
      while (menu->GetMenuItemCount() > 0) menu->Destroy(menu->FindItemByPosition(0));
      return menu;
    }
  return nullptr;
}

wxString step_label(const char* verb, const std::string& name, const char* keys) {
  wxString label = verb;
  // An ampersand in a piece's name is no shortcut.
  if (!name.empty()) label += " " + wxControl::EscapeMnemonics(shown(name));
  return label + "\t" + keys;
}

}  // namespace

wxMenuBar* make_menu_bar(const std::vector<std::string>& samples) {
  auto* bar = new wxMenuBar;
  bar->Append(file_menu(), "&File");
  bar->Append(edit_menu(), "&Edit");
  bar->Append(view_menu(), "&View");
  bar->Append(pieces_menu(), "&Pieces");
  bar->Append(photo_menu(), "Ph&oto");
  bar->Append(make_event_menu(), "Eve&nt");
  bar->Append(help_menu(samples), "&Help");
  return bar;
}

void show_recent(wxMenuBar& bar, const std::vector<std::string>& files) {
  wxMenu* const menu = emptied_submenu(bar, recent_mark);
  if (menu == nullptr) return;
  constexpr std::size_t most = command_recent_last - command_recent + 1;
  for (std::size_t i = 0; i < files.size() && i < most; ++i)
    menu->Append(command_recent + static_cast<int>(i),
                 wxString() << "&" << (i + 1) << "  " << wxControl::EscapeMnemonics(shown(files[i])));
  if (files.empty()) menu->Append(wxID_ANY, "None yet")->Enable(false);
}

void show_types(wxMenuBar& bar, const std::vector<std::string>& names) {
  wxMenu* const menu = emptied_submenu(bar, types_mark);
  if (menu == nullptr) return;
  constexpr std::size_t most = command_add_last - command_add + 1;
  for (std::size_t i = 0; i < names.size() && i < most; ++i) {
    wxString label = wxControl::EscapeMnemonics(shown(names[i]));
    if (i < 9) label << "\tCtrl+Alt+" << (i + 1);
    menu->Append(command_add + static_cast<int>(i), label, "Then click where it is to stand");
  }
}

std::vector<std::pair<wxString, wxString>> keys_in_words(const wxMenuBar& bar) {
  std::vector<std::pair<wxString, wxString>> keys;
  const std::function<void(const wxMenu&)> add = [&](const wxMenu& menu) {
    for (const wxMenuItem* item : menu.GetMenuItems()) {
      if (const wxMenu* inside = item->GetSubMenu()) add(*inside);
      const wxString label = item->GetItemLabel();
      if (!label.Contains("\t")) continue;
      // What would be undone now is no part of what the key does.
      const int id = item->GetId();
      const wxString what = id == wxID_UNDO   ? wxString("Undo")
                            : id == wxID_REDO ? wxString("Redo")
                                              : wxMenuItem::GetLabelText(label.BeforeFirst('\t'));
      keys.emplace_back(what, label.AfterFirst('\t'));
    }
  };
  for (std::size_t i = 0; i < bar.GetMenuCount(); ++i) add(*bar.GetMenu(i));
  for (const char* const words :
       {"Select the next or previous piece|Tab, Shift+Tab, in the drawing",
        "Select one more, or one less|Shift or Ctrl and a click", "Select what lies below|Another click at the place",
        "Select what lies inside, or what is touched|Drag over empty paper to the right, or to the left",
        "Move the selected pieces, or the chosen handle|Arrow keys, in the drawing; with Shift ten times as far",
        "Pan the drawing|Ctrl and arrow keys, in the drawing", "Drag without snapping|Alt held meanwhile",
        "Put a new piece down where the line is|Enter", "Remove the chosen path point|Del, in the drawing",
        "Menu of what is selected|Menu key, or the right button", "Zoom|+ and -, in the drawing",
        "Show the whole area|Home, in the drawing", "Previous or next area|PgUp, PgDn, in the drawing",
        "Pan with the mouse|Space and drag, or the middle button", "Zoom at the pointer|Ctrl and the wheel",
        "Redo, as well|Ctrl+Y", "Give up a drag, or select nothing|Esc",
        "Move what is selected|Arrow keys, on the plan of the page Site; with Shift in smaller steps",
        "Remove what is selected|Del, on that plan and in its list"}) {
    const wxString line = words;
    keys.emplace_back(line.BeforeFirst('|'), line.AfterFirst('|'));
  }
  return keys;
}

void refresh_menus(wxMenuBar& bar, const MenuState& state) {
  bar.Enable(wxID_SAVE, state.can_save);
  for (const int id :
       {int{wxID_SAVEAS}, int{command_export}, int{command_export_sheets}, int{wxID_PRINT}, int{wxID_ZOOM_IN},
        int{wxID_ZOOM_OUT}, int{wxID_ZOOM_FIT}, int{command_letters}, int{command_figure}})
    bar.Enable(id, state.open);
  bar.Enable(wxID_UNDO, state.can_edit && !state.undo.empty());
  bar.Enable(wxID_REDO, state.can_edit && !state.redo.empty());
  bar.SetLabel(wxID_UNDO, step_label("&Undo", state.undo, "Ctrl+Z"));
  bar.SetLabel(wxID_REDO, step_label("&Redo", state.redo, "Ctrl+Shift+Z"));
  for (const int id : {int{wxID_SELECTALL}, int{command_snapping}}) bar.Enable(id, state.open);
  bar.Enable(command_select_none, state.piece_selected);
  for (const int id : {int{command_next_handle}, int{command_previous_handle}}) bar.Enable(id, state.has_handles);
  for (const int id : {int{command_add_point}, int{command_remove_point}})
    bar.Enable(id, state.can_edit && state.has_path);
  for (const int id : {int{command_figure_left}, int{command_figure_right}}) bar.Enable(id, state.open && state.figure);
  bar.Check(command_snapping, state.snapping);
  for (const int id : {int{command_next_finding}, int{command_previous_finding}}) bar.Enable(id, state.open);
  bar.Enable(command_apply_remedy, state.can_edit);
  bar.Enable(command_move_left, state.can_move);
  bar.Enable(command_move_right, state.can_move);
  refresh_hands(bar, state);
  for (int id = command_add; id <= command_add_last && bar.FindItem(id) != nullptr; ++id)
    bar.Enable(id, state.can_edit);
  bar.Enable(command_photo_choose, state.can_add_photo && !state.photo_locked);
  bar.Enable(command_photo_paste, state.can_add_photo && !state.photo_locked);
  const bool can_change_photo = state.can_edit && state.has_photo;
  for (const int id : {int{command_photo_calibrate}, int{command_photo_move}, int{command_photo_remove}})
    bar.Enable(id, can_change_photo && !state.photo_locked);
  for (const int id : {int{command_photo_fade}, int{command_photo_lock}, int{command_photo_show}})
    bar.Enable(id, can_change_photo);
  bar.Enable(command_photo_colour, state.has_photo);
  bar.Check(command_photo_lock, state.photo_locked);
  bar.Check(command_photo_show, state.photo_shown);
  bar.Enable(command_fit_piece, state.piece_selected);
  bar.Enable(command_units_feet, state.can_edit);
  bar.Enable(command_units_metric, state.can_edit);
  bar.Enable(command_previous_area, state.several_areas);
  bar.Enable(command_next_area, state.several_areas);
  bar.Check(command_units_feet + static_cast<int>(state.units), true);
  bar.Check(command_paper_a4 + static_cast<int>(state.paper), true);
  bar.Check(command_letters, state.letters);
  bar.Check(command_figure, state.figure);
}

wxAcceleratorTable window_accelerators() {
  const wxAcceleratorEntry entries[] = {{wxACCEL_CTRL, '=', wxID_ZOOM_IN},
                                        {wxACCEL_CTRL, WXK_NUMPAD_ADD, wxID_ZOOM_IN},
                                        {wxACCEL_CTRL, WXK_NUMPAD_SUBTRACT, wxID_ZOOM_OUT},
                                        {wxACCEL_CTRL, WXK_NUMPAD0, wxID_ZOOM_FIT},
                                        {wxACCEL_CTRL, 'Y', wxID_REDO}};
  return {static_cast<int>(std::size(entries)), entries};
}

wxAcceleratorTable canvas_accelerators() {
  const wxAcceleratorEntry entries[] = {{wxACCEL_NORMAL, '+', wxID_ZOOM_IN},
                                        {wxACCEL_SHIFT, '+', wxID_ZOOM_IN},
                                        {wxACCEL_NORMAL, '=', wxID_ZOOM_IN},
                                        {wxACCEL_NORMAL, WXK_NUMPAD_ADD, wxID_ZOOM_IN},
                                        {wxACCEL_NORMAL, '-', wxID_ZOOM_OUT},
                                        {wxACCEL_NORMAL, WXK_NUMPAD_SUBTRACT, wxID_ZOOM_OUT},
                                        {wxACCEL_NORMAL, WXK_HOME, wxID_ZOOM_FIT},
                                        {wxACCEL_CTRL, WXK_LEFT, command_pan_left},
                                        {wxACCEL_CTRL, WXK_RIGHT, command_pan_right},
                                        {wxACCEL_CTRL, WXK_UP, command_pan_up},
                                        {wxACCEL_CTRL, WXK_DOWN, command_pan_down},
                                        {wxACCEL_NORMAL, WXK_PAGEUP, command_previous_area},
                                        {wxACCEL_NORMAL, WXK_PAGEDOWN, command_next_area}};
  return {static_cast<int>(std::size(entries)), entries};
}

}  // namespace quadrille
