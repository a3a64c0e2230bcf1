// The sheets for the day, read off the PDF: what stands on them is what `count`, `plan` and `stand` print for programs.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "has_word.hpp"
#include "program.hpp"
#include "studio/labour/clock.hpp"
#include "studio/standing/level_words.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/takeoff/print.hpp"
#include "tests/places.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

/// An example with what is asked of it. With the sanitizers it is the smallest alone.
struct Example {
  const char* name;
  Units units;
  std::vector<std::string> area;  ///< the one whose standing is looked at; empty = all
};

std::vector<Example> examples() {
  if (sanitized) return {{"lantern-fair", Units::feet, {"--area", "Gate"}}};
  return {{"lantern-fair", Units::feet, {}},
          {"orchard-supper", Units::metric, {}},
          {"midwinter-ball", Units::metric, {"--area", "Drive"}}};
}

/// Runs the program on the examples.
class OnExamples {
 public:
  OnExamples() : environment_(environment_in(folder_)) {
    environment_["QUADRILLE_PALETTES_PATH"] = source_place("palettes");
  }
  Json json(const char* verb, const Example& example, const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{verb, file(example), "--json"};
    words.insert(words.end(), more.begin(), more.end());
    const Ran ran = run_in(folder_, quadrille_program, words, environment_);
    REQUIRE(ran.exit <= 1);
    return Json::parse(ran.out);
  }
  /// The words of a sheet, as they lie on its pages.
  std::string sheet(const char* kind, const Example& example, const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"draw", file(example), "--sheet", kind, "--out", folder_ / "s.pdf"};
    words.insert(words.end(), more.begin(), more.end());
    REQUIRE(run_in(folder_, quadrille_program, words, environment_).exit <= 1);
    const Ran text = run_in(folder_, "pdftotext", {"-layout", folder_ / "s.pdf", "-"}, environment_);
    REQUIRE_MESSAGE(text.exit == 0, "pdftotext (package poppler-utils) is needed");
    return text.out;
  }

 private:
  static std::string file(const Example& example) {
    return source_place("examples/") + example.name + ".quadrille";
  }
  Folder folder_;
  Environment environment_;
};

/// As many whole words of `text` as are surely on its first line.
std::string beginning(const std::string& text, std::size_t most = 26) {
  if (text.size() <= most) return text;
  const std::size_t blank = text.rfind(' ', most);
  return text.substr(0, blank == std::string::npos ? most : blank);
}

std::string moment(const Json& json) {
  if (!json["clock"].is_null()) {
    const int day = json["day"];
    return json["clock"].get<std::string>() + (day == 0 ? "" : (day > 0 ? "+" : "") + std::to_string(day));
  }
  const std::int64_t minutes = json["second_s"].get<std::int64_t>() / 60;
  return std::to_string(minutes / 60) + (minutes % 60 < 10 ? ":0" : ":") + std::to_string(minutes % 60);
}

TEST_CASE("the pull list of every example has the bags and supplies of its count") {
  const OnExamples on;
  for (const Example& example : examples()) {
    CAPTURE(example.name);
    const Json count = on.json("count", example);
    const std::string text = on.sheet("pull", example);
    REQUIRE(count["bags"].size() > 0);
    for (const Json& bag : count["bags"]) {
      const std::string colour = bag["colour_name"];
      CAPTURE(colour);
      const auto balloons = bag["used"].get<std::int64_t>() + bag["spares"].get<std::int64_t>();
      CHECK(has_line_with(text, {print_nominal(bag["nominal_in"]), colour, std::to_string(balloons)}));
    }
    for (const Json& supply : count["supplies"]) {
      const std::string key = supply["key"];
      if (key == "ballast" || key == "ballast-water") continue;  // the containers say what to fill in
      CAPTURE(key);
      const std::string quantity = print_quantity(supply["quantity"].get<double>(), supply["unit"].get<std::string>(),
                                                  lengths_in(example.units));
      CHECK(has_line_with(text, {beginning(supply["name"]), quantity}));
    }
  }
}

TEST_CASE("the day sheet of every example has the tasks of its plan, and as much work") {
  const OnExamples on;
  for (const Example& example : examples()) {
    CAPTURE(example.name);
    const Json plan = on.json("plan", example);
    const std::string text = on.sheet("day", example);
    REQUIRE(plan["tasks"].size() > 10);
    for (const Json& task : plan["tasks"]) {
      CAPTURE(task["id"].get<std::string>());
      CHECK(has_line_with(text, {moment(task["start"]), moment(task["end"]), beginning(task["text"], 22)}));
    }
    CHECK(text.find(print_duration(plan["site_work_s"])) != std::string::npos);
    CHECK(text.find(print_duration(plan["site_presence_s"])) != std::string::npos);
  }
}

TEST_CASE("the safety sheet of every example has the levels, pulls and checklist that stand tells") {
  const OnExamples on;
  for (const Example& example : examples()) {
    CAPTURE(example.name);
    const Json stood = on.json("stand", example, example.area);
    const std::string text = on.sheet("safety", example, example.area);
    REQUIRE(stood["pieces"].size() > 0);
    std::set<std::string> areas, outdoors;  // a forecast is read where something stands outdoors
    for (const Json& piece : stood["pieces"]) areas.insert(piece["area"].get<std::string>());
    for (const Json& line : stood["checklist"])
      if (line["key"].get<std::string>().ends_with("/forecast")) outdoors.insert(line["area"].get<std::string>());
    for (const Json& piece : stood["pieces"]) {
      const std::string name = piece["name"];
      CAPTURE(name);
      CHECK(has_word(text, beginning(name, 14)));
      for (const char* level : {"limit_gust_m_s", "watch_m_s", "take_down_m_s"})
        if (outdoors.contains(piece["area"].get<std::string>()) && !piece["fails_at_rest"].get<bool>())
          CHECK_MESSAGE(text.find(print_gust(piece[level], Units::feet)) != std::string::npos, level);
      for (const Json& line : piece["lines"]) {
        const double pull = line["greatest_n"];
        CHECK(has_word(text, pull < 0.05 ? "slack" : print_force(pull, example.units)));
      }
    }
    std::size_t told = 0;
    for (const Json& line : stood["checklist"]) {
      const std::string area = line["area"];
      if (!area.empty() && !areas.contains(area)) continue;
      CAPTURE(line["key"].get<std::string>());
      CHECK(text.find(beginning(line["text"], 40)) != std::string::npos);
      ++told;
    }
    CHECK(told > 8);
  }
}

}  // namespace
}  // namespace quadrille
