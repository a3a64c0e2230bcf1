// Sheets: pages made from an event, as display lists in millimetres on paper.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "studio/labour/day_plan.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/takeoff/air.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/power.hpp"
#include "studio/takeoff/supply_order.hpp"

namespace quadrille {

enum class Paper { a4, letter, a3, tabloid };

/// The paper that offices use where people reckon so: letter with feet, A4 with metres.
constexpr Paper usual_paper(Units units) { return units == Units::feet ? Paper::letter : Paper::a4; }

struct SheetOptions {
  std::optional<Paper> paper;       ///< none: the usual one for the event's own units
  std::optional<Units> units;       ///< none: the event's own
  std::optional<std::string> area;  ///< id or name of the only area to draw
  bool letters = true;              ///< slot letters on the balloons that are large enough to carry one
};

/// Everything a sheet reads. All are borrowed and must outlive the call. What only some sheets read is null where it was
/// not reckoned; a sheet that wants it says on the page that it is missing.
struct SheetInput {
  const Event& event;
  const BuiltEvent& built;
  const EventCount& count;
  std::span<const Palette> palettes;
  const House* house = nullptr;             ///< whose name and ways stand on a sheet; null where nobody's is known
  const SuppliesOrder* supplies = nullptr;  ///< of count.supplies
  const AirNeed* air = nullptr;
  const std::vector<AreaPower>* power = nullptr;  ///< of power_of()
  const DayPlan* plan = nullptr;
  const std::vector<PieceStanding>* standing = nullptr;  ///< of stand_all(), with what happens without each line
  const std::vector<ChecklistLine>* checklist = nullptr;
};

/// The elevation of each area, to a stated scale, with dimensions, colour key, totals and title block; one area a page
/// (tables that do not fit go on to further pages), all pages turned the same way. The tables of all balloons and supplies stand beside the drawing
/// where the event has one area, and on a page of their own where it has several; not with `options.area`, since they
/// are about the whole event. Empty where `options.area` names no area of the event.
std::vector<Page> elevation_sheet(const SheetInput& input, const SheetOptions& options);

}  // namespace quadrille
