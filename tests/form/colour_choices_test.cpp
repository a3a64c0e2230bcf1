// Colours to choose from.
#include "studio/form/colour_choices.hpp"

#include "studio/form/row_grid.hpp"
#include "tables.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

std::vector<Palette> palettes_here() {
  Palette house{"house",
                "House colours",
                "USD",
                {{"red", "Red", 255, 0, 0, Finish::matte, {}},
                 {"blue", "Night blue", 0, 0, 128, Finish::pearl, {}},
                 {"white", "White", 255, 255, 255, Finish::matte, {}}}};
  Palette pastel{
      "pastel",
      "Pastel",
      "USD",
      {{"rose", "Rose", 250, 200, 210, Finish::matte, {}}, {"milk", "Milk", 254, 254, 253, Finish::pearl, {}}}};
  return {pastel, house};
}

Event event_here() {
  PlacedPiece piece = piece_of("p", "arch");
  piece.colours = {{"house", "white"}, {"house", "red"}};
  Event event = event_of({piece, piece_of("q", "arch")});
  event.palettes = {"house"};
  return event;
}

std::vector<std::string> keys_of(const ColourGroup& group) {
  std::vector<std::string> keys;
  for (const ColourEntry& entry : group.colours) keys.push_back(entry.reference.colour);
  return keys;
}

}  // namespace

TEST_CASE("used colours come first, then the palettes of the event, then the others") {
  const auto palettes = palettes_here();
  const std::vector<ColourReference> recent{{"house", "red"}, {"gone", "gone"}};
  const auto groups = colour_choices(event_here(), palettes, recent, "");
  REQUIRE(groups.size() == 3);
  CHECK(groups[0].heading == "Used last");
  CHECK(keys_of(groups[0]) == std::vector<std::string>{"red", "white"});
  CHECK(groups[1].heading == "House colours");
  CHECK(groups[1].colours.size() == 3);
  CHECK(groups[1].colours[0].in_event);
  CHECK(groups[2].heading == "Pastel");
  CHECK_FALSE(groups[2].colours[0].in_event);
}

TEST_CASE("every word that is typed must be there, in name, finish or palette") {
  const auto palettes = palettes_here();
  const auto found = [&](const char* search) {
    std::vector<std::string> keys;
    for (const ColourGroup& group : colour_choices(event_here(), palettes, {}, search))
      if (group.heading != "Used last")
        for (const std::string& key : keys_of(group)) keys.push_back(key);
    return keys;
  };
  CHECK(found("BLUE") == std::vector<std::string>{"blue"});
  CHECK(found(" pearl ") == std::vector<std::string>{"blue", "milk"});
  CHECK(found("pearl past") == std::vector<std::string>{"milk"});
  CHECK(found("mauve").empty());
  CHECK(found("#12").empty());  // not yet a colour
}

TEST_CASE("the colours nearest to a typed one come nearest first") {
  const auto palettes = palettes_here();
  const auto groups = colour_choices(event_here(), palettes, {}, "#ffffff");
  REQUIRE(groups.size() == 1);
  const auto& colours = groups[0].colours;
  REQUIRE(colours.size() == 5);
  CHECK(colours[0].reference.colour == "white");
  CHECK(*colours[0].difference == doctest::Approx(0));
  CHECK(colours[1].reference.colour == "milk");
  CHECK(colours[2].reference.colour == "rose");
  for (std::size_t i = 1; i < colours.size(); ++i) CHECK(*colours[i - 1].difference <= *colours[i].difference);
}

TEST_CASE("a colour is given to all pieces, with its palette, and one that looks like another slot's is told") {
  const auto palettes = palettes_here();
  const Event event = with_chosen_colour(event_here(), {"p", "q"}, 1, {"pastel", "milk"});
  CHECK(event.palettes == std::vector<std::string>{"house", "pastel"});
  CHECK(find_piece(event, "p")->colours[1] == ColourReference{"pastel", "milk"});
  CHECK(find_piece(event, "q")->colours == std::vector<ColourReference>{{}, {"pastel", "milk"}});
  CHECK(with_chosen_colour(event_here(), {"p"}, 0, {}).palettes == std::vector<std::string>{"house"});
  const std::vector<SlotField> slots{{0, "A", ColourReference{"house", "white"}, false, 3},
                                     {1, "B", ColourReference{"house", "red"}, false, 3}};
  CHECK(alike_in_words(palettes, slots, 1, {"pastel", "milk"}).starts_with("Milk and A, White, are the same to the eye"));
  CHECK(alike_in_words(palettes, slots, 0, {"pastel", "milk"}).empty());
  CHECK(colour_in_words(palettes, {"house", "blue"}) == "Night blue, pearl");
  CHECK(colour_in_words(palettes, {}) == "no colour yet");
}

TEST_CASE("rows that use more colours than the piece has slots bring the slots along") {
  const auto tables = types_here().tables();
  const Event event = event_of({piece_of("p", "column", {{"pattern", Value::of_text(Kind::choice, "rows")}})});
  const Form form = form_of(event, {"p"}, tables);
  const RowGrid grid = *grid_of("AACC BBBB", 4);
  const Event changed = with_grid(event, form, tables, "rows", grid);
  CHECK(find_piece(changed, "p")->values.at("rows").text == "AACC BBBB");
  CHECK(find_piece(changed, "p")->values.at("slots").number == 3);
  const Event fewer = with_grid(changed, form, tables, "rows", *grid_of("AAAA", 4));
  CHECK(find_piece(fewer, "p")->values.at("slots").number == 3);  // slots are never taken away
}
