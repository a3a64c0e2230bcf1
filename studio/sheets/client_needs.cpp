#include "studio/sheets/client_needs.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/labour/clock.hpp"
#include "studio/model/calendar.hpp"
#include "studio/paper/page_frame.hpp"
#include "studio/sheets/alike_names.hpp"
#include "studio/sheets/client_rows.hpp"
#include "studio/sheets/distance.hpp"
#include "studio/standing/level_words.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/standing/wind.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

std::string name_of(const Area& area) { return area.name.empty() ? "Unnamed area" : area.name; }

template <class Test>
std::vector<std::string> pieces_that(const Area& area, Test test) {
  std::vector<std::string> names;
  for (const auto& piece : area.pieces)
    if (!piece->hidden && test(*piece)) names.push_back(piece->name.empty() ? "Unnamed piece" : piece->name);
  return names;
}

bool has_line_to(const Area& area, AnchorKind kind) {
  return !pieces_that(area, [&](const PlacedPiece& piece) {
            return std::ranges::any_of(piece.lines, [&](const SecuringLine& line) { return line.anchor == kind; });
          }).empty();
}

/// By id: what lines of the area's pieces are tied to.
std::set<std::string, std::less<>> tied_to(const Area& area) {
  std::set<std::string, std::less<>> ids;
  for (const auto& piece : area.pieces)
    for (const SecuringLine& line : piece->lines)
      if (!piece->hidden && line.anchor == AnchorKind::structure) ids.insert(line.structure);
  return ids;
}

/// Collects the sentences of one area, or of the whole event.
struct Needs {
  const Setting& setting;
  double width;
  std::vector<Row> rows = {};
  bool under_heading = false;  ///< the next row stays with the heading before it

  void add(const std::string& text) {
    rows.push_back(bullet_row(text, width));
    rows.back().with_before = std::exchange(under_heading, false);
  }
  void add_heading(const std::string& text) {
    rows.push_back(cells_row({{text, 0, Across::left, Face::bold}}, width));
    under_heading = true;
  }

  void add_access() {
    const Event& event = setting.input.event;
    const std::string on = event.date.empty() ? "" : " on " + print_date(event.date);
    const std::string load_in = known_time(event.load_in_from), ready_by = known_time(event.ready_by),
                      strike = known_time(event.strike_from);
    add(load_in.empty() ? "The time from which we may come in" + on + ": still to be agreed."
                        : "Access to the place from " + load_in + on + ", with somebody to let us in.");
    if (!ready_by.empty()) add("Until " + ready_by + ", when all is ready, room to work in.");
    add(strike.empty() ? "The time at which we take down: still to be agreed."
                       : "Access again from " + strike + " to take down.");
  }

  void add_distances(const Site& site) {
    if (site.vehicle_m)
      add("A place for our vehicle within " + print_distance(*site.vehicle_m, setting.units) + ", for loading.");
    else
      add("A place for our vehicle, as near as may be; how far is it?");
    if (site.outlet_m)
      add("An outlet that we may use within " + print_distance(*site.outlet_m, setting.units) +
          (site.surroundings == Surroundings::outdoors ? ", on a ground-fault device." : "."));
    else
      add("An outlet that we may use; how far is it? Without one we bring our own power.");
  }

  void add_permissions(const Area& area) {
    const auto tied = tied_to(area);
    for (const Structure& s : area.structures) {
      if (!tied.contains(s.id)) continue;
      add("Permission to tie on to: " + (s.name.empty() ? "unnamed structure" : s.name) +
          (s.allowed_by.empty() ? ". We need it from whoever it belongs to." : " (allowed by " + s.allowed_by + ")."));
    }
    if (has_line_to(area, AnchorKind::stake))
      add("Permission to drive stakes into the ground, and word of pipes and cables that lie in it.");
    const auto hung = pieces_that(area, [&](const PlacedPiece& piece) { return hangs(piece); });
    if (!hung.empty())
      add("Permission to fix hooks or ties, and something sound to fix them to, for: " + print_list(hung) + ".");
  }

  bool hangs(const PlacedPiece& piece) const {
    const auto found = setting.input.built.find(piece.id);
    if (found == setting.input.built.end() || !found->second || found->second->status != Status::ok) return false;
    return std::ranges::any_of(found->second->piece.supports,
                               [](const Support& support) { return support.kind == SupportKind::hook; });
  }

  void add_water() {
    const auto& supplies = setting.input.count.supplies;
    const auto water = std::ranges::find(supplies, std::string_view("ballast-water"), &SupplyLine::key);
    if (water == supplies.end() || setting.options.area) return;
    // The day plan fills it at home and empties it where it was used.
    add("A lawn, or a drain that runs into the sewer, where we may empty our ballast when we take down: " +
        print_quantity(*water, lengths_in(setting.units)) +
        " of water, which we bring with us. It may not go into a storm drain.");
  }
};

/// "Gate arch is taken down at gusts of 10 mph (Beaufort 3)": the outdoor pieces that bear the least; empty where no level
/// is known.
std::string first_taken_down(const Setting& setting, const std::vector<const Area*>& areas) {
  if (setting.input.standing == nullptr) return "";
  const auto known = [&](const PieceStanding& answer) {
    const bool wanted = std::ranges::any_of(areas, [&](const Area* area) { return area->id == answer.area; });
    const PlacedPiece* const piece = find_piece(setting.input.event, answer.id);
    return wanted && piece != nullptr && !piece->hidden && answer.outdoors && !answer.checks.empty() &&
           !answer.fails_at_rest;
  };
  double least_m_s = beaufort_5_top_m_s;
  std::vector<std::string> names;
  for (const PieceStanding& answer : *setting.input.standing)
    if (known(answer)) least_m_s = std::min(least_m_s, answer.take_down_m_s);
  const std::string level = short_level_words(least_m_s, setting.units);
  bool others = false;
  for (const PieceStanding& answer : *setting.input.standing) {
    if (!known(answer)) continue;
    if (short_level_words(answer.take_down_m_s, setting.units) == level)
      names.push_back(answer.name.empty() ? "Unnamed piece" : answer.name);
    else
      others = true;
  }
  if (names.empty()) return "";
  return print_list(names) + (names.size() == 1 ? " is" : " are") + " taken down at gusts of " + level +
         (others ? ", the others later" : "");
}

}  // namespace

Block need_block(const Setting& setting, const std::vector<const Area*>& areas, double width) {
  Needs needs{setting, width};
  needs.add_access();
  needs.add_water();
  for (const Area* area : areas) {
    if (std::ranges::all_of(area->pieces, [](const auto& piece) { return piece->hidden; })) continue;
    if (areas.size() > 1) needs.add_heading(name_of(*area));
    needs.add_distances(area->site);
    needs.add_permissions(*area);
  }
  Block block = titled_block("What we need from you", width);
  block.rows = std::move(needs.rows);
  block.may_split = true;
  return block;
}

Block caution_block(const Setting& setting, const std::vector<const Area*>& areas, double width) {
  const bool outdoors =
      std::ranges::any_of(areas, [](const Area* area) { return area->site.surroundings == Surroundings::outdoors; });
  Block block = titled_block("Please know", width);
  const auto add = [&](const std::string& text) { block.rows.push_back(bullet_row(text, width)); };
  add("Children under eight can choke on uninflated or broken balloons: keep these from them, and pick up what "
      "bursts.");
  add("Latex can cause an allergic reaction. Tell us beforehand if a guest is allergic: there is other material.");
  add("Keep candles, heaters and hot lamps away from the balloons.");
  add("Ballast, lines and stakes hold the pieces up: please do not move, lean on or untie anything, and keep people "
      "from climbing.");
  add("Exits and the ways to them stay clear at their full width.");
  if (!outdoors) return block;
  const std::string first = first_taken_down(setting, areas);
  add("In strong wind or at thunder we take down what stands outdoors, before it comes" +
      (first.empty() ? "." : ": " + first + ".") + " Nothing is left up above " +
      short_level_words(beaufort_5_top_m_s, setting.units) + ". " + planning_aid);
  add("Sun and heat dull and burst balloons outdoors; a few may go before the day is over.");
  add("No balloon is released: animals eat what comes down, and many places forbid it.");
  return block;
}

}  // namespace quadrille
