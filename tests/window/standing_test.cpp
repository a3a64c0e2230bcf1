// The pages Standing and Checklist on a screen: what they say is what the standing check finds, what is ticked is saved.
#include <wx/display.h>
#include <wx/dynlib.h>

#include "breezy_event.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/panels/checklist_panel.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/panels/standing_panel.hpp"
#include "studio/window/panels/standing_words.hpp"
#include "studio/window/panels/totals_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"
#include "typing.hpp"

namespace quadrille {
namespace {

/// Opens the event with the page Standing in front, and waits until all of the area is reckoned.
void open_standing(OpenWindow& window, const std::filesystem::path& file) {
  window.open(file);
  window->show_page(window->standing());
  REQUIRE(window.pump_until([&] { return window->standing().is_up_to_date(); }));
}

void select_and_wait(OpenWindow& window, const std::string& piece) {
  window->select("a1", piece);
  REQUIRE(window.pump_until([&] { return window->standing().gust_is_up_to_date(); }));
}

void press(OpenWindow& window, GustSlider::Level level) {
  tell(window->standing().gust().button(level), wxEVT_BUTTON);
  REQUIRE(window.pump_until([&] { return window->standing().gust_is_up_to_date(); }));
}

/// Name and description that assistive technology reads of a native control.
std::pair<std::string, std::string> accessible(wxWindow& window) {
  const auto find = [](const char* symbol) {
    return wxDynamicLibrary::RawGetSymbol(wxDynamicLibrary::GetProgramHandle(), symbol);
  };
  const auto of = reinterpret_cast<void* (*)(void*)>(find("gtk_widget_get_accessible"));
  const auto name = reinterpret_cast<const char* (*)(void*)>(find("atk_object_get_name"));
  const auto description = reinterpret_cast<const char* (*)(void*)>(find("atk_object_get_description"));
  REQUIRE((of && name && description));
  void* object = of(window.GetHandle());
  const auto text = [](const char* said) { return std::string(said == nullptr ? "" : said); };
  return {text(name(object)), text(description(object))};
}

double highest_of(const Deflection& bent) {
  double highest = -1e9;
  for (const auto& run : bent.frame_m)
    for (const Point2& point : run) highest = std::max(highest, point.y);
  return highest;
}

int row_of(const ChecklistPanel& panel, const std::string& key) {
  const auto line = std::ranges::find(panel.lines(), key, &ChecklistLine::key);
  REQUIRE(line != panel.lines().end());
  return static_cast<int>(line - panel.lines().begin());
}

}  // namespace

TEST_CASE("the Standing page says of each piece what the standing check finds, and that it is a planning aid") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  const StandingPanel& panel = window->standing();
  // Asked afresh of the same event and pieces, outside the window.
  const auto answers = stand_all(window->document()->event(), window->study()->built, {}, "a1");
  const auto& rows = panel.pieces().model->rows();
  REQUIRE(rows.size() == 2);
  REQUIRE(answers.size() == 2);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK(text_of(rows[i].cells[0]) == answers[i].name);
    CHECK(rows[i].cells[1].Contains(shown(print_speed(answers[i].limit_gust_m_s, SpeedStyle::kilometres_per_hour))));
    CHECK(text_of(rows[i].cells[3]) == print_speed(answers[i].watch_m_s, SpeedStyle::kilometres_per_hour));
    CHECK(text_of(rows[i].cells[4]) == print_speed(answers[i].take_down_m_s, SpeedStyle::kilometres_per_hour));
  }
  // Common practice, no source: an arch that is not tied does not stand in a fresh breeze.
  CHECK(answers[1].verdict == Verdict::no);
  CHECK(rows[1].cells[2] == "not standing");
  CHECK(panel.headline().StartsWith("Porch: outdoors, forecast gust 32 km/h, Beaufort 5"));
  CHECK(panel.caution().Contains("licensed practice decide"));
  window->select("a1", "p1");
  CHECK(window.pump_until([&] { return panel.text().Contains("If the line front-1"); }));
  window->select("a1", "p2");
  CHECK(panel.text().Contains("lines:"));  // what would make it stand
  CHECK(panel.text().Contains(answers[1].limit_gust_m_s < 9 ? "It bears gusts of" : "-"));
}

TEST_CASE("a piece picked in the table is picked in the outline, and the other way round") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  const Table& pieces = window->standing().pieces();
  pieces.list->UnselectAll();
  const wxRect row = pieces.list->GetItemRect(pieces.model->GetItem(1));
  wxUIActionSimulator mouse;
  mouse.MouseMove(pieces.list->ClientToScreen(row.GetPosition() + wxPoint(40, row.height / 2)));
  mouse.MouseClick();
  CHECK(window.pump_until([&] { return window->selected_piece() == "p2"; }));
  window->select("a1", "p1");
  CHECK(pieces.selected() == 0);
}

TEST_CASE(
    "the slider moves the drawn shape and the checks beside it, by keyboard too, and says when it is past the limit") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  select_and_wait(window, "p2");
  StandingPanel& panel = window->standing();
  const double forecast = panel.gust().gust_m_s();
  CHECK(forecast == 9);  // it begins at the forecast
  CHECK(panel.state().StartsWith("Past the limit"));

  press(window, GustSlider::limit);
  const PieceStanding standing = stand_all(window->document()->event(), window->study()->built, {}, "a1")[1];
  CHECK(panel.gust().gust_m_s() == standing.limit_gust_m_s);
  CHECK(panel.state().StartsWith("Within"));
  for (const TableRow& row : panel.checks().model->rows()) CHECK(!row.cells[1].Contains("fails"));
  REQUIRE(window->canvas().bent());

  wxSlider& slider = panel.gust().slider();
  slider.SetFocus();
  REQUIRE(window.pump_until([&] { return slider.HasFocus(); }));
  wxUIActionSimulator keys;
  keys.Char(WXK_HOME);
  REQUIRE(window.pump_until([&] { return panel.gust().gust_m_s() == 0 && panel.gust_is_up_to_date(); }));
  const double still_m = highest_of(*window->canvas().bent());
  keys.Char(WXK_RIGHT);
  REQUIRE(window.pump_until([&] { return panel.gust().gust_m_s() > 0 && panel.gust_is_up_to_date(); }));
  CHECK(panel.gust().gust_m_s() == doctest::Approx(1 / 3.6));  // one kilometre per hour
  CHECK(panel.gust().readout().StartsWith("1 km/h, 1 mph, Beaufort 0"));
  keys.Char(WXK_END);
  REQUIRE(window.pump_until(
      [&] { return panel.gust().gust_m_s() > standing.limit_gust_m_s && panel.gust_is_up_to_date(); }));
  CHECK(panel.state().StartsWith("Past the limit"));
  bool fails = false;
  for (const TableRow& row : panel.checks().model->rows()) fails = fails || row.cells[1].Contains("fails");
  CHECK(fails);
  // What leans away comes down: past the limit the crown is drawn lower than in still air, or nothing is drawn at all.
  if (window->canvas().bent()) CHECK(highest_of(*window->canvas().bent()) < still_m);

  window->show_page(window->totals());
  CHECK(window.pump_until([&] { return !window->canvas().bent(); }));
  CHECK(!window->document()->history().has_changes());  // looking changes nothing
}

TEST_CASE("the slider goes along with the forecast until somebody moves it") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  select_and_wait(window, "p2");
  StandingPanel& panel = window->standing();
  const auto forecast = [&](const char* gust) {
    window->show_page(window->site());
    REQUIRE(window.pump_until([&] { return window->site().fields().input("gust") != nullptr; }));
    type_into(window, window->site().fields().input("gust"), gust);
    window->show_page(panel);
    REQUIRE(window.pump_until([&] { return panel.is_up_to_date() && panel.gust_is_up_to_date(); }));
  };
  forecast("5 m/s");
  CHECK(panel.gust().gust_m_s() == 5);
  press(window, GustSlider::limit);
  const double moved_m_s = panel.gust().gust_m_s();
  REQUIRE(moved_m_s != 5);
  forecast("6 m/s");
  CHECK(panel.gust().gust_m_s() == doctest::Approx(moved_m_s));
}

TEST_CASE("the wind can be taken from one side alone") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  select_and_wait(window, "p1");
  StandingPanel& panel = window->standing();
  wxChoice& direction = panel.gust().direction();
  direction.SetSelection(3);
  wxCommandEvent chosen(wxEVT_CHOICE, direction.GetId());
  chosen.SetEventObject(&direction);
  direction.ProcessWindowEvent(chosen);
  REQUIRE(window.pump_until([&] { return panel.gust_is_up_to_date(); }));
  CHECK(panel.state().Contains("Wind from the left"));
  for (const TableRow& row : panel.checks().model->rows()) CHECK(row.cells[4] == "left");
}

TEST_CASE("what is older than the event is marked so in words until the new figures are in") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  const StandingPanel& panel = window->standing();
  window.command(command_units_feet);
  CHECK(panel.pieces().model->rows()[1].cells[2].StartsWith("older: "));
  CHECK(panel.headline().Contains("0 of 2 done"));
  CHECK(!panel.is_up_to_date());
  REQUIRE(window.pump_until([&] { return panel.is_up_to_date(); }));
  CHECK(panel.pieces().model->rows()[1].cells[2] == "not standing");
  CHECK(panel.pieces().model->rows()[1].cells[1].Contains("mph"));
}

TEST_CASE("no forecast, no wind indoors and a piece that was not built are said in the table") {
  ScratchFolder folder;
  Event event = breezy_event();
  event.areas[0].edit([](Area& area) { area.site.gust_m_s.reset(); });
  OpenWindow window;
  open_standing(window, put_event(folder, event));
  const StandingPanel& panel = window->standing();
  CHECK(panel.pieces().model->rows()[0].cells[2] == "no forecast");
  CHECK(panel.headline().Contains("no gust is forecast"));
  window->select("a1", "p1");
  CHECK(panel.text().Contains("enter the forecast"));
  CHECK(!window->standing().gust().button(GustSlider::forecast).IsEnabled());
  window->select("a2", "p3");
  CHECK(panel.pieces().model->rows().size() == 1);
  CHECK(panel.pieces().model->rows()[0].cells[2] == "not built");
  CHECK(panel.headline().Contains("indoors"));
  CHECK(panel.text().Contains("Nothing can be said"));
  CHECK(!window->canvas().bent());
}

TEST_CASE("a box that is ticked is a named step, saved in the event, undone to the very bytes and done again") {
  ScratchFolder folder;
  const auto file = put_event(folder, breezy_event());
  const std::string before = contents(file);
  OpenWindow window;
  window.open(file);
  window->show_page(window->checklist());
  ChecklistPanel& panel = window->checklist();
  const std::string key = "event/allergy";
  REQUIRE(window.pump_until([&] { return !panel.lines().empty(); }));
  const int row = row_of(panel, key);
  const Table& table = panel.table();
  table.list->EnsureVisible(table.model->GetItem(static_cast<unsigned>(row)));
  const wxRect box =
      table.list->GetItemRect(table.model->GetItem(static_cast<unsigned>(row)), table.list->GetColumn(0));
  wxUIActionSimulator mouse;
  mouse.MouseMove(table.list->ClientToScreen(box.GetPosition() + wxPoint(12, box.height / 2)));
  mouse.MouseClick();
  REQUIRE(window.pump_until([&] { return window->document()->event().ticked.contains(key); }));
  CHECK(window->document()->history().undo_name().starts_with("Tick “Ask the client about latex"));
  CHECK(panel.lines()[static_cast<std::size_t>(row)].done);
  CHECK(panel.headline().Contains(": 1 of "));
  window.settle();
  window.command(wxID_SAVE);
  const auto saved = open_event(file);
  REQUIRE(saved);
  CHECK(saved->event.ticked == std::set<std::string, std::less<>>{key});

  window.command(wxID_UNDO);
  CHECK(window->document()->event().ticked.empty());
  CHECK(window.pump_until([&] { return !panel.lines()[static_cast<std::size_t>(row)].done; }));
  window.settle();
  window.command(wxID_SAVE);
  CHECK(contents(file) == before);
  window.command(wxID_REDO);
  CHECK(window->document()->event().ticked.contains(key));
  CHECK(window.pump_until([&] { return panel.lines()[static_cast<std::size_t>(row)].done; }));
}

TEST_CASE("the keyboard ticks and clears, one step each") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, breezy_event()));
  window->show_page(window->checklist());
  ChecklistPanel& panel = window->checklist();
  REQUIRE(window.pump_until([&] { return !panel.lines().empty(); }));
  const std::string key = panel.lines()[1].key;
  panel.table().list->SetFocus();
  REQUIRE(window.pump_until([&] { return panel.table().list->HasFocus(); }));
  wxUIActionSimulator keys;
  keys.Char(WXK_HOME);
  REQUIRE(window.pump_until([&] { return panel.table().selected() == 0; }));
  keys.Char(WXK_DOWN);
  REQUIRE(window.pump_until([&] { return panel.table().selected() == 1; }));
  keys.Char(WXK_SPACE);
  REQUIRE(window.pump_until([&] { return window->document()->event().ticked.contains(key); }));
  CHECK(panel.table().selected() == 1);  // it stays where it is
  keys.Char(WXK_RETURN);
  REQUIRE(window.pump_until([&] { return !window->document()->event().ticked.contains(key); }));
  CHECK(window->document()->history().undo_name().starts_with("Clear “"));
  window.command(wxID_UNDO);
  window.command(wxID_UNDO);
  CHECK(!window->document()->history().can_undo());
}

TEST_CASE("the checklist shows the area's lines with reason and source, and the wind levels when they are known") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, breezy_event()));
  window->show_page(window->checklist());
  ChecklistPanel& panel = window->checklist();
  const auto knows = [&](const char* key) {
    return std::ranges::find(panel.lines(), key, &ChecklistLine::key) != panel.lines().end();
  };
  REQUIRE(window.pump_until([&] { return knows("p1/wind-down") && knows("p2/wind-down"); }));
  for (const ChecklistLine& line : panel.lines()) CHECK((line.area.empty() || line.area == "a1"));
  const int row = row_of(panel, "p2/wind-down");
  panel.table().list->Select(panel.table().model->GetItem(static_cast<unsigned>(row)));
  REQUIRE(window.pump_until([&] { return panel.details().Contains("Take it down at gusts of"); }));
  CHECK(panel.details().Contains("licensed practice decide"));
}

TEST_CASE("screen readers hear names, the gust in words and its table") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  select_and_wait(window, "p1");
  GustSlider& gust = window->standing().gust();
  CHECK(accessible(gust.slider()) == std::pair<std::string, std::string>("Gust", text_of(gust.readout())));
  CHECK(text_of(gust.readout()) == "32 km/h, 20 mph, Beaufort 5 (fresh breeze)");  // 9 m/s, by hand 32.4 and 20.1
  CHECK(accessible(gust.direction()).first == "Wind from");
  CHECK(accessible(*window->standing().pieces().list).first == "How the pieces stand");
  CHECK(accessible(*window->standing().checks().list).first == "Checks of the selected piece in this gust");
  CHECK(accessible(*window->checklist().table().list).first == "Safety checklist");
}

TEST_CASE("the window ran off the screen of a small laptop: it opens inside what the desktop has") {
  OpenWindow window;
  const wxRect room = wxDisplay(window.reference().get()).GetClientArea();
  CHECK(window->GetSize().x <= room.width);
  CHECK(window->GetSize().y <= room.height);
  // Every page of the strip is inside it too.
  for (wxWindow* panel : {static_cast<wxWindow*>(&window->totals()), static_cast<wxWindow*>(&window->findings())}) {
    window->show_page(*panel);
    REQUIRE(window.pump_until([&] { return panel->IsShownOnScreen(); }));
    const wxRect frame = window->GetScreenRect(), shown_at = panel->GetScreenRect();
    CHECK(frame.Contains(shown_at));
  }
}

TEST_CASE("the form and the list of the page Site keep their width while the window grows, shrinks and grows again") {
  // Under a window manager, which sizes a window in steps, the form had once a third less than its fields ask for.
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, breezy_event()));
  window->select("a1", "p1");
  window->show_page(window->site());
  const auto form = [&] { return window->form().GetSize().x; };
  const auto list = [&] { return window->site().objects().list->GetSize().x; };
  REQUIRE(window.pump_until([&] { return list() > 0 && form() > 0; }));
  const wxSize size = window->GetSize();
  const int form_width = form(), list_width = list();
  CHECK(form_width >= window->FromDIP(330));
  for (const int less : {300, 200, 100, 0}) {
    CAPTURE(less);
    window->SetSize(size.x - less, size.y);
    CHECK(window.pump_until([&] { return form() == form_width; }));
  }
  CHECK(window.pump_until([&] { return list() == list_width; }));
  // All of its buttons are inside.
  CHECK(window->site().GetScreenRect().Contains(window->site().advice_button().GetScreenRect()));
}

TEST_CASE("the advised lines of the selected piece are offered where it is read that it does not stand") {
  ScratchFolder folder;
  OpenWindow window;
  open_standing(window, put_event(folder, breezy_event()));
  window->select("a1", "p2");  // not tied
  const wxButton& button = window->standing().advice_button();
  CHECK(window.pump_until([&] { return button.IsEnabled(); }));
  window->select("a1", "");
  CHECK(!button.IsEnabled());
}

}  // namespace quadrille
