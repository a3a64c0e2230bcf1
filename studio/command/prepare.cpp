// From a file to built pieces and findings.
#include "studio/command/prepare.hpp"

#include <algorithm>
#include <ostream>
#include <utility>

#include "sdk/quoted.hpp"
#include "studio/command/reckon.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/model/rates.hpp"
#include "studio/takeoff/clashes.hpp"
#include "studio/takeoff/colours.hpp"
#include "studio/takeoff/off_wall.hpp"

namespace quadrille {
PieceTypes find_types(const Console& console, bool try_crashed_again) {
  SearchPlan plan = standard_search_plan(console.executable);
  plan.try_crashed_again = try_crashed_again;
  return find_piece_types(plan);
}

Result<PreparedEvent> prepare(const std::filesystem::path& event_file, const Console& console,
                              const std::filesystem::path& house_file) {
  if (event_file.empty())
    return Result<PreparedEvent>::bad("The name of the event's file is empty; give one, such as party.quadrille.");
  auto opened = open_event(event_file);
  if (!opened) return Result<PreparedEvent>::bad(opened.error);
  PreparedEvent prepared;
  prepared.opened = std::move(*opened.value);
  prepared.palettes = load_palettes(standard_palette_folders(console.executable, event_file));
  prepared.house = load_house(house_file, prepared.opened.event.currency);
  if (!house_file.empty() && prepared.house.is_standard)
    return Result<PreparedEvent>::bad(prepared.house.findings.front().text);
  prepared.types = find_types(console);
  const Event& event = prepared.opened.event;
  prepared.built = EventBuilder(prepared.types).build(event);
  append(prepared.findings, prepared.opened.findings);
  append(prepared.findings, prepared.palettes.findings);
  append(prepared.findings, prepared.house.findings);
  append(prepared.findings, rate_findings(prepared.house.house));
  append(prepared.findings, check_colours(event, prepared.built, prepared.palettes.palettes));
  append(prepared.findings, findings_of_refused(prepared.types));
  append(prepared.findings, findings_of(event, prepared.built, prepared.types));
  append(prepared.findings, check_clashes(event, prepared.built));
  append(prepared.findings, check_off_wall(event, prepared.built));
  return Result<PreparedEvent>::good(std::move(prepared));
}

Result<const Area*> find_area(const Event& event, const std::string& wanted) {
  std::string names;
  for (const auto& area : event.areas) {
    if (area->id == wanted) return Result<const Area*>::good(&*area);
    names += (names.empty() ? "" : ", ") + quoted(area->name.empty() ? area->id : area->name);
  }
  for (const auto& area : event.areas)
    if (area->name == wanted) return Result<const Area*>::good(&*area);
  return Result<const Area*>::bad("The event has no area " + quoted(wanted) + "; it has " +
                                  (names.empty() ? "none" : names) + ".");
}

Exit exit_of(const PreparedEvent& prepared) {
  Exit exit = Exit::done;
  for (const Finding& finding : prepared.findings) {
    if (finding.weight != Weight::problem) continue;
    if (finding.code == "no-such-colour" || finding.code == "no-such-palette") return Exit::bad_input;
    exit = Exit::problems;
  }
  return exit;
}

Exit report(const PreparedEvent& prepared, std::ostream& err) {
  for (const ToldFinding& finding : told(prepared.findings, prepared.opened.event))
    if (finding.weight != Weight::note) err << name_of(finding.weight) << ": " << finding.sentence << '\n';
  return exit_of(prepared);
}

}  // namespace quadrille
