// The verbs that print lists or write them to table files: count, plan, quote.
#include <CLI/CLI.hpp>
#include <memory>

#include "sdk/number.hpp"
#include "studio/command/parsed_verb.hpp"
#include "studio/model/calendar.hpp"

namespace quadrille {
namespace {

/// The words that all three take.
struct ListText {
  std::string event, house, csv, xlsx;
  bool json = false;
};

void add_list_options(CLI::App* verb, ListText& text) {
  add_event(verb, text.event);
  verb->add_flag("--json", text.json, "Print one JSON object, for programs");
  verb->add_option("--csv", text.csv, "Write the lists to this file, for any spreadsheet")->type_name("FILE");
  verb->add_option("--xlsx", text.xlsx, "Write them to this workbook, a sheet for each list")->type_name("FILE");
  add_house(verb, text.house);
}

/// The sentence about options of these that cannot be meant; empty where all can.
std::string wrong_in(const CLI::App* verb, const ListText& text) {
  for (const char* option : {"--csv", "--xlsx"})
    if (verb->count(option) > 0 && text.json)
      return std::string(option) + " writes to a file and --json prints: give one of them.";
  if (verb->count("--house") > 0 && text.house.empty()) return empty_house;
  return {};
}

TableOutputs tables_in(const CLI::App* verb, const ListText& text) {
  TableOutputs tables;
  if (verb->count("--csv") > 0) tables.csv = text.csv;
  if (verb->count("--xlsx") > 0) tables.xlsx = text.xlsx;
  return tables;
}

std::string wrong_in_quote(const CLI::App* verb, const std::string& date, bool issue) {
  if (verb->count("--date") > 0 && !is_date(date)) return "--date is a day such as 2027-06-19, not '" + date + "'.";
  if (issue && verb->count("--date") == 0) return "--issue needs --date DAY, the day on which the quote is given.";
  for (const char* option : {"--number", "--out"})
    if (!issue && verb->count(option) > 0)
      return std::string(option) + " goes with --issue, which freezes the quote in the event.";
  return {};
}

}  // namespace

Verb add_count(CLI::App& app) {
  auto text = std::make_shared<ListText>();
  CLI::App* verb = add_verb(app, "count", "Count balloons, spares, what to order, supplies, air and power");
  add_list_options(verb, *text);
  const auto act = [text, verb](const Console& console) {
    if (const std::string wrong = wrong_in(verb, *text); !wrong.empty()) return refuse(wrong, console);
    return count({text->event, text->house, text->json, tables_in(verb, *text)}, console);
  };
  return {{verb, "EVENT", "quadrille count party.quadrille --csv party.csv"}, act};
}

Verb add_plan(CLI::App& app) {
  struct Text {
    ListText list;
    std::string crew;
    bool prepare = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "plan", "Plan the day: who does what when, from packing to putting away");
  add_list_options(verb, text->list);
  verb->add_option("--crew", text->crew, "So many people, 1 to 20, instead of the event's or the house's")
      ->type_name("N");
  verb->add_flag("--prepare", text->prepare, "Inflate and make clusters the day before, and bring them made");
  const auto act = [text, verb](const Console& console) {
    std::string wrong = wrong_in(verb, text->list);
    PlanRequest request{text->list.event, text->list.house, text->list.json, tables_in(verb, text->list),
                        std::nullopt,     text->prepare};
    if (wrong.empty() && verb->count("--crew") > 0) {
      const auto crew = parse_number(text->crew);
      if (!crew || !(*crew >= 1 && *crew <= 20) || *crew != static_cast<int>(*crew))
        wrong = "--crew is a number of people from 1 to 20, not '" + text->crew + "'.";
      else
        request.crew = static_cast<int>(*crew);
    }
    if (!wrong.empty()) return refuse(wrong, console);
    return plan(request, console);
  };
  return {{verb, "EVENT", "quadrille plan party.quadrille --crew 2"}, act};
}

Verb add_quote(CLI::App& app) {
  struct Text {
    ListText list;
    std::string date, number, out;
    bool issue = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "quote", "Quote the job line by line, with what it costs and earns you");
  add_list_options(verb, text->list);
  verb->add_option("--date", text->date, "The day on which it is given, or on which a given one is looked at")
      ->type_name("DAY");
  verb->add_flag("--issue", text->issue, "Freeze the quote in the event, as the client is given it");
  verb->add_option("--number", text->number, "Your own number of the issued quote")->type_name("NUMBER");
  verb->add_option("--out", text->out, "Save the event with the issued quote here, instead of where it was")
      ->type_name("FILE");
  const auto act = [text, verb](const Console& console) {
    std::string wrong = wrong_in(verb, text->list);
    if (wrong.empty()) wrong = wrong_in_quote(verb, text->date, text->issue);
    if (wrong.empty() && verb->count("--out") > 0 && text->out.empty())
      wrong = "--out needs the name of a file, not ''.";
    if (!wrong.empty()) return refuse(wrong, console);
    return quote({text->list.event, text->list.house, text->list.json, tables_in(verb, text->list), text->date,
                  text->issue, text->number, text->out},
                 console);
  };
  return {{verb, "EVENT", "quadrille quote party.quadrille"}, act};
}

}  // namespace quadrille
