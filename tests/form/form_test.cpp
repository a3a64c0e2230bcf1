// The form of the selected pieces.
#include "studio/form/form.hpp"

#include <set>

#include "studio/form/place_fields.hpp"
#include "studio/form/remedies.hpp"
#include "studio/form/selection_words.hpp"
#include "studio/form/slot_fields.hpp"
#include "studio/host/builder.hpp"
#include "tables.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

Value length_of(double metres) { return Value::of_number(Kind::length, metres); }
Value choice_of(const char* key) { return Value::of_text(Kind::choice, key); }

}  // namespace

TEST_CASE("the form of one piece has every parameter of its type once, in the order of the table, under its heading") {
  for (const PieceType& type : types_here().types) {
    const Event event = event_of({piece_of("p", type.id)});
    const Form form = form_of(event, {"p"}, types_here().tables());
    CHECK(form.type == type.id);
    std::set<std::string> headings;
    std::vector<std::string> keys, of_table;
    for (const FieldGroup& group : form.groups) {
      CHECK(headings.insert(group.name).second);
      for (const Field& field : group.fields) {
        keys.push_back(field.parameter.key);
        CHECK(field.parameter.group == group.name);
        CHECK(field.is_standard);
        CHECK(field.value == field.parameter.standard);
        CHECK_FALSE(field.help.empty());
      }
    }
    for (const FieldGroup& group : form.groups)
      for (const Parameter& p : type.parameters)
        if (p.group == group.name) of_table.push_back(p.key);
    CHECK(keys == of_table);
    CHECK(keys.size() == type.parameters.size());
  }
}

TEST_CASE("a field says what stands in it, what it may be, and what it waits for") {
  const auto tables = types_here().tables();
  const Event event = event_of({piece_of("p", "arch", {{"span", length_of(3)}})});
  const Form form = form_of(event, {"p"}, tables);
  const Field& span = *form.find("span");
  CHECK(span.text == "3");
  CHECK(span.unit == "m");
  CHECK_FALSE(span.is_standard);
  CHECK(span.standard == "2.4 m");
  CHECK(span.range == "0 m to 40 m");
  CHECK(span.help.find("A bare number is in m.") != std::string::npos);
  CHECK(span.applies);
  CHECK_FALSE(form.find("height")->applies);
  CHECK(form.find("height")->waits_for == "Frame is not Flexible rod");
  CHECK(form.find("rod-wall")->parameter.advanced);
  CHECK(form.find("nothing") == nullptr);
  CHECK(form_of(event, {"nobody"}, tables).groups.empty());
}

TEST_CASE("what is typed is set; what cannot be used is said and changes nothing") {
  const auto tables = types_here().tables();
  const Event event = event_of({piece_of("p", "arch")}, Units::feet);
  const Form form = form_of(event, {"p"}, tables);
  const auto set = with_typed(event, form, tables, "span", "20 ft / 2");
  REQUIRE(set);
  CHECK(find_piece(*set, "p")->values.at("span").number == doctest::Approx(3.048));
  CHECK_FALSE(with_typed(event, form, tables, "span", "1000"));
  CHECK_FALSE(with_typed(event, form, tables, "no-such-key", "1"));
  // Leaving a field as it stands is no edit, though 2.4 m is not what its text says: 7' 10 1/2".
  CHECK(*with_typed(event, form, tables, "span", form.find("span")->text) == event);
  // The default is not kept as a value.
  CHECK(*with_typed(*set, form_of(*set, {"p"}, tables), tables, "span", "2.4 m") == event);
  CHECK(with_standard(*set, form, tables, "span") == event);
}

TEST_CASE("pieces of one type share a form: various where they differ, one edit for all") {
  const auto tables = types_here().tables();
  const Event event = event_of({piece_of("p", "arch", {{"span", length_of(3)}}), piece_of("q", "arch")});
  const Form form = form_of(event, {"p", "q"}, tables);
  CHECK(form.type == "arch");
  CHECK(form.find("span")->various);
  CHECK(form.find("span")->text.empty());
  CHECK_FALSE(form.find("span")->value);
  CHECK_FALSE(form.find("height")->various);
  CHECK(*with_typed(event, form, tables, "span", "  ") == event);
  const Event both = *with_typed(event, form, tables, "span", "3.5");
  CHECK(find_piece(both, "p")->values.at("span") == length_of(3.5));
  CHECK(find_piece(both, "q")->values.at("span") == length_of(3.5));
}

TEST_CASE("pieces of different types share what has the same key and kind, within what all accept") {
  const auto tables = types_here().tables();
  const Event event = event_of({piece_of("a", "arch"), piece_of("c", "column"), piece_of("g", "garland")});
  const Form two = form_of(event, {"a", "c"}, tables);
  CHECK(two.type.empty());
  REQUIRE(two.find("height") != nullptr);
  CHECK(two.find("height")->parameter.hard_min == 0.3);  // arch 0.2 to 20, column 0.3 to 8
  CHECK(two.find("height")->parameter.hard_max == 8);
  CHECK(two.find("height")->various);
  CHECK(two.find("height")->standard.empty());
  CHECK(two.find("height")->applies);  // it matters for the column
  CHECK(two.find("span") == nullptr);
  CHECK_FALSE(with_typed(event, two, tables, "height", "9"));
  const Event taller = *with_typed(event, two, tables, "height", "2.4");
  CHECK(find_piece(taller, "c")->values.at("height") == length_of(2.4));
  CHECK_FALSE(find_piece(taller, "a")->values.contains("height"));  // its default
  const Form three = form_of(event, {"a", "c", "g"}, tables);
  CHECK(three.find("slots") != nullptr);
  CHECK(three.find("height") == nullptr);
}

TEST_CASE("a value held under an earlier key moves to the present one") {
  Parameter p = length_parameter("height", 0, 5, 1);
  p.aliases = {"tall", "size"};
  const ParameterTable table{p};
  const ParameterTables tables{{"post", &table}};
  const Event event = event_of({piece_of("p", "post", {{"tall", length_of(2)}})});
  const Form form = form_of(event, {"p"}, tables);
  CHECK(form.find("height")->text == "2");
  const Event changed = *with_typed(event, form, tables, "height", "3");
  CHECK(find_piece(changed, "p")->values == ValueMap{{"height", length_of(3)}});
  CHECK(find_piece(with_standard(event, form, tables, "height"), "p")->values.empty());
}

TEST_CASE("slots are those that the pieces use, with their balloons and colours") {
  const auto tables = types_here().tables();
  EventBuilder builder(types_here());
  PlacedPiece three = piece_of("p", "column", {{"slots", Value::of_number(Kind::slots, 3)}});
  three.colours = {{"garden", "fern"}, {"garden", "sky"}};
  PlacedPiece two = piece_of("q", "column");
  two.colours = {{"garden", "fern"}, {"garden", "poppy"}};
  const Event event = event_of({three, two});
  const BuiltEvent built = builder.build(event);
  const auto fields = slot_fields(event, {"p", "q"}, tables, built);
  REQUIRE(fields.size() == 3);
  CHECK(fields[0].letter == "A");
  CHECK(fields[0].colour->colour == "fern");
  CHECK(fields[1].various);
  CHECK_FALSE(fields[1].colour);
  CHECK(fields[2].colour->colour.empty());
  std::size_t balloons = 0;
  for (const SlotField& field : fields) balloons += field.balloons;
  CHECK(balloons == built.at("p")->piece.balloons.size() + built.at("q")->piece.balloons.size());
  CHECK(slot_fields(event, {"q"}, tables, built).size() == 2);
}

TEST_CASE("a click applies the remedy of a finding, and the piece is built") {
  const auto tables = types_here().tables();
  EventBuilder builder(types_here());
  const Event event = event_of({piece_of("p", "arch", {{"span", length_of(7)}})});
  const Findings found = findings_of(event, builder.build(event), types_here());
  REQUIRE(found.size() == 1);
  const auto remedy = remedy_of(event, found[0], tables);
  REQUIRE(remedy);
  CHECK(remedy->words.find("Set Span to ") == 0);
  const Event mended = with_remedy(event, found[0], tables);
  CHECK(builder.build(mended).at("p")->status == Status::ok);
  // Of a finding that was mended in the meantime nothing is left to do.
  CHECK_FALSE(remedy_of(mended, found[0], tables));
  CHECK(with_remedy(mended, found[0], tables) == mended);
}

TEST_CASE("a value that has no effect goes back to its default with a click") {
  const auto tables = types_here().tables();
  EventBuilder builder(types_here());
  const Event event = event_of({piece_of("p", "arch", {{"height", length_of(3)}})});
  const Findings found = findings_of(event, builder.build(event), types_here());
  const auto note = std::ranges::find(found, "height", &Finding::key);
  REQUIRE(note != found.end());
  CHECK(remedy_of(event, *note, tables)->words == "Set Height to 2.4 m");
  CHECK(find_piece(with_remedy(event, *note, tables), "p")->values.empty());
}

TEST_CASE("what nobody knows for certain has no remedy") {
  const auto tables = types_here().tables();
  const Event event =
      event_of({piece_of("p", "arch", {{"frame", choice_of("square")}}), piece_of("q", "no-such-type")});
  CHECK_FALSE(remedy_of(event, {Weight::warning, "warning", "a", "p", "span", "Too flat.", "Narrow it."}, tables));
  CHECK_FALSE(remedy_of(event, {Weight::problem, "refused", "a", "p", "span", "Not so.", ""}, tables));
  CHECK_FALSE(remedy_of(event, {Weight::problem, "type-missing", "a", "q", "", "It is missing.", ""}, tables));
  CHECK_FALSE(remedy_of(event, {Weight::note, "note", "", "", "", "Of the whole event.", ""}, tables));
  Finding change{Weight::warning, "warning", "a", "p", "span", "Wide.", ""};
  change.change = ValueChange{"p", "span", length_of(99)};  // beyond the range: no remedy
  CHECK_FALSE(remedy_of(event, change, tables));
}

TEST_CASE("one click mends the same in several pieces") {
  const auto tables = types_here().tables();
  const Event event = event_of({piece_of("p", "column"), piece_of("q", "column"), piece_of("r", "column")});
  const auto says = [](const char* piece, double kg) {
    return Finding{
        Weight::problem, "does-not-stand",      "a", piece,
        "gust",          "It is not to stand.", "",  ValueChange{piece, "ballast", Value::of_number(Kind::mass, kg)}};
  };
  CHECK(remedy_in_words(event, {says("p", 12)}, tables) == "Set Ballast to 12 kg");
  CHECK(remedy_in_words(event, {says("p", 12), says("q", 12)}, tables) == "Set Ballast to 12 kg on 2 pieces");
  CHECK(remedy_in_words(event, {says("p", 12), says("q", 13)}, tables) == "Set Ballast on 2 pieces, each to its own");
  CHECK(remedy_in_words(event, {Finding{}}, tables).empty());
  const Event mended = with_remedies(event, {says("p", 12), says("q", 13)}, tables);
  CHECK(find_piece(mended, "p")->values.at("ballast").number == 12);
  CHECK(find_piece(mended, "q")->values.at("ballast").number == 13);
  CHECK(find_piece(mended, "r")->values.empty());
}

TEST_CASE("several pieces are called what they are, and say whether all of them are locked") {
  const TypeNames types{{"arch", "Arch"}, {"column", "Column"}};
  Event event = event_of({piece_of("Column 1", "column"), piece_of("Column 2", "column"), piece_of("Gate", "arch"),
                          piece_of("Porch", "arch"), piece_of("Tower", "tower")});
  CHECK(selection_heading(event, {"Gate"}, types) == "Arch");
  CHECK(selection_heading(event, {"Gate", "Porch"}, types) == "2 arches");
  CHECK(selection_heading(event, {"Column 1", "Column 2"}, types) == "2 columns");
  CHECK(selection_heading(event, {"Column 1", "Gate", "Porch", "Column 2"}, types) == "4 pieces of 2 types");
  CHECK(selection_heading(event, {"Tower"}, types) == "tower (not available)");
  CHECK(selection_heading(event, {"nobody"}, types).empty());
  CHECK(selection_names(event, {"Column 1", "Gate", "Column 2"}) == "Columns 1 and 2, and Gate");
  CHECK(step_subject(event, {"Gate"}) == "Gate");
  CHECK(step_subject(event, {"Gate", "Porch"}) == "2 pieces");
  CHECK(shared_flag(event, {"Gate", "Porch"}, &PlacedPiece::locked) == false);
  event = with_lock(event, {"Gate"}, true);
  CHECK_FALSE(shared_flag(event, {"Gate", "Porch"}, &PlacedPiece::locked).has_value());
  CHECK(shared_flag(event, {"Gate"}, &PlacedPiece::locked) == true);
  CHECK_FALSE(shared_flag(event, {}, &PlacedPiece::locked).has_value());
}

TEST_CASE("pieces are put in their place by what is typed, unless one is locked") {
  Event event = event_of({piece_of("p", "arch"), piece_of("q", "arch")}, Units::feet);
  event = moved(event, "q", 3.048, 0);  // 10 ft of 0.3048 m
  const FieldGroup group = place_group(event, {"p", "q"});
  REQUIRE(group.fields.size() == 2);
  CHECK(group.fields[0].various);
  CHECK_FALSE(group.fields[1].various);
  CHECK(place_group(event, {"q"}).fields[0].text == "10'");
  const auto put = with_typed_place(event, {"p", "q"}, place_depth_key, "-3 ft");
  REQUIRE(put);
  for (const char* id : {"p", "q"}) CHECK(find_piece(*put, id)->y_m == doctest::Approx(-0.9144));
  CHECK(find_piece(*put, "q")->x_m == 3.048);
  CHECK(*with_typed_place(event, {"p", "q"}, place_along_key, " ") == event);
  CHECK_FALSE(with_typed_place(event, {"q"}, place_along_key, "here"));
  CHECK_FALSE(with_typed_place(event, {"q"}, place_along_key, "2000 m"));
  CHECK_FALSE(with_typed_place(with_lock(event, {"p"}, true), {"p", "q"}, place_depth_key, "1"));
}
