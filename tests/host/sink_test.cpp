// What a plugin may push, and what becomes of everything else.
#include "studio/host/sink.hpp"

#include <cmath>
#include <limits>

#include "studio/host/build_once.hpp"
#include "studio/host/limits.hpp"
#include "tests/host/fixture.hpp"

using namespace quadrille;

namespace {

constexpr quadrille_balloon balloon = {{1, 2, 3}, {1, 2, 2.8}, 0.28, 11, 5, 0, 0, QUADRILLE_ROLE_TOPPER};
constexpr quadrille_cluster cluster = {1, 0, 0.5, {0, 0, 0.5}, {0, 0, 1}, 0};
constexpr quadrille_frame_member member = {0,    1,  QUADRILLE_JOINT_SLEEVE, QUADRILLE_REST_STRAIGHT, 0.02, 0.016, 2e9,
                                           1400, 3e7};
constexpr quadrille_support support = {QUADRILLE_SUPPORT_HOOK, 0, 1, 0, 0.4, 0.3, 5, 10, 60};
constexpr quadrille_supply supply = {"pole", "Pole", "m", 2};
constexpr quadrille_anchoring anchoring = {QUADRILLE_SECURE_OTHER, QUADRILLE_WHEN_INDOORS, "k", "Do.", "For.", "s"};
constexpr quadrille_message message = {QUADRILLE_WARNING, 0, "", "Mind.", ""};
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

/// The fault after one record; none where it was taken.
template <class Record>
std::optional<Fault> pushed(std::uint32_t kind, const Record& record) {
  Sink sink;
  const quadrille_sink c = sink.record();
  const std::int32_t answer = c.push(c.self, kind, &record, 1, sizeof record);
  CHECK((answer != 0) == sink.fault().has_value());
  return sink.fault();
}

template <class Record, class Change>
std::optional<Fault> pushed(std::uint32_t kind, Record record, Change&& change) {
  change(record);
  return pushed(kind, record);
}

bool is(const std::optional<Fault>& fault, FaultKind kind) { return fault && fault->kind == kind; }

/// A type whose build is `build`, without a plugin.
PieceType type_of(std::int32_t (*build)(const quadrille_value*, std::uint32_t, const quadrille_sink*)) {
  PieceType type;
  type.id = "local";
  type.name = "Local";
  type.build = build;
  return type;
}

template <class Record>
void push(const quadrille_sink* sink, std::uint32_t kind, const Record& record) {
  sink->push(sink->self, kind, &record, 1, sizeof record);
}

}  // namespace

TEST_CASE("sound records of every kind arrive as they were pushed") {
  Sink sink;
  const quadrille_sink c = sink.record();
  const quadrille_spine_point spine[] = {{0, {0, 0, 0}}, {1, {0, 0, 1}}};
  const quadrille_frame_node nodes[] = {{{0, 0, 0}}, {{0, 0, 2}}};
  const quadrille_tie_point tie = {1, QUADRILLE_TIE_SIDE, {0, 0, 2}, "top"};
  const quadrille_work work = {"tie", "Tie", 7};
  const quadrille_fact fact = {"height_m", 2};
  CHECK(c.push(c.self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_CLUSTER, &cluster, 1, sizeof cluster) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_SPINE_POINT, spine, 2, sizeof spine[0]) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_FRAME_NODE, nodes, 2, sizeof nodes[0]) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_FRAME_MEMBER, &member, 1, sizeof member) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_SUPPORT, &support, 1, sizeof support) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_TIE_POINT, &tie, 1, sizeof tie) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_SUPPLY, &supply, 1, sizeof supply) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_WORK, &work, 1, sizeof work) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_ANCHORING, &anchoring, 1, sizeof anchoring) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_MESSAGE, &message, 1, sizeof message) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_FACT, &fact, 1, sizeof fact) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_FACT, nullptr, 0, 0) == 0);
  const Piece piece = sink.take();
  CHECK(piece.balloons == std::vector<Balloon>{{{1, 2, 3}, {1, 2, 2.8}, 0.28, 11, 5, 0, 0, Role::topper}});
  CHECK(piece.clusters == std::vector<Cluster>{{1, 0.5, {0, 0, 0.5}, {0, 0, 1}, 0}});
  CHECK(piece.spine == std::vector<SpinePoint>{{0, {0, 0, 0}}, {1, {0, 0, 1}}});
  CHECK(piece.frame.nodes == std::vector<Vec3>{{0, 0, 0}, {0, 0, 2}});
  CHECK(piece.frame.members ==
        std::vector<FrameMember>{{0, 1, Joint::sleeve, Rest::straight, 0.02, 0.016, 2e9, 1400, 3e7}});
  CHECK(piece.supports == std::vector<Support>{{SupportKind::hook, 0, true, 0.4, 0.3, 5, 10, 60}});
  CHECK(piece.tie_points == std::vector<TiePoint>{{1, TiePurpose::side, {0, 0, 2}, "top"}});
  CHECK(piece.supplies == std::vector<Supply>{{"pole", "Pole", "m", 2}});
  CHECK(piece.work == std::vector<Work>{{"tie", "Tie", 7}});
  CHECK(piece.anchoring == std::vector<AnchoringRule>{{Requirement::other, When::indoors, "k", "Do.", "For.", "s"}});
  CHECK(piece.messages == std::vector<Message>{{Severity::warning, "", "Mind."}});
  CHECK(piece.facts == std::vector<Fact>{{"height_m", 2}});
}

TEST_CASE("longer entries are walked by their own size, shorter ones are filled up with zeros") {
  struct Longer {
    quadrille_fact fact;
    double more[3];
  };
  const Longer facts[] = {{{"a", 1}, {9, 9, 9}}, {{"b", 2}, {9, 9, 9}}};
  Sink sink;
  const quadrille_sink c = sink.record();
  CHECK(c.push(c.self, QUADRILLE_RECORD_FACT, facts, 2, sizeof facts[0]) == 0);
  const char* const key = "c";
  CHECK(c.push(c.self, QUADRILLE_RECORD_FACT, &key, 1, sizeof key) == 0);
  CHECK(sink.take().facts == std::vector<Fact>{{"a", 1}, {"b", 2}, {"c", 0}});
}

TEST_CASE("a size that would cut a pointer in two was copied by half and read as a text: it is refused") {
  for (const std::size_t cut : {std::size_t{1}, sizeof(const char*) + 4, sizeof(quadrille_fact) - 1}) {
    CAPTURE(cut);
    Sink sink;
    const quadrille_sink c = sink.record();
    const quadrille_fact facts[] = {{"a", 1}, {"b", 2}};
    CHECK(c.push(c.self, QUADRILLE_RECORD_FACT, facts, 1, cut) != 0);
    REQUIRE(sink.fault());
    CHECK(sink.fault()->kind == FaultKind::broken);
  }
}

TEST_CASE("numbers that are not finite are told from other faults") {
  for (const double number : {not_a_number, infinity, -infinity}) {
    const auto bad = [&](std::uint32_t kind, auto record, auto change) {
      return is(pushed(kind, record, change), FaultKind::not_finite);
    };
    CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [&](auto& r) { r.centre[2] = number; }));
    CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [&](auto& r) { r.neck[0] = number; }));
    CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [&](auto& r) { r.diameter = number; }));
    CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [&](auto& r) { r.nominal = number; }));
    CHECK(bad(QUADRILLE_RECORD_CLUSTER, cluster, [&](auto& r) { r.at = number; }));
    CHECK(bad(QUADRILLE_RECORD_CLUSTER, cluster, [&](auto& r) { r.axis[1] = number; }));
    CHECK(bad(QUADRILLE_RECORD_CLUSTER, cluster, [&](auto& r) { r.turn = number; }));
    CHECK(bad(QUADRILLE_RECORD_SPINE_POINT, quadrille_spine_point{0, {0, 0, 0}}, [&](auto& r) { r.at = number; }));
    CHECK(bad(QUADRILLE_RECORD_FRAME_NODE, quadrille_frame_node{{0, 0, 0}}, [&](auto& r) { r.position[1] = number; }));
    CHECK(bad(QUADRILLE_RECORD_FRAME_MEMBER, member, [&](auto& r) { r.young = number; }));
    CHECK(bad(QUADRILLE_RECORD_FRAME_MEMBER, member, [&](auto& r) { r.inner = number; }));
    CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [&](auto& r) { r.ballast_limit = number; }));
    CHECK(bad(QUADRILLE_RECORD_TIE_POINT, quadrille_tie_point{0, 0, {0, 0, 0}, ""},
              [&](auto& r) { r.point[0] = number; }));
    CHECK(bad(QUADRILLE_RECORD_SUPPLY, supply, [&](auto& r) { r.quantity = number; }));
    CHECK(bad(QUADRILLE_RECORD_WORK, quadrille_work{"", "", 0}, [&](auto& r) { r.quantity = number; }));
    CHECK(bad(QUADRILLE_RECORD_FACT, quadrille_fact{"", 0}, [&](auto& r) { r.number = number; }));
  }
}

TEST_CASE("what contradicts the contract is refused") {
  const auto bad = [](std::uint32_t kind, auto record, auto change) {
    return is(pushed(kind, record, change), FaultKind::broken);
  };
  CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [](auto& r) { r.diameter = 0; }));
  CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [](auto& r) { r.diameter = -0.28; }));
  CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [](auto& r) { r.nominal = 0; }));
  CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [](auto& r) { r.slot = 6; }));
  CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [](auto& r) { r.role = 5; }));
  CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [](auto& r) { r.centre[0] = 1e300; }));
  CHECK(bad(QUADRILLE_RECORD_CLUSTER, cluster, [](auto& r) { r.number = 0; }));
  CHECK(bad(QUADRILLE_RECORD_CLUSTER, cluster, [](auto& r) { r.axis[2] = 2; }));
  CHECK(bad(QUADRILLE_RECORD_FRAME_MEMBER, member, [](auto& r) { r.inner = r.outer; }));
  CHECK(bad(QUADRILLE_RECORD_FRAME_MEMBER, member, [](auto& r) { r.young = 0; }));
  CHECK(bad(QUADRILLE_RECORD_FRAME_MEMBER, member, [](auto& r) { r.joint_from = 3; }));
  CHECK(bad(QUADRILLE_RECORD_FRAME_MEMBER, member, [](auto& r) { r.rest = 2; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.kind = 4; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.turns = 2; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.own_mass = -1; }));
  CHECK(bad(QUADRILLE_RECORD_TIE_POINT, quadrille_tie_point{0, 0, {0, 0, 0}, ""}, [](auto& r) { r.purpose = 3; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPLY, supply, [](auto& r) { r.quantity = -1; }));
  // These were taken at any size, and counting with them overflowed.
  CHECK(bad(QUADRILLE_RECORD_SUPPLY, supply, [](auto& r) { r.quantity = 1e300; }));
  CHECK(bad(QUADRILLE_RECORD_WORK, quadrille_work{"", "", 0}, [](auto& r) { r.quantity = 1e300; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.width = 1e300; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.depth = 1e5; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.own_mass = 1e300; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.ballast = 1e300; }));
  CHECK(bad(QUADRILLE_RECORD_SUPPORT, support, [](auto& r) { r.ballast_limit = 1e300; }));
  CHECK(bad(QUADRILLE_RECORD_BALLOON, balloon, [](auto& r) { r.diameter = 21; }));
  CHECK(bad(QUADRILLE_RECORD_ANCHORING, anchoring, [](auto& r) { r.requirement = 7; }));
  CHECK(bad(QUADRILLE_RECORD_ANCHORING, anchoring, [](auto& r) { r.when = 6; }));
  CHECK(bad(QUADRILLE_RECORD_MESSAGE, message, [](auto& r) { r.severity = 3; }));
  CHECK(bad(0, message, [](auto&) {}));
  CHECK(bad(13, message, [](auto&) {}));
}

TEST_CASE("a NULL text is a fault, a text that is not UTF-8 is made readable") {
  for (auto field : {&quadrille_supply::key, &quadrille_supply::label, &quadrille_supply::unit})
    CHECK(is(pushed(QUADRILLE_RECORD_SUPPLY, supply, [&](auto& r) { r.*field = nullptr; }), FaultKind::broken));
  CHECK(is(pushed(QUADRILLE_RECORD_MESSAGE, message, [](auto& r) { r.text = nullptr; }), FaultKind::broken));
  CHECK(is(pushed(QUADRILLE_RECORD_FACT, quadrille_fact{nullptr, 0}), FaultKind::broken));
  Sink sink;
  const quadrille_sink c = sink.record();
  const quadrille_message rough = {QUADRILLE_NOTE, 0, "k\x01", "H\xF6he \xE6\x8B\xB1 \xED\xA0\x80.", nullptr};
  CHECK(c.push(c.self, QUADRILLE_RECORD_MESSAGE, &rough, 1, sizeof rough) == 0);
  const Message clean = sink.take().messages.at(0);
  CHECK(clean.key == "k ");
  CHECK(clean.text == "H\xEF\xBF\xBDhe 拱 \xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD.");
}

TEST_CASE("records without place or size, or in impossible number, are not even looked at") {
  Sink sink;
  const quadrille_sink c = sink.record();
  CHECK(c.push(nullptr, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon) != 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_BALLOON, nullptr, 1, sizeof balloon) != 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon) != 0);  // it takes no more after a fault
  CHECK(sink.take().balloons.empty());
  Sink second;
  const quadrille_sink d = second.record();
  CHECK(d.push(d.self, QUADRILLE_RECORD_BALLOON, &balloon, std::numeric_limits<std::size_t>::max(), sizeof balloon) !=
        0);
  CHECK(is(second.fault(), FaultKind::too_large));
  Sink third;
  const quadrille_sink e = third.record();
  CHECK(e.push(e.self, QUADRILLE_RECORD_BALLOON, &balloon, 1, 0) != 0);
  CHECK(is(third.fault(), FaultKind::broken));
}

TEST_CASE("exactly as many balloons as are allowed are taken, one more is too many") {
  Sink sink;
  const quadrille_sink c = sink.record();
  const std::vector<quadrille_balloon> many(most_balloons, balloon);
  CHECK(c.push(c.self, QUADRILLE_RECORD_BALLOON, many.data(), many.size(), sizeof balloon) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_BALLOON, many.data(), 1, sizeof balloon) != 0);
  CHECK(is(sink.fault(), FaultKind::too_large));
}

TEST_CASE("texts are counted all together") {
  Sink sink;
  const quadrille_sink c = sink.record();
  const std::string half(most_text / 2 + 1, 'x');
  const quadrille_message one = {QUADRILLE_NOTE, 0, "", half.c_str(), ""};
  CHECK(c.push(c.self, QUADRILLE_RECORD_MESSAGE, &one, 1, sizeof one) == 0);
  CHECK(c.push(c.self, QUADRILLE_RECORD_MESSAGE, &one, 1, sizeof one) != 0);
  CHECK(is(sink.fault(), FaultKind::too_large));
}

TEST_CASE("what records say of each other must be so") {
  Piece piece;
  piece.frame.nodes = {{0, 0, 0}, {0, 0, 1}};
  piece.frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.02, 0, 1, 1, 1}};
  piece.clusters = {{1, 0, {0, 0, 0}, Vec3::UnitZ(), 0}};
  piece.balloons = {{{0, 0, 0}, {0, 0, 0}, 0.28, 11, 0, 1, 0, Role::body}};
  piece.spine = {{0, {0, 0, 0}}, {1, {0, 0, 1}}};
  piece.supports = {{}};
  piece.tie_points = {{}};
  CHECK_FALSE(fault_between(piece));
  const auto broken = [&](auto change) {
    Piece changed = piece;
    change(changed);
    return is(fault_between(changed), FaultKind::broken);
  };
  CHECK(broken([](Piece& p) { p.frame.members[0].to = 2; }));
  CHECK(broken([](Piece& p) { p.frame.members[0].to = 0; }));
  CHECK(broken([](Piece& p) { p.frame.nodes[1] = p.frame.nodes[0]; }));
  CHECK(broken([](Piece& p) { p.supports[0].node = 2; }));
  CHECK(broken([](Piece& p) { p.tie_points[0].node = 4'000'000'000u; }));
  CHECK(broken([](Piece& p) { p.balloons[0].cluster = 2; }));
  CHECK(broken([](Piece& p) { p.clusters.push_back(p.clusters[0]); }));
  CHECK(broken([](Piece& p) { p.spine[1].at_m = -1; }));
  CHECK(broken([](Piece& p) { p.spine[0].at_m = 0.5; }));
}

TEST_CASE("a status that is not ok always comes with a refusal; what was pushed stays unless it is at fault") {
  const auto silent = build_once(type_of([](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
                                   push(sink, QUADRILLE_RECORD_BALLOON, balloon);
                                   push(sink, QUADRILLE_RECORD_MESSAGE, message);
                                   return std::int32_t{QUADRILLE_INFEASIBLE};
                                 }),
                                 {});
  CHECK_FALSE(silent.fault);
  CHECK(silent.built->status == Status::infeasible);
  CHECK(silent.built->piece.balloons.size() == 1);
  CHECK(silent.built->box.width_m() == doctest::Approx(0.28));
  REQUIRE(silent.built->piece.messages.size() == 2);
  CHECK(silent.built->piece.messages[0].text == "Mind.");
  CHECK(silent.built->piece.messages[1].severity == Severity::refusal);

  const auto unknown = build_once(type_of([](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
                                    push(sink, QUADRILLE_RECORD_BALLOON, balloon);
                                    return std::int32_t{9};
                                  }),
                                  {});
  CHECK(unknown.built->status == Status::internal);
  CHECK(unknown.built->piece.balloons.empty());
  CHECK(is(unknown.fault, FaultKind::broken));

  const auto contradicts =
      build_once(type_of([](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
                   push(sink, QUADRILLE_RECORD_MESSAGE, quadrille_message{QUADRILLE_REFUSAL, 0, "", "No.", ""});
                   return std::int32_t{QUADRILLE_OK};
                 }),
                 {});
  CHECK(contradicts.built->status == Status::internal);
  CHECK(is(contradicts.fault, FaultKind::broken));
}

TEST_CASE("outer measures: a sphere by its radius, a bar by its ends cut square") {
  Piece piece;
  CHECK(box_of(piece) == Box{});
  // A bar of 0.2 m thickness standing from 0 to 2 m does not reach below the floor or above its end.
  piece.frame.nodes = {{3, 0, 0}, {3, 0, 2}};
  piece.frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.2, 0, 1, 1, 1}};
  Box box = box_of(piece);
  CHECK(box.least.isApprox(Vec3(2.9, -0.1, 0)));
  CHECK(box.most.isApprox(Vec3(3.1, 0.1, 2)));
  // At 45° in the x-z plane its rim reaches 0.1·cos 45° beyond each end in x and z, and 0.1 in y.
  piece.frame.nodes[1] = {5, 0, 2};
  box = box_of(piece);
  CHECK(box.least.z() == doctest::Approx(-0.1 * std::sqrt(0.5)));
  CHECK(box.most.x() == doctest::Approx(5 + 0.1 * std::sqrt(0.5)));
  CHECK(box.depth_m() == doctest::Approx(0.2));
  piece.balloons = {{{0, 1, 1}, {0, 0, 1}, 0.5, 11, 0, 0, 0, Role::body}};
  box = box_of(piece);
  CHECK(box.least.x() == -0.25);
  CHECK(box.most.y() == 1.25);
}
