// Untidy and newer files: they load as far as they can, say what was not understood, and lose nothing.
#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "scratch.hpp"
#include "studio/files/event_file.hpp"
#include "studio/model/edits.hpp"

using namespace quadrille;

namespace {

std::string event_with(const std::string& inside) {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
         "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\" units=\"feet\" currency=\"USD\">\n" +
         inside + "</event>\n";
}
std::string piece_with(const std::string& inside) {
  return event_with(
      "  <area id=\"a1\">\n    <site surroundings=\"indoors\" ground=\"wood-floor\"/>\n"
      "    <piece id=\"p1\" name=\"P\" type=\"arch\" x-m=\"0\" y-m=\"0\">\n" +
      inside + "    </piece>\n  </area>\n");
}

/// What is in the file after the event is saved; saving it must not be refused.
std::string saved(const Event& event) {
  const ScratchFolder folder;
  CHECK(save_event(folder / "e.quadrille", event).value_or("") == "");
  return contents(folder / "e.quadrille");
}
/// Opens, edits, saves, and returns what is then in the file besides the edit.
std::string after_edit(const std::string& bytes) {
  const auto opened = read_event(bytes, "f");
  REQUIRE(opened.error == "");
  Event event = opened->event;
  event.title = "edited";
  return saved(event);
}
bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

struct Untidy {
  const char* what;
  std::string bytes;
  int line;
  const char* named;  // must stand in the finding
  const char* kept;   // must stand in the file after an edit
};

}  // namespace

TEST_CASE("what is not understood is named with its line, and kept through an edit") {
  const Untidy table[] = {
      {"unknown element", event_with("  <banquet tables=\"9\"/>\n"), 3, "<banquet>", "  <banquet tables=\"9\"/>\n"},
      {"unknown attribute", event_with("  <area id=\"a1\" mood=\"soft\"/>\n"), 3, "mood", " mood=\"soft\""},
      {"unknown word", event_with("  <area id=\"a1\">\n    <site ground=\"marble\"/>\n  </area>\n"), 4, "marble",
       "ground=\"marble\""},
      {"unknown kind of value", piece_with("      <set key=\"k\" colour-wheel=\"7\"/>\n"), 6, "key=\"k\"",
       "<set key=\"k\" colour-wheel=\"7\"/>"},
      {"two kinds of value", piece_with("      <set key=\"k\" length=\"7\" count=\"7\"/>\n"), 6, "key=\"k\"",
       "<set key=\"k\" length=\"7\" count=\"7\"/>"},
      {"a flag that is neither", piece_with("      <set key=\"k\" flag=\"maybe\"/>\n"), 6, "yes or no",
       "flag=\"maybe\""},
      {"a slot with two letters", piece_with("      <colour slot=\"AB\" palette=\"p\" key=\"k\"/>\n"), 6, "letter",
       "slot=\"AB\""},
      {"stray words", piece_with("      remember the ladder\n"), 5, "remember the ladder", "remember the ladder\n"},
      {"a second site",
       event_with("  <area id=\"a1\">\n    <site ground=\"soil\"/>\n    <site ground=\"grass\"/>\n  </area>\n"), 5,
       "twice", "<site ground=\"grass\"/>"},
      {"a locked that is neither",
       event_with("  <area id=\"a1\">\n    <piece id=\"p1\" type=\"arch\" locked=\"perhaps\"/>\n  </area>\n"), 4,
       "perhaps", "locked=\"perhaps\""},
      {"a date that is none", event_with("  <day date=\"2027-02-30\"/>\n"), 3, "2027-02-30", "date=\"2027-02-30\""},
      {"a bare ampersand", event_with("  <job client=\"Tom & Ann\"/>\n"), 3, "&", "client=\"Tom &amp; Ann\""},
      {"no id", event_with("  <area id=\"a1\">\n    <piece type=\"arch\"/>\n  </area>\n"), 4, "\"p1\"",
       "<piece id=\"p1\" type=\"arch\""},
  };
  for (const Untidy& row : table) {
    CAPTURE(row.what);
    const auto opened = read_event(row.bytes, "f");
    REQUIRE(opened.error == "");
    REQUIRE(opened->findings.size() == 1);
    const Finding& finding = opened->findings[0];
    CAPTURE(finding.text);
    CHECK(holds(finding.text, "Line " + std::to_string(row.line)));
    CHECK(holds(finding.text, row.named));
    CHECK(holds(after_edit(row.bytes), row.kept));
    CHECK(opened->bytes == row.bytes);
  }
}

TEST_CASE("a currency in small letters was not understood, and nobody said that capitals were the trouble") {
  std::string bytes = event_with("");
  const std::size_t at = bytes.find("USD");
  REQUIRE(at != std::string::npos);
  bytes.replace(at, 3, "eur");
  const auto opened = read_event(bytes, "f");
  REQUIRE(opened.error == "");
  REQUIRE(opened->findings.size() == 1);
  CHECK(opened->findings[0].remedy == "Write it as EUR, in capitals.");
  CHECK(holds(after_edit(bytes), "currency=\"eur\""));
}

TEST_CASE("a word that was not understood gives way when the user chooses another") {
  const auto opened = read_event(event_with("  <area id=\"a1\">\n    <site ground=\"marble\"/>\n  </area>\n"), "f");
  REQUIRE(opened.error == "");
  Site site = opened->event.areas[0]->site;
  site.ground = Ground::concrete;
  const std::string bytes = saved(with_site(opened->event, "a1", site));
  CHECK(holds(bytes, "ground=\"concrete\""));
  CHECK_FALSE(holds(bytes, "marble"));
}

TEST_CASE("elements and attributes of other namespaces are no finding and stay where they were") {
  const std::string bytes = event_with(
      "  <x:a xmlns:x=\"urn:x\"/>\n  <area id=\"a1\">\n    <site surroundings=\"indoors\" ground=\"wood-floor\"/>\n"
      "    <piece xmlns=\"urn:other\" id=\"not ours\"><b>&lt;</b></piece>\n  </area>\n  <!-- c -->\n");
  const auto opened = read_event(bytes, "f");
  REQUIRE(opened.error == "");
  CHECK(opened->findings.empty());
  CHECK(opened->event.areas[0]->pieces.empty());
  CHECK(saved(opened->event) == bytes);
}

TEST_CASE("an event under a prefix is read, and written without it") {
  const auto opened = read_event(
      "<q:event xmlns:q=\"urn:quadrille:event:1\" version=\"1.0\"><q:area id=\"a1\" name=\"Hall\"><q:piece id=\"p1\" "
      "type=\"t\"/>"
      "<piece id=\"p2\"/></q:area></q:event>",
      "f");
  REQUIRE(opened.error == "");
  CHECK(opened->event.areas.at(0)->pieces.size() == 1);  // <piece id="p2"> is in no namespace
  CHECK(holds(saved(opened->event), "<area id=\"a1\" name=\"Hall\">"));
  CHECK(holds(saved(opened->event), "xmlns:q=\"urn:quadrille:event:1\""));
}

TEST_CASE("a newer minor version opens, keeps what it added, and stays of that version") {
  const std::string bytes =
      replaced(replaced(event_with("  <fireworks/>\n"), "version=\"1.0\" reader", "version=\"1.7\" reader"),
               "units=\"feet\"", "units=\"feet\" currency-note=\"n\"");
  const auto opened = read_event(bytes, "f");
  REQUIRE(opened.error == "");
  CHECK_FALSE(opened->read_only);
  for (const Finding& finding : opened->findings) CHECK(finding.weight == Weight::note);
  const std::string edited = after_edit(bytes);
  CHECK(holds(edited, "version=\"1.7\" reader=\"1.0\""));
  CHECK(holds(edited, "<fireworks/>"));
  CHECK(holds(edited, "currency-note=\"n\""));
}

TEST_CASE("a newer major version opens for looking only") {
  const ScratchFolder folder;
  const std::string two = replaced(replaced(event_with("  <area id=\"a1\" name=\"Hall\"/>\n"), "event:1", "event:2"),
                                   "version=\"1.0\" reader=\"1.0\"", "version=\"2.0\" reader=\"2.0\"");
  const std::string reader = replaced(event_with(""), "reader=\"1.0\"", "reader=\"1.4\"");
  for (const std::string& bytes : {two, reader}) {
    const auto opened = read_event(bytes, "f");
    REQUIRE(opened.error == "");
    CHECK(opened->read_only);
    REQUIRE(opened->findings.size() == 1);
    CHECK(opened->findings[0].code == "newer-version");
    Event event = opened->event;
    event.title = "edited";
    put(folder / "e", "before");
    CHECK(save_event(folder / "e", event, &*opened).has_value());
    CHECK(contents(folder / "e") == "before");
    CHECK(save_event(folder / "e", opened->event, &*opened) == std::nullopt);  // a plain copy does no harm
    CHECK(contents(folder / "e") == bytes);
  }
  CHECK(read_event(two, "f")->event.areas.at(0)->name == "Hall");
}

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}
std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}
/// Without the blanks at the beginnings of lines.
std::string flat(const std::string& text) {
  std::string flat;
  for (const std::string& line : lines_of(text))
    flat += line.substr(std::min(line.find_first_not_of(' '), line.size())) + "\n";
  return flat;
}

}  // namespace

TEST_CASE("a comment and a foreign element come back between the same lines, wherever they stand") {
  const std::vector<std::string> lines = lines_of(contents(fixture("event-1.0.quadrille")));
  for (std::size_t at = 1; at <= lines.size(); ++at)
    for (const char* stranger : {"<!-- a remark -->", "<z:b xmlns:z=\"urn:z\" c='d'>e</z:b>"}) {
      const bool outside = at < 3 || lines[at - 1] == "</event>" || at == lines.size();
      if (outside && stranger[1] != '!') continue;  // only one element may stand there
      std::vector<std::string> changed = lines;
      changed.insert(changed.begin() + static_cast<std::ptrdiff_t>(at), stranger);
      CAPTURE(joined(changed));
      const auto opened = read_event(joined(changed), "f");
      REQUIRE(opened.error == "");
      CHECK(opened->findings.empty());
      CHECK(flat(saved(opened->event)) == flat(joined(changed)));
    }
}

TEST_CASE("a foreign attribute comes back on its element, whichever that is") {
  const std::vector<std::string> lines = lines_of(contents(fixture("event-1.0.quadrille")));
  std::size_t elements = 0;
  for (std::size_t at = 1; at < lines.size(); ++at) {
    const std::size_t begin = lines[at].find_first_not_of(' ');
    const char second = lines[at][begin + 1];
    if (second == '!' || second == '/') continue;
    ++elements;
    std::vector<std::string> changed = lines;
    const std::size_t end = lines[at].find_first_of(">", begin) - (lines[at].ends_with("/>") ? 1 : 0);
    changed[at].insert(end, " z:z=\"&lt;1&#10;\"");
    const auto opened = read_event(joined(changed), "f");
    REQUIRE(opened.error == "");
    CHECK(saved(opened->event) == joined(changed));
  }
  CHECK(elements > 30);
}

// Each of 40,000 unknown elements had a finding of its own, which took as much memory again as the event. (How long they
// take is measured in tests/bench/files_bench.cpp.)
TEST_CASE("tens of thousands of unknown elements are told in short, and all of them saved") {
  std::string unknown;
  for (int i = 0; i < 40'000; ++i) unknown += "  <x" + std::to_string(i) + "/>\n";
  const ScratchFolder folder;
  const auto opened = read_event(event_with(unknown), "f");
  REQUIRE(opened.error == "");
  REQUIRE(opened->findings.size() == 1001);
  CHECK(holds(opened->findings.back().text, "39000 more"));
  Event event = opened->event;
  event.title = "edited";
  CHECK(save_event(folder / "e", event, &*opened) == std::nullopt);
  CHECK(holds(contents(folder / "e"), unknown));
}
