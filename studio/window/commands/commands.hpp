// The window's commands by id, and the menus that hold them.
#pragma once

#include <wx/accel.h>
#include <wx/menu.h>

#include <string>
#include <utility>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/paper/sheet.hpp"

namespace quadrille {

/// Besides these: wxID_NEW, OPEN, SAVE, SAVEAS, PRINT, EXIT, UNDO, REDO, CUT, COPY, PASTE, DELETE, SELECTALL, ZOOM_IN,
/// ZOOM_OUT, ZOOM_FIT, ABOUT.
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
  command_piece_types,
  command_recent,  ///< and as many behind it as are remembered
  command_recent_last = command_recent + 8,
  command_sample,  ///< and as many behind it as there are
  command_sample_last = command_sample + 19,
  command_keys,
  command_duplicate,
  command_mirror,
  command_to_front,  ///< these in the order of DepthStep
  command_forward,
  command_backward,
  command_to_back,
  command_photo_choose,
  command_photo_paste,
  command_photo_calibrate,
  command_photo_move,
  command_photo_fade,
  command_photo_lock,
  command_photo_show,
  command_photo_colour,
  command_photo_remove,
  command_lock,  ///< or unlock
  command_hide,  ///< or show
  command_show_all,
  command_rename,
  command_align_left,  ///< these in the order of Alignment
  command_align_centre,
  command_align_right,
  command_align_front,
  command_align_back,
  command_align_front_line,
  command_spread_gaps,
  command_spread_centres,
  command_spread_depth,
  command_array,
  command_keep,  ///< in the repertoire
  command_repertoire,
  command_select_none,
  command_snapping,
  command_next_handle,
  command_previous_handle,
  command_add_point,
  command_remove_point,
  command_figure_left,
  command_figure_right,
  command_previous_finding,
  command_next_finding,
  command_apply_remedy,
  command_add,  ///< a piece of the first type, and as many behind it as there are types
  command_add_last = command_add + 39,
  command_house,
  command_recover,
  command_export_sheets
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
  bool can_add_photo = false;  ///< an area is shown, and may be changed
  bool has_photo = false, photo_locked = false, photo_shown = false;
  bool can_change_piece = false;                                ///< a piece is selected, and not locked
  std::size_t selected = 0;                                     ///< how many pieces are
  bool any_hidden = false;                                      ///< in the area
  bool all_locked = false, all_hidden = false;                  ///< of those selected
  bool snapping = true, has_handles = false, has_path = false;  ///< handles of the one selected piece; points of a path
};

/// `samples` are the names of the sample events.
wxMenuBar* make_menu_bar(const std::vector<std::string>& samples);
/// The events that were open last, newest first.
void show_recent(wxMenuBar& bar, const std::vector<std::string>& files);
/// The piece types that can be added, by name, in the order of their commands.
void show_types(wxMenuBar& bar, const std::vector<std::string>& names);
/// Every item of the menus that has keys, and those of the two tables below: what it does, and the keys.
std::vector<std::pair<wxString, wxString>> keys_in_words(const wxMenuBar& bar);
void refresh_menus(wxMenuBar& bar, const MenuState& state);

/// Combinations beside those in the menus; all with a modifier, so that no letter is taken from a text field.
wxAcceleratorTable window_accelerators();
/// Single keys, which only count while the canvas has the focus.
wxAcceleratorTable canvas_accelerators();

}  // namespace quadrille
