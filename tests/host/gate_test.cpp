// The gate: who is let in, and the typed reason of everyone who is not.
#include "studio/host/gate.hpp"

#include <dlfcn.h>

#include <set>

#include "studio/host/builder.hpp"
#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

TEST_CASE("a sound plugin in C++ comes in with its whole table") {
  const PieceType type = type_of("post");
  CHECK(type.id == "post");
  CHECK(type.plugin_id == "test.post");
  CHECK(type.plugin_version == "1.0.0");
  CHECK(type.file == plugin("post"));
  REQUIRE(type.parameters.size() == 13);
  const Parameter& height = type.parameters[0];
  CHECK(height.key == "height");
  CHECK(height.kind == Kind::length);
  CHECK(height.hard_min == 0.5);
  CHECK(height.hard_max == 6);
  CHECK(height.display_min == 1);
  CHECK(height.display_max == 3);
  CHECK(height.standard == Value::of_number(Kind::length, 2));
  CHECK(height.decimals == 3);
  CHECK(height.aliases == std::vector<std::string>{"tall", "size"});
  CHECK(type.find("tall") == &height);
  CHECK(type.find("wide") == nullptr);
  const Parameter* dressing = type.find("dressing");
  REQUIRE(dressing != nullptr);
  REQUIRE(dressing->choices.size() == 2);
  CHECK(dressing->choices[1].key == "sparse");
  CHECK(dressing->standard == Value::of_text(Kind::choice, "dense"));
  CHECK(type.find("path")->standard == Value::of_list(Kind::path, {0, 0, 0, 0, 0, 2}));
  CHECK(type.find("mix")->standard == Value::of_list(Kind::mix, {11, 0.28, 0.6, 5, 0.12, 0.4}));
}

TEST_CASE("a plugin in plain C, a stripped one and one without unique symbols come in") {
  CHECK(type_of("plain").id == "plain");
  CHECK(type_of("stripped").id == "stripped");
  CHECK(type_of("post_not_unique").id == "post-not-unique");
}

TEST_CASE("shorter entries of an older minor version are read by their own size") {
  const PieceType type = type_of("older_minor");
  REQUIRE(type.parameters.size() == 2);
  CHECK(type.parameters[1].key == "up");
  CHECK(type.parameters[1].standard.number == 1.5);
  CHECK(type.parameters[1].decimals == 0);
  const auto built = build_piece(type, {{"across", Value::of_number(Kind::length, 0.5)}});
  REQUIRE(built->status == Status::ok);
  REQUIRE(built->piece.balloons.size() == 2);
  CHECK(built->piece.balloons[1].slot == 4);
  CHECK(built->piece.balloons[1].diameter_m == 0.5);
  CHECK(built->piece.balloons[1].cluster == 0);
  CHECK(built->piece.balloons[1].role == Role::body);
}

TEST_CASE("parameters and messages of version 1.0 are read to their end, and nothing of what lies behind them") {
  const PieceType type = type_of("version_1_0");
  REQUIRE(type.parameters.size() == 2);
  for (const Parameter& parameter : type.parameters) {
    CHECK(parameter.handle_gain == 1);
    CHECK(parameter.only_with.empty());
  }
  CHECK(type.parameters[0].decimals == 2);
  CHECK(type.parameters[0].handle_end == QUADRILLE_HANDLE_TOP);
  CHECK(type.parameters[1].label == "Up");
  CHECK(type.parameters[1].advanced);
  const auto built = build_piece(type, {});
  REQUIRE(built->status == Status::ok);
  REQUIRE(built->piece.messages.size() == 2);
  CHECK(built->piece.messages[0].text == "The first.");
  CHECK(built->piece.messages[1].key == "up");
  CHECK(built->piece.messages[1].text == "The second.");
  for (const Message& message : built->piece.messages) CHECK(message.remedy.empty());
}

TEST_CASE("each kind of unfit plugin has its own reason") {
  const auto reason = [](const std::string& name) { return refusal(plugin(name)).reason; };
  CHECK(reason("no_symbol") == RefusalReason::no_symbol);
  CHECK(reason("function_symbol") == RefusalReason::no_symbol);
  CHECK(reason("newer_major") == RefusalReason::newer_major);
  CHECK(reason("older_major") == RefusalReason::other_major);
  CHECK(reason("newer_minor") == RefusalReason::newer_minor);
  CHECK(reason("small_struct") == RefusalReason::struct_too_small);
  CHECK(reason("small_type") == RefusalReason::struct_too_small);
  CHECK(reason("no_types") == RefusalReason::bad_table);
  CHECK(reason("no_plugin_id") == RefusalReason::bad_table);
  CHECK(reason("missing_library") == RefusalReason::cannot_load);
  CHECK(reason("throws") == RefusalReason::build_throws);
  CHECK(reason("throws_number") == RefusalReason::build_throws);
  CHECK(reason("fails_inside") == RefusalReason::build_throws);
  CHECK(reason("not_finite") == RefusalReason::build_not_finite);
  CHECK(reason("ten_million") == RefusalReason::build_too_large);
  CHECK(reason("no_such_node") == RefusalReason::build_broken);
  CHECK(reason("refuses_itself") == RefusalReason::build_broken);
}

TEST_CASE("the sentence says what was wrong, in words") {
  const auto says = [](const std::string& name, const std::string& words) {
    const std::string sentence = refusal(plugin(name)).sentence;
    CAPTURE(sentence);
    CHECK(sentence.find(words) != std::string::npos);
  };
  says("newer_major", "version 2.1 of the contract");
  says("older_major", "version 0.1 of the contract");
  says("newer_minor", "version 1.2 of the contract");
  says("missing_library", "function_of_nobody");
  says("throws", "out of balloons");
  says("refuses_itself", "Not today.");
  says("fails_inside", "nowhere");
  says("not_finite", "balloon 2 has a number that is not finite");
  says("ten_million", "more than 200000 records of the kind 'balloon'");
  says("no_such_node", "node 7");
}

TEST_CASE("a plugin of an older major version is not called newer") {
  // It was refused for the reason "newer-major", which sends its owner to update the wrong side.
  CHECK(key_of(refusal(plugin("older_major")).reason) == "other-major");
  CHECK(key_of(refusal(plugin("newer_major")).reason) == "newer-major");
}

TEST_CASE("why the system cannot load a library is told in its own words alone") {
  // The sentence showed the names of functions of Boost, and "Bad file descriptor", a code that means nothing here.
  CHECK(refusal(plugin("missing_library")).sentence ==
        "The system cannot load it: undefined symbol: function_of_nobody.");
}

TEST_CASE("nothing of a plugin of another version is run") {
  ::unsetenv("QUADRILLE_TEST_LOADED");
  for (const char* name : {"newer_major", "older_major", "newer_minor", "small_struct"}) {
    refusal(plugin(name));
    CHECK(::getenv("QUADRILLE_TEST_LOADED") == nullptr);
  }
  // The sign works: loading one of them by hand leaves it.
  void* handle = ::dlopen(plugin("newer_major").c_str(), RTLD_NOW | RTLD_LOCAL);
  REQUIRE(handle != nullptr);
  CHECK(::getenv("QUADRILLE_TEST_LOADED") != nullptr);
  ::dlclose(handle);
  ::unsetenv("QUADRILLE_TEST_LOADED");
}

TEST_CASE("of several types in one plugin the sound one comes in, the others are named") {
  const Admission admission = admit(plugin("two_types"), std::nullopt, false);
  REQUIRE(admission.types.size() == 1);
  CHECK(admission.types[0].id == "sound");
  REQUIRE(admission.refused.size() == 2);
  CHECK(admission.refused[0].type == "upside-down");
  CHECK(admission.refused[0].reason == RefusalReason::bad_table);
  CHECK(admission.refused[1].type == "silent");
  CHECK(admission.refused[1].reason == RefusalReason::build_broken);
}

TEST_CASE("no two reasons share a key") {
  std::set<std::string_view> keys;
  for (int reason = 0; reason <= static_cast<int>(RefusalReason::crashed_before); ++reason)
    keys.insert(key_of(static_cast<RefusalReason>(reason)));
  CHECK(keys.size() == static_cast<std::size_t>(RefusalReason::crashed_before) + 1);
  CHECK(!keys.contains("unknown"));
}
