// The examples that come with the program: sound, and the same numbers wherever they are shown.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "has_word.hpp"
#include "program.hpp"
#include "sdk/number.hpp"
#include "tests/places.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

/// All of them; with the sanitizers the smallest.
std::vector<std::string> example_files() {
  if (sanitized) return {source_place("examples/lantern-fair.quadrille")};
  std::vector<std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(source_place("examples")))
    if (entry.path().extension() == ".quadrille") files.push_back(entry.path().string());
  return files;
}

TEST_CASE("every example is without problems, and its totals are the sums of its pieces") {
  const Folder folder;
  auto environment = environment_in(folder);
  environment["QUADRILLE_PALETTES_PATH"] = source_place("palettes");
  const auto files = example_files();
  CHECK_FALSE(files.empty());
  for (const std::string& file : files) {
    CAPTURE(file);
    const Ran checked = run_in(folder, quadrille_program, {"check", file}, environment);
    CAPTURE(checked.out);
    CHECK(checked.exit == 0);
    CHECK(checked.out.find("stands in") == std::string::npos);  // nor do their pieces stand in each other
    const Ran counted = run_in(folder, quadrille_program, {"count", file, "--json"}, environment);
    CHECK(counted.exit == 0);
    const Json json = Json::parse(counted.out);
    std::int64_t in_lines = 0, in_pieces = 0, needed = 0, ordered = 0;
    for (const Json& line : json["balloons"]) {
      in_lines += line["used"].get<std::int64_t>();
      needed += line["used"].get<std::int64_t>() + line["spares"].get<std::int64_t>();
      ordered += line["order"].get<std::int64_t>();
    }
    for (const Json& piece : json["pieces"]) in_pieces += piece["balloons"].get<std::int64_t>();
    CHECK(in_lines == json["total_balloons"].get<std::int64_t>());
    CHECK(in_pieces == in_lines);
    CHECK(ordered >= needed);
  }
}

TEST_CASE("one example dresses a whole venue: of how many pieces and balloons nothing was held" *
          doctest::skip(sanitized)) {
  const Folder folder;
  auto environment = environment_in(folder);
  environment["QUADRILLE_PALETTES_PATH"] = source_place("palettes");
  const std::string venue = source_place("examples/midwinter-ball.quadrille");
  const Ran counted = run_in(folder, quadrille_program, {"count", venue, "--json"}, environment);
  REQUIRE(counted.exit == 0);
  const Json json = Json::parse(counted.out);
  CHECK(json["pieces"].size() >= 25);
  CHECK(json["total_balloons"].get<std::int64_t>() >= 6000);
}

TEST_CASE("the drawing of every example holds the counts and supplies that count prints") {
  const Folder folder;
  auto environment = environment_in(folder);
  environment["QUADRILLE_PALETTES_PATH"] = source_place("palettes");
  for (const std::string& file : example_files()) {
    CAPTURE(file);
    const Ran counted = run_in(folder, quadrille_program, {"count", file, "--json"}, environment);
    REQUIRE(
        run_in(folder, quadrille_program, {"draw", file, "--units", "metric", "--out", folder / "a.pdf"}, environment)
            .exit == 0);
    const Ran text = run_in(folder, "pdftotext", {"-layout", folder / "a.pdf", "-"}, environment);
    REQUIRE_MESSAGE(text.exit == 0, "pdftotext (package poppler-utils) is needed");
    const Json json = Json::parse(counted.out);
    for (const Json& line : json["balloons"]) {
      const auto name = line["colour_name"].get<std::string>(), used = std::to_string(line["used"].get<std::int64_t>());
      CAPTURE(name);
      CHECK(has_line_with(text.out, {name, used}));
    }
    CHECK(json["supplies"].size() > 3);
    for (const Json& line : json["supplies"]) {
      // A long name goes on in a second line; the quantity stands in the first.
      const auto whole = line["name"].get<std::string>();
      const auto name = whole.substr(0, std::min(whole.find(" ("), whole.find(" section of")));
      const auto quantity = line["quantity"].get<double>();
      const auto unit = line["unit"].get<std::string>();
      CAPTURE(name);
      // Line from 3 m on to a tenth of a metre that suffices, water from 10 l on to a litre.
      const std::string told = unit == "piece" ? print_fixed(quantity, 0)
                               : unit != "m"   ? print_fixed(quantity, unit == "l" && quantity >= 9.95 ? 0 : 1)
                               : quantity < 3  ? print_fixed(quantity, 2)
                                               : print_fixed(std::ceil(quantity * 10 - 1e-6) / 10, 1);
      CHECK(has_line_with(text.out, {name, told}));
    }
    CHECK(has_line_with(text.out, {"All balloons", std::to_string(json["total_balloons"].get<std::int64_t>())}));
  }
}

}  // namespace
}  // namespace quadrille
