// A plugin's table: what is refused, and that nothing in it can crash the studio.
#include "studio/host/table_check.hpp"

#include <array>
#include <limits>

#include "tests/host/fixture.hpp"

using namespace quadrille;

namespace {

std::int32_t build(const quadrille_value*, std::uint32_t, const quadrille_sink*) { return QUADRILLE_OK; }

constexpr quadrille_choice choices[] = {{"left", "Left"}, {"right", "Right"}};

quadrille_parameter width() {
  return {"width", "Width", "How wide.", "Size", "", "", nullptr, 0, QUADRILLE_LENGTH, 1, 5, 1,
          5,       2,       2,           0,      0,  0,  0,       ""};
}
quadrille_parameter side() {
  return {"side", "Side", "Which side.", "Size", "", "right", choices, 2, QUADRILLE_CHOICE, 0, 0, 0, 0, 0, 0, 0, 0, 0,
          0,      ""};
}

quadrille_piece_type type_with(const std::vector<quadrille_parameter>& parameters) {
  return {"thing",
          "Thing",
          "A thing.",
          parameters.data(),
          static_cast<std::uint32_t>(parameters.size()),
          sizeof(quadrille_parameter),
          build};
}

/// The sentence for a table of a width changed by `change` and a side; empty where it is taken.
template <class Change>
std::string fault(Change&& change) {
  std::vector<quadrille_parameter> parameters{width(), side()};
  change(parameters);
  return read_piece_type(type_with(parameters)).error;
}

using Table = std::vector<quadrille_parameter>;
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

}  // namespace

TEST_CASE("a sound table is taken") {
  CHECK(fault([](Table&) {}) == "");
  CHECK(read_piece_type(type_with({})).error == "");
}

TEST_CASE("texts that are missing, empty or not UTF-8 are refused by name") {
  CHECK(fault([](Table& t) { t[0].key = nullptr; }) == "The key of parameter 1 is missing (NULL).");
  CHECK(fault([](Table& t) { t[0].label = nullptr; }) == "Parameter 'width': the label is missing (NULL).");
  CHECK(fault([](Table& t) { t[0].hint = nullptr; }) == "Parameter 'width': the hint is missing (NULL).");
  CHECK(fault([](Table& t) { t[0].group = nullptr; }) == "Parameter 'width': the group is missing (NULL).");
  CHECK(fault([](Table& t) { t[0].aliases = nullptr; }) != "");
  CHECK(fault([](Table& t) { t[0].default_text = nullptr; }) != "");
  CHECK(fault([](Table& t) { t[0].label = "W\xFF"; }) == "Parameter 'width': the label is not UTF-8 text.");
  CHECK(fault([](Table& t) { t[0].label = ""; }) == "Parameter 'width' has no label.");
  quadrille_piece_type type = type_with({});
  type.id = nullptr;
  CHECK(read_piece_type(type).error == "The id of the piece type is missing (NULL).");
  type = type_with({});
  type.name = "\xC3";
  CHECK_FALSE(read_piece_type(type));
  type = type_with({});
  type.description = nullptr;
  CHECK_FALSE(read_piece_type(type));
  type = type_with({});
  type.id = "Not A Key";
  CHECK_FALSE(read_piece_type(type));
}

TEST_CASE("an endless text is refused") {
  const std::string endless(10'000'000, 'x');
  CHECK(fault([&](Table& t) { t[0].hint = endless.c_str(); }) ==
        "Parameter 'width': the hint is longer than a text may be.");
}

TEST_CASE("keys are unique, aliases and choices too") {
  CHECK(fault([](Table& t) { t[1] = width(); }) == "The key 'width' stands for two parameters.");
  CHECK(fault([](Table& t) { t[1].aliases = "old  width"; }) == "The key 'width' stands for two parameters.");
  CHECK(fault([](Table& t) { t[1].aliases = "old older"; }) == "");
  CHECK(fault([](Table& t) { t[0].key = "Width"; }) != "");
  CHECK(fault([](Table& t) { t[0].key = "wid th"; }) != "");
  CHECK(fault([](Table& t) { t[0].key = ""; }) != "");
  static constexpr quadrille_choice same[] = {{"a", "A"}, {"a", "Again"}};
  CHECK(fault([](Table& t) { t[1].choices = same, t[1].default_text = "a"; }) ==
        "Parameter 'side' has the choice 'a' twice.");
}

TEST_CASE("ranges are finite, the right way round, and hold the default") {
  for (auto field : {&quadrille_parameter::hard_min, &quadrille_parameter::hard_max, &quadrille_parameter::display_min,
                     &quadrille_parameter::display_max, &quadrille_parameter::default_number})
    for (const double number : {not_a_number, infinity, -infinity})
      CHECK(fault([&](Table& t) { t[0].*field = number; }) != "");
  CHECK(fault([](Table& t) { t[0].hard_min = 9; }) == "Parameter 'width' has a range that ends below its beginning.");
  CHECK(fault([](Table& t) { t[0].display_max = 6; }) == "Parameter 'width' offers values outside its hard range.");
  CHECK(fault([](Table& t) { t[0].default_number = 7; }) ==
        "Parameter 'width' has a default that it does not accept itself: Width is 7 m (22' 11 1/2\"): 1 m to 5 m (3' 3 "
        "1/2\" to 16' 5\") would be "
        "accepted.");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_COUNT, t[0].default_number = 2.5; }) != "");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_SLOTS, t[0].hard_max = t[0].display_max = 6; }) == "");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_SLOTS, t[0].hard_max = t[0].display_max = 7; }) != "");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_FLAG; }) != "");
}

TEST_CASE("a count is bounded by what an int holds, other numbers by what can be printed") {
  // A count with a default of 1e300 passed: as an int it was undefined, and printed it showed bytes of the stack.
  const auto fault_of_range = [](std::uint32_t kind, double least, double most) {
    return fault([=](Table& t) {
      t[0].kind = kind;
      t[0].hard_min = t[0].display_min = least;
      t[0].hard_max = t[0].display_max = t[0].default_number = most;
    });
  };
  // The largest int of 32 bits is 2^31 − 1, and the SDK gives a count as an int.
  constexpr double most = 2147483647;
  CHECK(fault_of_range(QUADRILLE_COUNT, -most, most) == "");
  CHECK(fault_of_range(QUADRILLE_COUNT, 0, most + 1) ==
        "Parameter 'width' has a range beyond its kind: -2147483647 to 2147483647 would be accepted.");
  CHECK(fault_of_range(QUADRILLE_COUNT, -most - 1, 0) != "");
  CHECK(fault_of_range(QUADRILLE_COUNT, 0, 1e300) != "");
  for (const auto kind : {QUADRILLE_LENGTH, QUADRILLE_ANGLE, QUADRILLE_MASS, QUADRILLE_RATIO, QUADRILLE_BALLOON}) {
    CAPTURE(static_cast<int>(kind));
    CHECK(fault_of_range(kind, 0, 1e12) == "");
    CHECK(fault_of_range(kind, 0, 1e300) != "");
    CHECK(fault_of_range(kind, -1e300, 0) != "");
  }
}

TEST_CASE("a field that a later minor version appends does not shut out plugins of 1.0") {
  // The least sizes were those of today's structs, so the first appended field would have refused every plugin there is.
  // By hand, with pointers of p bytes and whole numbers of 4: pieces have six numbers and three pointers; a type has four
  // pointers, two numbers and its function; a parameter up to its default seven pointers, two numbers and five doubles.
  constexpr std::size_t p = sizeof(void*);
  CHECK(least_table_size == 6 * 4 + 3 * p);
  CHECK(least_type_size == 5 * p + 2 * 4);
  CHECK(least_parameter_size == 7 * p + 2 * 4 + 5 * 8);
  // Entries of a later version are longer: what stands behind ours is passed over.
  struct Later {
    quadrille_piece_type now;
    double appended;
  };
  const std::array<Later, 2> later{{{type_with({}), 1}, {type_with({}), 2}}};
  CHECK((entry_at<quadrille_piece_type>(later.data(), 1, sizeof(Later)).build == build));
  CHECK(read_piece_type(entry_at<quadrille_piece_type>(later.data(), 1, sizeof(Later))).error == "");
  // And the other way round: an entry of 1.0 read by a studio that knows more has a zero there.
  const std::array<quadrille_piece_type, 2> now{type_with({}), type_with({})};
  const Later read = entry_at<Later>(now.data(), 1, least_type_size);
  CHECK((read.now.build == build));
  CHECK(read.appended == 0);
}

TEST_CASE("kinds, choices, defaults and handles are known ones") {
  CHECK(fault([](Table& t) { t[0].kind = 0; }) == "Parameter 'width' is of the unknown kind 0.");
  CHECK(fault([](Table& t) { t[0].kind = 14; }) == "Parameter 'width' is of the unknown kind 14.");
  CHECK(fault([](Table& t) { t[1].choices = nullptr; }) == "Parameter 'side' has no choices.");
  CHECK(fault([](Table& t) { t[1].choice_count = 0; }) == "Parameter 'side' has no choices.");
  CHECK(fault([](Table& t) { t[1].choice_count = 4'000'000'000u; }) == "Parameter 'side' has too many choices.");
  CHECK(fault([](Table& t) { t[1].default_text = "middle"; }) ==
        "Parameter 'side' has a default that it does not accept itself: Side is 'middle': left or right would "
        "be accepted.");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_PATH, t[0].default_text = "1 2; here"; }) != "");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_PATH, t[0].default_text = "1 2; 3 4"; }) !=
        "");  // y = 0 is outside 1 to 5
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_ROWS, t[0].default_text = "AXB"; }) != "");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_ROWS, t[0].default_text = "AB BA"; }) == "");
  CHECK(fault([](Table& t) { t[0].kind = QUADRILLE_MIX, t[0].default_text = "11in 0.28m"; }) != "");
  CHECK(fault([](Table& t) { t[0].handle_end = 5; }) != "");
  CHECK(fault([](Table& t) { t[0].handle_axis = 3; }) != "");
  CHECK(fault([](Table& t) { t[0].decimals = 4'000'000'000u; }) != "");
}

TEST_CASE("a table without build, without parameters where it counts some, or with far too many is refused") {
  quadrille_piece_type type = type_with({});
  type.build = nullptr;
  CHECK(read_piece_type(type).error == "The piece type 'thing' has no build function (NULL).");
  type = type_with({});
  type.parameters = nullptr;
  type.parameter_count = 1;
  CHECK_FALSE(read_piece_type(type));
  type.parameter_count = 4'000'000'000u;
  CHECK_FALSE(read_piece_type(type));
}

TEST_CASE("conditions name another parameter and something that it can hold") {
  CHECK(fault([](Table& t) { t[0].only_with = "side=left"; }) == "");
  CHECK(fault([](Table& t) { t[0].only_with = nullptr; }) == "");
  CHECK(fault([](Table& t) { t[1].only_with = "width>0"; }) == "");
  CHECK(fault([](Table& t) { t[0].only_with = "side=middle"; }) ==
        "Parameter 'width' depends on 'side=middle', which that parameter can never be asked.");
  CHECK(fault([](Table& t) { t[0].only_with = "colour=red"; }) ==
        "Parameter 'width' depends on 'colour', which is no other parameter.");
  CHECK(fault([](Table& t) { t[0].only_with = "width>0"; }) != "");
  CHECK(fault([](Table& t) { t[0].only_with = "side>0"; }) != "");
  CHECK(fault([](Table& t) { t[1].only_with = "width=3"; }) != "");
}

TEST_CASE("conditions of another kind refused a whole plugin: now the field is always offered, and says why") {
  for (const char* strange :
       {"side", "=left", "side=", "side!=", ">0", "|", "side>=2", "side=left&width>1", "side~left"}) {
    CAPTURE(strange);
    std::vector<quadrille_parameter> parameters{width(), side()};
    parameters[0].only_with = strange;
    const auto read = read_piece_type(type_with(parameters));
    REQUIRE(read);
    CHECK(read->parameters[0].only_with.empty());
    CHECK(read->parameters[0].hint.find("How wide. (It is always offered") == 0);
    CHECK(read->parameters[1].hint == "Which side.");
  }
  std::vector<quadrille_parameter> parameters{width(), side()};
  parameters[0].only_with = "side=left|";  // an empty alternative is passed over
  CHECK(read_piece_type(type_with(parameters))->parameters[0].only_with.size() == 1);
}

TEST_CASE("what few people change is marked, and a flag of a later version is passed over") {
  std::vector<quadrille_parameter> parameters{width(), side()};
  parameters[0].flags = QUADRILLE_ADVANCED;
  parameters[1].flags = 6;
  const auto read = read_piece_type(type_with(parameters));
  REQUIRE(read);
  CHECK(read->parameters[0].advanced);
  CHECK_FALSE(read->parameters[1].advanced);
}

TEST_CASE("a handle's gain is finite, and 0 counts as 1") {
  CHECK(fault([](Table& t) { t[0].handle_gain = not_a_number; }) != "");
  std::vector<quadrille_parameter> parameters{width(), side()};
  parameters[1].handle_gain = 2;
  const auto read = read_piece_type(type_with(parameters));
  REQUIRE(read);
  CHECK(read->parameters[0].handle_gain == 1);
  CHECK(read->parameters[1].handle_gain == 2);
}
