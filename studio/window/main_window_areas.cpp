// The details of the event, and its areas: add, rename, remove, order.
#include <wx/dataview.h>
#include <wx/menu.h>
#include <wx/textdlg.h>

#include <algorithm>
#include <utility>

#include "studio/form/facts.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/dialogs/details_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

std::string free_area_name(const Event& event) {
  const auto borne = [&](const std::string& name) {
    return std::ranges::any_of(event.areas, [&](const auto& area) { return area->name == name; });
  };
  std::size_t number = event.areas.size() + 1;
  while (borne("Area " + std::to_string(number))) ++number;
  return "Area " + std::to_string(number);
}

std::string counted_pieces(std::size_t pieces) {
  return pieces == 1 ? "its piece" : "its " + std::to_string(pieces) + " pieces";
}

}  // namespace

void MainWindow::bind_areas() {
  on(command_details, [this] { ask_details(); });
  on(command_area_add, [this] {
    if (!document_ || document_->read_only()) return;
    wxTextEntryDialog dialog(this, "What is the place called?", "Add an area",
                             shown(free_area_name(document_->event())));
    if (dialog.ShowModal() == wxID_OK) add_area(text_of(dialog.GetValue()));
  });
  on(command_area_rename, [this] {
    if (area() == nullptr || document_->read_only()) return;
    wxTextEntryDialog dialog(this, "What is the place called?", "Rename the area", shown(area()->name));
    if (dialog.ShowModal() == wxID_OK) rename_area(text_of(dialog.GetValue()));
  });
  on(command_area_remove, [this] { ask_and_remove_area(); });
  on(command_area_earlier, [this] { move_area(-1); });
  on(command_area_later, [this] { move_area(1); });
  outline_->tree()->Bind(wxEVT_DATAVIEW_ITEM_CONTEXT_MENU, [this](wxDataViewEvent& event) {
    if (!event.GetItem().IsOk()) return event.Skip();
    const auto [area, piece] = outline_->model().ids_of(event.GetItem());
    if (!piece.empty()) return event.Skip();
    if (area != area_) select(area, "");
    offer_area_commands();
  });
}

/// What the menu Event has for the area that is shown, by the outline.
void MainWindow::offer_area_commands() {
  wxMenu menu;
  for (const int id : {int{command_area_rename}, int{command_area_earlier}, int{command_area_later},
                       int{command_area_remove}, int{command_area_add}, int{command_site_page}}) {
    const wxMenuItem* const item = GetMenuBar()->FindItem(id);
    menu.Append(id, item->GetItemLabel().BeforeFirst('\t'))->Enable(item->IsEnabled());
  }
  outline_->PopupMenu(&menu);
}

void MainWindow::add_area(const std::string& name) {
  const std::string wanted(trimmed_text(name));
  if (!document_ || document_->read_only() || wanted.empty()) return;
  Event event = with_new_area(document_->event(), wanted);
  const std::string id = event.areas.back()->id;
  commit("Add " + wanted, std::move(event));
  select(id, "");
}

void MainWindow::rename_area(const std::string& name) {
  const std::string wanted(trimmed_text(name));
  if (area() == nullptr || document_->read_only() || wanted.empty() || wanted == area()->name) return;
  commit("Rename " + area()->name, renamed_area(document_->event(), area_, wanted));
}

void MainWindow::ask_and_remove_area() {
  const Area* const here = area();
  if (here == nullptr || document_->read_only()) return;
  const std::string name = here->name.empty() ? "this area" : here->name;
  const std::size_t pieces = here->pieces.size();
  if (pieces > 0 && !ask_whether(this, shown("Remove " + name + "?"),
                                 "It goes with " + counted_pieces(pieces) + ". Undo brings all of it back.", "&Remove"))
    return;
  const auto& areas = document_->event().areas;
  const auto at = std::ranges::find_if(areas, [this](const auto& one) { return one->id == area_; });
  std::string next;
  if (areas.size() > 1) next = at + 1 != areas.end() ? (*(at + 1))->id : (*(at - 1))->id;
  Event event = without_area(document_->event(), area_);
  area_ = next, pieces_.clear();
  commit("Remove " + name, std::move(event));
  select(next, "");
}

void MainWindow::move_area(int by) {
  if (area() == nullptr || document_->read_only()) return;
  const auto& areas = document_->event().areas;
  const auto at =
      std::ranges::find_if(areas, [this](const auto& one) { return one->id == area_; }) - areas.begin() + by;
  if (at < 0 || at >= std::ssize(areas)) return;
  commit("Move " + area()->name, with_area_at(document_->event(), area_, static_cast<std::size_t>(at)));
}

void MainWindow::ask_details() {
  if (!document_ || document_->read_only()) return;
  DetailsDialog dialog(this, document_->event(), document_->palettes());
  if (dialog.ShowModal() == wxID_OK && dialog.event() != document_->event()) commit("Change details", dialog.event());
}

}  // namespace quadrille
