// What builds have to say about an event.
#include "studio/host/builder.hpp"
#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

/// Findings about one piece "p" of these contents.
Findings findings(const BuiltPiece& built, Units units = Units::metric) {
  Event event = event_of({placed("p", "post")});
  event.units = units;
  return findings_of(event, {{"p", std::make_shared<const BuiltPiece>(built)}}, PieceTypes{});
}

BuiltPiece sound() {
  BuiltPiece built;
  built.status = Status::ok;
  built.spine_m = 6;
  built.hidden_share = 1;
  return built;
}

}  // namespace

TEST_CASE("a sound piece has nothing to say") { CHECK(findings(sound()).empty()); }

TEST_CASE("messages become findings of their weight, with area, piece and key") {
  BuiltPiece built = sound();
  built.piece.messages = {{Severity::note, "height", "Noted."}, {Severity::warning, "", "Mind."}};
  Findings found = findings(built);
  REQUIRE(found.size() == 2);
  CHECK(found[0] == Finding{Weight::note, "note", "area", "p", "height", "Noted.", ""});
  CHECK(found[1].weight == Weight::warning);
  CHECK(found[1].code == "warning");
  built.status = Status::infeasible;
  built.piece.messages = {{Severity::refusal, "height", "Too tall."}};
  found = findings(built);
  REQUIRE(found.size() == 1);
  CHECK(found[0].weight == Weight::problem);
  CHECK(found[0].code == "refused");
  CHECK(found[0].key == "height");
}

TEST_CASE("a frame that shows is told of once, in the event's units, and one that is hidden not at all") {
  // "87 % of the frame is hidden" stood under every piece, and under those that had been warned of a second time.
  BuiltPiece built = sound();
  CHECK(findings(built).empty());
  built.hidden_share = 0.5;
  built.bare = {{0, 0.3048}, {5.0952, 6}};
  Findings found = findings(built);
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == "frame-shows");
  CHECK(found[0].weight == Weight::warning);
  CHECK(found[0].text == "50 % of the frame is hidden; the longest bare stretch runs from 5.10 m to 6.00 m along it.");
  built.piece.messages = {{Severity::warning, "tightness", "The frame shows.", Topic::bare_frame}};
  found = findings(built);
  REQUIRE(found.size() == 1);
  CHECK(found[0].key == "tightness");
  built.piece.messages = {};
  built.hidden_share = 0.85;
  CHECK(findings(built).empty());
  built.hidden_share = 0.8;
  built.bare = {{0, 0.3048}};
  found = findings(built, Units::feet);
  CHECK(found.at(0).weight == Weight::note);
  CHECK(found.at(0).text.find("0\" to 1'") != std::string::npos);  // 0.3048 m is a foot
}

TEST_CASE("a cluster that breaks the pattern is named by its number") {
  BuiltPiece built = sound();
  // Common practice, no source: quads of two colours, the same colours opposite each other, each turned 45° on. The sixth
  // holds a balloon of a third colour.
  for (std::uint32_t n = 1; n <= 12; ++n) {
    built.piece.clusters.push_back({n, n * 0.2, {n * 0.2, 0, 0}, Vec3::UnitX(), n * pi / 4});
    for (std::uint32_t place = 0; place < 4; ++place)
      built.piece.balloons.push_back(
          {{n * 0.2, 0, 0}, {0, 0, 0}, 0.28, 11, n == 6 && place == 0 ? 2 : place % 2, n, place, Role::body});
  }
  const Findings found = findings(built);
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == "pattern-breaks");
  CHECK(found[0].weight == Weight::warning);
  CHECK(found[0].text.find("Cluster 6 ") != std::string::npos);
}

TEST_CASE("a type that is missing is a problem, or a warning where the last counts are known; the reason is told") {
  PlacedPiece unknown = placed("p", "hoop"), counted = placed("q", "hoop");
  counted.last_built = LastBuilt{};
  PieceTypes types;
  types.refused.push_back({"/x/hoop.so", RefusalReason::build_throws, "It threw.", "hoop"});
  const Findings found = findings_of(event_of({unknown, counted}), {}, types);
  REQUIRE(found.size() == 2);
  CHECK(found[0].code == "type-missing");
  CHECK(found[0].weight == Weight::problem);
  CHECK(
      found[0].text ==
      "The piece type 'hoop' is not available (It threw.), so only the piece's place is drawn, and nothing is counted "
      "for it.");
  CHECK_FALSE(found[0].remedy.empty());
  CHECK(found[1].weight == Weight::warning);
  CHECK(found[1].piece == "q");
}

TEST_CASE("refused plugin files are warnings, and one that ended the program can be tried again") {
  PieceTypes types;
  types.refused.push_back({"/x/hoop.so", RefusalReason::no_symbol, "It is none.", ""});
  types.refused.push_back({"/x/wave.so", RefusalReason::crashed_before, "It crashed.", ""});
  const Findings found = findings_of_refused(types);
  REQUIRE(found.size() == 2);
  CHECK(found[0] == Finding{Weight::warning, "plugin-no-symbol", "", "", "", "/x/hoop.so: It is none.", ""});
  CHECK(found[1].code == "plugin-crashed-before");
  CHECK_FALSE(found[1].remedy.empty());
}

TEST_CASE("no text carries the name of its piece: whoever prints it adds area and name, once") {
  BuiltPiece built = sound();
  built.hidden_share = 0.5;
  built.bare = {{0, 3}};
  built.piece.messages = {{Severity::warning, "height", "Mind."}};
  PlacedPiece piece = placed("p", "post"), missing = placed("q", "hoop");
  piece.name = missing.name = "Welcome";
  for (const Finding& finding :
       findings_of(event_of({piece, missing}), {{"p", std::make_shared<const BuiltPiece>(built)}}, PieceTypes{}))
    CHECK(finding.text.find("Welcome") == std::string::npos);
}

TEST_CASE("a piece type of a slip was told to need a plugin: now the one that was meant is offered too") {
  PieceTypes types;
  types.types.push_back(type_of("post"));
  const Findings found = findings_of(event_of({placed("p", "psot"), placed("q", "gazebo")}), {}, types);
  REQUIRE(found.size() == 2);
  CHECK(found[0].remedy.starts_with("Did you mean 'post'? Otherwise put the plugin"));
  CHECK(found[1].remedy.starts_with("Put the plugin"));
}
