// The page Site, the event's details and its areas, on a screen.
#include <algorithm>

#include "breezy_event.hpp"
#include "studio/form/site_form.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/dialogs/details_dialog.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"
#include "typing.hpp"

namespace quadrille {
namespace {

const Area& area(OpenWindow& window) { return *window->document()->event().areas[0]; }

/// breezy_event() with a post and a walkway, its page Site in front.
void open_site(OpenWindow& window, const ScratchFolder& folder) {
  Event event = breezy_event();
  event.areas[0].edit([](Area& area) {
    area.structures = {{"s1", "Gate post", StructureKind::post, 9, -1, 2, "", {}}};
    area.walkways = {{"w1", "Path", 0, -5, 8, 1.5, {}}};
  });
  window.open(put_event(folder, event));
  window.command(command_site_page);
  FloorPlanView& plan = window->site().plan();
  REQUIRE(window.pump_until([&] { return plan.IsShownOnScreen() && plan.GetClientSize().x > 150 && plan.plan(); }));
}

wxPoint at(FloorPlanView& plan, double x_m, double y_m) {
  const Point2 p = plan.view().to_pixels(x_m, y_m);
  return {wxRound(p.x), wxRound(p.y)};
}

void mouse(FloorPlanView& plan, wxEventType type, const wxPoint& where, bool held, bool shift = false) {
  wxMouseEvent event(type);
  event.SetPosition(where);
  event.SetLeftDown(held);
  event.SetShiftDown(shift);
  event.SetEventObject(&plan);
  plan.ProcessWindowEvent(event);
}

void drag(FloorPlanView& plan, const wxPoint& from, const wxPoint& to) {
  mouse(plan, wxEVT_LEFT_DOWN, from, true);
  const wxPoint half((from.x + to.x) / 2, (from.y + to.y) / 2);
  mouse(plan, wxEVT_MOTION, half, true);
  mouse(plan, wxEVT_MOTION, to, true);
  mouse(plan, wxEVT_LEFT_UP, to, false);
}

void key(FloorPlanView& plan, int code) {
  wxKeyEvent event(wxEVT_KEY_DOWN);
  event.m_keyCode = code;
  event.SetEventObject(&plan);
  plan.ProcessWindowEvent(event);
}

void pick_row(OpenWindow& window, int row) {
  const Table& table = window->site().objects();
  table.list->Select(table.model->GetItem(static_cast<unsigned>(row)));
  wxDataViewEvent event(wxEVT_DATAVIEW_SELECTION_CHANGED, table.list, table.model->GetItem(static_cast<unsigned>(row)));
  table.list->ProcessWindowEvent(event);
  window.settle();
}

}  // namespace

TEST_CASE("the place's facts are typed in any unit, one step each; what cannot be is told at the field") {
  ScratchFolder folder;
  OpenWindow window;
  open_site(window, folder);
  SitePanel& site = window->site();
  CHECK(site.heading() == "Porch");
  // 9 m/s are 32.4 km/h, the fresh breeze of Beaufort's scale.
  CHECK(dynamic_cast<wxTextCtrl*>(site.fields().input("gust"))->GetValue() == "32.4");
  CHECK(site.fields().note("gust") == "Beaufort 5, fresh breeze");
  type_into(window, site.fields().input("gust"), "20 mph");
  CHECK(*area(window).site.gust_m_s == doctest::Approx(20 * 0.44704));
  CHECK(window->document()->history().undo_name() == "Change Forecast gust of Porch");
  type_into(window, site.fields().input("outlet"), "30ft + 2 m");
  CHECK(*area(window).site.outlet_m == doctest::Approx(9.144 + 2));
  type_into(window, site.fields().input("outlet"), "-3");
  CHECK(site.fields().fault("outlet").Contains("accepted"));
  CHECK(*area(window).site.outlet_m == doctest::Approx(11.144));
  choose(window, site.fields().input("ground"), "Concrete");
  CHECK(area(window).site.ground == Ground::concrete);
  for (int step = 0; step < 3; ++step) window->undo();
  CHECK(!window->document()->history().has_changes());
  CHECK(dynamic_cast<wxTextCtrl*>(site.fields().input("gust"))->GetValue() == "32.4");
}

TEST_CASE("a stake, a post and a walkway's edge are dragged on the plan, one step each, and a drag is given up") {
  ScratchFolder folder;
  OpenWindow window;
  open_site(window, folder);
  FloorPlanView& plan = window->site().plan();
  const Event start = window->document()->event();
  // The stake to the front of the door arch stands 1.8 m before it, at (2, -1.8).
  drag(plan, at(plan, 2, -1.8), at(plan, 3, -2.4));
  window.settle();
  const SecuringLine& line = area(window).pieces[0]->lines[0];
  CHECK(line.x_m == doctest::Approx(1).epsilon(0.06));
  CHECK(line.y_m == doctest::Approx(-2.4).epsilon(0.03));
  CHECK(std::abs(line.x_m / 0.05 - std::round(line.x_m / 0.05)) < 1e-6);  // a whole step of 5 cm
  CHECK(window->document()->history().undo_name() == "Move Line front-1 of Door arch");
  CHECK(window->selected_piece() == "p1");
  CHECK(plan.words().find(" m at ") != std::string::npos);
  drag(plan, at(plan, 9, -1), at(plan, 8, -1));
  window.settle();
  CHECK(area(window).structures[0].x_m == doctest::Approx(8).epsilon(0.01));
  CHECK(window->site().heading() == "Gate post");
  drag(plan, at(plan, 8, -4.2), at(plan, 9, -4.2));
  window.settle();
  CHECK(area(window).walkways[0].width_m == doctest::Approx(9).epsilon(0.01));
  CHECK(area(window).walkways[0].x_m == 0);
  CHECK(window->document()->history().undo_name() == "Resize Path");
  const Event then = window->document()->event();
  mouse(plan, wxEVT_LEFT_DOWN, at(plan, 4, -4.2), true);
  mouse(plan, wxEVT_MOTION, at(plan, 6, -3.2), true);
  CHECK(window->document()->event() != then);
  key(plan, WXK_ESCAPE);
  CHECK(window->document()->event() == then);
  mouse(plan, wxEVT_LEFT_UP, at(plan, 6, -3.2), false);
  for (int step = 0; step < 3; ++step) window->undo();
  CHECK(window->document()->event() == start);
  CHECK(!window->document()->history().can_undo());
}

TEST_CASE("a command during a drag on the plan ends the drag where it is, and what it changed stays") {
  ScratchFolder folder;
  OpenWindow window;
  open_site(window, folder);
  FloorPlanView& plan = window->site().plan();
  mouse(plan, wxEVT_LEFT_DOWN, at(plan, 9, -1), true);
  mouse(plan, wxEVT_MOTION, at(plan, 8, -1), true);
  REQUIRE(area(window).structures[0].x_m == doctest::Approx(8).epsilon(0.01));
  window->rename_area("Gate");
  mouse(plan, wxEVT_MOTION, at(plan, 7, -1), true);
  mouse(plan, wxEVT_LEFT_UP, at(plan, 7, -1), false);
  CHECK(area(window).name == "Gate");
  CHECK(area(window).structures[0].x_m == doctest::Approx(8).epsilon(0.01));
  CHECK(window->document()->history().undo_name() == "Rename Porch");
}

TEST_CASE("an event that is opened does not begin with what was selected at the place of the one before") {
  ScratchFolder folder;
  OpenWindow window;
  open_site(window, folder);
  pick_row(window, 1);
  REQUIRE(window->site().heading() == "Gate post");
  window.open(window->document()->file());
  CHECK(window->site().heading() == "Porch");
  CHECK(window->site().objects().selected() == 0);
}

TEST_CASE("everything on the plan is in the list too, with its fields, and moves by the arrow keys") {
  ScratchFolder folder;
  OpenWindow window;
  open_site(window, folder);
  SitePanel& site = window->site();
  REQUIRE(site.objects().model->rows().size() == 5);  // the place, a post, a path, two lines
  pick_row(window, 1);
  CHECK(site.heading() == "Gate post");
  type_into(window, site.fields().input("along"), "7.5");
  CHECK(area(window).structures[0].x_m == 7.5);
  key(site.plan(), WXK_RIGHT);
  key(site.plan(), WXK_UP);
  window.settle();
  CHECK(area(window).structures[0].x_m == doctest::Approx(7.55));
  CHECK(area(window).structures[0].y_m == doctest::Approx(-0.95));
  type_into(window, site.fields().input("allowed-by"), "the venue");
  pick_row(window, 3);
  CHECK(window->selected_piece() == "p1");
  choose(window, site.fields().input("anchor"), "What stands there");
  REQUIRE(window.pump_until([&] { return site.fields().input("structure") != nullptr; }));
  CHECK(area(window).pieces[0]->lines[0].structure == "s1");
  type_into(window, site.fields().input("height"), "5");
  CHECK(site.fields().fault("height").Contains("2 m high"));
  window.command(command_site_remove);
  window.settle();
  CHECK(area(window).pieces[0]->lines.size() == 1);
  key(site.plan(), WXK_DELETE);  // nothing is selected any more
  CHECK(area(window).pieces[0]->lines.size() == 1);
}

TEST_CASE("structures, walkways, the outlet and lines are added from the menu, and undone they are gone") {
  ScratchFolder folder;
  OpenWindow window;
  open_site(window, folder);
  const Event start = window->document()->event();
  CHECK(!window->GetMenuBar()->IsEnabled(command_site_line));
  window.command(command_site_structure);
  window.settle();
  CHECK(area(window).structures.size() == 2);
  CHECK(window->site().heading() == "Post");
  window.command(command_site_walkway);
  window.command(command_site_outlet);
  window.settle();
  CHECK(area(window).walkways.size() == 2);
  CHECK(area(window).site.outlet_m);
  window->select("a1", "p2");
  window.settle();
  REQUIRE(window->GetMenuBar()->IsEnabled(command_site_line));
  window.command(command_site_line);
  window.settle();
  REQUIRE(area(window).pieces[1]->lines.size() == 1);
  CHECK(area(window).pieces[1]->lines[0].tie == "front-1");
  CHECK(window->document()->history().undo_name() == "Add Line front-1 of Side arch");
  for (int step = 0; step < 4; ++step) window->undo();
  CHECK(window->document()->event() == start);
}

TEST_CASE("the advised lines are taken in one step, and the piece then bears more") {
  ScratchFolder folder;
  OpenWindow window;
  open_site(window, folder);
  window->select("a1", "p2");  // not tied
  REQUIRE(window.pump_until([&] { return window->site().advice_button().IsEnabled(); }));
  CHECK(window->site().securing().StartsWith("Side arch: bears "));
  CHECK(window->GetMenuBar()->IsEnabled(command_site_advice));
  window.command(command_site_advice);
  window.settle();
  CHECK(area(window).pieces[1]->lines.size() == 2);
  CHECK(window->document()->history().undo_name() == "Tie Side arch with 2 lines");
  window->undo();
  CHECK(area(window).pieces[1]->lines.empty());
  CHECK(!window->document()->history().can_undo());
}

TEST_CASE("areas are added, renamed, ordered and removed, this with a question where they have pieces") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const Event start = window->document()->event();
  {
    Dialogs dialogs({wxID_OK, wxID_OK, wxID_CANCEL});
    window.command(command_area_add);  // called as the dialog proposes
    window.settle();
    REQUIRE(window->document()->event().areas.size() == 3);
    CHECK(window->document()->event().areas[2]->name == "Area 3");
    CHECK(window->shown_area() == window->document()->event().areas[2]->id);
    window.command(command_area_rename);  // to what it is called
    CHECK(window->document()->event().areas[2]->name == "Area 3");
    window->rename_area("Garden");
    window.command(command_area_earlier);
    CHECK(window->document()->event().areas[1]->name == "Garden");
    window.command(command_area_later);
    CHECK(window->document()->event().areas[2]->name == "Garden");
    window.command(command_area_remove);  // it is empty: nothing is asked
    window.settle();
    CHECK(window->document()->event().areas.size() == 2);
    CHECK(window->shown_area() == "a2");
    window.command(command_area_remove);  // asked, and declined
    CHECK(window->document()->event().areas.size() == 2);
    CHECK(dialogs.said().back().find("Remove Hall?") != std::string::npos);
  }
  while (window->document()->history().can_undo()) window->undo();
  CHECK(window->document()->event() == start);
}

TEST_CASE("the details are typed in a dialog and kept in one step; a fault keeps it open") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  DetailsDialog dialog(window.reference().get(), window->document()->event(), window->document()->palettes());
  const auto type = [&](const char* key, const wxString& text) {
    auto* field = dynamic_cast<wxTextCtrl*>(dialog.fields().input(key));
    REQUIRE_MESSAGE(field != nullptr, key);
    field->ChangeValue(text);
  };
  type("client", "Allotment club");
  CHECK(dialog.settle());
  type("ready-by", "soon");
  CHECK(!dialog.settle());
  CHECK(dialog.fields().fault("ready-by").Contains("7:30"));
  type("ready-by", "5 pm");
  CHECK(dialog.settle());
  CHECK(dialog.event().client == "Allotment club");
  CHECK(dialog.event().ready_by == "17:00");
  // The palette that pieces have colours of stays.
  int in_use = 0;
  for (unsigned i = 0; i < dialog.palettes().GetCount(); ++i) {
    if (!dialog.palettes().IsChecked(i)) continue;
    ++in_use;
    dialog.palettes().Check(i, false);
    wxCommandEvent told(wxEVT_CHECKLISTBOX, dialog.palettes().GetId());
    told.SetInt(static_cast<int>(i));
    dialog.palettes().ProcessWindowEvent(told);
    CHECK(dialog.palettes().IsChecked(i));
    CHECK(dialog.palette_fault().Contains("stays"));
  }
  CHECK(in_use == 1);
  CHECK(dialog.event().palettes == window->document()->event().palettes);
  Dialogs dialogs({wxID_CANCEL});
  window.command(command_details);
  CHECK(!window->document()->history().can_undo());
}

}  // namespace quadrille
