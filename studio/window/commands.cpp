// Menus and keys.
#include "studio/window/commands.hpp"

#include <iterator>

#include "studio/window/wx_text.hpp"

namespace quadrille {
namespace {

wxMenu* file_menu() {
  auto* paper = new wxMenu;
  paper->AppendRadioItem(command_paper_a4, "A&4");
  paper->AppendRadioItem(command_paper_letter, "&Letter");
  paper->AppendRadioItem(command_paper_a3, "A&3");
  paper->AppendRadioItem(command_paper_tabloid, "&Tabloid");
  auto* menu = new wxMenu;
  menu->Append(wxID_OPEN, wxString::FromUTF8("&Open…\tCtrl+O"), "Open an event");
  menu->AppendSeparator();
  menu->Append(wxID_SAVE, "&Save\tCtrl+S", "Save the event to its file");
  menu->Append(wxID_SAVEAS, wxString::FromUTF8("Save &as…\tCtrl+Shift+S"), "Save the event to another file");
  menu->AppendSeparator();
  menu->Append(command_export, wxString::FromUTF8("&Export drawing…\tCtrl+E"),
               "Write the drawing to a PDF, SVG or PNG file");
  menu->AppendSubMenu(paper, "&Paper of drawings", "The paper that drawings are exported for");
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
  menu->Append(command_move_left, "Move piece &left\tAlt+Left", "Move the selected piece a little to the left");
  menu->Append(command_move_right, "Move piece &right\tAlt+Right", "Move the selected piece a little to the right");
  menu->AppendSeparator();
  menu->AppendSubMenu(units, "U&nits", "The units that this event is shown and printed in");
  return menu;
}

wxMenu* view_menu() {
  auto* menu = new wxMenu;
  menu->Append(wxID_ZOOM_IN, "Zoom &in\tCtrl++");
  menu->Append(wxID_ZOOM_OUT, "Zoom &out\tCtrl+-");
  menu->Append(wxID_ZOOM_FIT, "&Fit all\tCtrl+0", "Show the whole area");
  menu->Append(command_fit_piece, "Fit selected &piece\tCtrl+9",
               "Show the selected piece as large as the window allows");
  menu->AppendSeparator();
  menu->AppendCheckItem(command_letters, "Slot &letters\tCtrl+L", "Show the letter of its colour slot on each balloon");
  menu->AppendCheckItem(command_figure, "Standing &figure\tCtrl+G", "Show a standing person for scale");
  menu->AppendSeparator();
  menu->Append(command_previous_area, "P&revious area\tCtrl+PgUp");
  menu->Append(command_next_area, "&Next area\tCtrl+PgDn");
  menu->AppendSeparator();
  menu->Append(command_next_pane, "Next p&ane\tF6", "Put the keyboard into the next pane");
  return menu;
}

wxMenu* pieces_menu() {
  auto* menu = new wxMenu;
  menu->Append(command_piece_types, wxString::FromUTF8("Piece &types…"),
               "What kinds of pieces were found, and which files were refused");
  return menu;
}

wxMenu* help_menu() {
  auto* menu = new wxMenu;
  menu->Append(wxID_ABOUT, "&About Quadrille");
  return menu;
}

wxString step_label(const char* verb, const std::string& name, const char* keys) {
  wxString label = verb;
  // An ampersand in a piece's name is no shortcut.
  if (!name.empty()) label += " " + wxControl::EscapeMnemonics(shown(name));
  return label + "\t" + keys;
}

}  // namespace

wxMenuBar* make_menu_bar() {
  auto* bar = new wxMenuBar;
  bar->Append(file_menu(), "&File");
  bar->Append(edit_menu(), "&Edit");
  bar->Append(view_menu(), "&View");
  bar->Append(pieces_menu(), "&Pieces");
  bar->Append(help_menu(), "&Help");
  return bar;
}

void refresh_menus(wxMenuBar& bar, const MenuState& state) {
  bar.Enable(wxID_SAVE, state.can_save);
  for (const int id : {int{wxID_SAVEAS}, int{command_export}, int{wxID_ZOOM_IN}, int{wxID_ZOOM_OUT}, int{wxID_ZOOM_FIT},
                       int{command_letters}, int{command_figure}})
    bar.Enable(id, state.open);
  bar.Enable(wxID_UNDO, state.can_edit && !state.undo.empty());
  bar.Enable(wxID_REDO, state.can_edit && !state.redo.empty());
  bar.SetLabel(wxID_UNDO, step_label("&Undo", state.undo, "Ctrl+Z"));
  bar.SetLabel(wxID_REDO, step_label("&Redo", state.redo, "Ctrl+Shift+Z"));
  bar.Enable(command_move_left, state.can_move);
  bar.Enable(command_move_right, state.can_move);
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
                                        {wxACCEL_NORMAL, WXK_LEFT, command_pan_left},
                                        {wxACCEL_NORMAL, WXK_RIGHT, command_pan_right},
                                        {wxACCEL_NORMAL, WXK_UP, command_pan_up},
                                        {wxACCEL_NORMAL, WXK_DOWN, command_pan_down},
                                        {wxACCEL_NORMAL, WXK_PAGEUP, command_previous_area},
                                        {wxACCEL_NORMAL, WXK_PAGEDOWN, command_next_area}};
  return {static_cast<int>(std::size(entries)), entries};
}

}  // namespace quadrille
