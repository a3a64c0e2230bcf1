// The form where a single field does not do: several pieces at once, lists of points, rows of a pattern, colours.
#include "answering.hpp"
#include "studio/model/edits.hpp"
#include "studio/window/dialogs/colour_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/list_editor.hpp"
#include "studio/window/panels/row_editor.hpp"
#include "typing.hpp"

namespace quadrille {

TEST_CASE("several pieces are changed in one form: what differs is shown as such, and one edit is one step for all") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  FormPanel& form = window->form();
  window->select("a1", PieceIds{"p1", "p2"});
  REQUIRE(form.head() != nullptr);
  CHECK(form.head()->heading() == "2 arches");
  CHECK(form.name_field() == nullptr);  // names are given one by one
  auto* span = dynamic_cast<wxTextCtrl*>(form.input("span"));
  REQUIRE(span != nullptr);
  CHECK(span->GetValue().empty());  // 2.4 m and 2 m
  CHECK(span->GetHint() == "various");
  type_into(window, span, "3 m");
  for (const char* id : {"p1", "p2"}) CHECK(piece(window, id).values.at("span").number == 3);
  CHECK(window->document()->history().undo_name() == "Change Span of 2 pieces");
  CHECK(span->GetValue() == "3");

  // One of them gets another frame: the choice says that they differ, and saying so again changes nothing.
  window->select("a1", "p2");
  auto* frame = dynamic_cast<wxChoice*>(form.input("frame"));
  REQUIRE(frame != nullptr);
  const unsigned int frames = frame->GetCount();
  choose(window, frame, "Square");
  window->select("a1", PieceIds{"p1", "p2"});
  frame = dynamic_cast<wxChoice*>(form.input("frame"));
  REQUIRE(frame != nullptr);
  CHECK(frame->GetStringSelection() == "various");
  const Event before = window->document()->event();
  choose(window, *frame, frame->GetSelection());
  CHECK(window->document()->event() == before);
  window->undo();
  CHECK(frame->GetStringSelection() == "Half circle");
  CHECK(frame->GetCount() == frames);

  const Answering answering({on_dialog<ColourDialog>([](ColourDialog& dialog) {
    CHECK(dialog.select({"house", "gold"}));
    return wxID_OK;
  })});
  REQUIRE(form.colours().size() == 2);
  press(window, form.colours()[1]);
  for (const char* id : {"p1", "p2"}) CHECK(piece(window, id).colours[1] == ColourReference{"house", "gold"});
  CHECK(window->document()->history().undo_name() == "Colour B of 2 pieces");

  type_into(window, form.input("place/depth"), "0.5");
  for (const char* id : {"p1", "p2"}) CHECK(piece(window, id).y_m == 0.5);
  CHECK(piece(window, "p1").x_m == 2);

  window->select("a1", PieceIds{"p1"});
  tick(window, form.head()->locked());
  window->select("a1", PieceIds{"p1", "p2"});
  CHECK(form.head()->locked()->Get3StateValue() == wxCHK_UNDETERMINED);
  CHECK(form.head()->hidden()->Get3StateValue() == wxCHK_UNCHECKED);
  tick(window, form.head()->locked());
  for (const char* id : {"p1", "p2"}) CHECK(piece(window, id).locked);
  CHECK(window->document()->history().undo_name() == "Lock 2 pieces");
  type_into(window, form.input("place/along"), "1");
  CHECK(!form.fault("place/along").empty());  // they are locked in their places
  for (int step = 0; step < 5; ++step) window->undo();
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("the wheel over a choice scrolls the form and takes no other entry") {
  // It once took the next pole, unasked, when the form was scrolled past it.
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->add_piece("column");
  window.settle();
  wxWindow* const choice = window->form().input("pole-size");
  REQUIRE(choice != nullptr);
  const Event before = window->document()->event();
  const int top = choice->GetScreenPosition().y;
  wxMouseEvent down(wxEVT_MOUSEWHEEL);
  down.SetEventObject(choice);
  down.m_wheelRotation = -120, down.m_wheelDelta = 120, down.m_linesPerAction = 3;
  CHECK(choice->ProcessWindowEvent(down));  // so that the native choice does not have it
  REQUIRE(window.pump_until([&] { return choice->GetScreenPosition().y < top; }));
  CHECK(window->document()->event() == before);
}

TEST_CASE("a path is a table of points: a cell is typed, a fault stands at it, rows are added and removed by key") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", "p1");
  window->add_piece("garland");
  window.settle();
  const std::string id = window->selected_piece();
  FormPanel& form = window->form();
  REQUIRE(form.row("path") != nullptr);
  ListEditor* list = form.row("path")->list();
  REQUIRE(list != nullptr);
  CHECK(list->IsShown());
  CHECK(!form.input("path")->IsShown());  // the same once more, as one text in metres
  const std::size_t before = list->row_count();
  REQUIRE(before >= 2);
  type_into(window, list->cell(1, 2), "8 ft");
  const std::vector<double> points = piece(window, id).values.at("path").list;
  REQUIRE(points.size() == 3 * before);
  CHECK(points[5] == doctest::Approx(2.4384));  // 8 ft of 0.3048 m
  type_into(window, list->cell(1, 2), "high");
  CHECK(list->fault().StartsWith("Row 2, Height: "));
  CHECK(list->cell(1, 2)->GetValue() == "high");
  CHECK(piece(window, id).values.at("path").list == points);
  wxKeyEvent escape(wxEVT_KEY_DOWN);
  escape.m_keyCode = WXK_ESCAPE;
  list->cell(1, 2)->ProcessWindowEvent(escape);
  CHECK(list->fault().empty());
  wxKeyEvent insert(wxEVT_KEY_DOWN);
  insert.m_keyCode = WXK_INSERT;
  list->cell(0, 0)->ProcessWindowEvent(insert);
  window.settle();
  CHECK(list->row_count() == before + 1);
  CHECK(piece(window, id).values.at("path").list.size() == points.size() + 3);
  press(window, list->remove_button(1));
  CHECK(list->row_count() == before);
  CHECK(piece(window, id).values.at("path").list == points);
  for (int step = 0; step < 4; ++step) window->undo();
  CHECK(window->document()->event() == harvest_event());
}

TEST_CASE("pattern rows are set by letters and by a click, with as many slots as they use, and unrolled beside it") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->add_piece("column");
  window.settle();
  const std::string id = window->selected_piece();
  FormPanel& form = window->form();
  REQUIRE(form.row("rows") != nullptr);
  RowEditor* editor = form.row("rows")->rows();
  REQUIRE(editor != nullptr);
  CHECK(!editor->IsShown());  // another pattern is chosen
  REQUIRE(form.picture() != nullptr);
  CHECK(form.picture()->words().StartsWith("Unrolled: clusters 1 to "));
  auto* pattern = dynamic_cast<wxChoice*>(form.input("pattern"));
  REQUIRE(pattern != nullptr);
  choose(window, pattern, "Rows as typed");
  CHECK(editor->IsShown());
  CHECK(piece(window, id).values.at("rows").text == "ABAB");  // one goes on from the spiral that was there
  CHECK(window->study()->built.at(id)->status == Status::ok);
  CHECK(editor->grid()->handle_key('C', false));
  CHECK(editor->grid()->handle_key('B', false));  // the letter before went on to the next place
  window.settle();
  CHECK(piece(window, id).values.at("rows").text == "CBAB");
  REQUIRE(window.pump_until([&] { return form.colours().size() == 3; }));
  editor = form.row("rows")->rows();
  CHECK(editor->grid()->handle_key(WXK_RIGHT, true));
  window.settle();
  CHECK(piece(window, id).values.at("rows").text == "BCBA");
  CHECK(window->study()->built.at(id)->status == Status::ok);
  CHECK(editor->grid()->handle_key(WXK_INSERT, false));
  CHECK(editor->grid()->row() == 1);
  CHECK(editor->grid()->handle_key(WXK_DELETE, false));
  editor->grid()->handle_key(WXK_DELETE, false);  // the last row stays
  window.settle();
  CHECK(piece(window, id).values.at("rows").text == "BCBA");
  wxMouseEvent click(wxEVT_LEFT_DOWN);
  click.SetPosition(editor->grid()->FromDIP(wxPoint(24 + 24 / 2, 24 / 2)));
  editor->grid()->ProcessWindowEvent(click);
  window.settle();
  CHECK(piece(window, id).values.at("rows").text == "CCBA");
  CHECK(window->document()->history().undo_name().starts_with("Change Rows of "));
  while (window->document()->history().can_undo()) window->undo();
  CHECK(window->document()->event() == harvest_event());
}

TEST_CASE("a colour is looked for by name or by its likeness, and one that another slot nearly has is told") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", "p1");
  const Answering answering({on_dialog<ColourDialog>([](ColourDialog& dialog) {
    const std::size_t all = dialog.table().model->rows().size();
    dialog.search("pearl");
    CHECK(!dialog.table().model->rows().empty());
    CHECK(dialog.table().model->rows().size() < all);
    for (const TableRow& row : dialog.table().model->rows()) CHECK(row.cells[1] == "pearl");
    dialog.search("no such name");
    CHECK(dialog.table().model->rows().empty());
    CHECK(!dialog.chosen());
    dialog.search("#ffffff");
    REQUIRE(!dialog.table().model->rows().empty());
    CHECK(dialog.chosen() == ColourReference{"house", "white"});
    dialog.search("");
    CHECK(dialog.select({"house", "white"}));
    CHECK(dialog.words().find("nearly") == wxString::npos);
    CHECK(dialog.words().find("the same") != wxString::npos);  // slot A has it
    return wxID_CANCEL;
  })});
  press(window, window->form().colours()[1]);
  CHECK(window->document()->event() == harvest_event());
  window->set_colour(1, {"pastel", "petal"});
  CHECK(window->document()->event().palettes == std::vector<std::string>{"house", "pastel"});
}

}  // namespace quadrille
