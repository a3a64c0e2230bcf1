// Remedies that one click applies.
#pragma once

#include <optional>
#include <string>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

/// What a click does and how a button says it.
struct Remedy {
  std::string words;  ///< "Set Span to 5.07 m"
  ValueChange change;
};

/// The one change that is known to mend the finding: the one it carries; or, where it blames a parameter whose value lies
/// outside the range, the nearest value within; or, for a note that a value has no effect where it does not matter as
/// things stand, its default. Nothing where none is known, where the piece or its type is gone, or where the event already
/// has it.
std::optional<Remedy> remedy_of(const Event& event, const Finding& finding, const ParameterTables& tables);

/// The event with that change made; as it is where there is none.
Event with_remedy(Event event, const Finding& finding, const ParameterTables& tables);

/// What a click does that mends several findings which say the same of several pieces: "Set Ballast to 12 kg", "Set Ballast
/// to 12 kg on 3 pieces", or "on 3 pieces, each to its own" where the values differ. Empty where no remedy is known.
std::string remedy_in_words(const Event& event, const Findings& findings, const ParameterTables& tables);
/// All of their remedies.
Event with_remedies(Event event, const Findings& findings, const ParameterTables& tables);

}  // namespace quadrille
