// `quadrille plan` as scripts and people use it.
#include <doctest/doctest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "csv_rows.hpp"
#include "has_word.hpp"
#include "scene.hpp"
#include "studio/labour/clock.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

/// The scene with times: an evening whose strike ends after midnight, 18 km away.
std::string timed_event() {
  std::string text = event_text();
  text.replace(text.find("<job title=\"Harvest supper\"/>"), 29,
               "<job title=\"Harvest supper\" travel-m=\"18000\"/>\n"
               "  <day date=\"2027-09-04\" load-in-from=\"13:00\" ready-by=\"18:00\" strike-from=\"23:30\"/>");
  return text;
}

TEST_CASE("plan --json has the day with its clock, across midnight") {
  const Folder folder;
  const Ran outcome = quadrille_in(folder, {"plan", put_scene(folder, timed_event()), "--json"});
  CHECK(outcome.exit == 0);
  const Json json = Json::parse(outcome.out);
  for (const char* key : {"date", "crew", "tasks", "stretches", "work_s_by_phase", "work_s_by_piece", "short_s",
                          "spare_s", "site_work_s", "all_work_s", "house"})
    CHECK(json.contains(key));
  CHECK(json["crew"] == 1);
  CHECK(json["stretches"]["build"]["end"]["clock"] == "17:30");  // half an hour before 18:00
  CHECK(json["stretches"]["strike"]["start"]["clock"] == "23:30");
  CHECK(json["stretches"]["strike"]["end"]["day"] == 1);
  // One person alone: tasks at the venue are in a row without a gap, and their seconds are the stretch's.
  std::int64_t at_venue = 0;
  std::map<std::string, std::int64_t> ends;
  for (const Json& task : json["tasks"]) {
    for (const char* key :
         {"id", "text", "area", "piece", "phase", "start", "end", "seconds_s", "people", "critical", "slack_s"})
      CHECK(task.contains(key));
    CHECK(task["end"]["second_s"].get<std::int64_t>() - task["start"]["second_s"].get<std::int64_t>() ==
          task["seconds_s"].get<std::int64_t>());
    const auto phase = task["phase"].get<std::string>();
    if (phase == "load-in" || phase == "build" || phase == "secure" || phase == "check")
      at_venue += task["seconds_s"].get<std::int64_t>();
    for (const Json& before : task["after"])
      if (const auto end = ends.find(before.get<std::string>()); end != ends.end() && phase != "strike")
        CHECK(end->second <= task["start"]["second_s"].get<std::int64_t>());
    ends[task["id"].get<std::string>()] = task["end"]["second_s"].get<std::int64_t>();
  }
  CHECK(at_venue == json["stretches"]["build"]["length_s"].get<std::int64_t>());
}

TEST_CASE("--crew and --prepare change the day") {
  const Folder folder;
  const std::string event = put_scene(folder, timed_event());
  const auto length = [&](const std::vector<std::string>& more) {
    std::vector<std::string> words{"plan", event, "--json"};
    words.insert(words.end(), more.begin(), more.end());
    const Json json = Json::parse(quadrille_in(folder, words).out);
    return json["stretches"]["build"]["length_s"].get<std::int64_t>();
  };
  const auto alone = length({});
  CHECK(length({"--crew", "2"}) < alone);
  CHECK(length({"--prepare"}) < alone);
  CHECK(Json::parse(quadrille_in(folder, {"plan", event, "--json", "--crew", "3"}).out)["crew"] == 3);
}

TEST_CASE("a day that is too short ends with 1 and says what would help") {
  const Folder folder;
  std::string text = timed_event();
  text.replace(text.find("load-in-from=\"13:00\""), 20, "load-in-from=\"17:00\"");
  const Ran outcome = quadrille_in(folder, {"plan", put_scene(folder, text)});
  CHECK(outcome.exit == 1);
  CHECK(outcome.err.find("problem: From the load-in until it must be ready there is 1 h 00 min") != std::string::npos);
  CHECK(outcome.err.find(" people it takes ") != std::string::npos);
}

TEST_CASE("the plan for people has clock, person, task and place, and the CSV the same tasks") {
  const Folder folder;
  const std::string event = put_scene(folder, timed_event());
  const Json json = Json::parse(quadrille_in(folder, {"plan", event, "--json"}).out);
  const Ran text = quadrille_in(folder, {"plan", event});
  CHECK(text.exit == 0);
  REQUIRE(quadrille_in(folder, {"plan", event, "--csv", folder / "p.csv"}).exit == 0);
  const auto rows = csv_rows(bytes_of(folder / "p.csv"));
  REQUIRE(rows.size() == json["tasks"].size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Json task = json["tasks"][i];
    const auto said = task["text"].get<std::string>();
    CHECK(rows[i].at("what") == said);
    CHECK(rows[i].at("seconds_s") == std::to_string(task["seconds_s"].get<std::int64_t>()));
    if (task["start"]["clock"].is_null()) continue;
    const auto clock = task["start"]["clock"].get<std::string>();
    CHECK(rows[i].at("from") == clock);
    CHECK(has_line_with(text.out, {clock, said}));
  }
  CHECK(text.out.find("+1  ") != std::string::npos);  // after midnight
  // The plan told people's time with waiting and the day sheet their work without, both as time at the venue.
  CHECK(text.out.find("Work at the venue, of all people: " + print_duration(json["site_work_s"])) != std::string::npos);
  REQUIRE(quadrille_in(folder, {"draw", event, "--sheet", "day", "--out", folder / "d.pdf"}).exit <= 1);
  const Ran sheet = run_in(folder, "pdftotext", {"-layout", folder / "d.pdf", "-"}, environment_in(folder));
  // The sheet has both to the quarter of an hour.
  const auto quarters = [](const Json& seconds) {
    return print_duration((seconds.get<std::int64_t>() + 450) / 900 * 900);
  };
  CHECK(has_line_with(sheet.out, {"At the venue", quarters(json["site_work_s"]), quarters(json["site_presence_s"])}));
}

TEST_CASE("where nothing is built there is nothing to plan") {
  const Folder folder;
  std::string text = event_text();
  for (auto at = text.find("y-m=\"0\""); at != std::string::npos; at = text.find("y-m=\"0\">", at + 1))
    text.insert(at + 7, " hidden=\"yes\"");
  const Ran outcome = quadrille_in(folder, {"plan", put_scene(folder, text)});
  CHECK(outcome.exit == 0);
  CHECK(outcome.out.find("nothing to do") != std::string::npos);
}

}  // namespace
}  // namespace quadrille
