// The quote in an event's file: kept as it was given to the client, and told where it cannot be right.
#include <doctest/doctest.h>

#include <string>

#include "scratch.hpp"
#include "studio/files/event_file.hpp"

using namespace quadrille;

namespace {

std::string event_with(const std::string& inside) {
  return "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\" units=\"feet\" currency=\"EUR\">\n" +
         inside + "</event>\n";
}
/// By hand: 100.00 and 19 % of it, less 10.00 with theirs: 90.00 + 17.10 = 107.10, of which 50.00 is paid before.
std::string quote_with(const std::string& attributes, const std::string& more = {}) {
  return event_with("<quote " + attributes +
                    " deposit-minor=\"5000\" balance-minor=\"5710\">\n"
                    "<charge kind=\"piece\" piece=\"p1\" net-minor=\"10000\" tax-ppm=\"190000\" tax-minor=\"1900\"/>\n"
                    "<charge kind=\"discount\" net-minor=\"-1000\" tax-ppm=\"190000\" tax-minor=\"-190\"/>\n" +
                    more + "</quote>\n");
}
const std::string right = "net-minor=\"9000\" tax-minor=\"1710\" total-minor=\"10710\"";

OpenedEvent opened(const std::string& bytes) {
  auto event = read_event(bytes, "f");
  REQUIRE(event.error == "");
  return std::move(*event.value);
}
/// What is in the file after the event is saved, which must not be refused.
std::string saved(const Event& event) {
  const ScratchFolder folder;
  CHECK(save_event(folder / "e.quadrille", event).value_or("") == "");
  return contents(folder / "e.quadrille");
}
bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a quote that adds up is read without a word, in the event's currency where it names none") {
  const OpenedEvent event = opened(quote_with(right));
  CHECK(event.findings.empty());
  REQUIRE(event.event.issued.has_value());
  CHECK(event.event.issued->quote.currency == "EUR");
  CHECK(event.event.issued->quote.lines.at(1).total_minor() == -1190);
}

TEST_CASE("sums that do not add up are told with both numbers, and stay as the client has them") {
  const struct {
    std::string attributes;
    std::vector<std::string> named;
  } table[] = {
      {"net-minor=\"9001\" tax-minor=\"1710\" total-minor=\"10711\"", {"net-minor=\"9001\"", "9000"}},
      {"net-minor=\"9000\" tax-minor=\"1700\" total-minor=\"10700\"", {"tax-minor=\"1700\"", "1710"}},
      {"net-minor=\"9000\" tax-minor=\"1710\" total-minor=\"10700\"", {"total-minor=\"10700\"", "10710"}},
  };
  for (const auto& row : table) {
    CAPTURE(row.attributes);
    OpenedEvent event = opened(quote_with(row.attributes));
    REQUIRE(!event.findings.empty());
    const Finding& finding = event.findings.front();
    CHECK(finding.code == "quote-sums");
    CHECK(finding.weight == Weight::warning);
    CHECK(holds(finding.text, "Line 2, <quote>"));
    for (const std::string& part : row.named) CHECK(holds(finding.text, part));
    event.event.title = "edited";
    CHECK(holds(saved(event.event), row.attributes));
  }
  // Deposit and balance are 10710 together.
  const OpenedEvent paid = opened(replaced(quote_with(right), "balance-minor=\"5710\"", "balance-minor=\"5700\""));
  REQUIRE(paid.findings.size() == 1);
  CHECK(holds(paid.findings[0].text, "deposit and balance, which is 10700"));
}

TEST_CASE("more charges than a sum can hold are told, not wrapped round") {
  // 20,000 × 999,999,999,999,999 is more than twice 2^63: a wrapped sum could come out right.
  std::string charges;
  for (int i = 0; i < 20'000; ++i) charges += "<charge net-minor=\"999999999999999\"/>";
  const OpenedEvent event = opened(quote_with(right, charges));
  REQUIRE(event.findings.size() == 1);
  CHECK(holds(event.findings[0].text, "more than can be reckoned with"));
}

TEST_CASE("dates that are none, or end before they begin, are told and kept") {
  const auto findings_of = [](const std::string& dates) { return opened(quote_with(dates + right)).findings; };
  CHECK(findings_of("date=\"2028-02-29\" valid-until=\"2028-02-29\" ").empty());  // ISO 8601: 2028 is a leap year
  CHECK(findings_of("date=\"2027-02-29\" ").size() == 1);
  CHECK(findings_of("valid-until=\"31/12/2027\" ").size() == 1);
  const Findings reversed = findings_of("date=\"2027-06-19\" valid-until=\"2027-05-20\" ");
  REQUIRE(reversed.size() == 1);
  CHECK(reversed[0].code == "quote-dates");
}

TEST_CASE("a kind of charge that is not known, and what else is not understood, survive an edit") {
  OpenedEvent event = opened(quote_with(
      right + " mood=\"glad\"",
      "<charge kind=\"gift\" net-minor=\"0\" bow=\"red\"/>\n<!-- theirs -->\n<figure key=\"wage\" value=\"a\"/>\n"
      "<figure key=\"wage\" value=\"b\"/>\n<thanks/>\n"));
  CHECK(event.findings.size() == 5);  // mood, gift, bow, the second wage, thanks
  event.event.title = "edited";
  const std::string bytes = saved(event.event);
  for (const char* part :
       {"mood=\"glad\"", "kind=\"gift\"", "bow=\"red\"", "<!-- theirs -->", "value=\"b\"", "<thanks/>"})
    CHECK(holds(bytes, part));
}

TEST_CASE("a quote that is withdrawn goes with what was kept in it; a second one does not come in for it") {
  Event event = opened(quote_with(right, "<!-- inside -->") + "").event;
  event.issued.reset();
  CHECK_FALSE(holds(saved(event), "quote"));
  const std::string twice = replaced(quote_with(right), "</event>",
                                     "<!-- before the second --><quote " + right +
                                         " deposit-minor=\"0\" balance-minor=\"10710\"/>"
                                         "</event>");
  OpenedEvent two = opened(twice);
  REQUIRE(two.findings.size() == 1);
  CHECK(holds(two.findings[0].text, "twice"));
  CHECK(two.event.issued->quote.deposit_minor == 5000);
  two.event.title = "edited";
  CHECK(holds(saved(two.event), "balance-minor=\"10710\"/>"));
  two.event.issued.reset();
  const std::string bytes = saved(two.event);
  CHECK_FALSE(opened(bytes).event.issued.has_value());
  CHECK(holds(bytes, "before the second"));
}

TEST_CASE("a quote whose amounts no file can hold is not saved") {
  Event event;
  event.issued.emplace();
  event.issued->quote.total_minor = highest_amount + 1;
  const ScratchFolder folder;
  const auto refused = save_event(folder / "e.quadrille", event);
  REQUIRE(refused.has_value());
  CHECK(holds(*refused, "total-minor"));
  CHECK_FALSE(std::filesystem::exists(folder / "e.quadrille"));
}
