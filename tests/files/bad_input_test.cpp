// Bytes that are no event: each gets one sentence with the file, the line, the element and what would be accepted.
#include <doctest/doctest.h>

#include <vector>

#include "scratch.hpp"
#include "studio/files/event_file.hpp"
#include "tests/sanitized.hpp"

using namespace quadrille;

namespace {

std::string event_with(const std::string& inside) {
  return "<?xml version=\"1.0\"?>\n<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\">\n" + inside +
         "\n</event>\n";
}
std::string piece_with(const std::string& inside) {
  return event_with("<area id=\"a1\">\n<piece id=\"p1\" type=\"arch\">\n" + inside + "\n</piece>\n</area>");
}
std::string quote_with(const std::string& inside) {
  return event_with(
      "<quote net-minor=\"0\" tax-minor=\"0\" total-minor=\"0\" deposit-minor=\"0\" balance-minor=\"0\">\n" + inside +
      "</quote>");
}
std::string set_with(const std::string& value) { return piece_with("<set key=\"k\" " + value + "/>"); }
std::string site_with(const std::string& value) {
  return event_with("<area id=\"a1\">\n<site " + value + "/>\n</area>");
}

struct Bad {
  std::string bytes;
  std::vector<std::string> named;  // all of it must stand in the sentence
};

void check_all(const std::vector<Bad>& table) {
  for (const Bad& row : table) {
    CAPTURE(row.bytes.substr(0, 300));
    const auto opened = read_event(row.bytes, "wedding.quadrille");
    CHECK_FALSE(opened);
    CAPTURE(opened.error);
    CHECK(opened.error.starts_with("wedding.quadrille"));
    CHECK(opened.error.ends_with("."));
    CHECK(opened.error.find('\n') == std::string::npos);
    for (const std::string& part : row.named) {
      CAPTURE(part);
      CHECK(opened.error.find(part) != std::string::npos);
    }
  }
}

std::string many(std::size_t times, std::string_view what) {
  std::string text;
  text.reserve(times * what.size());
  for (std::size_t i = 0; i < times; ++i) text += what;
  return text;
}

}  // namespace

TEST_CASE("numbers that cannot be meant are refused with the place and what is accepted") {
  check_all({
      {set_with("length=\"1,5\""), {"line 5", "<set key=\"k\">", "length=\"1,5\"", "point", "1.5"}},
      {event_with("<area id=\"a1\" wall-width-m=\"1,5\"/>"),
       {"line 3", "<area id=\"a1\">", "wall-width-m=\"1,5\"", "1.5"}},
      {set_with("length=\"nan\""), {"line 5", "nan", "metres"}},
      {set_with("length=\"inf\""), {"line 5", "inf", "metres"}},
      {set_with("length=\"0x10\""), {"line 5", "0x10", "metres"}},
      {set_with("length=\"\""), {"line 5", "metres"}},
      {set_with("length=\"1e308\""), {"line 5", "1e308", "100000", "metres"}},
      {set_with("length=\"1e999\""), {"line 5", "1e999", "metres"}},
      {set_with("length=\"6 m\""), {"line 5", "6 m", "number alone", "metres"}},
      {set_with("length=\"12abc\""), {"line 5", "12abc"}},
      {set_with("count=\"-5\""), {"line 5", "count=\"-5\"", "from 0", "whole"}},
      {set_with("count=\"2.5\""), {"line 5", "2.5", "whole"}},
      {set_with("slots=\"40\""), {"line 5", "40", "26"}},
      {set_with("seed=\"4294967296\""), {"line 5", "4294967295"}},
      {set_with("mass=\"-1\""), {"line 5", "kilograms"}},
      {site_with("gust-m-s=\"-3\""), {"line 4", "<site>", "gust-m-s", "metres per second"}},
      {site_with("event-celsius=\"400\""), {"line 4", "Celsius"}},
      {event_with("<area id=\"a1\">\n<piece id=\"p1\" type=\"t\"\n price-minor=\"12.50\"/>\n</area>"),
       {"line 4", "<piece id=\"p1\">", "minor"}},
      {piece_with("<path key=\"k\">\n<point x-m=\"0\" y-m=\"0\"/></path>"), {"line 6", "<point>", "z-m", "missing"}},
      {piece_with("<last-built>\n<count slot=\"A\" balloons=\"-1\"/></last-built>"),
       {"line 6", "<count slot=\"A\">", "balloons=\"-1\""}},
      {event_with("<job travel-m=\"-3\"/>"), {"line 3", "<job>", "travel-m=\"-3\"", "from 0", "metres"}},
      {event_with("<job travel-m=\"12 km\"/>"), {"12 km", "number alone"}},
      {event_with("<job crew=\"0\"/>"), {"line 3", "crew=\"0\"", "from 1 to 20", "people"}},
      {event_with("<job crew=\"21\"/>"), {"crew=\"21\"", "from 1 to 20"}},
      {event_with("<job discount-ppm=\"1000001\"/>"), {"discount-ppm", "from 0 to 1000000", "50000 is 5 %"}},
      {event_with("<job discount-ppm=\"0.5\"/>"), {"discount-ppm=\"0.5\"", "not whole"}},
      {event_with("<quote net-minor=\"1\" tax-minor=\"0\" total-minor=\"1\"/>"),
       {"line 3", "<quote>", "deposit-minor is missing", "minor units"}},
      {quote_with("<charge kind=\"piece\" text=\"Arch\"/>"), {"line 4", "<charge>", "net-minor is missing"}},
      {quote_with("<charge kind=\"piece\" net-minor=\"12.50\"/>"), {"line 4", "net-minor=\"12.50\"", "minor units"}},
      {quote_with("<charge net-minor=\"1000000000000000\"/>"), {"line 4", "999999999999999"}},
      {quote_with("<charge net-minor=\"1\" tax-ppm=\"-1\"/>"), {"line 4", "tax-ppm=\"-1\"", "82500 is 8.25 %"}},
      {"<event xmlns=\"urn:quadrille:event:1\" version=\"one\"/>", {"line 1", "version=\"one\"", "1.0"}},
      {"<event xmlns=\"urn:quadrille:event:1\" version=\"0.9\"/>", {"line 1", "version=\"0.9\"", "1.0"}},
  });
}

TEST_CASE("ids and keys that stand twice are refused with both places") {
  check_all({
      {event_with("<area id=\"a1\">\n<piece id=\"p1\" type=\"t\"/>\n<piece id=\"p1\" type=\"t\"/>\n</area>"),
       {"line 5", "\"p1\"", "line 4"}},
      {event_with("<area id=\"a1\"/>\n<area id=\"a2\">\n<structure id=\"a1\"/>\n</area>"),
       {"line 5", "\"a1\"", "line 3"}},
      {piece_with("<set key=\"k\" length=\"1\"/>\n<set key=\"k\" length=\"2\"/>"),
       {"line 6", "<set key=\"k\">", "twice"}},
      {piece_with("<colour slot=\"A\"/>\n<colour slot=\"A\"/>"), {"line 6", "Slot A"}},
  });
}

TEST_CASE("what is no event file is refused with what it is") {
  check_all({
      {"", {"empty", "0 bytes"}},
      {"   \n ", {"no element"}},
      {"Dear client,\nplease", {"line 1", "no XML"}},
      {"\n\nPK\x03\x04", {"control character", "0x03"}},
      {"<svg xmlns=\"http://www.w3.org/2000/svg\"/>", {"line 1", "<svg>", "<event xmlns=\"urn:quadrille:event:1\">"}},
      {"\n<event/>", {"line 2", "no namespace", "urn:quadrille:event:1"}},
      {"<event xmlns=\"urn:else\"/>", {"urn:else", "urn:quadrille:event:1"}},
      {event_with("<area id=\"a1\">"), {"line 4", "</event>", "</area>", "line 3"}},
      {"<event xmlns=\"urn:quadrille:event:1\">\n<area id=\"a1\">\n", {"ends inside <area>", "line 2"}},
      {event_with("<area id=\"a1\" id=\"a2\"/>"), {"line 3", "id", "twice"}},
      {event_with("<area id=a1/>"), {"line 3", "quotes"}},
      {event_with("<area id=\"a1/>"), {"line 3", "closing quote"}},
      {event_with("<!-- never ends"), {"line 3", "comment"}},
      {event_with("") + "<event/>", {"line 5", "second root"}},
      {event_with("") + "more", {"line 5", "after the root"}},
      {"<!DOCTYPE event [<!ENTITY a \"b\">]>\n<event/>", {"line 1", "document type"}},
      {event_with("<?php ?>"), {"line 3", "processing instruction"}},
      {event_with("1 < 2"), {"line 3", "&lt;"}},
  });
}

// An event pasted through a word processor was refused with "The value of name is not in quotes", which it seems to be.
// Columns are counted by hand, in characters: the ä takes two bytes and one column.
TEST_CASE("typographic quotes are named with their column, and how to write them") {
  const std::string remedy = "straight ones: ";
  check_all({
      {event_with("<area id=“a1”/>"), {"line 3", "column 10", "id in <area>", "“", remedy + "id=\"…\""}},
      {event_with("<area name=\"ä\" id=„a1“/>"), {"line 3", "column 19", "id in <area>", "„"}},
      {event_with("<area id = ‘a1’/>"), {"line 3", "column 12", "‘"}},
      {event_with("<area id=«a1»/>"), {"line 3", "column 10", "«"}},
      {"<event xmlns=”urn:quadrille:event:1”/>", {"line 1", "column 14", "xmlns in <event>", remedy + "xmlns="}},
      // Only the closing one: the value then runs on to the next straight quote, or to none.
      {event_with("<area id=\"a1” name=\"Gate\"/>"), {"line 3", "column 13", "id in <area>", "”"}},
      {event_with("<area id=\"a1”/>\n<area id=\"a2\"/>"), {"line 3", "column 13", "id in <area>"}},
      {event_with("<area\n id=\"a1”>"), {"line 4", "column 8", "id in <area>"}},
      {event_with("<area id='a1’/>"), {"line 3", "column 13", "’"}},
  });
  const auto said_of = [](const std::string& inside) { return read_event(event_with(inside), "f").error; };
  // In a text they are letters like others, also where something else is wrong.
  CHECK(said_of("<job client=\"Mia O’Dell, “The Barn”\"/>") == "");
  CHECK(said_of("<area name=\"O’Dell’s “Barn” hall\" locked/>").find("locked in <area> has no value") !=
        std::string::npos);
}

TEST_CASE("bytes that no UTF-8 XML file can hold are refused with their place") {
  // Counted by hand: the first line has 22 bytes with its end, the second 65, and 15 stand before the bad one.
  check_all({
      {event_with("<job title=\"caf\xE9\"/>"), {"line 3", "Byte 102", "0xE9", "UTF-8"}},
      {event_with("<job title=\"\xC0\xAF\"/>"), {"line 3", "0xC0"}},      // overlong "/"
      {event_with("<job title=\"\xED\xA0\x80\"/>"), {"line 3", "0xED"}},  // a surrogate
      {event_with("<job title=\"\xEF\xBF\xBF\"/>"), {"line 3", "U+FFFF"}},
      {event_with("<job title=\"a\x01\"/>"), {"line 3", "control character", "0x01"}},
      {event_with(std::string("<job title=\"a\0\"/>", 17)), {"line 3", "control character", "0x00"}},
      {event_with("<job title=\"&#1;\"/>"), {"line 3", "&#1;"}},
      {event_with("<job title=\"&#x110000;\"/>"), {"line 3", "&#x110000;"}},
      {std::string("\xFF\xFE<\0e\0", 6), {"UTF-16", "UTF-8"}},
      {"<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?><event/>", {"iso-8859-1", "UTF-8"}},
  });
}

TEST_CASE("files that cannot be opened are refused by name") {
  const ScratchFolder folder;
  const auto error_of = [](const std::filesystem::path& path) { return open_event(path).error; };
  CHECK(error_of(folder / "none.quadrille").find("none.quadrille cannot be read: there is no such file") !=
        std::string::npos);
  CHECK(error_of(folder.path()).find("is a folder") != std::string::npos);
  CHECK(error_of("/dev/null").find("empty") != std::string::npos);
  CHECK(error_of("/dev/zero").find("256 MiB") != std::string::npos);
}

TEST_CASE("monstrous files are refused with a short sentence: the benchmark tells how soon") {
  const std::size_t size = sanitized ? 10'000'000 : 200'000'000;
  const std::string begin = "<event xmlns=\"urn:quadrille:event:1\">";
  const auto answer = [&](const std::string& repeated, std::string_view named, std::string_view tail) {
    std::string bytes = begin + many(size / repeated.size(), repeated) + std::string(tail);
    const auto opened = read_event(std::move(bytes), "f");
    CAPTURE(opened.error);
    CHECK(opened.error.find(named) != std::string::npos);
    CHECK(opened.error.size() < 400);
  };
  answer("<a>", "nest deeper than 64", "");
  answer("<a/>", "more than 500000", "</event>");
  answer("&", "more than 500000", "");
  answer("<!", "document type", "");
  answer("<!---->", "more than 500000", "</event>");
  answer("</", "closed by \">\"", "");
  answer("a", "ends inside <event>", "");
  answer("\n", "ends inside <event>", "");
}

TEST_CASE("a name or value of any length does not swell the sentence") {
  const std::string opened_long = read_event("<" + many(1'000'000, "é") + "/>", "f").error;
  CHECK(opened_long.size() < 400);
  const std::string value_long = read_event(set_with("length=\"" + many(1'000'000, "9a") + "\""), "f").error;
  CHECK(value_long.size() < 600);
}

TEST_CASE("the deepest nesting that is allowed is read, one more is not") {
  // The root counts as one.
  CHECK(read_event(event_with(many(63, "<x>") + many(63, "</x>")), "f").error == "");
  CHECK(read_event(event_with(many(64, "<x>") + many(64, "</x>")), "f").error.find("64") != std::string::npos);
}

TEST_CASE("an event cut off anywhere is refused or read, and never crashes") {
  const std::string whole = contents(fixture("event-1.0.quadrille"));
  const std::size_t closed = whole.find("</event>") + 8;
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const bool read = static_cast<bool>(read_event(whole.substr(0, length), "f"));
    CHECK(read == (length >= closed && (length <= closed + 1 || length + 1 == whole.size())));
  }
}

TEST_CASE("an event with any one byte changed is refused or read, and never crashes") {
  const std::string whole = contents(fixture("event-1.0.quadrille"));
  std::size_t refused = 0;
  for (std::size_t at = 0; at < whole.size(); ++at)
    for (const char c : {'<', '"', '\0', '&', ' ', 'z'}) {
      std::string changed = whole;
      changed[at] = c;
      const auto opened = read_event(changed, "f");
      if (!opened) ++refused;
      if (opened) CHECK(read_event(write_event(opened->event), "f").error == "");
    }
  CHECK(refused > whole.size());  // at least the NUL and most of the others
}

TEST_CASE("a file of which little is understood is told in 1000 findings and a count: millions once took the memory") {
  const auto found = [](std::size_t unknown) {
    const auto opened = read_event("<event xmlns=\"urn:quadrille:event:1\">" + many(unknown, "<a/>") + "</event>", "f");
    REQUIRE(opened.error == "");
    CHECK(opened->event.preserved.nodes.size() == unknown);  // all of them are kept
    return opened->findings;
  };
  CHECK(found(900).size() >= 900);
  const Findings findings = found(2500);
  CHECK(findings.size() == 1001);
  CHECK(findings.back().text.find("more such findings") != std::string::npos);
}
