// One question in, one answer out.
#include "studio/window/study.hpp"

#include <algorithm>
#include <exception>
#include <iterator>
#include <utility>

#include "studio/takeoff/clashes.hpp"
#include "studio/takeoff/colours.hpp"

namespace quadrille {
namespace {

void append(Findings& all, Findings more) { std::ranges::move(more, std::back_inserter(all)); }

void work_out(Study& study, const Question& question, EventBuilder& builder) {
  append(study.findings, question.opened);
  append(study.findings, study.palettes->findings);
  append(study.findings, findings_of_refused(*study.types));
  study.built = builder.build(study.event);
  append(study.findings, check_colours(study.event, study.built, study.palettes->palettes));
  append(study.findings, findings_of(study.event, study.built, *study.types));
  append(study.findings, check_clashes(study.event, study.built));
  study.count = count_event(study.event, study.built, study.palettes->palettes);
}

}  // namespace

Study study_of(const Question& question, const std::shared_ptr<const PieceTypes>& types, EventBuilder& builder) {
  Study study;
  study.revision = question.revision;
  study.event = question.event;
  study.palettes = question.palettes;
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
