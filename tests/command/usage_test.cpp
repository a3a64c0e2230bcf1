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
      {{"paint"}, {"no command 'paint'", "draw, count, check, pieces and try"}},
      {{"cuont", event}, {"no command 'cuont'", "Did you mean count?"}},
      {{"--loud"}, {"'--loud'", "draw, count, check, pieces or try"}},
      {{"count"}, {"count needs EVENT, the event's file", "quadrille count party.quadrille"}},
      {{"draw", event}, {"draw needs --out FILE", ".pdf, .svg or .png", "quadrille draw"}},
      {{"draw", event, "--out"}, {"--out needs a word after it"}},
      {{"draw", event, "--out", "a.pdf", "--out", "b.pdf"}, {"--out FILE stands 2 times; give it once"}},
      {{"draw", event, "--out", "a.pdf", "--paper", "b5"}, {"--paper can be a4, letter, a3 or tabloid, not 'b5'"}},
      {{"draw", event, "--out", "a.pdf", "--paper", "leter"}, {"Did you mean letter?"}},
      {{"draw", event, "--out", "a.pdf", "--paper", ""}, {"--paper can be", "not ''"}},
      {{"draw", event, "--out", "a.pdf", "--sheet", "build"}, {"--sheet can be elevation, not 'build'"}},
      {{"draw", event, "--out", "a.pdf", "--units", "cubits"}, {"--units can be feet or metric, not 'cubits'"}},
      {{"count", "a", "b"}, {"count does not know what to do with 'b'", "quadrille count EVENT"}},
      {{"count", event, "--xlsx", "a.xlsx"}, {"count has no option '--xlsx'", "--json and --csv"}},
      {{"count", event, "--jsn"}, {"no option '--jsn'", "Did you mean --json?"}},
      {{"count", event, "--sheet=build"}, {"no option '--sheet'"}},
      {{"count", event, "--json", "--csv", "a.csv"}, {"give one of them"}},
      {{"count", event, "--json=perhaps"}, {"count cannot be typed like this"}},
      {{"check", event, "-j"}, {"check has no option '-j'", "--json"}},
      {{"pieces", "--prove"}, {"--prove needs a word after it"}},
      {{"try"}, {"try needs TYPE", "quadrille pieces"}},
      {{"try", "arhc"}, {"no piece type 'arhc'", "Did you mean arch?"}},
      {{"try", "arch", "spam=2m"}, {"no parameter 'spam'", "did you mean span?", "rod-length"}},
      {{"try", "arch", "span=wide"}, {"span: 'wide' is no length", "20 ft"}},
  };
  for (const auto& [words, said] : mistakes) {
    const Outcome outcome = quadrille_in(folder, words);
    CAPTURE(outcome.err);
    CHECK(outcome.exit == 2);
    CHECK(outcome.out.empty());
    CHECK(outcome.err.find('\n') + 1 == outcome.err.size());
    for (const char* part : said) CHECK(outcome.err.find(part) != std::string::npos);
  }
}

TEST_CASE("without arguments it says what it can do, verb by verb") {
  const Folder folder;
  const Outcome bare = quadrille_in(folder, {}), help = quadrille_in(folder, {"--help"});
  CHECK(bare.exit == 2);
  CHECK(bare.out.empty());
  for (const char* verb :
       {"draw EVENT --out FILE", "count EVENT", "check EVENT", "pieces", "try TYPE [KEY=VALUE ...]"}) {
    CHECK(bare.err.find(std::string("quadrille ") + verb) != std::string::npos);
    CHECK(help.out.find(std::string("quadrille ") + verb) != std::string::npos);
  }
  CHECK(help.out.find("8'6\"") != std::string::npos);
  CHECK(help.out.find("exit status") != std::string::npos);
}

TEST_CASE("the help of a verb has all of its options and an example that its parser takes") {
  const Folder folder;
  const Outcome help = quadrille_in(folder, {"draw", "--help"});
  CHECK(help.exit == 0);
  for (const char* option : {"--out FILE", "--area NAME", "--paper SIZE", "--units UNITS", "--letters", "--no-letters"})
    CHECK(help.out.find(option) != std::string::npos);
  for (const char* verb : {"draw", "count", "check", "pieces", "try"}) {
    const Outcome shown = quadrille_in(folder, {verb, "-h"});
    CHECK(shown.exit == 0);
    const std::string mark = "For example: quadrille ";
    const auto at = shown.out.find(mark);
    REQUIRE(at != std::string::npos);
    const std::string line = shown.out.substr(at + mark.size(), shown.out.find('\n', at) - at - mark.size());
    put_scene(folder);
    const std::string script = "cd '" + folder.path().string() + "' && cp supper.quadrille party.quadrille && '" +
                               quadrille_program + "' " + line;
    const Outcome outcome = run_in(folder, "bash", {"-c", script}, environment_in(folder));
    CAPTURE(outcome.err);
    CHECK(outcome.exit == 0);
  }
}

TEST_CASE("a refusal names its key once: it was once \"span: 'span' (Span) is -1 m\"") {
  const Folder folder;
  // 0.3048 m are a foot: 1 m is 3 ft 3.37 in, 40 m are 131 ft 2.8 in; to the nearest half inch.
  const Outcome outcome = quadrille_in(folder, {"try", "arch", "span=-1m"});
  CHECK(outcome.exit == 3);
  CHECK(outcome.err == "refused: Span is -1 m (-3' 3 1/2\"): 0 m to 40 m (0\" to 131' 3\") would be accepted.\n");
  const Outcome rod = quadrille_in(folder, {"try", "arch", "rod-diameter=-1m"});
  CHECK(rod.err.find("would be accepted (rod-diameter).\n") != std::string::npos);
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
