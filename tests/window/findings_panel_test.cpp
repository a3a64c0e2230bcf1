// Findings as they are read in the window.
#include "studio/window/panels/findings_panel.hpp"
#include "breezy_event.hpp"
#include "studio/model/edits.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"
#include "toolkit.hpp"

namespace quadrille {

TEST_CASE("a finding is read with the names of its area and piece, whatever these are") {
  // A piece named "is" was once not named at all, since the sentence had an "is" in it.
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[1].edit(
      [](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.name = "is", piece.last_built.reset(); }); });
  OpenWindow window;
  window.open(put_event(folder, event));
  const auto& rows = window->findings().table().model->rows();
  REQUIRE(!rows.empty());  // worst first: the piece whose type nobody has
  CHECK(text_of(rows[0].cells[0]) == "Problem");
  CHECK(text_of(rows[0].cells[1]) == "Hall, is");
  CHECK(text_of(rows[0].cells[2]).starts_with("The piece type 'no-such-type' is not available"));
  CHECK(text_of(window->findings().details()).starts_with("Hall, is: The piece type 'no-such-type'"));
  CHECK(window->outline().model().areas()[1].pieces[0].balloons == "not built");
}

namespace {

/// Two arches of flexible rod whose height, which they find by themselves, was set.
Event two_alike() {
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    for (auto& piece : area.pieces)
      piece.edit([](PlacedPiece& placed) { placed.values = {{"height", Value::of_number(Kind::length, 3)}}; });
  });
  return event;
}

}  // namespace

TEST_CASE("where several pieces stand is read whole, though a name has a colon in it") {
  // What stood before the first colon of the sentence was once taken for the place.
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    int number = 0;
    for (auto& piece : area.pieces)
      piece.edit([&number](PlacedPiece& placed) {
        placed.name = "Door: arch " + std::to_string(++number);
        placed.values = {{"height", Value::of_number(Kind::length, 3)}};
      });
  });
  OpenWindow window;
  window.open(put_event(folder, event));
  const FindingsPanel& page = window->findings();
  bool told = false;
  for (const TableRow& row : page.table().model->rows())
    if (row.cells[2].Contains("eight")) {
      told = true;
      CHECK(text_of(row.cells[1]) == "Porch, Door: arches 1 and 2");
    }
  CHECK(told);
}

TEST_CASE("the gravest finding is selected until somebody picks another") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, two_alike()));
  FindingsPanel& page = window->findings();
  REQUIRE(page.told_count() >= 2);
  CHECK(page.table().selected() == 0);
  page.step(1);
  const Findings picked = page.selected();
  REQUIRE(!picked.empty());
  window->rename_area("Porch and path");  // every sentence is made anew
  window.settle();
  CHECK(page.selected().front() == picked.front());
}

TEST_CASE("what is the same of several pieces is told once and mended by one click, which is one step") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, two_alike()));
  FindingsPanel& page = window->findings();
  std::optional<int> told;
  for (std::size_t row = 0; row < page.told_count(); ++row)
    if (page.table().model->rows()[row].cells[2].Contains("eight")) {
      CHECK(!told);
      told = static_cast<int>(row);
    }
  REQUIRE(told);
  CHECK(page.table().model->rows()[static_cast<std::size_t>(*told)].cells[1] == "Porch, Door arch and Side arch");
  page.step(*told - page.table().selected());
  REQUIRE(page.selected().size() == 2);
  CHECK(page.apply_button().GetLabelText() == "Set Height to 2.4 m on 2 pieces");
  page.go_to_selected();
  CHECK(window->selected_piece() == "p1");
  window.command(command_apply_remedy);
  window.settle();
  for (const char* id : {"p1", "p2"}) CHECK(find_piece(window->document()->event(), id)->values.empty());
  CHECK(window->document()->history().undo_name() == "Set Height to 2.4 m on 2 pieces");
  for (const TableRow& row : page.table().model->rows()) CHECK(!row.cells[2].Contains("eight"));
  window->undo();
  CHECK(!window->document()->history().has_changes());
}

TEST_CASE("how a piece stands is a finding too, and ballast that reaches the forecast is one click away") {
  ScratchFolder folder;
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    area.site.surroundings = Surroundings::outdoors;
    area.site.ground = Ground::grass;
    area.site.gust_m_s = 4;
    PlacedPiece column;
    column.id = "p1", column.name = "Column", column.type = "column", column.x_m = 2;
    column.values = {{"ballast", Value::of_number(Kind::mass, 0.5)}, {"slots", Value::of_number(Kind::slots, 1)}};
    column.colours = {{"house", "white"}};
    area.pieces = {column};
  });
  OpenWindow window;
  window.open(put_event(folder, event));
  FindingsPanel& page = window->findings();
  window->show_page(page);
  const auto row_with_ballast = [&]() -> std::optional<int> {
    for (int row = 0; row < static_cast<int>(page.told_count()); ++row) {
      page.step(row - page.table().selected());
      const Findings told = page.selected();
      if (!told.empty() && told.front().change && told.front().change->key == "ballast") return row;
    }
    return std::nullopt;
  };
  REQUIRE(window.pump_until([&] { return row_with_ballast().has_value(); }));
  const Finding finding = page.selected().front();
  CHECK(finding.piece == "p1");
  CHECK(page.apply_button().GetLabelText().StartsWith("Set Ballast to "));
  page.apply_selected();
  window.settle();
  const double kg = find_piece(window->document()->event(), "p1")->values.at("ballast").number;
  CHECK(kg > 0.5);
  CHECK(kg == finding.change->value.number);
  // Reckoned anew, that finding is gone; what it may now be told to take is more.
  REQUIRE(window.pump_until([&] {
    for (const TableRow& row : page.table().model->rows())
      if (row.cells[2].StartsWith("Still reckoning")) return false;
    return true;
  }));
  for (int row = 0; row < static_cast<int>(page.told_count()); ++row) {
    page.step(row - page.table().selected());
    CHECK(page.selected().front().text != finding.text);
  }
}

namespace {

/// Goes to the first finding of this code, as Enter does; false where there is none.
bool go_to_first(OpenWindow& window, std::string_view code) {
  FindingsPanel& page = window->findings();
  window->show_page(page);
  for (int row = 0; row < static_cast<int>(page.told_count()); ++row) {
    page.step(row - page.table().selected());
    if (page.selected().empty() || page.selected().front().code != code) continue;
    page.go_to_selected();
    return true;
  }
  return false;
}

}  // namespace

TEST_CASE("what is found of wind, lines and outlet leads to its field on the page Site") {
  ScratchFolder folder;
  Event event = breezy_event();
  event.areas[0].edit([](Area& area) { area.site.gust_m_s.reset(); });
  OpenWindow window;
  window.open(put_event(folder, event));
  SitePanel& site = window->site();
  // No gust is forecast: the field for it.
  REQUIRE(window.pump_until([&] { return go_to_first(window, "no-forecast"); }));
  CHECK(site.IsShown());
  CHECK(window.pump_until([&] { return site.fields().input("gust")->HasFocus(); }));
  // The key for the next finding goes on from there, and does not come back to the same for ever.
  const Findings left = window->findings().selected();
  window.command(command_next_finding);
  CHECK(window->findings().selected() != left);
  // No outlet is known.
  REQUIRE(go_to_first(window, "no-outlet-known"));
  CHECK(site.IsShown());
  CHECK(window.pump_until([&] { return site.fields().input("outlet")->HasFocus(); }));
  // A piece without lines: what ties it, and nobody is led to another forecast for it.
  REQUIRE(window.pump_until([&] { return go_to_first(window, "not-tied"); }));
  CHECK(window->selected_piece() == "p2");
  CHECK(site.IsShown());
  CHECK(window.pump_until([&] { return site.advice_button().HasFocus() || site.add_button().HasFocus(); }));
}

}  // namespace quadrille
