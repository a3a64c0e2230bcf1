// The lists of a safety sheet, each as rows of `width` [mm] of a column.
#pragma once

#include <vector>

#include "studio/paper/flow.hpp"
#include "studio/sheets/safety_subject.hpp"

namespace quadrille {

/// Outdoors what each piece bears, when it is watched and taken down, what fails first; indoors whether it stands and what
/// push it bears. With the sentence that it is a planning aid.
std::vector<Block> level_blocks(const SafetySubject& subject, const Setting& setting, double width);

/// Who watches and who is called: lines to be filled in. Outdoors alone.
std::vector<Block> watch_blocks(const SafetySubject& subject, double width);

/// Every line with its way, length, angle and pull, and what the piece bears without it; feet with their ballast.
std::vector<Block> securing_blocks(const SafetySubject& subject, const Setting& setting, double width);

/// Outlet and cord.
std::vector<Block> outlet_blocks(const SafetySubject& subject, const Setting& setting, double width);

/// What the pieces' types ask for and is drawn nowhere, so that somebody has to decide it; empty where there is nothing.
std::vector<Block> open_blocks(const SafetySubject& subject, const Setting& setting, double width);

/// What to see to in this area, with boxes, ticked where the event says that it is done.
std::vector<Block> check_blocks(const SafetySubject& subject, const Setting& setting, double width);

/// The same for the whole event.
std::vector<Block> caution_check_blocks(const Setting& setting, double width);

/// A table for so many wind readings, outdoors, and lines for date, name and signature.
std::vector<Block> signature_blocks(const SafetySubject& subject, double width, int readings);

}  // namespace quadrille
