// What several verbs begin with: an event's file opened, its pieces built, and everything there is to say about it.
#pragma once

#include <filesystem>
#include <iosfwd>

#include "sdk/result.hpp"
#include "studio/command/verbs.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/house_place.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

struct PreparedEvent {
  OpenedEvent opened;
  LoadedPalettes palettes;
  LoadedHouse house;
  PieceTypes types;
  BuiltEvent built;
  Findings
      findings;  ///< of the file, palettes, house, colours, plugins, pieces, pieces in each other, and pieces beyond their wall, in this order
};

/// The piece types that the program finds; `try_crashed_again` as in SearchPlan.
PieceTypes find_types(const Console& console, bool try_crashed_again = false);

/// Opens and builds, with the house of `house_file`, or where that is empty with the one that serves (load_house). An
/// error is a sentence with place and remedy: exit status bad_input; so is a `house_file` that cannot be read.
Result<PreparedEvent> prepare(const std::filesystem::path& event_file, const Console& console,
                              const std::filesystem::path& house_file = {});

/// The area that has `wanted` as its id, or else as its name; the error lists the areas there are. The pointer lives as
/// long as the event is not edited.
Result<const Area*> find_area(const Event& event, const std::string& wanted);

/// Exit::bad_input where a slot names a colour that no palette has, Exit::problems where there is another problem,
/// otherwise Exit::done.
Exit exit_of(const PreparedEvent& prepared);

/// Prints problems and warnings to `err`, one a line, and returns exit_of.
Exit report(const PreparedEvent& prepared, std::ostream& err);

}  // namespace quadrille
