// The facts of a place and of what stands there, and what is typed into them.
#include "studio/form/site_form.hpp"

#include <doctest/doctest.h>

#include <memory>

#include "studio/form/event_form.hpp"
#include "studio/model/area_edits.hpp"

using namespace quadrille;

namespace {

/// An area of 8 m of wall with a pole that is tied to the front, a post, a walkway and an outlet.
struct Place {
  Event event;
  BuiltEvent built;

  Place() {
    PlacedPiece pole;
    pole.id = "p1", pole.name = "Pole", pole.x_m = 3, pole.colours = {{"house", "white"}};
    SecuringLine line;
    line.tie = "front-1", line.y_m = -3;
    pole.lines = {line};
    Area area;
    area.id = "a1", area.name = "Gate", area.wall_width_m = 8;
    area.structures = {{"s1", "Post", StructureKind::post, 6, -0.5, 2, "", {}}};
    area.walkways = {{"w1", "Path", 0, -4, 8, 1.5, {}}};
    area.site.outlet_m = 12;
    area.pieces = {pole};
    event.units = Units::metric;
    event.areas = {area};
    auto piece = std::make_shared<BuiltPiece>();
    piece->status = Status::ok;
    piece->piece.tie_points = {{0, TiePurpose::front, {0, 0, 4}, "top"}, {0, TiePurpose::back, {0, 0, 4}, "top"}};
    built["p1"] = piece;
  }
  const Area& area() const { return *event.areas[0]; }
  FactFields fields(const SiteObject& object) const { return object_fields(event, area(), object, built); }
  std::string text(const SiteObject& object, const char* key) const {
    const FactFields all = fields(object);
    const FactField* const field = find_fact(all, key);
    REQUIRE_MESSAGE(field != nullptr, key);
    return field->text;
  }
  /// Types into the object's field; the sentence of what is wrong, or empty.
  std::string type(const SiteObject& object, const char* key, const char* typed) {
    auto changed = with_object_field(event, "a1", object, built, key, typed);
    if (changed) event = std::move(*changed.value);
    return changed.error;
  }
  std::string type(const char* key, const char* typed) {
    auto changed = with_area_field(event, "a1", key, typed);
    if (changed) event = std::move(*changed.value);
    return changed.error;
  }
};

const SiteObject post{SiteObjectKind::structure, "s1"}, path{SiteObjectKind::walkway, "w1"},
    outlet{SiteObjectKind::outlet, {}}, line{SiteObjectKind::line, "p1", 0}, pole{SiteObjectKind::piece, "p1"};

}  // namespace

TEST_CASE("each fact of an area is typed, shown again, and forgotten where nothing is typed") {
  Place place;
  const std::pair<const char*, const char*> typed[] = {
      {"gust", "40"},      {"event-temperature", "31"},  {"inflating-temperature", "19.5"},
      {"altitude", "350"}, {"inflating-altitude", "20"}, {"outlet", "15"},
      {"vehicle", "40"},   {"wall-width", "9.5"},        {"wall-height", "3"}};
  for (const auto& [key, text] : typed) {
    const Event before = place.event;
    CHECK(place.type(key, text).empty());
    CHECK(place.event != before);
    CHECK(find_fact(area_fields(place.event, place.area()), key)->text == text);
    const Event with = place.event;
    CHECK(place.type(key, text).empty());
    CHECK(place.event == with);  // the same once more is no change
  }
  const Site& site = place.area().site;
  CHECK(*site.gust_m_s == doctest::Approx(40 / 3.6));
  CHECK(*site.event_celsius == 31);
  CHECK(*site.inflating_celsius == 19.5);
  CHECK(*site.altitude_m == 350);
  CHECK(*site.inflating_altitude_m == 20);
  CHECK(*site.outlet_m == 15);
  CHECK(*site.vehicle_m == 40);
  for (const auto& [key, text] : typed) CHECK(place.type(key, "").empty());
  CHECK(place.area().site == Site{});
  CHECK(!place.area().wall_width_m);
}

TEST_CASE("place, ground and name of an area") {
  Place place;
  CHECK(place.type("surroundings", "Outdoors").empty());
  CHECK(place.type("ground", "Wood floor").empty());
  CHECK(place.type("ground", "Gravel").empty());
  CHECK(place.area().site.surroundings == Surroundings::outdoors);
  CHECK(place.area().site.ground == Ground::gravel);
  CHECK(find_fact(area_fields(place.event, place.area()), "ground")->text == "Gravel");
  CHECK(!place.type("ground", "ice").empty());
  CHECK(place.type("name", "  North gate ").empty());
  CHECK(place.area().name == "North gate");
  CHECK(!place.type("name", " ").empty());
  CHECK(place.area().name == "North gate");
  // Every ground has a word of its own.
  const FactFields fields = area_fields(place.event, place.area());
  CHECK(find_fact(fields, "ground")->choices.size() == 9);
}

TEST_CASE("in an event of feet the same facts are told and typed in feet, miles per hour and Fahrenheit") {
  Place place;
  place.event.units = Units::feet;
  CHECK(place.type("gust", "20").empty());
  CHECK(*place.area().site.gust_m_s == doctest::Approx(20 * 0.44704));
  CHECK(place.type("event-temperature", "86").empty());
  CHECK(*place.area().site.event_celsius == doctest::Approx(30));
  CHECK(place.text(post, "along") == "19' 8\"");  // 6 m are 236.22 in, to half an inch 236
  CHECK(place.type(post, "along", "20").empty());
  CHECK(place.area().structures[0].x_m == doctest::Approx(6.096));
}

TEST_CASE("a structure's facts") {
  Place place;
  CHECK(place.type(post, "kind", "Tree").empty());
  CHECK(place.type(post, "name", "Old oak").empty());
  CHECK(place.type(post, "depth", "-1.25").empty());
  CHECK(place.type(post, "height", "9").empty());
  CHECK(place.type(post, "width", "1.5").empty());
  CHECK(place.type(post, "allowed-by", "the gardener").empty());
  Structure expected{"s1", "Old oak", StructureKind::tree, 6, -1.25, 9, "the gardener", {}, 1.5};
  CHECK(place.area().structures[0] == expected);
  CHECK(place.type(post, "width", "").empty());
  CHECK(!place.area().structures[0].width_m);
  CHECK(!place.type(post, "height", "").empty());  // a line must know how high it may be tied
  CHECK(!place.type(post, "height", "-1").empty());
  CHECK(!place.type(post, "kind", "balloon").empty());
}

TEST_CASE("a walkway's and the outlet's facts") {
  Place place;
  CHECK(place.type(path, "left", "-1").empty());
  CHECK(place.type(path, "front", "-6").empty());
  CHECK(place.type(path, "width", "10").empty());
  CHECK(place.type(path, "deep", "2").empty());
  CHECK(place.area().walkways[0] == Walkway{"w1", "Path", -1, -6, 10, 2, {}});
  CHECK(!place.type(path, "deep", "0").empty());
  CHECK(place.type(outlet, "distance", "18").empty());
  CHECK(*place.area().site.outlet_m == 18);
  CHECK(!place.type(outlet, "distance", "").empty());  // it is removed by name, not by an empty field
}

TEST_CASE("a line's facts follow what it ends at") {
  Place place;
  CHECK(find_fact(place.fields(line), "tie")->choices.size() == 2);
  CHECK(place.text(line, "tie") == "front-1, top");
  CHECK(place.text(line, "anchor") == "Stake");
  CHECK(place.type(line, "ahead", "-2.5").empty());
  CHECK(place.type(line, "anchor", "Dead weight").empty());
  CHECK(find_fact(place.fields(line), "mass") != nullptr);
  CHECK(place.area().pieces[0]->lines[0].y_m == -2.5);  // where it is laid stays
  CHECK(place.type(line, "mass", "25").empty());
  CHECK(place.area().pieces[0]->lines[0].mass_kg == 25);
  CHECK(place.type(line, "anchor", "What stands there").empty());
  CHECK(place.text(line, "structure") == "Post");
  CHECK(place.text(line, "height") == "1.2");
  CHECK(place.type(line, "height", "2.5") == "Post is 2 m high: the line cannot be tied above that.");
  CHECK(place.type(line, "height", "1.8").empty());
  CHECK(place.type(line, "tie", "back-1, top").empty());
  CHECK(place.area().pieces[0]->lines[0].tie == "back-1");
  CHECK(place.type(line, "cord", "Polyester rope, 6 mm").empty());
  CHECK(place.area().pieces[0]->lines[0].cord == "polyester-6mm");
  CHECK(place.type(line, "cord", "Nylon cord, 4 mm, 550 lb").empty());
  CHECK(place.area().pieces[0]->lines[0].cord.empty());  // the standard one is not written
  // Without anything that stands there it cannot be tied to that.
  place.event = without_structure(place.event, "a1", "s1");
  CHECK(place.type(line, "anchor", "Stake").empty());
  CHECK(place.type(line, "anchor", "What stands there").starts_with("Nothing stands there yet"));
}

TEST_CASE("of two structures of one name a line is tied to the one that is chosen") {
  Place place;
  Area area = place.area();
  area.structures.push_back({"s2", "Post", StructureKind::post, 1, 0, 2, "", {}});
  place.event.areas[0] = area;
  CHECK(place.type(line, "anchor", "What stands there").empty());
  const std::vector<Choice> choices = find_fact(place.fields(line), "structure")->choices;
  REQUIRE(choices.size() == 2);
  CHECK(choices[0].label == "Post, 6.00 m along, 0.50 m front");
  for (const Choice& choice : choices) {
    CHECK(place.type(line, "structure", choice.label.c_str()).empty());
    CHECK(place.area().pieces[0]->lines[0].structure == choice.key);
    CHECK(place.text(line, "structure") == choice.label);
  }
}

TEST_CASE("a piece is moved by its fields unless it is locked") {
  Place place;
  CHECK(place.type(pole, "depth", "1").empty());
  CHECK(place.area().pieces[0]->y_m == 1);
  Area area = place.area();
  area.pieces[0].edit([](PlacedPiece& piece) { piece.locked = true; });
  place.event.areas[0] = area;
  CHECK(place.type(pole, "depth", "2") == "It is locked in its place.");
  CHECK(!find_fact(place.fields(pole), "depth")->applies);
}

TEST_CASE("the list tells what stands there, where, and how lines run") {
  Place place;
  const std::vector<SiteRow> rows = site_rows(place.event, place.area(), place.built);
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].what == "Post");
  CHECK(rows[0].where == "6.00 m along, 0.50 m front");
  CHECK(rows[0].measures == "2.00 m high");
  CHECK(rows[1].what == "Path");
  CHECK(rows[1].measures == "8.00 m × 1.50 m");
  CHECK(rows[2].where == "12.00 m from where you inflate");
  CHECK(rows[3].what == "Pole, front-1");
  CHECK(rows[3].where == "Stake, 3.00 m front");
  // From 4 m up to 3 m in front: the triangle of 3, 4 and 5; atan(4/3) is 53.13°.
  CHECK(rows[3].measures == "5.00 m at 53°");
  CHECK(place.type(line, "ahead", "0").empty());
  CHECK(place.type(line, "aside", "-3").empty());
  CHECK(site_row(place.event, place.area(), line, place.built).where == "Stake, 3.00 m left");
  CHECK(site_row(place.event, place.area(), line, {}).measures == "The piece is not built");
  CHECK(site_row(place.event, place.area(), {SiteObjectKind::structure, "s9"}, {}).what.empty());
}

TEST_CASE("what is gone has no fields and changes nothing") {
  Place place;
  const Event before = place.event;
  CHECK(place.fields({SiteObjectKind::line, "p1", 1}).empty());
  CHECK(place.type({SiteObjectKind::line, "p1", 1}, "ahead", "5").empty());
  CHECK(place.type({SiteObjectKind::walkway, "s1"}, "left", "5").empty());
  CHECK(with_area_field(place.event, "a9", "gust", "5").value == before);
  CHECK(place.event == before);
}

TEST_CASE("the details of the job") {
  Event event;
  event.units = Units::metric;
  const auto type = [&](const char* key, const char* text) {
    auto changed = with_event_field(event, key, text);
    if (changed) event = std::move(*changed.value);
    return changed.error;
  };
  CHECK(type("title", " Spring fair ").empty());
  CHECK(type("venue", "Barn").empty());
  CHECK(type("date", "2027-05-01").empty());
  CHECK(type("load-in-from", "7:30").empty());
  CHECK(type("ready-by", "11").empty());
  CHECK(type("strike-from", "10 pm").empty());
  CHECK(type("currency", "eur").empty());
  CHECK(type("travel", "12").empty());
  CHECK(type("crew", "3").empty());
  CHECK(type("discount", "7.5").empty());
  CHECK(event.title == "Spring fair");
  CHECK(event.load_in_from == "07:30");
  CHECK(event.ready_by == "11:00");
  CHECK(event.strike_from == "22:00");
  CHECK(event.currency == "EUR");
  CHECK(*event.terms.travel_m == doctest::Approx(12000));
  CHECK(event.terms.crew == 3);
  CHECK(event.terms.discount == 75'000);
  for (const FactField& field : event_fields(event)) {
    const Event before = event;
    CHECK(type(field.key.c_str(), field.text.c_str()).empty());
    CHECK_MESSAGE(event == before, field.key);
  }
  CHECK(!type("currency", "XYZ").empty());
  CHECK(!type("crew", "0").empty());
  CHECK(!type("crew", "2.5").empty());
  CHECK(!type("discount", "120").empty());
  CHECK(!type("ready-by", "soon").empty());
  CHECK(!type("date", "2027-02-30").empty());
  for (const char* key : {"title", "date", "ready-by", "travel", "crew", "discount"}) CHECK(type(key, "").empty());
  CHECK(event.terms == JobTerms{});
  CHECK(event.date.empty());
}

TEST_CASE("a palette that pieces have colours of is told") {
  Place place;
  CHECK(uses_palette(place.event, "house"));
  CHECK(!uses_palette(place.event, "pastel"));
}
