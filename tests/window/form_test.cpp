// The form of one selected piece on a screen, and what the Pieces menu does with it.
#include "answering.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/new_event.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/colour_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/recent_files.hpp"
#include "studio/window/toolkit/wx_text.hpp"
#include "typing.hpp"

namespace quadrille {

TEST_CASE("a length is typed in any unit, as a sum too; what cannot be read is told at the field and changes nothing") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  CHECK(window->form().input("span") == nullptr);  // nothing is selected
  window->select("a1", "p1");
  auto* span = dynamic_cast<wxTextCtrl*>(window->form().input("span"));
  REQUIRE(span != nullptr);
  CHECK(span->GetValue() == "2.4");
  type_into(window, span, "8'6\"");
  CHECK(piece(window, "p1").values.at("span").number == doctest::Approx(2.5908));  // 102 in of 25.4 mm
  type_into(window, span, "2m + 30cm");
  CHECK(piece(window, "p1").values.at("span").number == doctest::Approx(2.3));
  CHECK(window->form().fault("span").empty());
  type_into(window, span, "wide");
  CHECK(!window->form().fault("span").empty());
  CHECK(piece(window, "p1").values.at("span").number == doctest::Approx(2.3));
  CHECK(span->GetValue() == "wide");  // what was typed is not lost
  window->undo();
  CHECK(piece(window, "p1").values.at("span").number == doctest::Approx(2.5908));
  window->undo();
  CHECK(piece(window, "p1").values.at("span").number == doctest::Approx(2.4));
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE(
    "another number of colours was typed: the form gets its fields anew once the event is over, and saving takes what "
    "is typed") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", "p1");
  FormPanel& form = window->form();
  REQUIRE(form.colours().size() == 2);
  type_into(window, form.input("slots"), "4");
  REQUIRE(window.pump_until([&] { return form.colours().size() == 4; }));
  wxButton* usual = form.usual_button("slots");
  REQUIRE(usual != nullptr);
  press(window, usual);
  REQUIRE(window.pump_until([&] { return form.colours().size() == 2; }));
  auto* span = dynamic_cast<wxTextCtrl*>(form.input("span"));
  REQUIRE(span != nullptr);
  span->ChangeValue("2.5");  // and no Enter
  REQUIRE(window->save());
  CHECK(find_piece(open_event(window->document()->file())->event, "p1")->values.at("span").number == 2.5);
}

TEST_CASE("choices, colours, the name and the way back to what is usual are one step each") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", "p1");
  FormPanel& form = window->form();
  auto* frame = dynamic_cast<wxChoice*>(form.input("frame"));
  REQUIRE(frame != nullptr);
  const int before = frame->GetSelection();
  const ValueMap values = piece(window, "p1").values;
  choose(window, *frame, before == 0 ? 1 : 0);
  CHECK(piece(window, "p1").values != values);
  CHECK(window->document()->history().undo_name().find("Door arch") != std::string::npos);

  wxButton* usual = form.usual_button("span");
  REQUIRE(usual != nullptr);
  press(window, usual);
  CHECK(!piece(window, "p1").values.contains("span"));

  REQUIRE(form.colours().size() == 2);
  const Answering answering({on_dialog<ColourDialog>([](ColourDialog& dialog) {
    CHECK(dialog.chosen() == ColourReference{"house", "white"});  // what the slot has
    dialog.search("coral matte");
    return wxID_OK;
  })});
  press(window, form.colours()[0]);
  CHECK(piece(window, "p1").colours[0] == ColourReference{"house", "coral"});

  form.name_field()->SetValue("Way in");
  form.name_field()->MarkDirty();
  tell(*form.name_field(), wxEVT_TEXT_ENTER);
  window.settle();
  CHECK(piece(window, "p1").name == "Way in");
  for (int step = 0; step < 4; ++step) window->undo();
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("pieces are added, copied, mirrored, ordered and removed; undone they leave the event as it was") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  REQUIRE(window.pump_until([&] { return window->form().IsShownOnScreen(); }));
  for (const char* const type : {"arch", "column", "garland"}) {
    window->add_piece(type);
    window.settle();
    const PlacedPiece& added = piece(window, window->selected_piece());
    CHECK(added.type == type);
    CHECK(!added.colours.empty());
    CHECK(window->study()->built.contains(added.id));
    CHECK(window->form().name_field()->GetValue() == shown(added.name));
  }
  const std::string garland = window->selected_piece();
  window.command(command_duplicate);
  window.settle();
  CHECK(window->selected_piece() != garland);
  CHECK(piece(window, window->selected_piece()).values == piece(window, garland).values);
  CHECK(piece(window, window->selected_piece()).x_m > piece(window, garland).x_m);
  window.command(command_mirror);
  window.command(command_to_back);
  window.command(command_to_front);
  window.command(wxID_DELETE);
  window.settle();
  CHECK(window->selected_piece().empty());
  CHECK(window->document()->event().areas[0]->pieces.size() == 5);
  while (window->document()->history().can_undo()) window->undo();
  window.settle();
  CHECK(window->document()->event() == harvest_event());
}

TEST_CASE("the field of a parameter or a slot is found by its key") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  FormPanel& form = window->form();
  CHECK(!form.focus_field("span"));  // nothing is selected
  window->select("a1", "p1");
  CHECK(form.focus_field("span"));
  CHECK(form.focus_field("slot B"));
  CHECK(!form.focus_field("slot F"));
  CHECK(!form.focus_field("gust"));
  CHECK(!form.focus_field("rod-length"));  // a half circle has none: the field is idle
}

TEST_CASE("a new event has no file until it is saved, a sample is opened as a copy, and the list remembers") {
  ScratchFolder folder;
  OpenWindow window;
  CHECK(window->start().IsShown());
  NewEventAnswers answers;
  answers.title = "Spring fair", answers.width_m = 6, answers.units = Units::metric;
  answers.palette = "house", answers.colours = {{"house", "white"}, {"house", "coral"}, {"house", "gold"}};
  answers.first_type = "arch", answers.first_name = "Arch";
  answers.first_values = {{"slots", Value::of_number(Kind::slots, 3)}};
  REQUIRE(window->begin(new_event(answers)));
  window.settle();
  CHECK(!window->start().IsShown());
  CHECK(window->GetTitle().StartsWith("*Spring fair (not saved yet)"));
  CHECK(window->document()->event().areas[0]->pieces[0]->x_m == 3);
  CHECK(window->study()->built.contains("p1"));
  REQUIRE(window->save_as(folder / "spring.quadrille"));
  CHECK(!window->document()->has_changes());
  CHECK(open_event(folder / "spring.quadrille")->event.title == "Spring fair");

  const auto samples = sample_events(studio_program());
  REQUIRE(samples.size() >= 3);
  REQUIRE(window->open_copy(samples.front()));
  window.settle();
  CHECK(!window->document()->has_file());
  RecentFiles recent(recent_files_memory());
  REQUIRE(!recent.files().empty());
  CHECK(recent.files().front() == folder / "spring.quadrille");
}

}  // namespace quadrille
