// House files that cannot be meant: each gets one sentence with the file, the line, the element and what would be
// accepted; and no bytes make the reader fall over.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "scratch.hpp"
#include "studio/files/house_file.hpp"
#include "studio/model/rates.hpp"

using namespace quadrille;

namespace {

std::string house_with(const std::string& inside) {
  return "<house xmlns=\"urn:quadrille:house:1\" version=\"1.0\" reader=\"1.0\" currency=\"EUR\">\n" + inside +
         "\n</house>\n";
}
std::string supply_with(const std::string& figures) {
  return house_with("<supplies>\n<supply key=\"rod\" " + figures + "/>\n</supplies>");
}
std::string inflator_with(const std::string& figures) {
  return house_with("<inflators>\n<inflator key=\"loud\" " + figures + "/>\n</inflators>");
}
std::string pricing_with(const std::string& part) { return house_with("<pricing>\n" + part + "\n</pricing>"); }
std::string rate_with(const std::string& value) {
  return house_with("<rates>\n<rate key=\"tie\" " + value + "/>\n</rates>");
}
std::string balloon_with(const std::string& attributes, const std::string& packs = {}) {
  return house_with("<balloons>\n<balloon palette=\"house\" key=\"ivory\" " + attributes + ">" + packs +
                    "</balloon>\n</balloons>");
}

}  // namespace

TEST_CASE("figures of a house that cannot be meant are refused with the place and what is accepted") {
  const std::string header = "<house xmlns=\"urn:quadrille:house:1\" version=\"1.0\"";
  const struct {
    std::string bytes;
    std::vector<std::string> named;  // all of it must stand in the sentence
  } table[] = {
      {header + "/>", {"line 1", "<house>", "currency is missing", "ISO 4217", "USD"}},
      {header + " currency=\"EURO\"/>", {"currency=\"EURO\"", "ISO 4217"}},
      {header + " currency=\"XXX\"/>", {"currency=\"XXX\"", "no currency that has a minor unit"}},
      {header + " currency=\"eur\"/>", {"currency=\"eur\"", "EUR, in capitals"}},
      {header + " currency=\"XAU\"/>", {"currency=\"XAU\"", "USD, EUR or JPY"}},
      {house_with("<work crew=\"0\"/>"), {"line 2", "<work>", "crew=\"0\"", "from 1 to 20", "people"}},
      {house_with("<work crew=\"1.5\"/>"), {"crew=\"1.5\"", "not whole"}},
      {house_with("<work short-chance=\"0\"/>"), {"short-chance=\"0\"", "from 0.000001 to 0.5"}},
      {house_with("<work short-chance=\"5 %\"/>"), {"short-chance=\"5 %\"", "number alone"}},
      {house_with("<work container-l=\"0\"/>"), {"container-l=\"0\"", "above 0", "litres"}},
      {pricing_with("<labour wage-per-hour-minor=\"-1\"/>"),
       {"line 3", "<labour>", "wage-per-hour-minor=\"-1\"", "from 0", "minor units"}},
      {pricing_with("<labour wage-per-hour-minor=\"25.50\"/>"), {"25.50", "not whole", "minor units"}},
      {pricing_with("<labour wage-per-hour-minor=\"25,50\"/>"), {"25,50", "point"}},
      {pricing_with("<labour wage-per-hour-minor=\"1000000000000000\"/>"), {"999999999999999"}},
      {pricing_with("<markup balloons-ppm=\"10000001\"/>"), {"balloons-ppm", "to 10000000", "8.25 %"}},
      {pricing_with("<deposit share-ppm=\"1000001\"/>"), {"share-ppm=\"1000001\"", "to 1000000", "50 %"}},
      {pricing_with("<tax work-ppm=\"nan\"/>"), {"work-ppm=\"nan\"", "no number"}},
      {house_with("<pricing valid-days=\"0\"/>"), {"valid-days=\"0\"", "from 1 to 3650", "days"}},
      {rate_with("value=\"0\""), {"line 3", "<rate key=\"tie\">", "value=\"0\"", "above 0"}},
      {rate_with("value=\"-2\""), {"value=\"-2\"", "above 0"}},
      {rate_with("value=\"inf\""), {"value=\"inf\"", "no number"}},
      {rate_with(""), {"<rate key=\"tie\">", "value is missing"}},
      {house_with("<rates><rate key=\"tie\" value=\"1\"/>\n<rate key=\"tie\" value=\"2\"/></rates>"),
       {"line 3", "\"tie\"", "twice"}},
      {inflator_with("litres-per-s=\"0\""), {"line 3", "<inflator key=\"loud\">", "litres-per-s=\"0\"", "above 0"}},
      {inflator_with(""), {"litres-per-s is missing", "litres per second"}},
      {inflator_with("litres-per-s=\"9\" nozzles=\"0\""), {"nozzles=\"0\"", "from 1"}},
      {inflator_with("litres-per-s=\"9\" watts=\"-1\""), {"watts=\"-1\"", "watts"}},
      {inflator_with("litres-per-s=\"9\" volts=\"0\""), {"volts=\"0\"", "above 0"}},
      {house_with("<inflators><inflator litres-per-s=\"9\"/></inflators>"), {"<inflator>", "key is missing"}},
      {house_with("<failures>\n<failure rate=\"1\"/></failures>"),
       {"line 3", "<failure>", "rate=\"1\"", "from 0 to 0.9", "2 in 100"}},
      {house_with("<failures>\n<failure rate=\"-0.01\"/></failures>"), {"rate=\"-0.01\""}},
      {house_with("<failures>\n<failure nominal-in=\"5\"/></failures>"), {"rate is missing"}},
      {house_with(
           "<failures><failure nominal-in=\"5\" rate=\"0\"/>\n<failure nominal-in=\"5.0\" rate=\"0.1\"/></failures>"),
       {"line 3", "failure stands twice", "<failures>"}},
      {balloon_with("nominal-in=\"0\""),
       {"line 3", "<balloon key=\"ivory\">", "nominal-in=\"0\"", "above 0", "inches"}},
      {balloon_with("nominal-in=\"11\" on-hand=\"-3\""), {"on-hand=\"-3\"", "from 0"}},
      {balloon_with("nominal-in=\"11\"", "<pack count=\"0\" price-minor=\"1\"/>"),
       {"<pack>", "count=\"0\"", "from 1", "balloons in a pack"}},
      {balloon_with("nominal-in=\"11\"", "<pack count=\"10\" price-minor=\"-1\"/>"), {"price-minor=\"-1\"", "from 0"}},
      {balloon_with("nominal-in=\"11\"", "<pack count=\"10\"/>"), {"<pack>", "price-minor is missing"}},
      {balloon_with("nominal-in=\"11\"",
                    "<pack count=\"9\" price-minor=\"1\"/>\n<pack count=\"9\" price-minor=\"2\"/>"),
       {"line 4", "pack of 9", "twice"}},
      {house_with("<balloons><balloon palette=\"house\" key=\"a\" nominal-in=\"11\"/>\n"
                  "<balloon palette=\"house\" key=\"a\" nominal-in=\"11.0\"/></balloons>"),
       {"line 3", "<balloon key=\"a\">", "balloon stands twice"}},
      {house_with("<balloons><balloon key=\"a\" nominal-in=\"11\"/></balloons>"), {"palette is missing"}},
      {supply_with("price-minor=\"5\" pack=\"0\""), {"line 3", "<supply key=\"rod\">", "pack=\"0\"", "above 0"}},
      {supply_with("price-minor=\"-5\""), {"price-minor=\"-5\"", "from 0", "minor units"}},
      {supply_with("price-minor=\"1000000000001\""), {"to 1000000000000"}},
      {supply_with(""), {"price-minor is missing", "minor units"}},
      {supply_with("price-minor=\"5\" on-hand=\"-1\""), {"on-hand=\"-1\""}},
      {supply_with("price-minor=\"5\" mass-kg=\"1e9\""), {"mass-kg=\"1e9\"", "kilograms"}},
      {supply_with("price-minor=\"5\" rental-minor=\"0.5\""), {"rental-minor=\"0.5\"", "not whole"}},
      {house_with("<supplies><supply key=\"a\" price-minor=\"1\"/>\n<supply key=\"a\" price-minor=\"2\"/></supplies>"),
       {"line 3", "<supply key=\"a\">", "stands twice in <supplies>"}},
      {house_with("<kits><kit key=\"a\"><part supply=\"rod\" quantity=\"0\"/></kit></kits>"),
       {"<part>", "quantity=\"0\"", "above 0"}},
      {house_with("<kits><kit key=\"a\"><part quantity=\"1\"/></kit></kits>"), {"<part>", "supply is missing"}},
      {house_with(
           "<kits><kit key=\"a\"><part supply=\"r\" quantity=\"1\"/><part supply=\"r\" quantity=\"1\"/></kit></kits>"),
       {"\"r\" stands twice"}},
      {house_with("<kits><kit key=\"a\"/>\n<kit key=\"a\"/></kits>"), {"line 3", "kit stands twice"}},
      {house_with("<repertoire><piece key=\"a\" type=\"t\" price-minor=\"-1\"/></repertoire>"), {"price-minor=\"-1\""}},
      {house_with("<repertoire><piece key=\"a\" type=\"t\"><set key=\"k\" length=\"nan\"/></piece></repertoire>"),
       {"<set key=\"k\">", "nan", "metres"}},
      {house_with("<repertoire><piece key=\"a\" type=\"t\"/>\n<piece key=\"a\" type=\"t\"/></repertoire>"),
       {"line 3", "piece stands twice"}},
      {house_with("<packings><packing nominal-in=\"11\" inflated-m=\"0\"/></packings>"),
       {"inflated-m=\"0\"", "above 0"}},
      {house_with("<packings><packing nominal-in=\"11\" inflated-m=\"0.25\" snug=\"-1\"/></packings>"),
       {"snug=\"-1\""}},
      {house_with("<jobs><job><rate key=\"tie\"/></job></jobs>"),
       {"<rate key=\"tie\">", "planned-s, actual-s or both"}},
      {house_with("<jobs><job><rate key=\"tie\" actual-s=\"-1\"/></job></jobs>"), {"actual-s=\"-1\"", "seconds"}},
      {house_with("<jobs><job><rate key=\"t\" actual-s=\"1\"/>\n<rate key=\"t\" planned-s=\"1\"/></job></jobs>"),
       {"line 3", "\"t\" stands twice"}},
      {"<event xmlns=\"urn:quadrille:event:1\"/>", {"line 1", "not a house file", "urn:quadrille:house:1"}},
      {"<house xmlns=\"urn:quadrille:palette:1\"/>", {"urn:quadrille:house:1"}},
      {"", {"empty"}},
  };
  for (const auto& row : table) {
    CAPTURE(row.bytes);
    const auto house = read_house(row.bytes, "mine.quadrille-house");
    CHECK_FALSE(house);
    CAPTURE(house.error);
    CHECK(house.error.starts_with("mine.quadrille-house"));
    CHECK(house.error.ends_with("."));
    CHECK(house.error.find('\n') == std::string::npos);
    for (const std::string& part : row.named) {
      CAPTURE(part);
      CHECK(house.error.find(part) != std::string::npos);
    }
  }
}

TEST_CASE("a rate may be 0 where its own range begins there, and be unknown") {
  const auto read = [](const std::string& key) {
    return read_house(house_with("<rates><rate key=\"" + key + "\" value=\"0\"/></rates>"), "f");
  };
  for (const Rate& rate : all_rates()) {
    CAPTURE(rate.key);
    CHECK(static_cast<bool>(read(rate.key)) == (rate.least == 0));
  }
  CHECK_FALSE(read("strangers"));
  CHECK(read_house(house_with("<rates><rate key=\"strangers\" value=\"3\"/></rates>"), "f")->house.rates.size() == 1);
}

TEST_CASE("an inflator that is not in the list is told, with those that are") {
  const auto house =
      read_house(house_with("<work inflator=\"lod\"/><inflators><inflator key=\"loud\" litres-per-s=\"9\"/>"
                            "</inflators>"),
                 "f");
  REQUIRE(house.error == "");
  CHECK(house->house.inflator == "lod");  // kept, for whoever adds it
  bool told = false;
  for (const Finding& finding : house->findings)
    told = told || (finding.code == "unknown-inflator" && finding.remedy.find("loud") != std::string::npos);
  CHECK(told);
}

TEST_CASE("a house cut off anywhere is refused or read, and never crashes") {
  const std::string whole = contents(fixture("house-1.0.quadrille-house"));
  const std::size_t closed = whole.find("</house>") + 8;
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const bool read = static_cast<bool>(read_house(whole.substr(0, length), "f"));
    CHECK(read == (length >= closed && (length <= closed + 1 || length + 1 == whole.size())));
  }
}

TEST_CASE("a house with any one byte changed is refused, or read and written so that it can be read again") {
  const std::string whole = contents(fixture("house-1.0.quadrille-house"));
  std::size_t refused = 0;
  for (std::size_t at = 0; at < whole.size(); ++at)
    for (const char c : {'<', '"', '\0', '&', ' ', '9', '\xC3'}) {
      std::string changed = whole;
      changed[at] = c;
      const auto house = read_house(changed, "f");
      if (!house) ++refused;
      if (house) CHECK(read_house(write_house(house->house), "f").error == "");
    }
  CHECK(refused > whole.size());  // at least the NUL and most of the others
}
