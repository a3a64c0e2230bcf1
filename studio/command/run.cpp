// Reads the arguments and hands them to the verb they name.
#include "studio/command/run.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <exception>
#include <memory>
#include <new>
#include <ostream>
#include <system_error>
#include <vector>

#include "sdk/units.hpp"
#include "studio/command/parsed_verb.hpp"
#include "studio/command/usage.hpp"
#include "studio/command/verbs.hpp"
#include "studio/sheets/sheet_kinds.hpp"

namespace quadrille {
namespace {

std::vector<std::string> sheet_keys() {
  std::vector<std::string> keys;
  for (const SheetKind& kind : sheet_kinds()) keys.emplace_back(kind.key);
  return keys;
}

/// "Which sheet: elevation, the areas to scale; build, what each piece is made from".
std::string sheet_choices() {
  std::string text;
  for (const SheetKind& kind : sheet_kinds()) {
    text += text.empty() ? "Which sheet: " : "; ";
    text += std::string(kind.key) + ", " + std::string(kind.what);
  }
  return text;
}

Verb add_draw(CLI::App& app) {
  struct Text {
    DrawRequest request;
    std::string event, out, area, sheet = "elevation", paper, units, house;
    bool with_letters = false, without_letters = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "draw", "Draw an event to scale, as a PDF, SVG or PNG file");
  add_event(verb, text->event);
  verb->add_option("--out", text->out, "The file to write; it becomes what its name ends in: .pdf, .svg or .png")
      ->required()
      ->type_name("FILE");
  verb->add_option("--area", text->area, "Draw this area only (its name or id)")->type_name("NAME");
  verb->add_option("--paper", text->paper, "a4, letter, a3 or tabloid; else letter for feet and a4 for metres")
      ->type_name("SIZE");
  verb->add_option("--units", text->units, "feet or metric, instead of the event's own")->type_name("UNITS");
  verb->add_option("--sheet", text->sheet, sheet_choices())->type_name("SHEET");
  verb->add_flag("--letters", text->with_letters, "Letter the balloons by their colour slot, as usual");
  verb->add_flag("--no-letters", text->without_letters, "Leave the letters out");
  add_house(verb, text->house);
  const auto act = [text, verb](const Console& console) {
    DrawRequest& request = text->request;
    std::string wrong = not_one_of("sheet", text->sheet, sheet_keys());
    if (wrong.empty() && verb->count("--paper") > 0)
      wrong = not_one_of("paper", text->paper, {"a4", "letter", "a3", "tabloid"});
    if (wrong.empty() && verb->count("--units") > 0) wrong = not_one_of("units", text->units, {"feet", "metric"});
    if (wrong.empty() && text->with_letters && text->without_letters)
      wrong = "--letters and --no-letters contradict each other; give one of them.";
    if (wrong.empty() && verb->count("--house") > 0 && text->house.empty()) wrong = empty_house;
    if (!wrong.empty()) return refuse(wrong, console);
    request.event = text->event;
    request.house = text->house;
    request.out = text->out;
    request.sheet = text->sheet;
    request.paper = text->paper;
    request.letters = !text->without_letters;
    if (verb->count("--area") > 0) request.area = text->area;
    if (!text->units.empty()) request.units = text->units == "feet" ? Units::feet : Units::metric;
    return draw(request, console);
  };
  return {{verb, "EVENT --out FILE", "quadrille draw party.quadrille --out party.pdf"}, act};
}

Verb add_stand(CLI::App& app) {
  struct Text {
    std::string event, area, gust;
    bool json = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "stand", "Say at which gust each piece fails, by what, and what would make it stand");
  add_event(verb, text->event);
  verb->add_option("--area", text->area, "This area only (its name or id)")->type_name("NAME");
  verb->add_option("--gust", text->gust, "A gust such as 24mph or 38km/h, instead of the forecast")->type_name("SPEED");
  verb->add_flag("--json", text->json, "Print one JSON object, for programs");
  const auto act = [text, verb](const Console& console) {
    StandRequest request{text->event, text->json, std::nullopt, std::nullopt, false};
    if (verb->count("--area") > 0) request.area = text->area;
    if (verb->count("--gust") > 0) {
      const auto gust = parse_speed(text->gust);
      if (!gust) return refuse("--gust: " + gust.error, console);
      if (!(*gust >= 0 && *gust <= 150)) return refuse("--gust goes from 0 to 150 m/s.", console);
      request.gust_m_s = *gust;
      request.gust_is_bare = text->gust.find_first_not_of("0123456789.,+ ") == std::string::npos;
    }
    return stand(request, console);
  };
  return {{verb, "EVENT", "quadrille stand party.quadrille --gust 24mph"}, act};
}

Verb add_check(CLI::App& app) {
  struct Text {
    std::string event, house;
    bool json = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "check", "Say what is wrong with an event, or worth knowing");
  add_event(verb, text->event);
  verb->add_flag("--json", text->json, "Print one JSON object, for programs");
  add_house(verb, text->house);
  return {{verb, "EVENT", "quadrille check party.quadrille"}, [text, verb](const Console& console) {
            if (verb->count("--house") > 0 && text->house.empty()) return refuse(empty_house, console);
            return check({text->event, text->house, text->json}, console);
          }};
}

Verb add_pieces(CLI::App& app) {
  struct Text {
    PiecesRequest request;
    std::string prove;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "pieces", "List the piece types, and what can be set of each");
  verb->add_flag("--json", text->request.json, "Print one JSON object, for programs");
  verb->add_flag("--try-again", text->request.try_again, "Load plugins that ended the program before once more");
  verb->add_option("--prove", text->prove, "Test this plugin file against the contract instead")->type_name("FILE");
  const auto act = [text, verb](const Console& console) {
    return verb->count("--prove") > 0 ? prove({text->prove, text->request.json}, console)
                                      : pieces(text->request, console);
  };
  return {{verb, "", "quadrille pieces"}, act};
}

Verb add_palettes(CLI::App& app) {
  struct Text {
    std::string event, import, out, currency;
    bool json = false;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "palettes", "List the palettes, and the colours of each");
  verb->add_option("EVENT", text->event, "An event's file: the palettes beside it are listed too")->type_name("EVENT");
  verb->add_flag("--json", text->json, "Print one JSON object, for programs");
  verb->add_option("--import", text->import, "Make a palette of this .gpl file of a graphics program, instead")
      ->type_name("FILE");
  verb->add_option("--out", text->out, "Where the imported palette goes: a file that ends in .xml")->type_name("FILE");
  verb->add_option("--currency", text->currency, "Of the prices to be put into the imported palette; else USD")
      ->type_name("CODE");
  const auto act = [text, verb](const Console& console) {
    const bool imports = verb->count("--import") > 0;
    if (imports != (verb->count("--out") > 0))
      return refuse("--import FILE.gpl and --out FILE.xml go together: give both, or none.", console);
    if (!imports && verb->count("--currency") > 0)
      return refuse("--currency is that of a palette to be imported: give --import and --out too.", console);
    if (imports && (text->json || !text->event.empty()))
      return refuse("--import makes a file and lists nothing: leave out --json and the event.", console);
    if (!imports) return palettes({text->event, text->json, {}, {}, {}}, console);
    return palettes({{}, false, text->import, text->out, text->currency.empty() ? "USD" : text->currency}, console);
  };
  return {{verb, "[EVENT]", "quadrille palettes party.quadrille"}, act};
}

Verb add_try(CLI::App& app) {
  struct Text {
    TryRequest request;
    std::string out;
  };
  auto text = std::make_shared<Text>();
  CLI::App* verb = add_verb(app, "try", "Build one piece without an event");
  verb->add_option("TYPE", text->request.type, "The piece type, by its id in the list of 'quadrille pieces'")
      ->required()
      ->type_name("TYPE");
  verb->add_option("VALUES", text->request.values,
                   "What is to be other than usual, such as span=10ft; as many as wanted")
      ->type_name("KEY=VALUE");
  verb->add_flag("--json", text->request.json, "Print one JSON object, for programs");
  verb->add_option("--out", text->out, "Draw it to this file: .pdf, .svg or .png")->type_name("FILE");
  const auto act = [text, verb](const Console& console) {
    if (verb->count("--out") > 0) text->request.out = text->out;
    if (text->request.out && text->request.json)
      return refuse("--out draws to a file and --json prints: give one of them.", console);
    return try_piece(text->request, console);
  };
  return {{verb, "TYPE [KEY=VALUE ...]", "quadrille try arch rod-length=20ft span=9ft --out arch.pdf"}, act};
}

/// The verb that the parser met, or null.
const Verb* named(const std::vector<Verb>& verbs) {
  const auto found = std::ranges::find_if(verbs, [](const Verb& verb) { return verb.text.parser->parsed(); });
  return found == verbs.end() ? nullptr : &*found;
}

Exit parse_and_act(std::span<const std::string> arguments, const Console& console) {
  CLI::App app("", "quadrille");
  app.set_version_flag("--version", "quadrille " QUADRILLE_VERSION);
  app.require_subcommand(0, 1);
  app.allow_extras();
  const std::vector<Verb> verbs{add_draw(app),  add_count(app),  add_plan(app),     add_quote(app), add_stand(app),
                                add_check(app), add_pieces(app), add_palettes(app), add_try(app)};
  std::vector<VerbText> texts;
  for (const Verb& verb : verbs) texts.push_back(verb.text);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 wants them
  try {
    app.parse(reversed);
  } catch (const CLI::CallForHelp&) {
    const Verb* verb = named(verbs);
    console.out << (verb ? print_help(verb->text) : print_overview(texts, true));
    return Exit::done;
  } catch (const CLI::CallForVersion& version) {
    console.out << version.what() << '\n';
    return Exit::done;
  } catch (const CLI::ParseError& error) {
    const Verb* verb = named(verbs);
    return refuse(verb ? stopped(verb->text, error) : std::string(error.what()), console);
  }
  if (const auto words = app.remaining(); !words.empty()) return refuse(unknown_verb(words.front(), texts), console);
  const Verb* verb = named(verbs);
  if (verb == nullptr) {
    console.err << print_overview(texts, false);
    return Exit::usage;
  }
  if (const auto words = verb->text.parser->remaining(); !words.empty())
    return refuse(unexpected(verb->text, words), console);
  return verb->act(console);
}

/// As parse_and_act; Exit::no_output where what was printed did not get through.
Exit act_and_flush(std::span<const std::string> arguments, const Console& console) {
  const Exit exit = parse_and_act(arguments, console);
  console.out.flush();
  if (console.out) return exit;
  console.err << "The standard output could not be written: is the disk full, or the reader gone?\n";
  return Exit::no_output;
}

/// Whatever is thrown ends here, with one sentence and a status: nothing may end the program as a crash.
Exit act_guarded(std::span<const std::string> arguments, const Console& console) {
  try {
    return act_and_flush(arguments, console);
  } catch (const std::bad_alloc&) {
    console.err << "The memory is full: what was asked is too large for it. Ask for less at once, or close other "
                   "programs.\n";
    return Exit::bad_input;
  } catch (const std::exception& error) {
    console.err << "The program failed, which it should not: " << error.what() << '\n';
  } catch (...) {
    console.err << "The program failed, which it should not, without saying why.\n";
  }
  return Exit::broken;
}

}  // namespace

int run(std::span<const std::string> arguments, std::ostream& out, std::ostream& err,
        const std::filesystem::path& executable) {
  std::error_code unknown;
  auto program = std::filesystem::canonical(executable, unknown);
  if (unknown) program = executable;
  return static_cast<int>(act_guarded(arguments, {out, err, program}));
}

}  // namespace quadrille
