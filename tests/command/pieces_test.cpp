// `quadrille pieces`, the words without a verb, and the command as a function.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "scene.hpp"
#include "studio/command/run.hpp"
#include "tests/places.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

TEST_CASE("pieces --json has the arch with its whole table") {
  const Folder folder;
  const Ran outcome = quadrille_in(folder, {"pieces", "--json"});
  CHECK(outcome.exit == 0);
  const Json json = Json::parse(outcome.out);
  const Json* arch = nullptr;
  for (const Json& type : json["types"])
    if (type["id"] == "arch") arch = &type;
  REQUIRE(arch);
  const Json* span = nullptr;
  for (const Json& parameter : (*arch)["parameters"]) {
    for (const char* key : {"key", "label", "hint", "group", "kind", "unit", "default", "default_text", "hard_min",
                            "hard_max", "display_min", "display_max", "decimals", "choices", "aliases", "handle"})
      CHECK(parameter.contains(key));
    if (parameter["key"] == "span") span = &parameter;
  }
  REQUIRE(span);
  CHECK((*span)["kind"] == "length");
  CHECK((*span)["unit"] == "m");
}

TEST_CASE("a refused plugin file is listed with its reason") {
  const Folder folder;
  put_file(folder.path() / "plugins" / "letter.so", "Not a library at all.\n");
  auto environment = environment_in(folder);
  environment["QUADRILLE_PIECES_PATH"] = folder / "plugins";
  const Ran json = run_in(folder, quadrille_program, {"pieces", "--json"}, environment);
  CHECK(json.exit == 0);
  bool found = false;
  const Json refused = Json::parse(json.out)["refused"];
  for (const Json& file : refused)
    found = found || (file["reason"] == "not-a-library" && file["file"].get<std::string>().ends_with("letter.so") &&
                      !file["sentence"].empty());
  CHECK(found);
  const Ran text = run_in(folder, quadrille_program, {"pieces", "--try-again"}, environment);
  CHECK(text.exit == 0);
  CHECK(text.out.find("letter.so") != std::string::npos);
  CHECK(text.out.find("rod-length") != std::string::npos);
}

TEST_CASE("--prove passes our arch and fails what is no plugin") {
  const Folder folder;
  const Ran arch = quadrille_in(folder, {"pieces", "--prove", build_place("pieces/arch.so")});
  CAPTURE(arch.out);
  CHECK(arch.exit == 0);
  CHECK(arch.out.find("pass  deterministic") != std::string::npos);
  put_file(folder.path() / "letter.so", "Not a library at all.\n");
  const Ran letter = quadrille_in(folder, {"pieces", "--prove", folder / "letter.so", "--json"});
  CHECK(letter.exit == 1);
  CHECK(Json::parse(letter.out)["passed"] == false);
  CHECK(quadrille_in(folder, {"pieces", "--prove", folder / "none.so"}).exit == 3);
}

TEST_CASE("help and version end with 0 on the standard output; anything else without a verb is bad usage") {
  const Folder folder;
  for (const char* word : {"--help", "--version"}) {
    const Ran outcome = quadrille_in(folder, {word});
    CHECK(outcome.exit == 0);
    CHECK_FALSE(outcome.out.empty());
    CHECK(outcome.err.empty());
  }
  CHECK(quadrille_in(folder, {"draw", "--help"}).exit == 0);
  for (const std::vector<std::string>& words :
       std::vector<std::vector<std::string>>{{}, {"paint"}, {"--loud"}, {"count"}, {"count", "a", "b"}, {"check"}}) {
    const Ran outcome = quadrille_in(folder, words);
    CHECK(outcome.exit == 2);
    CHECK(outcome.out.empty());
    CHECK_FALSE(outcome.err.empty());
  }
}

TEST_CASE("an event may be named like a verb") {
  const Folder folder;
  put_scene(folder);
  const std::string script = "cd '" + folder.path().string() + "' && cp supper.quadrille draw && '" +
                             quadrille_program + "' count draw --json";
  CHECK(run_in(folder, "bash", {"-c", script}, environment_in(folder)).exit == 0);
}

TEST_CASE("the command is a function of its arguments and streams") {
  const Folder folder;
  std::ostringstream out, err;
  const std::vector<std::string> arguments{"count", folder / "none.quadrille"};
  CHECK(run(arguments, out, err, quadrille_program) == 3);
  CHECK(out.str().empty());
  CHECK(err.str().ends_with("\n"));
}

}  // namespace
}  // namespace quadrille
