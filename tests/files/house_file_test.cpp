// The house file: what it says comes back, what it does not say is standard, and nothing it holds is lost.
#include "studio/files/house_file.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <limits>
#include <map>
#include <sstream>
#include <vector>

#include "random_house.hpp"
#include "scratch.hpp"
#include "studio/files/clean_house.hpp"

using namespace quadrille;

namespace {

std::string house_with(const std::string& inside, const std::string& attributes = "currency=\"EUR\"") {
  return "<house xmlns=\"urn:quadrille:house:1\" version=\"1.0\" reader=\"1.0\" " + attributes + ">\n" + inside +
         "\n</house>\n";
}
OpenedHouse opened(const std::string& bytes) {
  auto house = read_house(bytes, "f");
  REQUIRE(house.error == "");
  return std::move(*house.value);
}
/// What is in the file after the house is saved, which must not be refused.
std::string saved(const House& house) {
  const ScratchFolder folder;
  CHECK(save_house(folder / "h.quadrille-house", house).value_or("") == "");
  return contents(folder / "h.quadrille-house");
}
bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
const std::string whole_house = contents(fixture("house-1.0.quadrille-house"));

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}
std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}
/// Without the blanks at the beginnings of lines.
std::string flat(const std::string& text) {
  std::string flat;
  for (const std::string& line : lines_of(text))
    flat += line.substr(std::min(line.find_first_not_of(' '), line.size())) + "\n";
  return flat;
}

}  // namespace

TEST_CASE("the version 1.0 house is read for what it says") {
  const OpenedHouse file = opened(whole_house);
  CHECK(file.findings.empty());
  const House& house = file.house;
  CHECK(house.name == "Kite & Lantern");
  CHECK(house.contact == "12 Weir Lane\nkite@example.org");
  CHECK(house.currency == "EUR");
  CHECK(house.crew == 2);
  CHECK(house.short_chance == 0.02);
  CHECK(house.ballast_fill == BallastFill::sand);
  CHECK(house.container_l == 12.5);
  CHECK(house.rates == std::map<std::string, double, std::less<>>{{"make-cluster", 11.5}, {"raise-frame", 420}});
  CHECK(house.pricing == Pricing{2250, 4800, 1'500'000, 1'250'000, 1'000'000, 3000, 110, 42, 25'000, true, 190'000,
                                 190'000, 190'000, 70'000, 300'000, 20'000, 21});
  REQUIRE(inflator_in_use(house) != nullptr);
  CHECK(*inflator_in_use(house) == Inflator{"hall", "The loud one", 10.5, 2, 1200, 230, "its plate", {}});
  CHECK(failure_rate(house, 36, Finish::clear) == 0);
  CHECK(failure_rate(house, 5, Finish::metallic) == 0.035);
  REQUIRE(house.balloons.size() == 2);
  CHECK(house.balloons[0].colour == ColourReference{"house", "ivory"});
  CHECK(house.balloons[0].on_hand == 130);
  CHECK(house.balloons[0].packs == std::vector<Pack>{{11, 25, 520}, {11, 100, 1490}});
  CHECK(house.balloons[1].packs.empty());
  const SupplyStock* plate = find_supply(house, "base-plate-450mm-8.0kg");
  REQUIRE(plate != nullptr);
  CHECK(*plate == SupplyStock{"base-plate", "Round plate", 1, 4100, 4, true, 450, 7.5, "Garage", {}});
  CHECK(find_supply(house, "cluster-line")->on_hand == 37.5);
  REQUIRE(house.kits.size() == 1);
  CHECK(house.kits[0].on_hand == 2);
  CHECK(house.kits[0].parts == std::vector<FrameKit::Part>{{"base-plate", 2}, {"rod-glass-fibre-14mm-1500mm", 4}});
  REQUIRE(house.repertoire.size() == 2);
  CHECK(house.repertoire[0].price_minor == 39'000);
  CHECK(house.repertoire[0].values.at("rod-length") == Value::of_number(Kind::length, 6.1));
  CHECK(house.repertoire[0].colours == std::vector<ColourReference>{{"house", "ivory"}, {}});
  CHECK(house.repertoire[1].values.at("path") == Value::of_list(Kind::path, {0, 0, 0.3, 2, 0, 1.8}));
  REQUIRE(house.packings.size() == 2);
  CHECK(house.packings[0].snug == 0.86);
  REQUIRE(house.jobs.size() == 2);
  CHECK(house.jobs[0].actual_s.at("make-cluster") == 381.5);
  CHECK(house.jobs[0].planned_s.size() == 1);
  CHECK(house.jobs[1].planned_s.at("make-cluster") == 0);
}

TEST_CASE("a house as this version writes it is written again byte for byte, and saved untouched as it was") {
  const OpenedHouse file = opened(whole_house);
  CHECK(write_house(file.house) == whole_house);
  const ScratchFolder folder;
  const std::string untidy = replaced(whole_house, "<rates>", "<rates  >\n\n");
  const OpenedHouse other = opened(untidy);
  CHECK(save_house(folder / "h", other.house, &other) == std::nullopt);
  CHECK(contents(folder / "h") == untidy);
}

TEST_CASE("any house is read back as it was written") {
  CHECK(rc::check([] {
    const House house = any_house();
    const std::string bytes = write_house(house);
    const auto again = read_house(bytes, "random");
    RC_ASSERT(again.error == "");
    RC_ASSERT(again->house == house);
    RC_ASSERT(again->findings.empty());
    RC_ASSERT(write_house(again->house) == bytes);
  }));
}

TEST_CASE("the standard house of any currency is written out whole, prices and all") {
  for (const char* currency : {"USD", "JPY", "KWD"}) {
    const House house = standard_house(currency);
    const std::string bytes = saved(house);
    CHECK(opened(bytes).house == house);
    CHECK(opened(bytes).findings.empty());
    for (const SupplyStock& supply : house.supplies) CHECK(holds(bytes, "<supply key=\"" + supply.key + "\""));
    CHECK(holds(bytes, "wage-per-hour-minor=\"" + std::to_string(house.pricing.wage_per_hour) + "\""));
  }
}

TEST_CASE("what a file does not say is standard, and told; a list that is there counts as it stands") {
  const OpenedHouse bare = opened(house_with(""));
  CHECK(without_kept(bare.house) == standard_house("EUR"));
  REQUIRE(bare.findings.size() == 1);
  CHECK(bare.findings[0].weight == Weight::note);
  for (const char* part : {"<pricing>", "<inflators>", "<failures>", "<supplies>", "invented"})
    CHECK(holds(bare.findings[0].text, part));

  const OpenedHouse empty = opened(house_with("<supplies/><inflators/><failures/>"));
  CHECK(empty.house.supplies.empty());
  CHECK(empty.house.inflators.empty());
  CHECK(empty.house.failures.empty());
  CHECK(opened(saved(empty.house)).house.supplies.empty());

  const OpenedHouse wage = opened(house_with("<pricing><labour wage-per-hour-minor=\"3100\"/></pricing>"));
  CHECK(wage.house.pricing.wage_per_hour == 3100);
  CHECK(wage.house.pricing.charge_per_hour == standard_house("EUR").pricing.charge_per_hour);
  REQUIRE(wage.findings.size() == 1);
  for (const char* part : {"charge-per-hour-minor", "<markup>", "minimum-minor"})
    CHECK(holds(wage.findings[0].text, part));
  CHECK_FALSE(holds(wage.findings[0].text, "wage-per-hour"));
}

TEST_CASE("a comment and a foreign element come back between the same lines of a house, wherever they stand") {
  const std::vector<std::string> lines = lines_of(whole_house);
  for (std::size_t at = 1; at <= lines.size(); ++at)
    for (const char* stranger : {"<!-- a remark -->", "<z:b xmlns:z=\"urn:z\" c='d'>e</z:b>"}) {
      const bool outside = at < 3 || lines[at - 1] == "</house>" || at == lines.size();
      if (outside && stranger[1] != '!') continue;  // only one element may stand there
      std::vector<std::string> changed = lines;
      changed.insert(changed.begin() + static_cast<std::ptrdiff_t>(at), stranger);
      CAPTURE(joined(changed));
      const OpenedHouse file = opened(joined(changed));
      CHECK(file.findings.empty());
      CHECK(flat(saved(file.house)) == flat(joined(changed)));
    }
}

TEST_CASE("a foreign attribute and an unknown one come back on their element of a house, whichever that is") {
  const std::vector<std::string> lines = lines_of(whole_house);
  std::size_t elements = 0;
  for (std::size_t at = 1; at < lines.size(); ++at) {
    const std::size_t begin = lines[at].find_first_not_of(' ');
    const char second = lines[at][begin + 1];
    if (second == '!' || second == '/' || holds(lines[at], "<crm:")) continue;
    ++elements;
    for (const char* attribute : {" z:z=\"&lt;1&#10;\"", " mood=\"glad\""}) {
      std::vector<std::string> changed = lines;
      const std::size_t end = lines[at].find_first_of(">", begin) - (lines[at].ends_with("/>") ? 1 : 0);
      changed[at].insert(end, attribute);
      CAPTURE(joined(changed));
      const OpenedHouse file = opened(joined(changed));
      CHECK(file.findings.size() == (attribute[1] == 'm' ? 1 : 0));
      CHECK(saved(file.house) == joined(changed));
    }
  }
  CHECK(elements > 50);
}

TEST_CASE("what is not understood in a house is named with its line, and kept through an edit") {
  const struct {
    std::string inside;
    const char* named;  // must stand in a finding
    const char* kept;   // must stand in the file after an edit
  } table[] = {
      {"<cellar wine=\"9\"/>", "<cellar>", "<cellar wine=\"9\"/>"},
      {"<work ballast-fill=\"gravel\"/>", "water or sand", "ballast-fill=\"gravel\""},
      {"<pricing><tip share-ppm=\"1\"/></pricing>", "<tip>", "<tip share-ppm=\"1\"/>"},
      {"<pricing prices-with-tax=\"perhaps\"/>", "yes or no", "prices-with-tax=\"perhaps\""},
      {"<failures><failure finish=\"matt\" rate=\"0.5\"/></failures>", "matte, pearl",
       "<failure finish=\"matt\" rate=\"0.5\"/>"},
      {"<rates><rate value=\"3\"/></rates>", "no key", "<rate value=\"3\"/>"},
      {"<supplies/>\n<supplies><supply key=\"a\" price-minor=\"1\"/></supplies>", "twice", "key=\"a\""},
      {"<kits/>\n<kits><kit key=\"a\"/></kits>", "twice", "key=\"a\""},
      {"<supplies><supply key=\"a\" price-minor=\"1\" reused=\"often\"/></supplies>", "often", "reused=\"often\""},
      {"<packings><packing nominal-in=\"11\" inflated-m=\"0.25\" date=\"soon\"/></packings>", "soon", "date=\"soon\""},
      {"<jobs><job>went well<rate actual-s=\"1\"/></job></jobs>", "went well", "<rate actual-s=\"1\"/>"},
      {"<repertoire><piece key=\"a\" type=\"t\"><set key=\"k\" flag=\"maybe\"/></piece></repertoire>", "yes or no",
       "flag=\"maybe\""},
  };
  for (const auto& row : table) {
    CAPTURE(row.inside);
    OpenedHouse file = opened(house_with(row.inside));
    std::string told;
    for (const Finding& finding : file.findings)
      if (finding.code == "not-understood") told += finding.text + finding.remedy + "\n";
    CAPTURE(told);
    CHECK(holds(told, row.named));
    CHECK(holds(told, "Line "));
    file.house.name = "edited";
    const std::string bytes = saved(file.house);
    CHECK(holds(bytes, row.kept));
    CHECK(opened(saved(file.house)).house.supplies == file.house.supplies);
  }
  // A finish that is none must not make its rate everybody's.
  CHECK(opened(house_with(table[4].inside)).house.failures.empty());
}

TEST_CASE("the element after a comment may go from a house, and the list with it") {
  House house = opened(whole_house).house;
  house.supplies.clear();
  house.balloons.clear();
  house.kits.clear();
  house.rates.clear();
  const std::string bytes = saved(house);
  CHECK(holds(bytes, "<crm:label colour=\"red\"/>"));
  CHECK(holds(bytes, "<!-- with the long ladder -->"));
  CHECK_FALSE(holds(bytes, "<!-- the bent one is spare -->"));  // it went with the kit that it stood in
  CHECK(write_house(opened(bytes).house) == bytes);
}

TEST_CASE("a house of a newer version: a minor one is used and kept, a major one is used and never saved over") {
  const std::string minor = replaced(house_with("<fireworks/>"), "version=\"1.0\" reader", "version=\"1.7\" reader");
  OpenedHouse file = opened(minor);
  CHECK_FALSE(file.read_only);
  for (const Finding& finding : file.findings) CHECK(finding.weight == Weight::note);
  file.house.name = "edited";
  CHECK(holds(saved(file.house), "version=\"1.7\" reader=\"1.0\""));
  CHECK(holds(saved(file.house), "<fireworks/>"));

  const ScratchFolder folder;
  const std::string major = replaced(replaced(house_with("<work crew=\"3\"/>"), "house:1", "house:2"),
                                     "version=\"1.0\" reader=\"1.0\"", "version=\"2.0\" reader=\"2.0\"");
  for (const std::string& bytes : {major, replaced(house_with(""), "reader=\"1.0\"", "reader=\"1.4\"")}) {
    OpenedHouse newer = opened(bytes);
    CHECK(newer.read_only);
    put(folder / "h", "before");
    House edited = newer.house;
    edited.name = "edited";
    CHECK(save_house(folder / "h", edited, &newer).has_value());
    CHECK(contents(folder / "h") == "before");
  }
  CHECK(opened(major).house.crew == 3);
}

TEST_CASE("the version before stays when a house is saved, and what no file can hold is not saved") {
  const ScratchFolder folder;
  const auto file = folder / "h.quadrille-house";
  put(file, whole_house);
  OpenedHouse house = opened(whole_house);
  House edited = house.house;
  edited.pricing.wage_per_hour = 2300;
  CHECK(save_house(file, edited, &house) == std::nullopt);
  CHECK(contents(folder / "h.quadrille-house~") == whole_house);
  CHECK(contents(file) == replaced(whole_house, "wage-per-hour-minor=\"2250\"", "wage-per-hour-minor=\"2300\""));
  const std::string good = contents(file);
  const auto refused = [&](auto change) {
    House bad = edited;
    change(bad);
    const auto sentence = save_house(file, bad, &house);
    CHECK(contents(file) == good);
    return sentence.value_or("");
  };
  CHECK(holds(refused([](House& bad) { bad.pricing.minimum = -1; }), "minimum-minor"));
  CHECK(holds(refused([](House& bad) { bad.rates["tie"] = 0; }), "above 0"));
  CHECK(holds(refused([](House& bad) { bad.container_l = std::numeric_limits<double>::quiet_NaN(); }), "container-l"));
  CHECK(holds(refused([](House& bad) { bad.supplies.push_back(bad.supplies[0]); }), "twice"));
  CHECK(holds(refused([](House& bad) { bad.balloons[0].packs[0].nominal_in = 5; }), "would not open again as it is"));
}

TEST_CASE("characters that XML forbids are left out of a house's texts, the rest is saved") {
  House house = standard_house("USD");
  house.name = std::string("a\x01") + "b\xFF";
  CHECK(opened(saved(house)).house.name == "ab\xEF\xBF\xBD");
}
