// Values as texts in a field, and texts typed into a field as values.
#include "studio/form/typed.hpp"

#include "studio/form/field_units.hpp"
#include "studio/form/list_cells.hpp"
#include "studio/model/parameter_check.hpp"
#include "tables.hpp"

using namespace quadrille;
using namespace quadrille::testing;

TEST_CASE("a field's unit is that in which its parameter is a handy number") {
  const auto unit = [](double usual, Units units) { return unit_of(length_parameter("x", 0, usual, 0), units).name; };
  CHECK(unit(8, Units::metric) == "m");
  CHECK(unit(0.6, Units::metric) == "cm");
  CHECK(unit(0.06, Units::metric) == "mm");
  CHECK(unit(8, Units::feet) == "ft");
  CHECK(unit(0.6, Units::feet) == "in");
  CHECK(unit_of(number_parameter("b", Kind::balloon, 1, 48, 11), Units::metric).name == "in");
  CHECK(unit_of(number_parameter("m", Kind::mass, 0, 60, 10), Units::feet).name == "lb");
  CHECK(unit_of(number_parameter("r", Kind::ratio, 0, 2, 1), Units::feet).name.empty());
}

TEST_CASE("values stand in their field's unit, and say where they had to be rounded") {
  const Parameter span = length_parameter("Span", 0, 8, 2.4), rod = length_parameter("Rod", 0, 0.06, 0.014);
  const auto text = [](const Parameter& p, double number, Units units) {
    return text_of(p, Value::of_number(p.kind, number), units);
  };
  CHECK(text(span, 2.4, Units::metric).text == "2.4");
  CHECK(text(span, 2.4, Units::metric).exact);
  CHECK(text(rod, 0.014, Units::metric).text == "14");
  CHECK(text(span, 2.5908, Units::feet).text == "8' 6\"");
  CHECK(text(span, 2.5908, Units::feet).exact);
  CHECK(text(span, 2.4, Units::feet).text == "7' 10 1/2\"");  // 94.488 in
  CHECK_FALSE(text(span, 2.4, Units::feet).exact);
  CHECK(text(rod, 0.0127, Units::feet).text == "0.5");
  CHECK(value_in_words(span, Value::of_number(Kind::length, 2.4), Units::metric) == "2.4 m");
  CHECK(value_in_words(number_parameter("a", Kind::angle, 0, 7, 0), Value::of_number(Kind::angle, 0.7853981633974483),
                       Units::metric) == "45°");
}

TEST_CASE("a range is told so that both of its ends may be typed") {
  // Told as 0 to 24' 11 1/2", the last half inch was refused: the bound of 7.6 m is 299.2 in.
  for (const Units units : {Units::metric, Units::feet})
    for (const PieceType& type : types_here().types)
      for (const Parameter& p : type.parameters) {
        const std::string range = range_in_words(p, units);
        if (range.empty()) continue;
        CAPTURE(p.key);
        CAPTURE(range);
        const std::size_t to = range.find(" to ");
        REQUIRE(to != std::string::npos);
        const auto least = read_typed(p, range.substr(0, to), units), most = read_typed(p, range.substr(to + 4), units);
        CHECK_MESSAGE(least, least.error);
        CHECK_MESSAGE(most, most.error);
      }
}

TEST_CASE("what a field shows reads back to the very value, for every parameter of every type") {
  CHECK(rc::check("what a field shows", [] {
    for (const PieceType& type : types_here().types)
      for (const Parameter& p : type.parameters) {
        if (!is_number(p.kind)) continue;
        double number = any(p.hard_min, p.hard_max);
        if (is_whole(p.kind)) number = std::round(number);
        const Value value = Value::of_number(p.kind, number);
        for (const Units units : {Units::metric, Units::feet}) {
          const ValueText shown = text_of(p, value, units);
          const auto back = read_field(p, value, shown.text, units);
          RC_ASSERT(bool(back));
          RC_ASSERT(*back == value);
          // Where it is told to be exact, it is without knowing what stood there.
          if (!shown.exact) continue;
          const auto anew = read_typed(p, shown.text, units);
          RC_ASSERT(bool(anew));
          RC_ASSERT(std::abs(anew->number - number) <= 1e-12 * std::max(1.0, std::abs(number)));
        }
      }
  }));
}

TEST_CASE("the standard values of every type stand in their fields and read back") {
  for (const Units units : {Units::metric, Units::feet})
    for (const PieceType& type : types_here().types)
      for (const Parameter& p : type.parameters) {
        CAPTURE(p.key);
        const auto back = read_field(p, p.standard, text_of(p, p.standard, units).text, units);
        REQUIRE_MESSAGE(back, back.error);
        CHECK(*back == p.standard);
      }
}

TEST_CASE("refusals are in the units of the form, and say what would be accepted") {
  const Parameter span = length_parameter("Span", 0.5, 6, 2.4);
  CHECK(read_typed(span, "9", Units::metric).error == "Span is 9 m: 0.5 m to 6 m would be accepted.");
  CHECK(read_typed(span, "30", Units::feet).error == "Span is 30': 1' 8\" to 19' 8\" would be accepted.");
  CHECK(read_typed(span, "9 m", Units::feet).error.find("1' 8\" to 19' 8\"") != std::string::npos);
  CHECK(read_typed(number_parameter("Clusters", Kind::count, 0, 50, 0), "7/2", Units::metric).error.find("no whole") !=
        std::string::npos);
  CHECK(read_typed(span, "wide", Units::metric).error.find("'wide'") != std::string::npos);
}

TEST_CASE("a choice is taken by its label or its key, in either case, and a slip is recognised") {
  const Parameter& frame = *types_here().find("arch")->find("frame");
  CHECK(read_typed(frame, "Half circle", Units::metric)->text == "half-circle");
  CHECK(read_typed(frame, " HALF-CIRCLE ", Units::metric)->text == "half-circle");
  const std::string fault = read_typed(frame, "sqaure", Units::metric).error;
  CHECK(fault.find("Flexible rod, Half circle, Half ellipse or Square") != std::string::npos);
  CHECK(fault.find("did you mean 'square'?") != std::string::npos);
  const Parameter& wall = *types_here().find("garland")->find("wall");
  CHECK(read_typed(wall, "yes", Units::metric)->number == 1);
}

TEST_CASE("a path is a table of places in the event's units, typed cell by cell") {
  const Parameter& path = *types_here().find("garland")->find("path");
  const Value line = Value::of_list(Kind::path, {-1.5, 0, 0.5, 1.5, 0.25, 2});
  const CellTable table = cell_table(path, line, Units::metric);
  REQUIRE(table.columns.size() == 3);
  CHECK(table.columns[2].label == "Height");
  CHECK(table.columns[2].unit == "m");
  CHECK(table.rows == std::vector<std::vector<std::string>>{{"-1.5", "0", "0.5"}, {"1.5", "0.25", "2"}});
  const auto higher = with_cell(path, line, 1, 2, "2m + 10cm", Units::metric);
  REQUIRE(higher);
  CHECK(higher->list[5] == doctest::Approx(2.1));
  CHECK(with_cell(path, line, 0, 0, "-5'", Units::feet)->list[0] == doctest::Approx(-1.524));
  CHECK(with_cell(path, line, 1, 2, "90", Units::metric).error.find("Row 2, Height: ") == 0);
  CHECK_FALSE(with_cell(path, line, 2, 0, "1", Units::metric));
  CHECK(with_row_after(line, 0).list == std::vector<double>{-1.5, 0, 0.5, 0, 0.125, 1.25, 1.5, 0.25, 2});
  CHECK(with_row_after(line, 1).list == std::vector<double>{-1.5, 0, 0.5, 1.5, 0.25, 2, 4.5, 0.5, 3.5});
  CHECK(without_list_row(with_row_after(line, 0), 1) == line);
  CHECK(without_list_row(line, 1) == line);
}

TEST_CASE("a mix is a table of sizes, diameters and shares") {
  const Parameter& mix = *types_here().find("garland")->find("mix");
  const Value sizes = Value::of_list(Kind::mix, {5, 0.1, 0.4, 11, 0.24, 0.6});
  const CellTable table = cell_table(mix, sizes, Units::metric);
  CHECK(table.columns[1].unit == "cm");
  CHECK(table.rows[1] == std::vector<std::string>{"11", "24", "0.6"});
  CHECK(with_cell(mix, sizes, 1, 2, "55%", Units::metric)->list[5] == doctest::Approx(0.55));
  CHECK(with_cell(mix, sizes, 1, 1, "9.5in", Units::metric)->list[4] == doctest::Approx(0.2413));
  CHECK_FALSE(with_cell(mix, sizes, 0, 0, "0", Units::metric));
  CHECK(without_list_row(without_list_row(sizes, 0), 0).list == std::vector<double>{11, 0.24, 0.6});
}
