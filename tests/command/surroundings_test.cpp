// The command in odd surroundings: a comma locale, no HOME, LANG=C, UTF-8 names; and what it is linked with.
#include <doctest/doctest.h>

#include "scene.hpp"

namespace quadrille {
namespace {

TEST_CASE("the command links neither wxWidgets nor GTK") {
  const Folder folder;
  const Ran outcome = run_in(folder, "ldd", {quadrille_program}, environment_in(folder));
  REQUIRE(outcome.exit == 0);
  CHECK(outcome.out.find("libc.so") != std::string::npos);
  for (const char* toolkit : {"libwx", "libgtk", "libgdk-3"}) CHECK(outcome.out.find(toolkit) == std::string::npos);
}

TEST_CASE("a comma locale changes nothing") {
  const Folder folder;
  const std::string event = put_scene(folder);
  auto environment = environment_in(folder);
  const auto outcome_of = [&](const std::vector<std::string>& words) {
    return run_in(folder, quadrille_program, words, environment);
  };
  const std::vector<std::string> count{"count", event, "--json"}, attempt{"try", "arch", "span=2.25m", "--json"};
  const auto draw = [&](const char* name) { return std::vector<std::string>{"draw", event, "--out", folder / name}; };
  const Ran plain_count = outcome_of(count), plain_attempt = outcome_of(attempt);
  CHECK(outcome_of(draw("plain.pdf")).exit == 0);

  const Ran made = run_in(folder, "localedef", {"-i", "de_DE", "-f", "UTF-8", folder / "de_DE.UTF-8"}, environment);
  REQUIRE_MESSAGE(made.exit == 0, "localedef (package locales) is needed: " << made.err);
  environment["LOCPATH"] = folder.path().string();
  environment["LC_ALL"] = "de_DE.UTF-8";
  // The locale does take commas: printf of the shell says so.
  CHECK(run_in(folder, "bash", {"-c", "printf %.1f 1,5"}, environment).out == "1,5");
  CHECK(outcome_of(count).out == plain_count.out);
  CHECK(outcome_of(attempt).out == plain_attempt.out);
  CHECK(outcome_of(attempt).exit == 0);
  CHECK(outcome_of(draw("comma.pdf")).exit == 0);
  CHECK(bytes_of(folder / "comma.pdf") == bytes_of(folder / "plain.pdf"));
}

TEST_CASE("without HOME and with LANG=C a UTF-8 name is taken as it is") {
  const Folder folder;
  put_scene(folder);
  const std::string event = folder / "Größe – 花.quadrille";
  put_file(event, event_text());
  const Environment bare{{"PATH", "/usr/bin:/bin"},
                         {"LANG", "C"},
                         {"LSAN_OPTIONS", leaks_of_others},
                         {"QUADRILLE_PALETTES_PATH", folder / "palettes"}};
  const Ran counted = run_in(folder, quadrille_program, {"count", event, "--json"}, bare);
  CHECK(counted.exit == 0);
  CHECK(counted.out == quadrille_in(folder, {"count", event, "--json"}).out);
  const std::string drawing = folder / "Größe – 花.pdf";
  CHECK(run_in(folder, quadrille_program, {"draw", event, "--out", drawing}, bare).exit == 0);
  CHECK(bytes_of(drawing).starts_with("%PDF-"));
  const Ran missing = run_in(folder, quadrille_program, {"count", folder / "Weiß.quadrille"}, bare);
  CHECK(missing.exit == 3);
  CHECK(missing.err.find("Weiß.quadrille") != std::string::npos);
}

TEST_CASE("with no environment at all it still works") {
  const Folder folder;
  CHECK(run_in(folder, quadrille_program, {"try", "arch", "--json"}, {}).exit == 0);
}

}  // namespace
}  // namespace quadrille
