// Every command of the menus does something that can be seen, and none can bring the window down.
#include <wx/statusbr.h>

#include <map>
#include <optional>
#include <set>
#include <utility>

#include "studio/window/commands/commands.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/panels/standing_panel.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

/// Puts every dialog away, and counts them.
class PutAway : public wxModalDialogHook {
 public:
  PutAway() { Register(); }
  ~PutAway() override { Unregister(); }
  int seen() const { return seen_; }

 private:
  int Enter(wxDialog*) override {
    ++seen_;
    return wxID_CANCEL;
  }
  int seen_ = 0;
};

void collect(const wxMenu& menu, std::map<int, std::string>& commands) {
  for (const wxMenuItem* item : menu.GetMenuItems()) {
    if (const wxMenu* inside = item->GetSubMenu())
      collect(*inside, commands);
    else if (!item->IsSeparator())
      commands.emplace(item->GetId(), item->GetItemLabelText().utf8_string());
  }
}

std::map<int, std::string> commands_of(const wxMenuBar& bar) {
  std::map<int, std::string> commands;
  for (std::size_t i = 0; i < bar.GetMenuCount(); ++i) collect(*bar.GetMenu(i), commands);
  return commands;
}

/// What is off in the menus as prepare() leaves the window, since it asks for more than one arch, a path, a photo, a hidden
/// piece, an area before, or lines; the tests of those see to it.
bool is_off_here(int id) {
  const bool of_several = (id >= command_align_left && id <= command_align_back) ||
                          (id >= command_spread_gaps && id <= command_spread_depth);
  const bool of_path = id == command_add_point || id == command_remove_point;
  const bool of_photo = id >= command_photo_calibrate && id <= command_photo_remove;
  const bool of_site = id == command_site_line || id == command_site_remove ||
                       (id >= command_site_advice && id <= command_site_advice_last);
  return of_several || of_path || of_photo || of_site || id == command_show_all || id == command_area_earlier;
}

/// All that a command can change and a user can see.
struct Seen {
  Event event;
  std::filesystem::path file;
  PieceIds pieces;
  std::string area, status, title;
  double zoom = 0;
  Point2 origin;
  std::set<int> ticked;
  const wxWindow* focus = nullptr;
  std::optional<double> figure_m;
  std::optional<HandleName> handle;
  bool operator==(const Seen& other) const {
    return event == other.event && file == other.file && pieces == other.pieces && area == other.area &&
           status == other.status && title == other.title && zoom == other.zoom && origin.x == other.origin.x &&
           origin.y == other.origin.y && ticked == other.ticked && focus == other.focus && figure_m == other.figure_m &&
           handle == other.handle;
  }
};

Seen look(OpenWindow& window) {
  Seen seen;
  if (window->document() != nullptr) seen.event = window->document()->event(), seen.file = window->document()->file();
  seen.pieces = window->selected_pieces();
  seen.area = window->shown_area();
  seen.status = window->GetStatusBar()->GetStatusText(0).utf8_string();
  seen.title = window->GetTitle().utf8_string();
  seen.origin = window->canvas().view().to_pixels(0, 0);
  seen.zoom = window->canvas().view().to_pixels(1, 0).x - seen.origin.x;
  for (const auto& [id, label] : commands_of(*window->GetMenuBar())) {
    const wxMenuItem* item = window->GetMenuBar()->FindItem(id);
    if (item != nullptr && item->IsCheckable() && item->IsChecked()) seen.ticked.insert(id);
  }
  seen.focus = wxWindow::FindFocus();
  seen.figure_m = window->canvas().figure_x_m();
  seen.handle = window->canvas().focused_handle();
  return seen;
}

/// The harvest with three arches on the porch; the first has one before it and one behind it.
Event deep_event() {
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    PlacedPiece near_arch = half_circle("p4", "Near arch", 10, 2.0);
    near_arch.y_m = -1;
    area.pieces.emplace_back(std::move(near_arch));
    area.pieces[0].edit([](PlacedPiece& first) { first.y_m = 1; });
    area.pieces[1].edit([](PlacedPiece& second) { second.y_m = 2; });
  });
  return event;
}

/// The event of these bytes is open, whatever became of the one before; a piece that may be changed is selected in the
/// first of two areas, one step can be undone and one done again; the view is near, so that fitting moves it.
void prepare(OpenWindow& window, const std::filesystem::path& file, const std::string& bytes) {
  {
    PutAway dialogs;
    if (window->document() != nullptr) REQUIRE(window->save_as(file));
    put(file, bytes);  // after what was open, which would be saved over it
    REQUIRE(window->open_file(file));
  }
  if (!window->GetMenuBar()->IsChecked(command_figure)) window.command(command_figure);
  window.settle();
  window->select("a1", "p1");
  window->move_selected(0.25);
  window->move_selected(0.25);
  window->undo();
  window.settle();
  window->canvas().zoom(1.7);
  window->canvas().pan(0.1, 0.1);
  window->canvas().SetFocus();
  window->SetStatusText("");
  Toolkit::instance().turn();
}

}  // namespace

TEST_CASE("every command of the menus does something") {
  ScratchFolder folder;
  const std::string bytes = contents(put_event(folder, deep_event()));
  const auto file = folder / "work.quadrille";
  OpenWindow window;
  prepare(window, file, bytes);
  const auto commands = commands_of(*window->GetMenuBar());
  CHECK(commands.size() > 40);
  for (const auto& [id, label] : commands) {
    // The list of recent events changes meanwhile; its first stands for all.
    if (label == "None yet" || (id > command_recent && id <= command_recent_last)) continue;
    prepare(window, file, bytes);
    if (id == command_previous_area) window->select("a2", "");
    CAPTURE(label);
    const wxMenuItem* const item = window->GetMenuBar()->FindItem(id);
    REQUIRE(item != nullptr);
    if (!item->IsEnabled()) {
      CHECK_MESSAGE(is_off_here(id), label << " is off");
      continue;
    }
    const bool one_of_several = item->GetKind() == wxITEM_RADIO;
    // What is chosen already is not chosen anew.
    if (one_of_several && item->IsChecked()) continue;
    const Seen before = look(window);
    PutAway dialogs;
    window.command(id);
    const bool seen_at_once = dialogs.seen() > 0 || !(look(window) == before);
    // Whatever was asked for is worked out before the next.
    REQUIRE(window.pump_until([&] { return !window->updating(); }));
    if (one_of_several) {
      // A command that is sent ticks nothing by itself: what is ticked once the menus are made right is what was chosen.
      window->select(window->shown_area(), window->selected_pieces());
      CHECK_MESSAGE(item->IsChecked(), label << " was not chosen");
    } else {
      CHECK_MESSAGE((seen_at_once || dialogs.seen() > 0 || !(look(window) == before)), label << " did nothing");
    }
    REQUIRE(window.reference());
  }
}

TEST_CASE("no command harms a window without an event") {
  OpenWindow window;
  for (const auto& [id, label] : commands_of(*window->GetMenuBar())) {
    if (id == wxID_EXIT || (id >= command_sample && id <= command_sample_last)) continue;
    CAPTURE(label);
    PutAway dialogs;
    window.command(id);
    Toolkit::instance().turn();
    CHECK(window->document() == nullptr);
  }
}

TEST_CASE("every key of the menus is in the list of keys, and none means two things") {
  OpenWindow window;
  const auto words = keys_in_words(*window->GetMenuBar());
  std::map<std::string, std::string> meaning;
  for (const auto& [what, key] : words) {
    CHECK(!what.empty());
    if (key == "Ctrl+Z") CHECK(what == "Undo");  // not what would be undone now
    CHECK_MESSAGE(meaning.emplace(key.Upper().utf8_string(), what.utf8_string()).second,
                  key << " is that of " << what << " and of " << meaning[key.Upper().utf8_string()]);
  }
  int with_keys = 0;
  for (const auto& [id, label] : commands_of(*window->GetMenuBar())) {
    const wxMenuItem* const item = window->GetMenuBar()->FindItem(id);
    if (item == nullptr || !item->GetItemLabel().Contains("\t")) continue;
    const std::string key = item->GetItemLabel().AfterFirst('\t').Upper().utf8_string();
    CHECK_MESSAGE(meaning.contains(key), label);
    ++with_keys;
  }
  CHECK(with_keys > 30);
}

TEST_CASE("a list leaves the menus the keys that it would take for its rows") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, deep_event()));
  for (wxWindow* const list :
       {static_cast<wxWindow*>(window->outline().tree()), static_cast<wxWindow*>(window->findings().table().list)}) {
    window->show_page(window->findings());
    list->SetFocus();
    REQUIRE(window.pump_until([&] { return list->HasFocus(); }));
    PutAway dialogs;
    wxUIActionSimulator().Char('N', wxMOD_CONTROL);
    CHECK(window.pump_until([&] { return dialogs.seen() == 1; }));
  }
}

}  // namespace quadrille
