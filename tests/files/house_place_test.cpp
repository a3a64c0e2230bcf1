// Where the house file lives, and which house serves.
#include "studio/files/house_place.hpp"

#include <doctest/doctest.h>
#include <sys/stat.h>

#include <cstdlib>
#include <map>
#include <string>

#include "scratch.hpp"
#include "studio/model/rates.hpp"
#include "tests/places.hpp"

using namespace quadrille;
namespace fs = std::filesystem;

namespace {

/// The variables that name a place; while it lives they are only what is set here.
class Places {
 public:
  Places() {
    for (const char* name : {"HOME", "XDG_DATA_HOME", "QUADRILLE_HOUSE"}) {
      const char* value = std::getenv(name);
      if (value != nullptr) before_[name] = value;
      ::unsetenv(name);
    }
  }
  ~Places() {
    for (const char* name : {"HOME", "XDG_DATA_HOME", "QUADRILLE_HOUSE"}) ::unsetenv(name);
    for (const auto& [name, value] : before_) set(name.c_str(), value);
  }
  Places(const Places&) = delete;
  Places& operator=(const Places&) = delete;
  static void set(const char* name, const fs::path& value) { ::setenv(name, value.c_str(), 1); }

 private:
  std::map<std::string, std::string> before_;
};

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
const std::string whole_house = contents(fixture("house-1.0.quadrille-house"));

}  // namespace

TEST_CASE("the house's place: the one that is named, else the user's data folder, else none") {
  // Source: XDG Base Directory Specification 0.8: $XDG_DATA_HOME, by default $HOME/.local/share; only absolute paths.
  const Places places;
  CHECK(standard_house_file().empty());
  Places::set("HOME", "/home/someone");
  CHECK(standard_house_file() == "/home/someone/.local/share/quadrille/house.quadrille-house");
  Places::set("XDG_DATA_HOME", "relative");
  CHECK(standard_house_file() == "/home/someone/.local/share/quadrille/house.quadrille-house");
  Places::set("XDG_DATA_HOME", "/data");
  CHECK(standard_house_file() == "/data/quadrille/house.quadrille-house");
  Places::set("QUADRILLE_HOUSE", "/desk/mine.quadrille-house");
  CHECK(standard_house_file() == "/desk/mine.quadrille-house");
}

TEST_CASE("without a file the standard house of the currency serves, and says so and where a file would go") {
  const Places places;
  const ScratchFolder folder;
  for (const bool has_home : {false, true}) {
    if (has_home) Places::set("HOME", folder.path());
    const LoadedHouse loaded = load_house({}, "JPY");
    CHECK(loaded.house == standard_house("JPY"));
    CHECK(loaded.is_standard);
    CHECK_FALSE(loaded.opened.has_value());
    REQUIRE(loaded.findings.size() == 1);
    CHECK(loaded.findings[0].weight == Weight::note);
    CHECK(loaded.findings[0].code == "standard-house");
    CHECK(holds(loaded.findings[0].text, "invented"));
    CHECK(holds(loaded.findings[0].remedy, has_home ? loaded.file.string() : "QUADRILLE_HOUSE"));
  }
  CHECK(fs::is_empty(folder.path()));  // looking makes nothing
}

TEST_CASE("a house that was asked for and is not there is more than a note") {
  const Places places;
  const ScratchFolder folder;
  const LoadedHouse named = load_house(folder / "none", "USD");
  CHECK(named.is_standard);
  REQUIRE(named.findings.size() == 1);
  CHECK(named.findings[0].weight == Weight::problem);
  CHECK(holds(named.findings[0].text, (folder / "none").string()));
  Places::set("QUADRILLE_HOUSE", folder / "elsewhere");
  const LoadedHouse set = load_house({}, "USD");
  REQUIRE(set.findings.size() == 1);
  CHECK(set.findings[0].weight == Weight::warning);
  CHECK(set.file == folder / "elsewhere");
}

TEST_CASE("the house of the file serves, with what there is to say about it") {
  const Places places;
  const ScratchFolder folder;
  Places::set("QUADRILLE_HOUSE", folder / "h");
  put(folder / "h", replaced(whole_house, "crew=\"2\"", "crew=\"3\" mood=\"glad\""));
  const LoadedHouse loaded = load_house({}, "USD");
  CHECK_FALSE(loaded.is_standard);
  CHECK(loaded.house.crew == 3);
  CHECK(loaded.house.currency == "EUR");  // its own, whatever the event's
  REQUIRE(loaded.findings.size() == 1);
  CHECK(loaded.findings[0].text.starts_with((folder / "h").string() + ": Line 4"));
  REQUIRE(loaded.opened.has_value());
  CHECK(save_house(loaded.file, loaded.house, &*loaded.opened) == std::nullopt);
  CHECK(contents(loaded.file) == loaded.opened->bytes);
}

TEST_CASE("a house that cannot be read is told, the standard one serves, and the file is never written over") {
  const Places places;
  const ScratchFolder folder;
  const std::string bad = replaced(whole_house, "value=\"11.5\"", "value=\"0\"");
  put(folder / "h", bad);
  const LoadedHouse loaded = load_house(folder / "h", "GBP");
  CHECK(loaded.is_standard);
  CHECK(loaded.house == standard_house("GBP"));
  REQUIRE(loaded.findings.size() == 1);
  CHECK(loaded.findings[0].weight == Weight::problem);
  CHECK(holds(loaded.findings[0].text, "<rate key=\"make-cluster\">"));
  CHECK(holds(loaded.findings[0].text, "above 0"));
  const auto refused = save_house(folder / "h", loaded.house);
  REQUIRE(refused.has_value());
  CHECK(holds(*refused, "would be lost"));
  CHECK(holds(*refused, "make-cluster"));
  CHECK(contents(folder / "h") == bad);
  CHECK_FALSE(fs::exists(folder / "h~"));

  const LoadedHouse of_folder = load_house(folder.path(), "GBP");
  REQUIRE(of_folder.findings.size() == 1);
  CHECK(holds(of_folder.findings[0].text, "is a folder"));
}

TEST_CASE("the first house makes its folders, for its owner alone") {
  // Source: XDG Base Directory Specification 0.8: a missing folder is made with permission 0700.
  const Places places;
  const ScratchFolder folder;
  Places::set("HOME", folder.path());
  const LoadedHouse loaded = load_house({}, "USD");
  CHECK(save_house(loaded.file, loaded.house) == std::nullopt);
  CHECK(load_house({}, "EUR").house == standard_house("USD"));
  for (const fs::path& made : {loaded.file.parent_path(), folder / ".local"}) {
    struct stat about {};
    REQUIRE(::stat(made.c_str(), &about) == 0);
    CHECK((about.st_mode & 0777) == 0700);
  }
  put(folder / "plain", "a file");
  CHECK(save_house(folder / "plain/house", loaded.house).has_value());
}

TEST_CASE("the invented decorator's house in the examples is whole, and fits the lantern fair") {
  const fs::path examples = source_place("examples");
  const LoadedHouse loaded = load_house(examples / "lantern-house.quadrille-house", "USD");
  CHECK(loaded.findings.empty());
  CHECK_FALSE(loaded.is_standard);
  CHECK(holds(loaded.opened->bytes.substr(0, 300), "invented"));
  CHECK(write_house(loaded.house) == loaded.opened->bytes);
  const std::string event = contents(examples / "lantern-fair.quadrille");
  std::size_t of_the_fair = 0;
  for (const BalloonStock& stock : loaded.house.balloons)
    of_the_fair += holds(event, "palette=\"" + stock.colour.palette + "\" key=\"" + stock.colour.colour + "\"");
  CHECK(of_the_fair == loaded.house.balloons.size());
  CHECK(loaded.house.repertoire.size() == 2);
  CHECK(rate_findings(loaded.house).empty());
  for (const auto& [key, value] : loaded.house.rates) CHECK(value != find_rate(key)->standard);
  REQUIRE(loaded.house.kits.size() == 1);
  for (const FrameKit::Part& part : loaded.house.kits[0].parts)
    CHECK(find_supply(loaded.house, part.supply) != nullptr);
}
