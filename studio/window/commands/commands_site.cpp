#include "studio/window/commands/commands_site.hpp"

namespace quadrille {

wxMenu* make_event_menu() {
  auto* advice = new wxMenu;
  advice->Append(command_site_advice, "&Two lines", "Tie the selected piece with the best two lines");
  advice->Append(command_site_advice + 1, "T&hree lines", "Tie the selected piece with the best three lines");
  advice->Append(command_site_advice + 2, "&Four lines", "Tie the selected piece with the best four lines");
  auto* menu = new wxMenu;
  menu->Append(command_details, wxString::FromUTF8("&Details…\tCtrl+I"),
               "Title, client, venue, times, currency, terms and palettes");
  menu->AppendSeparator();
  menu->Append(command_area_add, wxString::FromUTF8("&Add an area…\tCtrl+Shift+A"), "Another place at the venue");
  menu->Append(command_area_rename, wxString::FromUTF8("&Rename this area…"), "Give the shown area another name");
  menu->Append(command_area_earlier, "Move this area &up", "Put the shown area before the one above it");
  menu->Append(command_area_later, "Move this area do&wn", "Put the shown area behind the one below it");
  menu->Append(command_area_remove, wxString::FromUTF8("Remove this area…"), "Take the shown area out of the event");
  menu->AppendSeparator();
  menu->Append(command_site_page, "&Site\tCtrl+T", "What is known of the shown area, from above");
  menu->Append(command_site_structure, "Add a &structure", "Something that stands there and may be tied to");
  menu->Append(command_site_walkway, "Add a wal&kway", "A strip that people walk on");
  menu->Append(command_site_outlet, "Note the &outlet", "How far the nearest outlet is");
  menu->Append(command_site_line, "Add a &line\tCtrl+Shift+L", "A line that secures the selected piece");
  menu->AppendSubMenu(advice, "&Use advised lines", "What the standing check found best for the selected piece");
  menu->Append(command_site_remove, "Remove from the si&te", "Take what is selected on the page Site away");
  return menu;
}

void refresh_site_menu(wxMenuBar& bar, const SiteMenuState& state) {
  bar.Enable(command_details, state.can_edit);
  bar.Enable(command_area_add, state.can_edit);
  for (const int id : {int{command_area_rename}, int{command_area_remove}, int{command_site_structure},
                       int{command_site_walkway}, int{command_site_outlet}})
    bar.Enable(id, state.can_edit && state.has_area);
  bar.Enable(command_site_page, state.open);
  bar.Enable(command_area_earlier, state.can_edit && state.may_go_earlier);
  bar.Enable(command_area_later, state.can_edit && state.may_go_later);
  bar.Enable(command_site_line, state.can_edit && state.may_tie);
  bar.Enable(command_site_remove, state.can_edit && state.may_remove);
  for (int i = 0; i <= command_site_advice_last - command_site_advice; ++i)
    bar.Enable(command_site_advice + i, state.can_edit && static_cast<std::size_t>(i) < state.advice);
}

}  // namespace quadrille
