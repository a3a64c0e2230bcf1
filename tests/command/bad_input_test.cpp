// Files that cannot be used: one sentence with the place and a remedy, status 3, no data.
#include <doctest/doctest.h>

#include "scene.hpp"

namespace quadrille {
namespace {

std::string with(const std::string& from, const std::string& to) {
  std::string text = event_text();
  text.replace(text.find(from), from.size(), to);
  return text;
}

TEST_CASE("every bad input ends with 3, one sentence and no data") {
  const Folder folder;
  put_scene(folder);
  struct Bad {
    const char* name;
    std::string bytes;
    const char* said;  // part of the sentence
  };
  const std::vector<Bad> files{
      {"empty", "", "empty"},
      {"words", "Dear all, the arch is to be red.", "no XML"},
      {"binary",
       std::string("\x7f"
                   "ELF\x02\x01\x01\0\0\0",
                   10),
       "control character"},
      {"cut", event_text().substr(0, event_text().size() / 2), "line 11"},
      {"root", "<?xml version=\"1.0\"?>\n<html xmlns=\"http://www.w3.org/1999/xhtml\"/>\n", "html"},
      {"comma", with("name=\"Barn\"", "name=\"Barn\" wall-width-m=\"1,5\""), "1,5"},
      {"nan", with("x-m=\"2\"", "x-m=\"nan\""), "nan"},
      {"inf", with("x-m=\"2\"", "x-m=\"inf\""), "inf"},
      {"huge", with("x-m=\"2\"", "x-m=\"1e308\""), "1e308"},
      {"trailing", with("x-m=\"2\"", "x-m=\"2m\""), "2m"},
      {"negative",
       with("<colour slot=\"A\"",
            "<last-built width-m=\"1\" height-m=\"1\" depth-m=\"1\" clusters=\"-3\"/><colour slot=\"A\""),
       "-3"},
      {"twice", with("id=\"p2\"", "id=\"p1\""), "p1"},
  };
  for (const Bad& bad : files) {
    const std::string file = folder / (std::string(bad.name) + ".quadrille");
    put_file(file, bad.bytes);
    CAPTURE(bad.name);
    for (const std::string verb : {"count", "check"}) {
      const Ran outcome = quadrille_in(folder, {verb, file, "--json"});
      CAPTURE(outcome.err);
      CHECK(outcome.exit == 3);
      CHECK(outcome.out.empty());
      CHECK(outcome.err.find(bad.name + std::string(".quadrille")) != std::string::npos);
      CHECK(outcome.err.find(bad.said) != std::string::npos);
      CHECK(outcome.err.find('\n') == outcome.err.size() - 1);
    }
    const Ran drawn = quadrille_in(folder, {"draw", file, "--out", folder / "bad.pdf"});
    CHECK(drawn.exit == 3);
    CHECK_FALSE(std::filesystem::exists(folder / "bad.pdf"));
  }
}

TEST_CASE("a slot with a colour that no palette has ends with 3, with piece, slot and remedy") {
  const Folder folder;
  std::string text = event_text();
  const auto at = text.find("<colour slot=\"A\"");
  REQUIRE(at != std::string::npos);
  text.replace(at, text.find("/>", at) - at, "<colour slot=\"A\" palette=\"house\" key=\"no-such-blue\"");
  const std::string file = folder / "colour.quadrille";
  put_file(file, text);
  for (const std::string verb : {"count", "check"}) {
    const Ran outcome = quadrille_in(folder, {verb, file});
    CHECK(outcome.exit == 3);
    const std::string said = outcome.out + outcome.err;
    CHECK(said.find("no-such-blue") != std::string::npos);
    CHECK(said.find("problem: Barn, Arch p1: Slot A is set to") != std::string::npos);
    CHECK(said.find("Choose a colour, such as ") != std::string::npos);
  }
  // It is drawn all the same, and the status tells.
  const Ran drawn = quadrille_in(folder, {"draw", file, "--out", folder / "colour.pdf"});
  CHECK(drawn.exit == 3);
  CHECK(drawn.err.find("problem: Barn, Arch p1: Slot A is set to") != std::string::npos);
}

TEST_CASE("a missing file, a folder and an empty name end with 3") {
  const Folder folder;
  const Ran missing = quadrille_in(folder, {"count", folder / "none.quadrille"});
  CHECK(missing.exit == 3);
  CHECK(missing.err.find("none.quadrille") != std::string::npos);
  const Ran directory = quadrille_in(folder, {"count", folder.path().string()});
  CHECK(directory.exit == 3);
  CHECK(directory.err.find("folder") != std::string::npos);
  const Ran nameless = quadrille_in(folder, {"count", ""});
  CHECK(nameless.exit == 3);
  CHECK(nameless.err.find("name of the event's file is empty") != std::string::npos);
}

TEST_CASE("a file without permission ends with 3 and says so: no test had one") {
  const Folder folder;
  const std::string event = put_scene(folder);
  std::filesystem::permissions(event, std::filesystem::perms::none);
  std::filesystem::permissions(folder.path(), std::filesystem::perms::all);
  std::vector<std::string> words{"count", event};
  std::string program = quadrille_program;
  if (geteuid() == 0) {  // whom no permission stops: the number is that of nobody
    words = {"--reuid=65534", "--regid=65534", "--clear-groups", quadrille_program, "count", event};
    program = "setpriv";
    const Ran able =
        run_in(folder, program, {"--reuid=65534", "--regid=65534", "--clear-groups", quadrille_program, "--version"},
               environment_in(folder));
    if (able.exit != 0) {
      MESSAGE("not checked: the program lies where only root can run it");
      return;
    }
  }
  const Ran outcome = run_in(folder, program, words, environment_in(folder));
  CHECK(outcome.exit == 3);
  CHECK(outcome.out.empty());
  CHECK(outcome.err.find("supper.quadrille cannot be read") != std::string::npos);
  CHECK(outcome.err.find("ermission") != std::string::npos);
}

TEST_CASE("very deep nesting ends with a sentence and not with a crash") {
  const Folder folder;
  std::string deep = "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\">";
  for (int i = 0; i < 300'000; ++i) deep += "<a>";
  put_file(folder.path() / "deep.quadrille", deep);
  const Ran outcome = quadrille_in(folder, {"check", folder / "deep.quadrille"});
  CHECK(outcome.exit == 3);
  CHECK_FALSE(outcome.err.empty());
}

TEST_CASE("a negative count ends with 3, with line, key and what would be accepted") {
  const Folder folder;
  std::string text = event_text();
  text.replace(text.find("count=\"33\""), 10, "count=\"-5\"");
  const Ran outcome = quadrille_in(folder, {"count", put_scene(folder, text)});
  CHECK(outcome.exit == 3);
  CHECK(outcome.out.empty());
  CHECK(outcome.err.find("line 10, <set key=\"clusters\">: count=\"-5\"") != std::string::npos);
  CHECK(outcome.err.find("a number from 0") != std::string::npos);
}

}  // namespace
}  // namespace quadrille
