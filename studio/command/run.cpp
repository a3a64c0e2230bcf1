// Reads the arguments and hands them to the verb they name.
#include "studio/command/run.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <functional>
#include <memory>
#include <ostream>
#include <system_error>
#include <vector>

#include "studio/command/verbs.hpp"

namespace quadrille {
namespace {

constexpr const char* about =
    "Quadrille: balloon décor for events, from the command line.\n"
    "Data goes to the standard output, messages to the standard error.";

constexpr const char* conventions =
    "Lengths and masses carry units (20ft, 8'6\", 2.4m, 230mm, 9in, 10kg, 22lb); a bare number is SI.\n"
    "Exit status: 0 done, 1 done but there are problems, 2 bad usage, 3 the input could not be read or used,\n"
    "4 the output could not be written.";

using Action = std::function<Exit(const Console&)>;

/// One verb as CLI11 sees it, and what to do once it is parsed. The requests live in the closures.
struct Verb {
  CLI::App* parser = nullptr;
  Action act;
};

Verb add_draw(CLI::App& app) {
  struct Text {
    DrawRequest request;
    std::string event, out, area, sheet = "elevation", units;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = app.add_subcommand("draw", "Draw an event to a PDF, SVG or PNG file");
  verb->add_option("EVENT", text->event, "The event's file")->required();
  verb->add_option("--out", text->out, "File to write; its ending, .pdf, .svg or .png, says what it becomes")
      ->required();
  verb->add_option("--area", text->area, "Draw this area only (its name or id)");
  verb->add_option("--sheet", text->sheet, "Which sheet")->check(CLI::IsMember({"elevation"}));
  verb->add_option("--paper", text->request.paper, "Paper: a4, letter, a3 or tabloid")
      ->check(CLI::IsMember({"a4", "letter", "a3", "tabloid"}));
  verb->add_option("--units", text->units, "feet or metric, instead of the event's own")
      ->check(CLI::IsMember({"feet", "metric"}));
  return {verb, [text, verb](const Console& console) {
            text->request.event = text->event;
            text->request.out = text->out;
            if (verb->count("--area") > 0) text->request.area = text->area;
            if (!text->units.empty()) text->request.units = text->units == "feet" ? Units::feet : Units::metric;
            return draw(text->request, console);
          }};
}

Verb add_count(CLI::App& app) {
  struct Text {
    std::string event, csv;
    bool json = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = app.add_subcommand("count", "Count balloons and supplies, with spares and packs to order");
  verb->add_option("EVENT", text->event, "The event's file")->required();
  CLI::Option* json = verb->add_flag("--json", text->json, "Print one JSON object");
  verb->add_option("--csv", text->csv, "Write the lists as a table to this file")->excludes(json);
  return {verb, [text, verb](const Console& console) {
            CountRequest request{text->event, text->json, std::nullopt};
            if (verb->count("--csv") > 0) request.csv = text->csv;
            return count(request, console);
          }};
}

Verb add_check(CLI::App& app) {
  struct Text {
    std::string event;
    bool json = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = app.add_subcommand("check", "Say everything there is to say about an event");
  verb->add_option("EVENT", text->event, "The event's file")->required();
  verb->add_flag("--json", text->json, "Print one JSON object");
  return {verb, [text](const Console& console) { return check({text->event, text->json}, console); }};
}

Verb add_pieces(CLI::App& app) {
  struct Text {
    PiecesRequest request;
    std::string prove;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = app.add_subcommand("pieces", "List the piece types with their parameters, and refused plugins");
  verb->add_flag("--json", text->request.json, "Print one JSON object");
  verb->add_option("--prove", text->prove, "Run the conformance suite over this plugin file instead");
  verb->add_flag("--try-again", text->request.try_again, "Load plugins that ended the program before once more");
  return {verb, [text, verb](const Console& console) {
            return verb->count("--prove") > 0 ? prove({text->prove, text->request.json}, console)
                                              : pieces(text->request, console);
          }};
}

Verb add_try(CLI::App& app) {
  struct Text {
    TryRequest request;
    std::string out;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = app.add_subcommand("try", "Build one piece without a file");
  verb->add_option("TYPE", text->request.type, "Id of the piece type, as 'quadrille pieces' lists it")->required();
  verb->add_option("VALUES", text->request.values, "Parameters as key=value; the others keep their defaults");
  CLI::Option* json = verb->add_flag("--json", text->request.json, "Print one JSON object");
  verb->add_option("--out", text->out, "Draw it to this .pdf, .svg or .png file")->excludes(json);
  return {verb, [text, verb](const Console& console) {
            if (verb->count("--out") > 0) text->request.out = text->out;
            return try_piece(text->request, console);
          }};
}

Exit parse_and_act(std::span<const std::string> arguments, const Console& console) {
  CLI::App app(about, "quadrille");
  app.set_version_flag("--version", "quadrille " QUADRILLE_VERSION);
  app.require_subcommand(1);
  app.footer(conventions);
  const std::vector<Verb> verbs{add_draw(app), add_count(app), add_check(app), add_pieces(app), add_try(app)};
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 wants them
  try {
    app.parse(reversed);
  } catch (const CLI::ParseError& error) {
    return app.exit(error, console.out, console.err) == 0 ? Exit::done : Exit::usage;
  }
  const auto named = std::ranges::find_if(verbs, [](const Verb& verb) { return verb.parser->parsed(); });
  return named->act(console);
}

}  // namespace

int run(std::span<const std::string> arguments, std::ostream& out, std::ostream& err,
        const std::filesystem::path& executable) {
  std::error_code unknown;
  auto program = std::filesystem::canonical(executable, unknown);
  if (unknown) program = executable;
  Exit exit = parse_and_act(arguments, {out, err, program});
  out.flush();
  if (!out) {
    err << "The standard output could not be written: is the disk full, or the reader gone?\n";
    exit = Exit::no_output;
  }
  return static_cast<int>(exit);
}

}  // namespace quadrille
