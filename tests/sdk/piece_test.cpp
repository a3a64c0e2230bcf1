// The guard between a piece type in C++ and the contract in C: values in, records out, and nothing thrown across.
#include "sdk/piece.hpp"

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>
#include <vector>

using namespace quadrille;

namespace {

constexpr quadrille_choice moods[] = {{"fine", "Fine"},
                                      {"bad", "Bad parameter"},
                                      {"contradiction", "Contradiction"},
                                      {"exception", "Exception"},
                                      {"number", "Number"},
                                      {"stranger", "Stranger's key"},
                                      {"wrong-kind", "Wrong kind"}};
constexpr quadrille_parameter parameters[] = {choice("mood", "Mood", "What build does.", "Test", moods),
                                              length("span", "Span", "A length.", "Test")
                                                  .range(0.5, 8)
                                                  .display(1, 4)
                                                  .standard(2)
                                                  .handle(QUADRILLE_HANDLE_RIGHT, 0),
                                              path("path", "Path", "Points.", "Test"),
                                              mix("mix", "Mix", "Sizes.", "Test"),
                                              seed("seed", "Seed", "Chance.", "Test")};

Piece build(const Values& values) {
  const auto mood = values.text("mood");
  if (mood == "bad") throw BadParameter("span", "The span is wrong: use 1 m to 4 m.");
  if (mood == "contradiction") throw Infeasible("path", "The path crosses itself: move a point.");
  if (mood == "exception") throw std::runtime_error("Something broke.");
  if (mood == "number") throw 42;
  if (mood == "stranger") values.number("no-such-key");
  if (mood == "wrong-kind") values.number("mood");
  Piece piece;
  piece.balloons.resize(3);
  piece.balloons[2].diameter_m = values.number("span");
  piece.clusters.resize(1);
  piece.facts = {{"points", static_cast<double>(values.path("path").size())},
                 {"sizes", static_cast<double>(values.mix("mix").size())}};
  piece.messages = {{Severity::note, "span", "A note."}};
  return piece;
}

constexpr quadrille_piece_type type = piece_type<parameters, build>("test", "Test", "For the guard.");

/// A sink that keeps what it is given, and refuses from its `limit`th call on.
struct Kept {
  int limit = 1000, calls = 0;
  Piece piece;
  std::vector<std::uint32_t> records;

  static std::int32_t push(void* self, std::uint32_t record, const void* data, std::size_t count, std::size_t size) {
    auto& kept = *static_cast<Kept*>(self);
    kept.records.push_back(record);
    for (std::size_t i = 0; i < count; ++i) kept.keep(record, static_cast<const char*>(data) + i * size);
    return ++kept.calls < kept.limit ? 0 : 1;
  }
  void keep(std::uint32_t record, const char* data) {
    const auto as = [data]<class Record>(const Record*) { return from_record(*reinterpret_cast<const Record*>(data)); };
    if (record == QUADRILLE_RECORD_BALLOON) piece.balloons.push_back(as(static_cast<quadrille_balloon*>(nullptr)));
    if (record == QUADRILLE_RECORD_MESSAGE) piece.messages.push_back(as(static_cast<quadrille_message*>(nullptr)));
    if (record == QUADRILLE_RECORD_FACT) piece.facts.push_back(as(static_cast<quadrille_fact*>(nullptr)));
  }
  quadrille_sink sink() { return {sizeof(quadrille_sink), 0, this, push}; }
};

constexpr double points[] = {0, 0, 0, 1, 0, 2}, sizes[] = {11, 0.28, 1};

std::vector<quadrille_value> values_in(const char* mood) {
  return {{QUADRILLE_CHOICE, 0, 0, mood, nullptr},
          {QUADRILLE_LENGTH, 0, 2.5, "", nullptr},
          {QUADRILLE_PATH, 6, 0, "", points},
          {QUADRILLE_MIX, 3, 0, "", sizes},
          {QUADRILLE_SEED, 0, 4294967295.0, "", nullptr}};
}

struct Outcome {
  std::int32_t status;
  Kept kept;
};

Outcome build_in(const char* mood) {
  Outcome outcome{};
  const auto values = values_in(mood);
  const auto sink = outcome.kept.sink();
  outcome.status = type.build(values.data(), static_cast<std::uint32_t>(values.size()), &sink);
  return outcome;
}

void check_refusal(const char* mood, std::int32_t status, const std::string& key, const std::string& sentence) {
  CAPTURE(std::string(mood));
  const Outcome outcome = build_in(mood);
  CHECK(outcome.status == status);
  CHECK(outcome.kept.piece.balloons.empty());
  REQUIRE(outcome.kept.piece.messages.size() == 1);
  CHECK(outcome.kept.piece.messages[0] == Message{Severity::refusal, key, sentence});
}

}  // namespace

TEST_CASE("a build that ends well pushes all it made") {
  const Outcome outcome = build_in("fine");
  CHECK(outcome.status == QUADRILLE_OK);
  REQUIRE(outcome.kept.piece.balloons.size() == 3);
  CHECK(outcome.kept.piece.balloons[2].diameter_m == 2.5);
  CHECK(outcome.kept.piece.messages.size() == 1);
  CHECK(outcome.kept.piece.facts == std::vector<Fact>{{"points", 2}, {"sizes", 1}});
}

TEST_CASE("whatever build throws becomes a status, a key and a sentence") {
  check_refusal("bad", QUADRILLE_BAD_PARAMETER, "span", "The span is wrong: use 1 m to 4 m.");
  check_refusal("contradiction", QUADRILLE_INFEASIBLE, "path", "The path crosses itself: move a point.");
  check_refusal("exception", QUADRILLE_INTERNAL, "", "Something broke.");
  check_refusal("number", QUADRILLE_INTERNAL, "", "The piece type failed without saying why.");
  check_refusal("stranger", QUADRILLE_INTERNAL, "", "no parameter has the key no-such-key");
  check_refusal("wrong-kind", QUADRILLE_INTERNAL, "", "not a number: mood");
}

TEST_CASE("too few values are an error of the caller that is reported, not a crash") {
  Kept kept;
  const auto sink = kept.sink();
  const auto values = values_in("fine");
  CHECK(type.build(values.data(), 2, &sink) == QUADRILLE_INTERNAL);
  CHECK(kept.piece.messages.size() == 1);
}

TEST_CASE("nothing more is pushed once the studio takes no more") {
  Kept kept;
  kept.limit = 2;
  const auto sink = kept.sink();
  const auto values = values_in("fine");
  type.build(values.data(), static_cast<std::uint32_t>(values.size()), &sink);
  // Balloons were taken, clusters refused: messages and facts are not offered any more.
  CHECK(kept.records == std::vector<std::uint32_t>{QUADRILLE_RECORD_BALLOON, QUADRILLE_RECORD_CLUSTER});
}

TEST_CASE("a table line says what was written and defaults elsewhere") {
  const quadrille_parameter& span = parameters[1];
  CHECK(span.kind == QUADRILLE_LENGTH);
  CHECK(span.hard_min == 0.5);
  CHECK(span.hard_max == 8);
  CHECK(span.display_min == 1);
  CHECK(span.display_max == 4);
  CHECK(span.default_number == 2);
  CHECK(span.handle_end == QUADRILLE_HANDLE_RIGHT);
  CHECK(std::string(span.aliases).empty());
  CHECK(std::string(parameters[0].default_text) == "fine");
  CHECK(parameters[0].choice_count == 7);
  CHECK(type.parameter_count == 5);
  CHECK(type.parameter_size == sizeof(quadrille_parameter));
}

TEST_CASE("values are asked for by key and kind") {
  const auto given = values_in("fine");
  const Values values(parameters, given);
  CHECK(values.seed("seed") == 4294967295u);
  CHECK(values.path("path") == std::vector<Vec3>{{0, 0, 0}, {1, 0, 2}});
  CHECK(values.mix("mix").at(0).inflated_m == 0.28);
  CHECK_THROWS_AS(values.text("span"), std::logic_error);
  CHECK_THROWS_AS(values.path("mix"), std::logic_error);
  CHECK_THROWS_AS(values.number("height"), std::logic_error);
}
