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

}  // namespace
}  // namespace quadrille
