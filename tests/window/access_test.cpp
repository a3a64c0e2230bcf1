// What a screen reader is told: every control that takes the focus has a name, in the window and in each dialog.
#include <wx/popupwin.h>
#include <wx/scrolwin.h>
#include <wx/simplebook.h>
#include <wx/splitter.h>

#include "studio/files/house_place.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/array_dialog.hpp"
#include "studio/window/dialogs/calibrate_dialog.hpp"
#include "studio/window/dialogs/colour_dialog.hpp"
#include "studio/window/dialogs/details_dialog.hpp"
#include "studio/window/dialogs/export_sheets_dialog.hpp"
#include "studio/window/dialogs/fade_dialog.hpp"
#include "studio/window/dialogs/house_dialog.hpp"
#include "studio/window/dialogs/house_entry_dialog.hpp"
#include "studio/window/dialogs/issue_dialog.hpp"
#include "studio/window/dialogs/keep_dialog.hpp"
#include "studio/window/dialogs/keys_dialog.hpp"
#include "studio/window/dialogs/new_event_dialog.hpp"
#include "studio/window/dialogs/pieces_dialog.hpp"
#include "studio/window/dialogs/print_dialog.hpp"
#include "studio/window/dialogs/repertoire_dialog.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

/// Panes that only hold others.
bool only_holds(const wxWindow& window) {
  return dynamic_cast<const wxTopLevelWindow*>(&window) != nullptr ||
         dynamic_cast<const wxSplitterWindow*>(&window) != nullptr ||
         dynamic_cast<const wxSimplebook*>(&window) != nullptr ||
         dynamic_cast<const wxPopupWindow*>(&window) != nullptr ||
         (dynamic_cast<const wxPanel*>(&window) != nullptr && !window.GetChildren().empty());
}

void collect_nameless(const wxWindow& window, const wxString& path, std::vector<std::string>& nameless, int& named) {
  const wxString here = path + "/" + window.GetClassInfo()->GetClassName();
  // What a native control is made of is its own affair.
  const bool takes_focus = window.AcceptsFocus() && !only_holds(window);
  if (takes_focus) {
    if (accessible_name_of(&window).Strip(wxString::both).empty())
      nameless.push_back((here + " \"" + window.GetLabel() + "\"").utf8_string());
    else
      ++named;
  }
  for (const wxWindow* child : window.GetChildren()) collect_nameless(*child, here, nameless, named);
}

void check_names(const wxWindow& window, const char* what, int at_least) {
  std::vector<std::string> nameless;
  int named = 0;
  collect_nameless(window, "", nameless, named);
  for (const std::string& one : nameless) FAIL_CHECK(what << ": no name for " << one);
  CHECK_MESSAGE(named >= at_least, what << ": only " << named << " controls were found");
}

}  // namespace

TEST_CASE("every control of the window that takes the focus has a name, with and without an event") {
  ScratchFolder folder;
  OpenWindow window;
  check_names(*window.reference().get(), "the empty window", 3);
  window.open(put_event(folder));
  window->select("a1", "p1");
  window->canvas().SetFocus();
  Toolkit::instance().turn();
  check_names(*window.reference().get(), "the window", 20);
}

TEST_CASE("every control of each dialog that takes the focus has a name") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  wxWindow* const parent = window.reference().get();
  const auto palettes = window->document()->palettes();
  const auto types = window->study()->types;
  check_names(NewEventDialog(parent, palettes, types), "New event", 10);
  check_names(KeysDialog(parent, keys_in_words(*window->GetMenuBar())), "Keys", 2);
  check_names(IssueDialog(parent, "100.00 EUR", "2027-06-19", 30, Units::metric), "Issue", 4);
  check_names(PiecesDialog(parent, [] {}), "Piece types", 3);
  check_names(PrintDialog(parent, window->study_shared(), Paper::a4), "Print", 6);
  check_names(ExportSheetsDialog(parent, window->study_shared(), Paper::a4, folder / "", "harvest"), "Export sheets",
              10);
  check_names(ArrayDialog(parent, 2, FloorPlace{1.5, 2}, Units::metric), "Array", 9);
  StoredPicture picture;
  picture.width_px = 400, picture.height_px = 300;
  Backdrop photo;
  photo.picture = picture;
  const auto measured = [&](PictureSpot, PictureSpot, double) { return Result<Backdrop>::good(photo); };
  check_names(CalibrateDialog(parent, photo, {100, 50}, {100, 250}, Units::metric, measured), "Calibrate", 7);
  ColourQuestion question;
  question.palettes = palettes->palettes;
  check_names(ColourDialog(parent, question), "Colour", 6);
  check_names(DetailsDialog(parent, window->document()->event(), palettes), "Details", 8);
  check_names(FadeDialog(parent, 0.35, {}), "Fade", 3);
  check_names(KeepDialog(parent, "Arch", {}, "EUR"), "Keep", 4);
  check_names(RepertoireDialog(parent, {}), "Repertoire", 5);
  HouseDialogContent content;
  content.house = standard_house();
  content.palettes = palettes;
  check_names(HouseDialog(parent, content), "House settings", 100);
  House house = standard_house();
  JobRecord job;
  job.planned_s = {{"make-cluster", 600}};
  house.jobs = {job};
  for (const HouseList list : house_lists)
    check_names(
        HouseEntryDialog(parent, house, list, list == HouseList::jobs ? std::optional<std::size_t>(0) : std::nullopt,
                         palettes->palettes),
        table_of(house, list, {}).title.c_str(), 4);
}

}  // namespace quadrille
