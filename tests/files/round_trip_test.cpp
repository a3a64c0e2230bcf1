// What is written comes back, and what was not changed stays the very bytes that were read.
#include <doctest/doctest.h>

#include "random_event.hpp"
#include "scratch.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/files/event_file.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/history.hpp"

using namespace quadrille;

TEST_CASE("any event is read back as it was written") {
  CHECK(rc::check([] {
    const Event event = any_event();
    const std::string bytes = write_event(event);
    const auto again = read_event(bytes, "random");
    RC_ASSERT(again.error == "");
    RC_ASSERT(again->event == event);
    RC_ASSERT(again->findings.empty());
    RC_ASSERT(write_event(again->event) == bytes);
    RC_ASSERT(bytes.find('\r') == std::string::npos);
  }));
}

TEST_CASE("an event that stays unchanged is saved as the very bytes that were read") {
  const ScratchFolder folder;
  for (const char* name : {"event-1.0.quadrille", "untidy.quadrille"}) {
    CAPTURE(name);
    const auto opened = open_event(fixture(name));
    REQUIRE(opened.error == "");
    CHECK(opened->findings.empty());
    CHECK(save_event(folder / name, opened->event, &*opened) == std::nullopt);
    CHECK(contents(folder / name) == contents(fixture(name)));
  }
}

TEST_CASE("a processing instruction after a comment, which XML allows, was refused") {
  const std::string bytes =
      "<?xml version=\"1.0\"?>\n<!-- for the venue -->\n<?xml-stylesheet\nhref=\"event.css\"?>\n"
      "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\" units=\"feet\" currency=\"USD\">\n"
      "  <weather/>\n</event>\n";
  const auto opened = read_event(bytes, "f");
  REQUIRE(opened.error == "");
  REQUIRE(opened->findings.size() == 1);
  CHECK(opened->findings[0].text.find("Line 6") != std::string::npos);
  Event event = opened->event;
  event.title = "edited";
  const std::string saved = write_event(event);
  const auto comment = saved.find("<!-- for the venue -->\n"), sheet = saved.find("<?xml-stylesheet\nhref=");
  REQUIRE(sheet != std::string::npos);
  CHECK(comment < sheet);
  CHECK(read_event(saved, "f")->event == event);
  // A declaration may stand at the beginning only: XML 1.0, production 22.
  const auto late = read_event("<!-- first -->\n" + bytes, "f");
  CHECK(late.error.find("line 2") != std::string::npos);
  CHECK(late.error.find("very beginning") != std::string::npos);
}

TEST_CASE("the version 1.0 fixture is read for what it says") {
  const auto opened = open_event(fixture("event-1.0.quadrille"));
  REQUIRE(opened.error == "");
  const Event& event = opened->event;
  CHECK(event.title == "Harvest & Hearth");
  CHECK(event.units == Units::metric);
  CHECK(event.currency == "EUR");
  CHECK(event.strike_from == "17:15");
  CHECK(event.palettes == std::vector<std::string>{"house", "pastel"});
  CHECK(event.terms == JobTerms{18'500, 2, 50'000});
  REQUIRE(event.issued.has_value());
  const IssuedQuote& issued = *event.issued;
  CHECK(issued.number == "Q-17");
  CHECK(issued.valid_until == "2027-08-29");
  CHECK(issued.quote.prices_with_tax);
  CHECK(issued.quote.total_minor == 62'951);
  CHECK(issued.quote.balance_minor == 31'475);
  REQUIRE(issued.quote.lines.size() == 3);
  CHECK(issued.quote.lines[0] == QuoteLine{QuoteLineKind::piece, "p1", "Entrance arch", 48'500, 190'000, 9'215});
  CHECK(issued.quote.lines[1].text == "There & back");
  CHECK(issued.quote.lines[2] == QuoteLine{QuoteLineKind::discount, "", "5 %", -2'500, 190'000, -475});
  CHECK(issued.figures.at("wage") == "25.00 EUR an hour");
  REQUIRE(event.areas.size() == 2);
  const Area& gate = *event.areas[0];
  CHECK(gate.wall_width_m == 7.25);
  CHECK(gate.site.surroundings == Surroundings::outdoors);
  CHECK(gate.site.ground == Ground::paving);
  CHECK(gate.site.event_celsius == 26.5);
  CHECK(gate.structures.at(0).allowed_by == "the caretaker");
  CHECK(gate.walkways.at(0).y_m == -1.5);
  const PlacedPiece* arch = find_piece(event, "p1");
  REQUIRE(arch != nullptr);
  CHECK(arch->note == "Check the latch.\nAsk for the \"short\" ladder.");
  CHECK(arch->locked);
  CHECK(arch->price_minor == 48500);
  CHECK(arch->values.at("clusters") == Value::of_number(Kind::count, 33));
  CHECK(arch->values.at("frame") == Value::of_text(Kind::choice, "flexible-rod"));
  CHECK(arch->colours == std::vector<ColourReference>{{"house", "ivory"}, {"house", "deep-green"}});
  REQUIRE(arch->last_built.has_value());
  CHECK(arch->last_built->height_m == 0.30000000000000004);
  CHECK(arch->last_built->counts.at(1).balloons == 66);
  const PlacedPiece* lantern = find_piece(event, "p2");
  REQUIRE(lantern != nullptr);
  CHECK(lantern->type == "someone.lantern");
  CHECK(lantern->hidden);
  CHECK(lantern->values.at("path") == Value::of_list(Kind::path, {0, 0, 0, 0.5, 0.25, 1.75}));
  CHECK(lantern->values.at("glow") == Value::of_number(Kind::flag, 1));
}

TEST_CASE("a file as this version writes it is written again byte for byte, with what it does not know") {
  const auto opened = open_event(fixture("event-1.0.quadrille"));
  REQUIRE(opened.error == "");
  CHECK(write_event(opened->event) == contents(fixture("event-1.0.quadrille")));
}

TEST_CASE("an untidy file says the same as the tidy one, but for the way it is written") {
  const auto tidy = open_event(fixture("event-1.0.quadrille")), untidy = open_event(fixture("untidy.quadrille"));
  REQUIRE(untidy.error == "");
  CHECK(untidy->event == tidy->event);
}

TEST_CASE("an edit changes its own line and nothing else; what is not known survives") {
  const std::string before = contents(fixture("event-1.0.quadrille"));
  const Event start = open_event(fixture("event-1.0.quadrille"))->event;
  CHECK(write_event(moved(start, "p2", 5.5, 0.5)) ==
        replaced(before, "x-m=\"6\" y-m=\"0.5\"", "x-m=\"5.5\" y-m=\"0.5\""));
  CHECK(write_event(with_value(start, "p1", "rod-length", Value::of_number(Kind::length, 7))) ==
        replaced(before, "length=\"6.1\" crm:", "length=\"7\" crm:"));
  // The comment stood before a value that is gone: it goes to the end of the piece.
  const std::string reset = write_event(without_value(start, "p1", "rod-length"));
  CHECK(reset.find("rod-length") == std::string::npos);
  CHECK(reset.find("</last-built>\n      <!-- measured on the last job -->\n    </piece>") != std::string::npos);
}

TEST_CASE("undoing everything gives the byte-identical file") {
  const ScratchFolder folder;
  put(folder / "e.quadrille", contents(fixture("untidy.quadrille")));
  const auto opened = open_event(folder / "e.quadrille");
  REQUIRE(opened.error == "");
  History history(opened->event);
  history.commit("Move", moved(history.event(), "p1", 1, 2));
  history.commit("Rename", renamed(history.event(), "p1", "Other"));
  CHECK(save_event(folder / "e.quadrille", history.event(), &*opened) == std::nullopt);
  CHECK(contents(folder / "e.quadrille") != opened->bytes);
  history.undo();
  history.undo();
  CHECK(save_event(folder / "e.quadrille", history.event(), &*opened) == std::nullopt);
  CHECK(contents(folder / "e.quadrille") == opened->bytes);
}

TEST_CASE("characters that XML forbids are left out of texts, the rest is saved") {
  const ScratchFolder folder;
  Event event;
  event.title = std::string("a\x01") + "b\xFF" + "c\n";
  CHECK(save_event(folder / "e.quadrille", event) == std::nullopt);
  CHECK(open_event(folder / "e.quadrille")->event.title ==
        "ab\xEF\xBF\xBD"
        "c\n");
}

TEST_CASE("whole numbers are written as such, however round") {
  PlacedPiece piece;
  piece.id = "p1";
  piece.values["k"] = Value::of_number(Kind::count, 1'000'000);
  const Event event = with_piece(with_area(Event{}, Area{"a1", {}, {}, {}, {}, {}, {}, {}, {}}), "a1", piece);
  CHECK(write_event(event).find("count=\"1000000\"") != std::string::npos);
}

TEST_CASE("small and large numbers are written out, and read back as the same") {
  const ScratchFolder folder;
  Event event = with_area(Event{}, Area{"a1", {}, {}, {}, {}, {}, {}, {}, {}});
  const auto written = [&](double metres) {
    event.terms.travel_m = metres;
    const std::string bytes = write_event(event);
    CHECK(read_event(bytes, "f")->event.terms.travel_m == metres);
    const std::size_t begin = bytes.find("travel-m=\"") + 10;
    return bytes.substr(begin, bytes.find('"', begin) - begin);
  };
  CHECK(written(100'000) == "100000");
  CHECK(written(0.0005) == "0.0005");
  CHECK(written(0.00123) == "0.00123");
  CHECK(written(0.1 + 0.2) == "0.30000000000000004");  // IEEE 754: the sum is not the double nearest to 0.3
  CHECK(written(1e-300) == "1e-300");
}

TEST_CASE("an event that would not open again as it is, is not saved") {
  const ScratchFolder folder;
  put(folder / "e.quadrille", "before");
  Event event;
  event.areas.emplace_back(Area{"a1", "Gate", 1e308, {}, {}, {}, {}, {}, {}});
  const auto refused = save_event(folder / "e.quadrille", event);
  REQUIRE(refused.has_value());
  CHECK(refused->find("wall-width-m") != std::string::npos);
  CHECK(contents(folder / "e.quadrille") == "before");
}
