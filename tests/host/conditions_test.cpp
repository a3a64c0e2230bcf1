// What piece types declare about when a parameter matters, held against what they build; and the changes that findings
// propose, held against what the builds say once they are made.
#include <algorithm>

#include "studio/host/builder.hpp"
#include "studio/model/conditions.hpp"
#include "studio/model/piece_edits.hpp"
#include "tests/host/fixture.hpp"
#include "tests/places.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

const PieceTypes& types_here() {
  static const PieceTypes found =
      find_piece_types({{build_place("pieces")}, {}, false});
  return found;
}

/// Other values than the default that forms offer.
std::vector<Value> others(const Parameter& p) {
  std::vector<Value> values;
  for (const Choice& choice : p.choices) values.push_back(Value::of_text(p.kind, choice.key));
  if (is_number(p.kind))
    for (const double number : {p.display_min, p.display_max}) values.push_back(Value::of_number(p.kind, number));
  if (p.kind == Kind::rows) values.push_back(Value::of_text(p.kind, "AABB ABBA"));
  std::erase(values, p.standard);
  return values;
}

Findings findings_about(const PlacedPiece& piece, BuiltEvent* built = nullptr) {
  EventBuilder builder(types_here());
  const Event event = event_of({piece});
  const BuiltEvent made = builder.build(event);
  if (built != nullptr) *built = made;
  return findings_of(event, made, types_here());
}

struct Wrong {
  const char* type;
  ValueMap values;
  const char* key;      ///< that the finding blames
  const char* changed;  ///< that the change is of
};
Value length_of(double metres) { return Value::of_number(Kind::length, metres); }
Value ratio_of(double number) { return Value::of_number(Kind::ratio, number); }
Value count_of(double number) { return Value::of_number(Kind::count, number); }
Value choice_of(const char* key) { return Value::of_text(Kind::choice, key); }

}  // namespace

TEST_CASE("a parameter that does not matter as the values stand changes nothing that is built") {
  std::size_t idle = 0;
  for (const PieceType& type : types_here().types) {
    if (type.id == "garland") continue;  // its idle parameters are looked at below, on a short line: it builds slowly
    const auto standard = build_piece(type, {});
    for (const Parameter& p : type.parameters) {
      if (applies_now(type.parameters, {}, p)) continue;
      ++idle;
      for (const Value& value : others(p)) {
        CAPTURE(p.key);
        const auto built = build_piece(type, {{p.key, value}});
        CHECK(built->status == standard->status);
        CHECK(built->piece.balloons == standard->piece.balloons);
        CHECK(built->piece.frame == standard->piece.frame);
        CHECK(built->piece.supports == standard->piece.supports);
        CHECK(built->piece.supplies == standard->piece.supplies);
      }
    }
  }
  CHECK(idle == 9);  // arch: height, corner-radius, rows, band; column: both slots, collar-balloon, rows, band
  const PieceType* garland = types_here().find("garland");
  REQUIRE(garland != nullptr);
  const Value path = Value::of_list(Kind::path, {0, 0, 1.5, 1.2, 0, 1.5});
  const auto standard = build_piece(*garland, {{"path", path}});
  for (const char* key : {"slack", "wall-y", "accent-slot"}) {
    const Parameter& p = *garland->find(key);
    CHECK_FALSE(applies_now(garland->parameters, {}, p));
    CHECK(build_piece(*garland, {{"path", path}, {key, others(p).front()}})->piece.balloons ==
          standard->piece.balloons);
  }
}

TEST_CASE("a parameter that begins to matter has an effect") {
  const PieceType& arch = *types_here().find("arch");
  const ValueMap square{{"frame", choice_of("square")}};
  CHECK(applies_now(arch.parameters, square, *arch.find("height")));
  CHECK(applies_now(arch.parameters, square, *arch.find("corner-radius")));
  CHECK_FALSE(applies_now(arch.parameters, square, *arch.find("rod-length")));
  ValueMap taller = square;
  taller.emplace("height", length_of(2.8));
  CHECK(build_piece(arch, taller)->box.height_m() ==
        doctest::Approx(build_piece(arch, square)->box.height_m() + 0.4).epsilon(0.02));
}

TEST_CASE("the change that a finding proposes mends what the finding says") {
  const Wrong cases[] = {
      {"arch", {{"rod-length", length_of(41)}}, "rod-length", "rod-length"},
      {"arch", {{"span", length_of(7)}}, "span", "span"},
      {"arch", {{"clusters", count_of(90)}}, "clusters", "clusters"},
      {"arch", {{"tightness", ratio_of(0.7)}}, "tightness", "tightness"},
      {"arch", {{"rod-diameter", length_of(0.03)}}, "rod-diameter", "rod-diameter"},
      {"arch", {{"frame", choice_of("half-circle")}, {"height", length_of(1)}}, "height", "height"},
      {"arch", {{"frame", choice_of("square")}, {"corner-radius", length_of(2)}}, "corner-radius", "corner-radius"},
      {"arch", {{"bare-ends", length_of(4)}}, "bare-ends", "bare-ends"},
      {"column", {{"height", length_of(0.3)}, {"bare-foot", length_of(1)}}, "height", "height"},
      {"column", {{"topper", choice_of("round-24")}, {"topper-slot", count_of(4)}}, "topper-slot", "slots"},
      {"column", {{"collar", choice_of("both")}}, "collar", "collar"},
      {"column", {{"taper", ratio_of(1.5)}}, "taper", "taper"},
      {"column", {{"clusters", count_of(99)}}, "clusters", "clusters"},
      {"column",
       {{"pole-diameter", length_of(0.15)}, {"balloon", Value::of_number(Kind::balloon, 5)}},
       "pole-diameter",
       "pole-diameter"},
      {"column", {{"pattern", choice_of("rows")}, {"rows", Value::of_text(Kind::rows, "ABCD")}}, "rows", "slots"},
      {"column", {{"ballast", Value::of_number(Kind::mass, 300)}}, "ballast", "ballast"},
      {"column", {{"wraps", count_of(3)}}, "wraps", nullptr},  // no such parameter: nothing is known to mend it
  };
  for (const Wrong& wrong : cases) {
    CAPTURE(wrong.key);
    PlacedPiece piece = placed("p", wrong.type, wrong.values);
    const Findings found = findings_about(piece);
    const auto about = std::ranges::find_if(found, [&](const Finding& f) { return f.key == wrong.key; });
    REQUIRE(about != found.end());
    REQUIRE(about->change.has_value() == (wrong.changed != nullptr));
    if (!about->change) continue;
    CHECK(about->change->piece == "p");
    CHECK(about->change->key == wrong.changed);
    const Event mended = with_change(event_of({piece}), *about->change);
    const Findings after = findings_about(*find_piece(mended, "p"));
    // The same finding no more; where it was a refusal the piece is built, or refused for another reason.
    for (const Finding& f : after)
      CHECK_MESSAGE((f.key != about->key || f.weight != about->weight), wrong.key, ": ", about->text, " -> ", f.text);
  }
}

TEST_CASE("a change is made under the key that the piece holds the value under") {
  // Set under its new name beside the old one, a parameter would be refused as given twice.
  const PieceTypes types{{type_of("post")}, {}};
  const PlacedPiece piece = placed("p", "post", {{"tall", length_of(9)}});
  EventBuilder builder(types);
  const Event event = event_of({piece});
  const Findings found = findings_of(event, builder.build(event), types);
  REQUIRE(found.size() == 1);
  REQUIRE(found[0].change);
  CHECK(found[0].change->key == "tall");
  CHECK(found[0].change->value == length_of(6));
  const Event mended = with_change(event, *found[0].change);
  CHECK(builder.build(mended).at("p")->status == Status::ok);
}
