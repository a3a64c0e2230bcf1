// The commands of the menu Event: the job's details, areas, and what stands in them.
#pragma once

#include <wx/menu.h>

#include "studio/window/commands/commands.hpp"

namespace quadrille {

/// Apart from those of commands.hpp.
enum SiteCommand : int {
  command_details = wxID_HIGHEST + 400,
  command_area_add,
  command_area_rename,
  command_area_remove,
  command_area_earlier,
  command_area_later,
  command_site_page,
  command_site_structure,  ///< these in the order of SiteAddition
  command_site_walkway,
  command_site_outlet,
  command_site_line,
  command_site_remove,
  command_site_advice,  ///< the best two, three and four lines
  command_site_advice_last = command_site_advice + 2
};

static_assert(int{command_export_sheets} < int{command_details});

/// What these menus must know.
struct SiteMenuState {
  bool open = false, can_edit = false;
  bool has_area = false, may_go_earlier = false, may_go_later = false;
  bool may_tie = false, may_remove = false;
  std::size_t advice = 0;  ///< how many sets of lines are advised
};

wxMenu* make_event_menu();
void refresh_site_menu(wxMenuBar& bar, const SiteMenuState& state);

}  // namespace quadrille
