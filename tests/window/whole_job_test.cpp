// A whole job from an empty start: everything that a decorator does before the day, undone to nothing and done again.
#include <wx/image.h>

#include "own_house.hpp"
#include "studio/arrange/copies.hpp"
#include "studio/files/event_file.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/new_event.hpp"
#include "studio/sheets/sheet_kinds.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/dialogs/export_sheets_dialog.hpp"
#include "studio/window/panels/floor_plan_view.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/list_editor.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/repertoire_hands.hpp"
#include "typing.hpp"

namespace quadrille {
namespace {

std::filesystem::path put_picture(const ScratchFolder& folder) {
  if (wxImage::FindHandler(wxBITMAP_TYPE_PNG) == nullptr) wxImage::AddHandler(new wxPNGHandler);
  wxImage image(600, 300);
  image.SetRGB(wxRect(0, 0, 600, 200), 150, 190, 230);
  image.SetRGB(wxRect(0, 200, 600, 100), 90, 140, 80);
  const auto file = folder / "meadow.png";
  REQUIRE(image.SaveFile(wxString::FromUTF8(file.string()), wxBITMAP_TYPE_PNG));
  return file;
}

/// The area's only one.
const Area& meadow(OpenWindow& window) { return *window->document()->event().areas.at(0); }

std::vector<ColourReference> some_colours(OpenWindow& window) {
  std::vector<ColourReference> colours;
  for (const Palette& palette : window->document()->palettes()->palettes)
    for (const Colour& colour : palette.colours) colours.push_back({palette.key, colour.key});
  REQUIRE(colours.size() > 3);
  return colours;
}

/// The event without what was built last, which a file has beside what was designed.
Event without_measures(Event event) {
  for (auto& area : event.areas)
    area.edit([](Area& of) {
      for (auto& piece : of.pieces) piece.edit([](PlacedPiece& placed) { placed.last_built.reset(); });
    });
  return event;
}

}  // namespace

TEST_CASE(
    "a whole job is done from an empty start, saved, opened equal, undone to nothing and done again to the byte") {
  const OwnHouse house;
  ScratchFolder folder;
  OpenWindow window;
  NewEventAnswers answers;
  answers.title = "Meadow wedding", answers.client = "Invented client", answers.date = "2027-06-12";
  answers.surroundings = Surroundings::outdoors, answers.units = Units::metric;
  REQUIRE(window->begin(new_event(answers)));
  window.settle();
  const Event empty = window->document()->event();
  REQUIRE(empty.areas.size() == 1);
  REQUIRE(empty.areas[0]->pieces.empty());

  // The place: a photo with its true size, and the forecast.
  REQUIRE(window->photo().add(put_picture(folder)));
  window.settle();
  REQUIRE(window->photo().calibrate({0, 300}, {600, 300}, 9));
  window.settle();
  CHECK(meadow(window).backdrop->metres_per_pixel == doctest::Approx(9.0 / 600));
  window.command(command_site_page);
  REQUIRE(window.pump_until([&] { return window->site().plan().IsShownOnScreen(); }));
  type_into(window, window->site().fields().input("gust"), "20 km/h");
  CHECK(window->site().fields().fault("gust") == "");
  REQUIRE(meadow(window).site.gust_m_s);
  CHECK(*meadow(window).site.gust_m_s == doctest::Approx(20 / 3.6));

  // An arch, two columns in a row, a garland with an edited path.
  const std::vector<ColourReference> colours = some_colours(window);
  window->add_piece("arch");
  window.settle();
  const std::string arch = window->selected_piece();
  window->set_colour(0, colours[0]);
  window->set_colour(1, colours[1]);
  type_into(window, window->form().input("span"), "8'6\"");
  window->add_piece("column");
  window.settle();
  ArrayPlan row;
  row.along = steps_of(2, 2.5);
  window->array_selected(row);
  window.settle();
  window->set_colour(0, colours[2]);
  window->add_piece("garland");
  window.settle();
  const std::string garland = window->selected_piece();
  ListEditor* path = window->form().row("path")->list();
  REQUIRE(path != nullptr);
  type_into(window, path->cell(1, 2), "2.2 m");
  REQUIRE(find_piece(window->document()->event(), garland)->values.at("path").list.at(5) == doctest::Approx(2.2));
  REQUIRE(meadow(window).pieces.size() == 4);

  // Lines as they are advised for the arch, and the arch into the repertoire.
  window->select(meadow(window).id, arch);
  REQUIRE(window.pump_until([&] { return window->site().advice_button().IsEnabled(); }));
  window.command(command_site_advice);
  window.settle();
  CHECK(!find_piece(window->document()->event(), arch)->lines.empty());
  REQUIRE(window->repertoire().keep("Meadow arch", 24000));
  window.settle();
  REQUIRE(house.read().repertoire.size() == 1);

  // The quote, the sheets, the file.
  REQUIRE(window->issue_quote("2027-05-01", "M-1"));
  window.settle();
  REQUIRE(window->document()->event().issued);
  const auto sheets = folder / "sheets";
  std::filesystem::create_directory(sheets);
  std::vector<std::string> kinds;
  for (const SheetKind& kind : sheet_kinds()) kinds.emplace_back(kind.key);
  {
    ExportSheetsDialog dialog(window.reference().get(), window->study_shared(), Paper::a4, sheets, "meadow");
    dialog.choose(kinds, Paper::a4, sheets);
    REQUIRE(dialog.begin());
    REQUIRE(window.pump_until([&] { return !dialog.working(); }));
    CHECK(dialog.done().fault.empty());
    CHECK(dialog.done().files.size() == kinds.size());
  }
  const auto file = folder / "meadow.quadrille";
  REQUIRE(window->save_as(file));
  const std::string bytes = contents(file);
  const Event done = window->document()->event();
  const auto opened = open_event(file);
  REQUIRE_MESSAGE(opened, opened.error);
  CHECK(without_measures(opened->event) == without_measures(done));

  // All the way back, and all the way forth again.
  while (window->document()->history().can_undo()) window->undo();
  window.settle();
  CHECK(window->document()->event() == empty);
  CHECK(window->document()->has_changes());
  while (window->document()->history().can_redo()) window->redo();
  window.settle();
  CHECK(window->document()->event() == done);
  CHECK(!window->document()->has_changes());
  const auto again = folder / "again.quadrille";
  REQUIRE(window->save_as(again));
  CHECK(contents(again) == bytes);
}

}  // namespace quadrille
