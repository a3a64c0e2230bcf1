// Findings as sentences: place, text, key and remedy, each said once.
#include "studio/model/finding_words.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

Event event_with_piece(const std::string& area_name, const std::string& piece_name) {
  PlacedPiece piece;
  piece.id = "p1", piece.name = piece_name;
  Area area;
  area.id = "a1", area.name = area_name;
  area.pieces.push_back(piece);
  Event event;
  event.areas.push_back(area);
  return event;
}

TEST_CASE("the piece is always named: one called \"is\" was once left out because the sentence had an \"is\"") {
  const Finding finding{Weight::warning, "", "a1", "p1", "", "The rod is long.", ""};
  CHECK(sentence_of(finding, event_with_piece("Gate", "is")) == "Gate, is: The rod is long.");
  CHECK(sentence_of(finding, event_with_piece("Gate", "The rod")) == "Gate, The rod: The rod is long.");
}

TEST_CASE("what has no name, or is not there, goes by its id; the whole event by nothing") {
  const Finding finding{Weight::warning, "", "a1", "p1", "", "So.", ""};
  CHECK(place_of(finding, event_with_piece("", "")) == "area 'a1', piece 'p1'");
  CHECK(place_of(finding, Event{}) == "area 'a1', piece 'p1'");
  CHECK(place_of({Weight::note, "", "a1", "", "", "So.", ""}, event_with_piece("Gate", "Arch")) == "Gate");
  CHECK(sentence_of({Weight::note, "", "", "", "", "So.", "Do that."}, Event{}) == "So. Do that.");
}

TEST_CASE("the key is said once: as a word of the text, or else in brackets before its full stop") {
  CHECK(with_key("The frame shows.", "bare-ends") == "The frame shows (bare-ends).");
  CHECK(with_key("It is too wide", "span") == "It is too wide (span)");
  CHECK(with_key("'span' is 7 m: less would do.", "span") == "'span' is 7 m: less would do.");
  CHECK(with_key("Slot A has no colour.", "slot A") == "Slot A has no colour.");
  CHECK(with_key("It spans 7 m.", "span") == "It spans 7 m (span).");                      // a part of a word
  CHECK(with_key("The rod-length is short.", "rod") == "The rod-length is short (rod).");  // a part of a key
  CHECK(with_key("So.", "") == "So.");
}

TEST_CASE("names that differ in their last number are drawn together, in runs") {
  CHECK(print_names({"Gate arch"}) == "Gate arch");
  CHECK(print_names({"Column 1", "Column 2"}) == "Columns 1 and 2");
  CHECK(print_names({"Column 1", "Column 2", "Gate"}) == "Columns 1 and 2, and Gate");
  CHECK(print_names({"Drive arch 1", "Drive arch 2", "Drive arch 3"}) == "Drive arches 1 to 3");
  CHECK(print_names({"Ceiling swag 2", "Ceiling swag 4"}) == "Ceiling swags 2 and 4");
  // No word of the trade: nobody knows how its plural is made.
  CHECK(print_names({"Aisle 1", "Aisle 2"}) == "Aisle 1 and 2");
  CHECK(print_names({"Column 3", "Frame", "Column 1", "Column 2", "Column 6", "Arch"}) ==
        "Columns 1 to 3 and 6, Frame, and Arch");
  CHECK(print_names({"Column", "Column"}) == "Column and Column");
  // Not numbers: a zero in front would be lost, and ten digits may be a year with more behind it.
  CHECK(print_names({"Swag 01", "Swag 02"}) == "Swag 01 and Swag 02");
  CHECK(print_names({"7", "8"}) == "7 and 8");
  CHECK(print_names({}).empty());
}

TEST_CASE("what is said of many alike pieces is told once, with all their names; nothing else is drawn together") {
  Event event = event_with_piece("Hall", "Column 1");
  event.areas[0].edit([](Area& area) {
    for (const char* number : {"2", "3"}) {
      PlacedPiece piece;
      piece.id = std::string("p") + number, piece.name = std::string("Column ") + number;
      area.pieces.push_back(piece);
    }
  });
  const Finding leans{Weight::warning, "leans", "a1", "p1", "", "It leans.", "Tie it."};
  Finding second = leans, third = leans, other = leans, whole = leans;
  second.piece = "p2", third.piece = "p3", other.piece = "p2", whole.piece = "";
  other.text = "It leans by 3 m.";
  const Findings findings{leans, whole, second, other, third, whole};
  const auto all = told(findings, event);
  REQUIRE(all.size() == 4);
  CHECK(all[0].place == "Hall, Columns 1 to 3");
  CHECK(all[0].sentence == "Hall, Columns 1 to 3: It leans. Tie it.");
  CHECK(all[0].findings == std::vector<std::size_t>{0, 2, 4});
  CHECK(all[1].sentence == "Hall: It leans. Tie it.");
  CHECK(all[2].sentence == "Hall, Column 2: It leans by 3 m. Tie it.");
  CHECK(all[3].findings == std::vector<std::size_t>{5});
}

}  // namespace
}  // namespace quadrille
