// The sheets for the day, read off the PDF: what stands on them is what `count`, `plan` and `stand` print for programs.
#include <doctest/doctest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "has_word.hpp"
#include "program.hpp"
#include "studio/labour/clock.hpp"
#include "studio/model/one_unit.hpp"
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
  static std::string file(const Example& example) { return source_place("examples/") + example.name + ".quadrille"; }
  Folder folder_;
  Environment environment_;
};

/// As many whole words of `text` as are surely on its first line.
std::string beginning(const std::string& text, std::size_t most = 26) {
  if (text.size() <= most) return text;
  const std::size_t blank = text.rfind(' ', most);
  return text.substr(0, blank == std::string::npos ? most : blank);
}

/// Minutes of "10:05", "0:05" or, a day later than it is told over the row, "00:10+1".
int minutes_of(const std::string& word) {
  const std::size_t colon = word.find(':');
  return 60 * std::stoi(word.substr(0, colon)) + std::stoi(word.substr(colon + 1, 2)) +
         (word.ends_with("+1") ? 24 * 60 : 0);
}

/// Of a moment of the plan, from the beginning of its task's day or stretch.
int minutes_of(const Json& moment, const Json& start) {
  if (moment["clock"].is_null()) return static_cast<int>(moment["second_s"].get<std::int64_t>() / 60);
  return minutes_of(moment["clock"].get<std::string>()) +
         (moment["day"].get<int>() - start["day"].get<int>()) * 24 * 60;
}

/// Whether the list has a row that says so and holds the time of the task: its own, or one with the same work elsewhere.
bool has_row_for(const std::string& text, const Json& task) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (!has_word(line, beginning(task["text"], 22))) continue;
    std::vector<int> clocks;
    std::istringstream words(line);
    for (std::string word; words >> word && clocks.size() < 2;)
      if (const auto colon = word.find(':'); colon != std::string::npos && colon > 0 && word.size() >= colon + 3 &&
                                             word.find_first_not_of("0123456789:+") == std::string::npos)
        clocks.push_back(minutes_of(word));
    if (clocks.empty()) continue;
    const int start = minutes_of(task["start"], task["start"]), end = minutes_of(task["end"], task["start"]);
    if (clocks.front() <= start && clocks.back() >= end) return true;
  }
  return false;
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
      CHECK(has_line_with(text, {beginning(in_one_unit(supply["name"], example.units)), quantity}));
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
      CHECK(has_row_for(text, task));
    }
    // To the quarter of an hour.
    const auto quarters = [](const Json& seconds) {
      return print_duration(std::llround(seconds.get<double>() / 900) * 900);
    };
    CHECK(has_line_with(text, {"At the venue", quarters(plan["site_work_s"]), quarters(plan["site_presence_s"])}));
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
          CHECK_MESSAGE(text.find(print_level(piece[level], example.units)) != std::string::npos, level);
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
      if (line["key"].get<std::string>().find("/line-") != std::string::npos)
        continue;  // told together, as on the plan
      CHECK(text.find(beginning(line["text"], 40)) != std::string::npos);
      ++told;
    }
    CHECK(told > 8);
  }
}

}  // namespace
}  // namespace quadrille
