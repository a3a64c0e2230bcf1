// The program from outside: its options, and what it says where there is no display.
#include <sys/wait.h>

#include <cstdlib>

#include "scratch.hpp"

namespace quadrille {
namespace {

struct Ran {
  int status = -1;
  std::string out, err;
};

/// Runs the program by the shell, without a display.
Ran run(const std::string& arguments) {
  const ScratchFolder folder;
  const std::string command = "env -u DISPLAY -u WAYLAND_DISPLAY '" + studio_program().string() + "' " + arguments +
                              " >'" + (folder / "out").string() + "' 2>'" + (folder / "err").string() + "'";
  const int status = std::system(command.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, contents(folder / "out"), contents(folder / "err")};
}

}  // namespace

TEST_CASE("--version and --help need no display") {
  const Ran version = run("--version"), help = run("--help");
  CHECK(version.status == 0);
  CHECK(version.out == "quadrille-studio " QUADRILLE_VERSION "\n");
  CHECK(help.status == 0);
  CHECK(help.out.starts_with("quadrille-studio [EVENT]"));
  CHECK(version.err.empty());
}

TEST_CASE("without a display the program ends with a sentence that says what to do instead") {
  const Ran ran = run("");
  CHECK(ran.status == 3);
  CHECK(ran.out.empty());
  CHECK(ran.err.find("no display") != std::string::npos);
  CHECK(ran.err.find("quadrille draw") != std::string::npos);
}

TEST_CASE("arguments that cannot be meant are refused") {
  CHECK(run("--sparkle").status == 2);
  CHECK(run("--sparkle").err.find("--sparkle") != std::string::npos);
  CHECK(run("one.quadrille two.quadrille").status == 2);
}

}  // namespace quadrille
