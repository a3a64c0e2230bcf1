// quadrille check: every finding about an event.
#include <algorithm>
#include <ostream>

#include "studio/command/json.hpp"
#include "studio/command/reckon.hpp"
#include "studio/command/verbs.hpp"
#include "studio/drawing/backdrop_findings.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/standing/piece_standing.hpp"

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
  for (const ToldFinding& finding : told(prepared.findings, prepared.opened.event))
    out << name_of(finding.weight) << ": " << finding.sentence << '\n';
  if (prepared.findings.empty()) out << "Nothing to say about it.\n";
}

}  // namespace

Exit check(const CheckRequest& request, const Console& console) {
  auto opened = prepare(request.event, console, request.house);
  if (!opened) {
    console.err << opened.error << '\n';
    return Exit::bad_input;
  }
  PreparedEvent* const prepared = &*opened.value;
  const Event& event = prepared->opened.event;
  const EventOrder order = order_of(*prepared);
  append(prepared->findings, findings_of(*prepared, order));
  const DayPlan plan = plan_of(*prepared, order.count);
  append(prepared->findings, plan.findings);
  append(prepared->findings, quote_event(quote_input(*prepared, order, plan)).findings);
  append(prepared->findings, check_backdrops(event));
  append(prepared->findings, standing_findings(event, prepared->built, stand_all(event, prepared->built)));
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
