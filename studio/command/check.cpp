// quadrille check: every finding about an event.
#include <algorithm>
#include <ostream>

#include "studio/command/json.hpp"
#include "studio/command/prepare.hpp"
#include "studio/command/verbs.hpp"
#include "studio/model/finding_words.hpp"

namespace quadrille {
namespace {

Json json_of(const Findings& findings, const Event& event) {
  Json list = Json::array();
  for (const Finding& finding : findings)
    list.push_back({{"weight", name_of(finding.weight)},
                    {"code", finding.code},
                    {"area", finding.area},
                    {"piece", finding.piece},
                    {"place", place_of(finding, event)},
                    {"key", finding.key},
                    {"text", finding.text},
                    {"remedy", finding.remedy}});
  return list;
}

void print_text(const PreparedEvent& prepared, std::ostream& out) {
  for (const Finding& finding : prepared.findings)
    out << name_of(finding.weight) << ": " << sentence_of(finding, prepared.opened.event) << '\n';
  if (prepared.findings.empty()) out << "Nothing to say about it.\n";
}

}  // namespace

Exit check(const CheckRequest& request, const Console& console) {
  const auto prepared = prepare(request.event, console);
  if (!prepared) {
    console.err << prepared.error << '\n';
    return Exit::bad_input;
  }
  const auto number_of = [&](Weight weight) {
    return std::ranges::count(prepared->findings, weight, &Finding::weight);
  };
  const auto problems = number_of(Weight::problem);
  if (request.json)
    console.out << printed({{"findings", json_of(prepared->findings, prepared->opened.event)},
                            {"problems", problems},
                            {"warnings", number_of(Weight::warning)},
                            {"notes", number_of(Weight::note)}});
  else
    print_text(*prepared, console.out);
  return exit_of(*prepared);
}

}  // namespace quadrille
