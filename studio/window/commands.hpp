// The window's commands by id, and the menus that hold them.
#pragma once

#include <wx/accel.h>
#include <wx/menu.h>

#include <string>

#include "studio/drawing/sheet.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// Besides these: wxID_OPEN, SAVE, SAVEAS, EXIT, UNDO, REDO, ZOOM_IN, ZOOM_OUT, ZOOM_FIT, ABOUT.
enum Command : int {
  command_export = wxID_HIGHEST + 1,
  command_paper_a4,  ///< these in the order of Paper
  command_paper_letter,
  command_paper_a3,
  command_paper_tabloid,
  command_move_left,
  command_move_right,
  command_units_feet,  ///< these in the order of Units
  command_units_metric,
  command_fit_piece,
  command_letters,
  command_figure,
  command_previous_area,
  command_next_area,
  command_next_pane,
  command_pan_left,
  command_pan_right,
  command_pan_up,
  command_pan_down,
  command_piece_types
};

/// What the menus must know to be right.
struct MenuState {
  bool open = false;      ///< there is an event
  bool can_edit = false;  ///< and it is not read-only
  bool can_save = false;
  bool several_areas = false, piece_selected = false, can_move = false;
  std::string undo, redo;  ///< names of the steps; empty where there is none
  Units units = Units::feet;
  Paper paper = Paper::a4;
  bool letters = false, figure = true;
};

wxMenuBar* make_menu_bar();
void refresh_menus(wxMenuBar& bar, const MenuState& state);

/// Combinations beside those in the menus; all with a modifier, so that no letter is taken from a text field.
wxAcceleratorTable window_accelerators();
/// Single keys, which only count while the canvas has the focus.
wxAcceleratorTable canvas_accelerators();

}  // namespace quadrille
