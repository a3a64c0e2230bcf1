// One question in, one answer out.
#include "studio/window/job/study.hpp"

#include <algorithm>
#include <exception>
#include <iterator>
#include <utility>

#include "studio/takeoff/clashes.hpp"
#include "studio/takeoff/colours.hpp"
#include "studio/takeoff/off_wall.hpp"

namespace quadrille {
namespace {

void append(Findings& all, Findings more) { std::ranges::move(more, std::back_inserter(all)); }

void work_out(Study& study, const Question& question, EventBuilder& builder) {
  const Event& event = study.event;
  const std::vector<Palette>& palettes = study.palettes->palettes;
  const House& house = study.house->house;
  append(study.findings, question.opened);
  append(study.findings, study.palettes->findings);
  append(study.findings, study.house->findings);
  append(study.findings, findings_of_refused(*study.types));
  study.built = builder.build(event);
  append(study.findings, check_colours(event, study.built, palettes));
  append(study.findings, findings_of(event, study.built, *study.types));
  append(study.findings, check_clashes(event, study.built));
  append(study.findings, check_off_wall(event, study.built));
  study.order = order_event(event, study.built, palettes, house);
  append(study.findings, order_event_findings(event, study.order, palettes, house));
  study.plan = plan_event(event, study.built, study.order.count, house);
  append(study.findings, study.plan.findings);
  const QuoteInput input{event, study.order.count, study.order.supplies, study.plan, palettes, house};
  study.quoted = quote_event(input);
  append(study.findings, study.quoted.findings);
  study.figures = figures_of(input, study.quoted);
  if (event.issued) {
    study.changes = quote_changes(*event.issued, study.quoted.quote, study.figures);
    append(study.findings, issued_findings(*event.issued, study.quoted.quote, *study.changes, question.today));
  }
}

}  // namespace

Study study_of(const Question& question, const std::shared_ptr<const PieceTypes>& types, EventBuilder& builder) {
  Study study;
  study.revision = question.revision;
  study.event = question.event;
  study.palettes = question.palettes;
  study.house = question.house;
  if (!study.house) study.house = std::make_shared<const LoadedHouse>(LoadedHouse{standard_house(), {}, true, {}, {}});
  study.types = types;
  try {
    work_out(study, question, builder);
  } catch (const std::exception& error) {
    study.findings.push_back({Weight::problem, "not-worked-out", "", "", "",
                              "The event could not be worked out in full: " + std::string(error.what()) + ".",
                              "The event itself is unharmed and can be saved."});
  }
  return study;
}

}  // namespace quadrille
