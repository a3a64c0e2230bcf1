// Words that cannot be meant: one sentence of our own, with the words that would be accepted, status 2 and no data.
#include <doctest/doctest.h>

#include "has_word.hpp"
#include "scene.hpp"

namespace quadrille {
namespace {

struct Mistake {
  std::vector<std::string> words;
  std::vector<const char*> said;  // parts of the sentence
};

TEST_CASE("every mistake gets one sentence that says what would be accepted") {
  const Folder folder;
  const std::string event = put_scene(folder);
  const std::vector<Mistake> mistakes{
      {{"paint"}, {"no command 'paint'", "draw, count, plan, quote, stand, check, pieces, palettes and try"}},
      {{"cuont", event}, {"no command 'cuont'", "Did you mean count?"}},
      {{"--loud"}, {"'--loud'", "draw, count, plan, quote, stand, check, pieces, palettes or try"}},
      {{"count"}, {"count needs EVENT, the event's file", "quadrille count party.quadrille"}},
      {{"draw", event}, {"draw needs --out FILE", ".pdf, .svg or .png", "quadrille draw"}},
      {{"draw", event, "--out"}, {"--out needs a word after it"}},
      {{"draw", event, "--out", "a.pdf", "--out", "b.pdf"}, {"--out FILE stands 2 times; give it once"}},
      {{"draw", event, "--out", "a.pdf", "--paper", "b5"}, {"--paper can be a4, letter, a3 or tabloid, not 'b5'"}},
      {{"draw", event, "--out", "a.pdf", "--paper", "leter"}, {"Did you mean letter?"}},
      {{"draw", event, "--out", "a.pdf", "--paper", ""}, {"--paper can be", "not ''"}},
      {{"draw", event, "--out", "a.pdf", "--sheet", "poster"}, {"--sheet can be elevation", "not 'poster'"}},
      {{"draw", event, "--out", "a.pdf", "--units", "cubits"}, {"--units can be feet or metric, not 'cubits'"}},
      {{"count", "a", "b"}, {"count does not know what to do with 'b'", "quadrille count EVENT"}},
      {{"count", event, "--ods", "a.ods"}, {"count has no option '--ods'", "--json, --csv, --xlsx and --house"}},
      {{"count", event, "--json", "--xlsx", "a.xlsx"}, {"--xlsx writes to a file", "give one of them"}},
      {{"count", event, "--csv", "a", "--xlsx", "a"}, {"name the same file"}},
      {{"count", event, "--house", ""}, {"--house needs the name of a file"}},
      {{"check", event, "--house", ""}, {"--house needs the name of a file"}},
      {{"plan", event, "--crew", "0"}, {"--crew is a number of people from 1 to 20, not '0'"}},
      {{"plan", event, "--crew", "2.5"}, {"from 1 to 20, not '2.5'"}},
      {{"plan", event, "--crew", "21"}, {"from 1 to 20, not '21'"}},
      {{"quote", event, "--issue"}, {"--issue needs --date DAY"}},
      {{"quote", event, "--date", "19.6.2027"}, {"--date is a day such as 2027-06-19, not '19.6.2027'"}},
      {{"quote", event, "--number", "7"}, {"--number goes with --issue"}},
      {{"quote", event, "--out", "b.quadrille"}, {"--out goes with --issue"}},
      {{"count", event, "--jsn"}, {"no option '--jsn'", "Did you mean --json?"}},
      {{"count", event, "--sheet=build"}, {"no option '--sheet'"}},
      {{"count", event, "--json", "--csv", "a.csv"}, {"give one of them"}},
      {{"count", event, "--json=perhaps"}, {"count cannot be typed like this"}},
      {{"check", event, "-j"}, {"check has no option '-j'", "--json"}},
      {{"palettes", "a", "b"}, {"palettes does not know what to do with 'b'", "quadrille palettes [EVENT]"}},
      {{"pieces", "--prove"}, {"--prove needs a word after it"}},
      {{"try"}, {"try needs TYPE", "quadrille pieces"}},
      {{"try", "arhc"}, {"no piece type 'arhc'", "Did you mean arch?"}},
      {{"try", "arch", "spam=2m"}, {"no parameter 'spam'", "did you mean span?", "rod-length"}},
      {{"try", "arch", "span=wide"}, {"span: 'wide' is no length", "20 ft"}},
  };
  for (const auto& [words, said] : mistakes) {
    const Ran outcome = quadrille_in(folder, words);
    CAPTURE(outcome.err);
    CHECK(outcome.exit == 2);
    CHECK(outcome.out.empty());
    CHECK(outcome.err.find('\n') + 1 == outcome.err.size());
    for (const char* part : said) CHECK(outcome.err.find(part) != std::string::npos);
  }
}

TEST_CASE("without arguments it says what it can do, verb by verb") {
  const Folder folder;
  const Ran bare = quadrille_in(folder, {}), help = quadrille_in(folder, {"--help"});
  CHECK(bare.exit == 2);
  CHECK(bare.out.empty());
  for (const char* verb : {"draw EVENT --out FILE", "count EVENT", "plan EVENT", "quote EVENT", "stand EVENT",
                           "check EVENT", "pieces", "palettes [EVENT]", "try TYPE [KEY=VALUE ...]"}) {
    CHECK(bare.err.find(std::string("quadrille ") + verb) != std::string::npos);
    CHECK(help.out.find(std::string("quadrille ") + verb) != std::string::npos);
  }
  CHECK(help.out.find("8'6\"") != std::string::npos);
  CHECK(help.out.find("exit status") != std::string::npos);
}

TEST_CASE("the help of a verb has all of its options and an example that its parser takes") {
  const Folder folder;
  const Ran help = quadrille_in(folder, {"draw", "--help"});
  CHECK(help.exit == 0);
  for (const char* option : {"--out FILE", "--area NAME", "--paper SIZE", "--units UNITS", "--letters", "--no-letters"})
    CHECK(help.out.find(option) != std::string::npos);
  for (const char* verb : {"draw", "count", "plan", "quote", "check", "pieces", "palettes", "try"}) {
    const Ran shown = quadrille_in(folder, {verb, "-h"});
    CHECK(shown.exit == 0);
    const std::string mark = "For example: quadrille ";
    const auto at = shown.out.find(mark);
    REQUIRE(at != std::string::npos);
    const std::string line = shown.out.substr(at + mark.size(), shown.out.find('\n', at) - at - mark.size());
    put_scene(folder);
    const std::string script = "cd '" + folder.path().string() + "' && cp supper.quadrille party.quadrille && '" +
                               quadrille_program + "' " + line;
    const Ran outcome = run_in(folder, "bash", {"-c", script}, environment_in(folder));
    CAPTURE(outcome.err);
    CHECK(outcome.exit == 0);
  }
}

TEST_CASE("a refusal names its key once: it was once \"span: 'span' (Span) is -1 m\"") {
  const Folder folder;
  // 0.3048 m are a foot: 1 m is 3 ft 3.37 in, 40 m are 131 ft 2.8 in; to the nearest half inch.
  const Ran outcome = quadrille_in(folder, {"try", "arch", "span=-1m"});
  CHECK(outcome.exit == 3);
  CHECK(outcome.err == "refused: Span is -1 m (-3' 3 1/2\"): 0 m to 40 m (0\" to 131' 3\") would be accepted.\n");
  const Ran rod = quadrille_in(folder, {"try", "arch", "rod-diameter=-1m"});
  CHECK(rod.err.find("would be accepted (rod-diameter).\n") != std::string::npos);
}

// A span of "20" was refused as one of 65 feet, without a word on units.
TEST_CASE("a bare number that was meant in feet, inches or millimetres is told so; one with a unit is not") {
  const Folder folder;
  const auto said_about = [&](const std::string& word) { return quadrille_in(folder, {"try", "arch", word}).err; };
  // 1 ft = 0.3048 m and 1 in = 0.0254 m, by definition.
  CHECK(said_about("span=20").find("note: span=20 is 20 m, since a bare number is in metres: did you mean 20ft "
                                   "(6.096 m)") != std::string::npos);
  CHECK(said_about("rod-length=240").find("did you mean 240in (6.096 m) or 240cm (2.4 m)?") != std::string::npos);
  CHECK(said_about("rod-diameter=10").find("did you mean 10mm (0.01 m)?") != std::string::npos);
  for (const char* word : {"span=20m", "span=2.4", "rod-length=66ft", "clusters=500", "plate-mass=90"}) {
    CAPTURE(word);
    CHECK(said_about(word).find("did you mean") == std::string::npos);
  }
  // The same in a file, whose lengths are all in metres.
  std::string event = event_text();
  event.replace(event.find("length=\"2.7\""), 12, "length=\"20\"");
  const Ran outcome = quadrille_in(folder, {"check", put_scene(folder, event)});
  CHECK(outcome.exit == 1);
  CHECK(has_line_with(outcome.out, {"problem: Barn, Arch p1", "Span is 20 m: did you mean 20ft (6.096 m)"}));
}

TEST_CASE("whole words are told from parts of words") {
  CHECK(has_word("used 66, spares 3", "66"));
  CHECK(has_word("(66)", "66"));
  CHECK(has_word("There are 66.", "66"));
  for (const char* text : {"166", "660", "66.5", "1.66", "66cm", ""}) CHECK_FALSE(has_word(text, "66"));
  CHECK(has_line_with("a 1\nb 2\n", {"b", "2"}));
  CHECK_FALSE(has_line_with("a 1\nb 2\n", {"a", "2"}));
}

}  // namespace
}  // namespace quadrille
