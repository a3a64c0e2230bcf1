// Ordinary edits of files that hold comments, foreign things and what is not understood: each must be saved.
#include <doctest/doctest.h>

#include <string>

#include "scratch.hpp"
#include "studio/files/event_file.hpp"
#include "studio/model/edits.hpp"

using namespace quadrille;

namespace {

const std::string remark = "<!-- a remark -->";

Event opened(const std::string& bytes) {
  const auto event = read_event(bytes, "f");
  REQUIRE(event.error == "");
  return event->event;
}
Event event_with(const std::string& inside) {
  return opened(
      "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\" units=\"feet\" currency=\"USD\">" +
      inside + "</event>");
}
Event piece_with(const std::string& inside) {
  return event_with("<area id=\"a1\"><piece id=\"p1\" type=\"arch\">" + inside + "</piece></area>");
}
/// What is in the file after the event is saved, which must not be refused; saving what was saved changes nothing.
std::string saved(const Event& event) {
  const ScratchFolder folder;
  CHECK(save_event(folder / "e.quadrille", event).value_or("") == "");
  const std::string bytes = contents(folder / "e.quadrille");
  CHECK(write_event(opened(bytes)) == bytes);
  return bytes;
}
std::size_t times(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}
Value length(double metres) { return Value::of_number(Kind::length, metres); }

}  // namespace

TEST_CASE("the element after a comment may go: it once left an event that could never be saved again") {
  Event event = event_with(
      "<area id=\"a1\"><structure id=\"s1\" kind=\"post\"/><structure id=\"s2\" kind=\"wall\"/>"
      "<piece id=\"p1\" type=\"arch\"/>" +
      remark + "<piece id=\"p2\" type=\"arch\"/><piece id=\"p3\" type=\"arch\"/></area>");
  const std::string without = saved(without_piece(event, "p2"));
  CHECK(times(without, remark) == 1);
  CHECK(times(without, "p2") == 0);

  event = event_with("<area id=\"a1\">" + remark + "<structure id=\"s1\" kind=\"post\"/></area>");
  event.areas[0].edit([](Area& area) { area.structures.clear(); });
  CHECK(times(saved(event), remark) == 1);

  event = event_with("<palette key=\"house\"/>" + remark + "<palette key=\"pastel\"/><area id=\"a1\"/>");
  event.palettes = {"house"};
  CHECK(times(saved(event), remark) == 1);

  event = event_with(remark + "<job title=\"Supper\"/><day date=\"2027-06-19\"/>");
  event.title.clear();
  CHECK(times(saved(event), remark) == 1);

  event = piece_with(remark + "<colour slot=\"A\" palette=\"house\" key=\"ivory\"/>");
  event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.colours.clear(); }); });
  CHECK(times(saved(event), remark) == 1);
}

TEST_CASE("a value with a comment before it, or a foreign attribute on it, may be set back") {
  const std::string set = "<set key=\"span\" length=\"2\"/>", after = "<set key=\"tightness\" ratio=\"1\"/>";
  CHECK(times(saved(without_value(piece_with(remark + set + after), "p1", "span")), remark) == 1);
  const Event marked = piece_with("<set xmlns:z=\"urn:z\" z:z=\"1\" key=\"span\" length=\"2\"/>" + after);
  CHECK(times(saved(marked), "z:z=\"1\"") == 1);
  const std::string reset = saved(without_value(marked, "p1", "span"));
  CHECK(times(reset, "z:z") == 0);  // it went with the element that bore it
  CHECK(times(reset, "tightness") == 1);
}

TEST_CASE("a word that is not understood gives way to what the user chooses, and the file is saved") {
  Event event = opened(
      "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" units=\"cubits\" currency=\"USD\">"
      "<area id=\"a1\"><site ground=\"marble\"/></area></event>");
  CHECK(times(saved(event), "marble") == 1);
  CHECK(times(saved(event), "cubits") == 1);
  Site site = event.areas[0]->site;
  site.ground = Ground::concrete;
  CHECK(times(saved(with_site(event, "a1", site)), "marble") == 0);
  event.units = event.units == Units::feet ? Units::metric : Units::feet;
  CHECK(times(saved(event), "cubits") == 0);
}

TEST_CASE("stray text does not grow: its indent was once kept with it, and every edit was refused") {
  Event event = event_with("<area id=\"a1\">\n          text\n      of two lines\n</area>");
  event.title = "Supper";
  CHECK(times(saved(event), ">\n    text\n      of two lines\n  </area>") == 1);
}

TEST_CASE("a value that was left alone gives way to the user's: both in the file were refused as standing twice") {
  for (const char* left : {"flag=\"maybe\"", "wheel=\"3\"", "length=\"1\" count=\"1\""}) {
    CAPTURE(left);
    const Event event = piece_with("<set key=\"span\" " + std::string(left) + "/>" + remark);
    CHECK(times(saved(renamed(event, "p1", "Gate")), left) == 1);
    const std::string bytes = saved(with_value(event, "p1", "span", length(3)));
    CHECK(times(bytes, "span") == 1);
    CHECK(times(bytes, "length=\"3\"") == 1);
    CHECK(times(bytes, remark) == 1);
    CHECK(times(saved(with_value(event, "p1", "height", length(3))), left) == 1);  // another value is not in its way
  }
}

TEST_CASE("what stands twice does not come in when the first goes") {
  Event event = event_with("<job title=\"Supper\"/><job title=\"Dinner\"/><area id=\"a1\"/>");
  event.title.clear();
  const std::string bytes = saved(event);
  CHECK(opened(bytes).title.empty());
  CHECK(times(bytes, "Dinner") == 1);
  event = event_with("<palette key=\"house\"/><palette key=\"pastel\"/><palette key=\"house\"/>");
  CHECK(times(saved(with_area(event, Area{"a1", {}, {}, {}, {}, {}, {}, {}, {}})), "\"house\"") == 2);
  event.palettes = {"pastel"};
  CHECK(opened(saved(event)).palettes == event.palettes);
}

TEST_CASE("what stands in no namespace under a prefixed root does not become ours") {
  // Source: Namespaces in XML 1.0 (third edition), sections 6.2: a default declaration with an empty value takes
  // elements without a prefix out of any namespace.
  const Event event = opened(
      "<q:event xmlns:q=\"urn:quadrille:event:1\" version=\"1.0\"><q:area id=\"a1\"><q:piece id=\"p1\" type=\"t\"/>"
      "<piece id=\"p2\"/><q:banquet><table/></q:banquet><q:lawn/></q:area></q:event>");
  const std::string bytes = saved(renamed(event, "p1", "Gate"));
  CHECK(times(bytes, "<piece xmlns=\"\" id=\"p2\"/>") == 1);
  CHECK(times(bytes, "<q:banquet xmlns=\"\"><table/></q:banquet>") == 1);
  CHECK(times(bytes, "<q:lawn/>") == 1);
  CHECK(opened(bytes).areas.at(0)->pieces.size() == 1);
}

TEST_CASE("an assumption or tick that stands twice is kept beside the first, and goes when the user takes it away") {
  Event event =
      event_with("<standing><assumption key=\"push\" value=\"40\"/>" + remark +
                 "<assumption key=\"push\" value=\"60\"/><tick key=\"p1/lines\"/><tick key=\"p1/lines\"/></standing>");
  CHECK(event.assumptions.at("push") == 40);
  CHECK(times(saved(event), "key=\"push\"") == 2);
  event.assumptions.clear();
  event.ticked.clear();
  const std::string without = saved(event);
  CHECK(times(without, "push") == 0);
  CHECK(times(without, "p1/lines") == 0);
  CHECK(times(without, remark) == 1);
}

TEST_CASE("a line goes with what was kept inside it, and the others stay") {
  Event event = piece_with("<line tie=\"front-1\" x-m=\"0\" y-m=\"-2\" colour-of-flag=\"red\"/>" + remark +
                           "<line tie=\"back-1\" anchor=\"rope\" x-m=\"0\" y-m=\"2\"/>");
  const std::string whole = saved(event);
  CHECK(times(whole, "colour-of-flag=\"red\"") == 1);
  CHECK(times(whole, "anchor=\"rope\"") == 1);  // not known: read as a stake, and kept as it is
  event.areas[0].edit(
      [](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.lines.erase(piece.lines.begin()); }); });
  const std::string without = saved(event);
  CHECK(times(without, "front-1") == 0);
  CHECK(times(without, "colour-of-flag") == 0);
  CHECK(times(without, "anchor=\"rope\"") == 1);
  CHECK(times(without, remark) == 1);
}

TEST_CASE("an assumption without a number is refused with its name") {
  const auto refused = read_event(
      "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\"><standing><assumption key=\"push\"/>"
      "</standing></event>",
      "f");
  CHECK(refused.error.find("\"push\" has no value") != std::string::npos);
}
