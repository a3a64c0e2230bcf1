// Not a test: takes pictures of every page, panel and dialog, for somebody to look at. They are PNG files of the whole
// screen, written to the folder that QUADRILLE_PICTURES names by ImageMagick's import, and are to be taken under a window
// manager:
//   xvfb-run -s "-screen 0 1280x800x24" sh -c "openbox & QUADRILLE_PICTURES=/tmp/small build/tests/window_pictures"
#include <wx/filedlg.h>
#include <wx/menu.h>

#include <set>

#include "answering.hpp"
#include "by_hand.hpp"
#include "own_house.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/new_event.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/dialogs/export_sheets_dialog.hpp"
#include "studio/window/dialogs/house_dialog.hpp"
#include "studio/window/dialogs/issue_dialog.hpp"
#include "studio/window/dialogs/new_event_dialog.hpp"
#include "studio/window/dialogs/print_dialog.hpp"
#include "studio/window/panels/checklist_panel.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/plan_panel.hpp"
#include "studio/window/panels/quote_panel.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/panels/standing_panel.hpp"
#include "studio/window/panels/totals_panel.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/repertoire_hands.hpp"
#include "tests/places.hpp"
#include "typing.hpp"

namespace quadrille {
namespace {

/// Lets the screen come to rest; there is no event that tells when a window manager and the toolkit are done.
void rest() {
  const auto end = std::chrono::steady_clock::now() + std::chrono::milliseconds(400);
  while (std::chrono::steady_clock::now() < end) {
    wxEventLoopBase::GetActive()->YieldFor(wxEVT_CATEGORY_ALL);
    wxTheApp->ProcessIdle();
    wxMilliSleep(5);
  }
}

void shoot(const std::string& name) {
  const char* const folder = std::getenv("QUADRILLE_PICTURES");
  REQUIRE_MESSAGE(folder != nullptr, "QUADRILLE_PICTURES is to name a folder");
  std::filesystem::create_directories(folder);
  rest();
  // Of the display itself: the toolkit's own copy of it stays as it was first.
  const std::string command = "import -window root '" + std::string(folder) + "/" + name + ".png'";
  CHECK(std::system(command.c_str()) == 0);
}

void press(wxButton& button) { tell(button, wxEVT_BUTTON); }

/// What is looked at in a dialog: under the name, and on all its pages where it has some.
void look_through(wxDialog& dialog, const std::string& name) {
  if (auto* house = dynamic_cast<HouseDialog*>(&dialog)) {
    for (unsigned int i = 0; i < house->pages().GetCount(); ++i) {
      house->show_page(i);
      shoot(name + "-page-" + std::to_string(i + 1));
    }
    // An empty entry of each list, in a dialog of its own.
    for (const HouseList list : house_lists) press(house->list(list).add());
  } else if (auto* print = dynamic_cast<PrintDialog*>(&dialog)) {
    print->choose_sheet(1);
    while (print->making()) rest();
    shoot(name);
  } else {
    shoot(name);
  }
  // And with something in it that cannot be taken.
  if (auto* begin = dynamic_cast<NewEventDialog*>(&dialog)) {
    begin->date_field().SetValue("the second Saturday of next June");
    press(*begin, wxID_OK);
    shoot(name + "-fault");
  } else if (auto* issue = dynamic_cast<IssueDialog*>(&dialog)) {
    issue->date_field().SetValue("soon");
    shoot(name + "-fault");
  }
}

/// Shows each dialog as it is, takes pictures of it, and closes it. Native ones are put away unseen.
class Photographer : public wxModalDialogHook {
 public:
  explicit Photographer(std::string name) : name_(std::move(name)) { Register(); }
  ~Photographer() override { Unregister(); }

 private:
  int Enter(wxDialog* dialog) override {
    if (dynamic_cast<wxMessageDialogBase*>(dialog) != nullptr || dynamic_cast<wxFileDialog*>(dialog) != nullptr)
      return wxID_CANCEL;
    dialog->CallAfter([this, dialog] {
      const std::string name = depth_ == 0 ? name_ : name_ + "-" + std::to_string(depth_);
      ++depth_;
      look_through(*dialog, name);
      dialog->EndModal(wxID_CANCEL);
    });
    return wxID_NONE;
  }
  std::string name_;
  int depth_ = 0;
};

std::string plain(const std::string& label) {
  std::string name;
  for (const char c : label)
    if (c >= 'a' && c <= 'z')
      name += c;
    else if (c >= 'A' && c <= 'Z')
      name += static_cast<char>(c - 'A' + 'a');
    else if (c == ' ' && !name.empty())
      name += '-';
  return name;
}

void fill_screen(OpenWindow& window) {
  window->Maximize();
  rest();
}

struct StripPage {
  const char* name;
  wxWindow* panel;
};

std::vector<StripPage> strip_of(MainWindow& window) {
  return {{"totals", &window.totals()}, {"standing", &window.standing()}, {"checklist", &window.checklist()},
          {"plan", &window.plan()},     {"quote", &window.quote()},       {"findings", &window.findings()},
          {"site", &window.site()}};
}

}  // namespace

TEST_CASE("the start, and a new event") {
  const OwnHouse house;
  OpenWindow window;
  fill_screen(window);
  shoot("start");
  {
    Photographer photographer("new-event");
    window.command(wxID_NEW);
  }
  NewEventAnswers answers;
  answers.title = "Meadow wedding", answers.date = "2027-06-12", answers.surroundings = Surroundings::outdoors;
  REQUIRE(window->begin(new_event(answers)));
  window.settle();
  for (const StripPage& page : strip_of(*window.reference())) {
    window->show_page(*page.panel);
    window.settle();
    shoot(std::string("empty-") + page.name);
  }
  {
    Photographer photographer("repertoire-empty");
    window.command(command_repertoire);
  }
}

TEST_CASE("every area, page and kind of form of the samples") {
  const OwnHouse house;
  std::filesystem::copy_file(source_place("examples/lantern-house.quadrille-house"), house.file());
  OpenWindow window;
  fill_screen(window);
  for (const std::string sample : {"lantern-fair", "orchard-supper", "midwinter-ball"}) {
    window.open(source_place("examples/" + sample + ".quadrille"));
    const Event event = window->document()->event();
    for (const auto& area : event.areas) {
      window->select(area->id, "");
      window.settle();
      window->show_page(window->totals());
      shoot(sample + "-" + plain(area->name));
    }
    const Area& area = *event.areas.front();
    window->select(area.id, area.pieces.front()->id);
    window.settle();
    for (const StripPage& page : strip_of(*window.reference())) {
      window->show_page(*page.panel);
      REQUIRE(window.pump_until([&] { return !window->updating(); }));
      rest(), rest(), rest();
      shoot(sample + "-" + page.name);
    }
    window->show_page(window->totals());
    std::set<std::string> types;
    for (const auto& of : event.areas)
      for (const auto& piece : of->pieces)
        if (types.insert(piece->type).second) {
          window->select(of->id, piece->id);
          window.settle();
          shoot(sample + "-form-" + piece->type);
          if (wxWindow* const pattern = window->form().input("pattern")) choose(window, pattern, "Rows as typed");
          for (const char* const key : {"balloon", "rows", "mix", "path", "ballast"})
            if (window->form().focus_field(key)) shoot(sample + "-form-" + piece->type + "-" + key);
          while (window->document()->history().can_undo()) window->undo();
          window.settle();
        }
    PieceIds all;
    for (const auto& piece : area.pieces) all.push_back(piece->id);
    window->select(area.id, all);
    window.settle();
    shoot(sample + "-form-several");
  }
}

TEST_CASE("every dialog of the menus") {
  const OwnHouse house;
  std::filesystem::copy_file(source_place("examples/lantern-house.quadrille-house"), house.file());
  OpenWindow window;
  fill_screen(window);
  window.open(source_place("examples/lantern-fair.quadrille"));
  const auto select_first = [&] {
    const auto& area = *window->document()->event().areas.front();
    window->select(area.id, area.pieces.front()->id);
    window.settle();
  };
  select_first();
  REQUIRE(window->repertoire().keep("Gate of lanterns", 18000));
  window.settle();
  std::vector<std::pair<int, std::string>> commands;
  const std::function<void(const wxMenu&)> collect = [&](const wxMenu& menu) {
    for (const wxMenuItem* item : menu.GetMenuItems())
      if (const wxMenu* inside = item->GetSubMenu())
        collect(*inside);
      else if (const std::string label = item->GetItemLabelText().utf8_string(); label.ends_with("…"))
        commands.emplace_back(item->GetId(), plain(label));
  };
  for (std::size_t i = 0; i < window->GetMenuBar()->GetMenuCount(); ++i) collect(*window->GetMenuBar()->GetMenu(i));
  for (const auto& [id, name] : commands) {
    select_first();
    Photographer photographer("dialog-" + name);
    window.command(id);
    rest();
    window->canvas().SetFocus();
    Hand(window->canvas()).key(WXK_ESCAPE);
  }
  select_first();
  {
    Photographer photographer("dialog-colour");
    press(window, window->form().colours().at(0));
  }
  window->show_page(window->quote());
  {
    Photographer photographer("dialog-issue");
    press(window->quote().issue_button());
  }
}

TEST_CASE("the photo's dialogs") {
  const OwnHouse house;
  OpenWindow window;
  fill_screen(window);
  window.open(source_place("examples/orchard-supper.quadrille"));
  const auto& area = *window->document()->event().areas.front();
  window->select(area.id, area.pieces.front()->id);
  REQUIRE(window->photo().add(std::filesystem::path(source_place("examples/orchard-gate.png"))));
  window.settle();
  shoot("photo");
  const auto click_at = [&](double right, double up) {
    const wxRect paper = window->canvas().paper();
    Hand(window->canvas()).click(wxPoint(paper.x + int(paper.width * right), paper.y + int(paper.height * (1 - up))));
    rest();
  };
  {
    Photographer photographer("dialog-calibrate");
    window.command(command_photo_calibrate);
    shoot("photo-calibrating");
    click_at(0.45, 0.4);
    click_at(0.55, 0.4);
  }
  {
    Photographer photographer("dialog-fade");
    window.command(command_photo_fade);
  }
  {
    Photographer photographer("dialog-photo-colour");
    window.command(command_photo_colour);
    click_at(0.5, 0.5);
  }
}

}  // namespace quadrille
