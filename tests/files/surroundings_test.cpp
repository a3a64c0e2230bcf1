// Files are the same whatever the locale, and work without a home.
#include <doctest/doctest.h>

#include <clocale>
#include <cstdlib>
#include <locale>

#include "scratch.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/gpl_file.hpp"
#include "studio/files/house_file.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/model/edits.hpp"

using namespace quadrille;

namespace {

/// While it lives, every part of the C locale is that of `name`, made anew for the test.
class Locale {
 public:
  Locale(const ScratchFolder& folder, const std::string& language) {
    const std::string name = language + ".UTF-8";
    const std::string made = (folder / name).string();
    const std::string command = "localedef -i " + language + " -f UTF-8 " + made + " >/dev/null 2>&1";
    [[maybe_unused]] const int ignored = std::system(command.c_str());  // warnings count as failure there
    ::setenv("LOCPATH", folder.path().c_str(), 1);
    is_set_ = std::setlocale(LC_ALL, name.c_str()) != nullptr;
  }
  ~Locale() {
    std::setlocale(LC_ALL, "C");
    ::unsetenv("LOCPATH");
  }
  Locale(const Locale&) = delete;
  Locale& operator=(const Locale&) = delete;
  bool is_set() const { return is_set_; }

 private:
  bool is_set_ = false;
};

void check_files_work() {
  const ScratchFolder folder;
  const std::string before = contents(fixture("event-1.0.quadrille"));
  const auto opened = read_event(before, "f");
  REQUIRE(opened.error == "");
  CHECK(opened->event.areas[0]->wall_width_m == 7.25);
  CHECK(write_event(opened->event) == before);
  const std::filesystem::path name = folder / "Blüten–Bogen 日.quadrille";
  CHECK(save_event(name, moved(opened->event, "p1", 1.5, 0.25), &*opened) == std::nullopt);
  const auto again = open_event(name);
  REQUIRE(again.error == "");
  CHECK(find_piece(again->event, "p1")->x_m == 1.5);
  CHECK(again->bytes.find("x-m=\"1.5\" y-m=\"0.25\"") != std::string::npos);
  CHECK(read_event(replaced(before, "x-m=\"3.5\"", "x-m=\"3,5\""), "f").error.find("3.5") != std::string::npos);
  const std::string house = contents(fixture("house-1.0.quadrille-house"));
  const auto own = read_house(house, "f");
  REQUIRE(own.error == "");
  CHECK(own->house.rates.at("make-cluster") == 11.5);
  CHECK(write_house(own->house) == house);
  const auto imported = read_gpl("GIMP Palette\n200 64 47 POPPY I\n", "f", "f");
  REQUIRE(imported.error == "");
  CHECK(imported->palette.colours.at(0).key == "poppy-i");  // the Turkish small letter of I has no dot
}

}  // namespace

TEST_CASE("files are the same under a locale that writes 1,5, and under Turkish letters") {
  for (const char* language : {"de_DE", "tr_TR"}) {
    const ScratchFolder folder;
    const Locale locale(folder, language);
    REQUIRE_MESSAGE(locale.is_set(), "localedef and the sources of ", language, " (package locales) are needed");
    REQUIRE(std::string(std::localeconv()->decimal_point) == ",");
    check_files_work();
  }
}

TEST_CASE("files are the same under the plain C locale, UTF-8 names included") { check_files_work(); }

TEST_CASE("without a home there are fewer folders for palettes, and no failure") {
  const std::string home = std::getenv("HOME") == nullptr ? "" : std::getenv("HOME");
  ::unsetenv("HOME");
  ::unsetenv("XDG_DATA_HOME");
  ::unsetenv("QUADRILLE_PALETTES_PATH");
  const auto folders = standard_palette_folders("/opt/q/bin/quadrille", "/jobs/e.quadrille");
  using Paths = std::vector<std::filesystem::path>;
  CHECK(folders == Paths{"/jobs/palettes", "/opt/q/share/quadrille/palettes"});
  ::setenv("HOME", "/home/someone", 1);
  CHECK(standard_palette_folders({}, {}) == Paths{"/home/someone/.local/share/quadrille/palettes"});
  ::setenv("XDG_DATA_HOME", "relative", 1);  // XDG Base Directory Specification: to be ignored
  CHECK(standard_palette_folders({}, {}) == Paths{"/home/someone/.local/share/quadrille/palettes"});
  ::setenv("XDG_DATA_HOME", "/data", 1);
  ::setenv("QUADRILLE_PALETTES_PATH", "/one::/two", 1);
  CHECK(standard_palette_folders({}, {}) == Paths{"/one", "/two", "/data/quadrille/palettes"});
  ::unsetenv("XDG_DATA_HOME");
  ::unsetenv("QUADRILLE_PALETTES_PATH");
  if (!home.empty()) ::setenv("HOME", home.c_str(), 1);
}
