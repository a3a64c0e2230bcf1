// The conformance suite finds what is wrong with a piece type, and passes what is right.
#include "studio/host/conformance.hpp"

#include <atomic>
#include <ctime>
#include <limits>

#include "sdk/overlap.hpp"
#include "studio/host/fingerprint.hpp"
#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

constexpr quadrille_balloon balloon = {{0, 0, 1}, {0, 0, 1}, 0.28, 11, 0, 0, 0, QUADRILLE_ROLE_BODY};

using Build = std::int32_t (*)(const quadrille_value*, std::uint32_t, const quadrille_sink*);

/// A type with one length from 1 to 3 m, built by `build`.
PieceType type_of_width(Build build) {
  PieceType type;
  type.id = "local";
  type.name = "Local";
  type.description = "For the tests.";
  Parameter width;
  width.key = "width";
  width.label = "Width";
  width.hint = "How wide.";
  width.group = "Size";
  width.kind = Kind::length;
  width.hard_min = width.display_min = 1;
  width.hard_max = width.display_max = 3;
  width.standard = Value::of_number(Kind::length, 2);
  type.parameters.push_back(width);
  type.build = build;
  return type;
}

std::vector<std::string> failed(const TypeProof& proof) {
  std::vector<std::string> names;
  for (const Check& check : proof.checks) {
    CHECK_FALSE(check.sentence.empty());
    if (!check.passed) names.push_back(check.name);
  }
  return names;
}

using Names = std::vector<std::string>;

template <class Record>
void push(const quadrille_sink* sink, std::uint32_t kind, const Record& record) {
  sink->push(sink->self, kind, &record, 1, sizeof record);
}

std::int32_t refuse(const quadrille_sink* sink, const char* key, const char* text) {
  push(sink, QUADRILLE_RECORD_MESSAGE, quadrille_message{QUADRILLE_REFUSAL, 0, key, text, ""});
  return QUADRILLE_BAD_PARAMETER;
}

}  // namespace

TEST_CASE("a sound plugin passes every check") {
  const ProofReport report = prove_file(plugin("post"));
  CHECK(report.passed());
  REQUIRE(report.types.size() == 1);
  CHECK(report.types[0].type == "post");
  Names names;
  for (const Check& check : report.types[0].checks) {
    CAPTURE(check.name);
    CAPTURE(check.sentence);
    CHECK(check.passed);
    names.push_back(check.name);
  }
  CHECK(names ==
        Names{"table", "defaults", "limits", "choices", "deterministic", "finite", "overlap", "totals", "time"});
}

TEST_CASE("a file that the gate refuses does not pass, and says why") {
  const ProofReport report = prove_file(plugin("throws"));
  CHECK_FALSE(report.passed());
  REQUIRE(report.refused.size() == 1);
  CHECK(report.refused[0].reason == RefusalReason::build_throws);
  CHECK_FALSE(prove_file("no/such/file.so").passed());
  CHECK_FALSE(prove_file(plugin("two_types")).passed());
}

TEST_CASE("a type that fails at a limit, or blames nothing, is found") {
  const auto silent = prove(type_of_width([](const quadrille_value* v, std::uint32_t, const quadrille_sink* sink) {
    return v[0].number > 2.5 ? refuse(sink, "", "No.") : std::int32_t{QUADRILLE_OK};
  }));
  CHECK(failed(silent) == Names{"limits"});
  const auto well = prove(type_of_width([](const quadrille_value* v, std::uint32_t, const quadrille_sink* sink) {
    return v[0].number > 2.5 ? refuse(sink, "width", "No.") : std::int32_t{QUADRILLE_OK};
  }));
  CHECK(failed(well).empty());
  const auto throws =
      prove(type_of_width([](const quadrille_value* v, std::uint32_t, const quadrille_sink*) -> std::int32_t {
        if (v[0].number < 1.5) throw 1;
        return QUADRILLE_OK;
      }));
  CHECK(failed(throws) == Names{"limits"});
}

TEST_CASE("another parameter may be blamed only where the sentence names it or the one that was set") {
  PieceType type = type_of_width([](const quadrille_value* v, std::uint32_t, const quadrille_sink* sink) {
    return v[0].number > 2.5 ? refuse(sink, "depth", "Too far.") : std::int32_t{QUADRILLE_OK};
  });
  type.parameters.push_back(type.parameters[0]);
  type.parameters[1].key = "depth";
  type.parameters[1].label = "Depth";
  CHECK(failed(prove(type)) == Names{"limits"});
  type.build = [](const quadrille_value* v, std::uint32_t, const quadrille_sink* sink) {
    return v[0].number > 2.5 ? refuse(sink, "depth", "Too little depth.") : std::int32_t{QUADRILLE_OK};
  };
  CHECK(failed(prove(type)).empty());
  type.build = [](const quadrille_value* v, std::uint32_t, const quadrille_sink* sink) {
    return v[0].number > 2.5 ? refuse(sink, "depth", "Too much for this width.") : std::int32_t{QUADRILLE_OK};
  };
  CHECK(failed(prove(type)).empty());
  type.build = [](const quadrille_value* v, std::uint32_t, const quadrille_sink* sink) {
    return v[0].number > 2.5 ? refuse(sink, "height", "Too much for this width.") : std::int32_t{QUADRILLE_OK};
  };
  CHECK(failed(prove(type)) == Names{"limits"});  // there is no such parameter
}

TEST_CASE("a type that remembers is found not deterministic") {
  static std::atomic<int> calls;
  calls = 0;
  const auto counts = prove(type_of_width([](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
    push(sink, QUADRILLE_RECORD_FACT, quadrille_fact{"calls", static_cast<double>(++calls)});
    return std::int32_t{QUADRILLE_OK};
  }));
  CHECK(failed(counts) == Names{"deterministic"});
}

TEST_CASE("numbers that are not finite at a limit, deep overlaps and wrong totals are found") {
  const auto infinite = prove(type_of_width([](const quadrille_value* v, std::uint32_t, const quadrille_sink* sink) {
    push(sink, QUADRILLE_RECORD_FACT, quadrille_fact{"ratio", 1 / (v[0].number - 1)});
    return std::int32_t{QUADRILLE_OK};
  }));
  CHECK(failed(infinite) == Names{"limits", "finite"});
  const auto deep = prove(type_of_width([](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
    quadrille_balloon other = balloon;
    other.centre[0] = 0.19;  // 0.09 of 0.28 m is 32 %
    push(sink, QUADRILLE_RECORD_BALLOON, balloon);
    push(sink, QUADRILLE_RECORD_BALLOON, other);
    return std::int32_t{QUADRILLE_OK};
  }));
  CHECK(failed(deep) == Names{"overlap"});
  const auto miscounts = prove(type_of_width([](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
    push(sink, QUADRILLE_RECORD_BALLOON, balloon);
    push(sink, QUADRILLE_RECORD_FACT, quadrille_fact{"balloons", 2});
    return std::int32_t{QUADRILLE_OK};
  }));
  CHECK(failed(miscounts) == Names{"totals"});
}

TEST_CASE("two balloons may press as deep as the SDK lets them, and no deeper") {
  // The suite had a figure of its own beside the SDK's, so that a type could keep to one and fail by the other.
  static double across = 0;  // distance of two balloons of 0.28 m
  const auto names_at = [](double share) {
    across = 0.28 * (1 - share);
    return failed(prove(type_of_width([](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
      quadrille_balloon other = balloon;
      other.centre[0] = across;
      push(sink, QUADRILLE_RECORD_BALLOON, balloon);
      push(sink, QUADRILLE_RECORD_BALLOON, other);
      return std::int32_t{QUADRILLE_OK};
    })));
  };
  CHECK(names_at(deepest_press - 0.001).empty());
  CHECK(names_at(deepest_press + 0.001) == Names{"overlap"});
}

TEST_CASE("a type that takes too long is found") {
  const auto slow = [](const quadrille_value*, std::uint32_t, const quadrille_sink*) {
    const std::clock_t until = std::clock() + 3 * CLOCKS_PER_SEC / 100;
    while (std::clock() < until) {
    }
    return std::int32_t{QUADRILLE_OK};
  };
  CHECK(failed(prove(type_of_width(slow), {0.01, 0.01})) == Names{"time"});
  CHECK(failed(prove(type_of_width(slow), {20, 20})).empty());
}

TEST_CASE("totals: clusters in order with balloons of their own, a spine as long as its points, known keys") {
  const PieceType type = type_of_width(nullptr);
  Piece piece;
  piece.clusters = {{1, 0, {0, 0, 0}, Vec3::UnitZ(), 0}, {2, 1, {0, 0, 1}, Vec3::UnitZ(), 0}};
  piece.balloons = {{{0, 0, 0}, {0, 0, 0}, 0.28, 11, 0, 1, 0, Role::body},
                    {{0, 0, 1}, {0, 0, 1}, 0.28, 11, 0, 2, 0, Role::body}};
  piece.spine = {{0, {0, 0, 0}}, {1, {0, 0, 1}}};
  piece.anchoring = {{Requirement::ballast, When::always, "a", "", "", ""}};
  piece.messages = {{Severity::note, "width", ""}, {Severity::note, "", ""}};
  piece.facts = {{"balloons", 2}, {"clusters", 2}};
  CHECK(fault_of_totals(type, piece) == "");
  const auto faulty = [&](auto change) {
    Piece changed = piece;
    change(changed);
    return !fault_of_totals(type, changed).empty();
  };
  CHECK(faulty([](Piece& p) { p.clusters[1].number = 3; }));
  CHECK(faulty([](Piece& p) { p.balloons[1].cluster = 1, p.balloons[1].place = 1; }));
  CHECK(faulty([](Piece& p) { p.balloons.push_back(p.balloons[0]); }));
  CHECK(faulty([](Piece& p) { p.clusters[1].at_m = 1.5; }));
  CHECK(faulty([](Piece& p) { p.spine[1].at_m = 0.9; }));
  CHECK(faulty([](Piece& p) { p.spine[1].at_m = 1.2; }));
  CHECK(faulty([](Piece& p) { p.facts[1].number = 3; }));
  CHECK(faulty([](Piece& p) { p.anchoring.push_back(p.anchoring[0]); }));
  CHECK(faulty([](Piece& p) { p.messages[0].key = "height"; }));
}

TEST_CASE("bytes differ where a single bit does") {
  Piece piece;
  piece.balloons = {{{0, 0, 0}, {0, 0, 0}, 0.28, 11, 0, 1, 0, Role::body}};
  Piece other = piece;
  CHECK(bytes_of(other) == bytes_of(piece));
  other.balloons[0].neck.y() = -0.0;
  CHECK(bytes_of(other) != bytes_of(piece));
  other = piece;
  other.balloons[0].diameter_m = std::nextafter(0.28, 1);
  CHECK(bytes_of(other) != bytes_of(piece));
  other = piece;
  other.facts = {{"a", 1}};
  CHECK(bytes_of(other) != bytes_of(piece));
  // The topic of a message was left out.
  piece.messages = {{Severity::note, "", "The frame shows."}};
  other = piece;
  other.messages[0].topic = Topic::bare_frame;
  CHECK(bytes_of(other) != bytes_of(piece));
}
