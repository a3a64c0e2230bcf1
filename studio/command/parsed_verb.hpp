// How a verb is put together from its options and what it does; what several verbs share of that.
#pragma once

#include <CLI/App.hpp>
#include <functional>
#include <ostream>
#include <string>

#include "studio/command/usage.hpp"
#include "studio/command/verbs.hpp"

namespace quadrille {

using Action = std::function<Exit(const Console&)>;

/// One verb: what it is called and takes, and what to do once it is parsed. The requests live in the closures.
struct Verb {
  VerbText text;
  Action act;
};

inline Exit refuse(const std::string& sentence, const Console& console) {
  console.err << sentence << '\n';
  return Exit::usage;
}

inline CLI::App* add_verb(CLI::App& app, const char* name, const char* description) {
  CLI::App* verb = app.add_subcommand(name, description);
  verb->allow_extras();  // reported in our own words
  return verb;
}

inline void add_event(CLI::App* verb, std::string& event) {
  verb->add_option("EVENT", event, "The event's file, as the studio saves it")->required()->type_name("EVENT");
}

inline void add_house(CLI::App* verb, std::string& house) {
  verb->add_option("--house", house, "Stock, prices and rates of this file, instead of your usual house")
      ->type_name("FILE");
}

inline constexpr const char* empty_house = "--house needs the name of a file, such as my.quadrille-house, not ''.";

Verb add_count(CLI::App& app);
Verb add_plan(CLI::App& app);
Verb add_quote(CLI::App& app);

}  // namespace quadrille
