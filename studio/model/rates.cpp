// The rates themselves. The standard ones are of somebody who does this for a living, alone, with an electric inflator:
// 132 balloons in 33 quads inflated, tied, made and mounted in 20 to 25 minutes (common practice, no source).
#include "studio/model/rates.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include "sdk/number.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/near_word.hpp"

namespace quadrille {
namespace {

constexpr const char* ours = "our choice, no source";
constexpr const char* practice = "common practice, no source";
constexpr const char* pace =
    "common practice: \"Classic Balloon Decor 101\", an expert's pace; the slow end a beginner's, \"Balloon Drops\"";

constexpr const char* small_pace =
    "as from 7 to 13 in: hands do the same; no source times small balloons, and tying them is no quicker";

constexpr double day_s = 86'400;  ///< no single step of work is longer

constexpr std::array<Rate, 58> table{{
    {"inflate-small", "Inflate and size a balloon up to 6 in, without the air's time", "s", 3.5, 0.5, 120, small_pace},
    {"inflate-medium", "Inflate and size a balloon of 7 to 13 in, without the air's time", "s", 3.5, 0.5, 120, pace},
    {"inflate-large", "Inflate and size a balloon of 14 to 20 in, without the air's time", "s", 8, 1, 240, ours},
    {"inflate-giant", "Inflate and size a balloon over 20 in, without the air's time", "s", 30, 5, 900, ours},
    {"tie-pair", "Tie two balloons together", "s", 5, 1, 120, pace},
    {"tie-single", "Tie one large balloon", "s", 8, 1, 240, ours},
    {"make-cluster", "Make a cluster out of pairs", "s", 5, 1, 240, practice},
    {"mount-cluster", "Mount a cluster on its frame or line", "s", 10, 1, 240, practice},
    {"climb", "Besides, for a cluster above reach", "s", 6, 0.5, 240, ours},
    {"reach", "Height that is reached without a ladder", "m", 2.1, 1, 3, ours},
    {"tie-to-frame", "Tie a cluster to the frame", "s", 12, 1, 300, practice},
    {"tie-together", "Run the line that holds the clusters together, by cluster", "s", 6, 1, 300, ours},
    {"glue-filler", "Glue a filler into its crease", "s", 8, 1, 300, ours},
    {"hang", "Hang or tie a garland at a point", "s", 45, 2, 1800, ours},
    {"other-work", "One unit of work that has no rate of its own", "s", 60, 0.5, day_s, ours},
    {"join-rod", "Join and tape a rod", "s", 45, 5, 1800, ours},
    {"place-base", "Place a base", "s", 60, 5, 1800, ours},
    {"carry-ballast", "Put ballast on its base", "s/kg", 3, 0.1, 120, ours},
    {"raise-frame", "Raise or bend a frame", "s", 180, 10, 7200, ours},
    {"tall-frame", "Height from which two raise and lower a frame", "m", 2, 1, 5, ours},
    {"alone", "How much more work it is for fewer people than it wants", "", 1.5, 1, 5, ours},
    {"rig-line", "Tie, tension and flag a line", "s", 90, 5, 1800, ours},
    {"drive-stake", "Drive and cap a stake", "s", 45, 5, 1800, ours},
    {"place-weight", "Place a dead weight for a line", "s", 30, 5, 1800, ours},
    {"tie-structure", "Pad and tie to a structure", "s", 30, 5, 1800, ours},
    {"last-check", "Last check of a piece: shape, lines, bases, a look from the front", "s", 120, 10, 3600, practice},
    {"tidy", "Clear up an area after building", "s", 240, 10, 7200, practice},
    {"spare-time", "Time kept free before it must be ready", "s", 1800, 0, 14'400, ours},
    {"arrive", "Park, find the contact, see the place", "s", 300, 10, 7200, practice},
    {"unpack", "Unpack and lay out what a piece needs", "s", 150, 10, 7200, ours},
    {"power", "Set up the inflator", "s", 120, 10, 3600, ours},
    {"lay-cord", "Lay and tape a power cord", "s/m", 3, 0.2, 60, ours},
    {"take-up-cord", "Take up and coil a power cord", "s/m", 1.5, 0.1, 60, ours},
    {"fill-ballast", "Fill ballast containers", "s/kg", 8, 0.5, 240, "a tap of 7 to 8 litres a minute; our choice"},
    {"empty-ballast", "Empty ballast containers", "s/kg", 3, 0.5, 240, ours},
    {"pull", "Pull and pack one line of the lists", "s", 30, 2, 1800, ours},
    {"load", "Put one load into the vehicle or take it out", "s", 30, 2, 1800, ours},
    {"set-down", "Set a load down and turn round", "s", 15, 1, 600, ours},
    {"carry-mass", "What one person carries on a trip", "kg", 20, 2, 50,
     "our choice; below the 23 kg that the NIOSH lifting equation starts from, from memory"},
    {"carry-bulk", "What one person carries of made clusters on a trip", "l", 250, 20, 2000, ours},
    {"walk-loaded", "Walk with a load", "m/s", 0.9, 0.2, 2, ours},
    {"walk-back", "Walk back without one", "m/s", 1.3, 0.3, 3, "usual walking pace, from memory"},
    {"vehicle-distance", "From the vehicle to an area that does not say", "m", 40, 1, 5000, ours},
    {"vehicle-bulk", "Room for made clusters in the vehicle", "l", 3000, 100, 100'000, ours},
    {"tools-mass", "Inflator, cords, tools, ladder", "kg", 20, 1, 200, ours},
    {"container-mass", "An empty ballast container or weight", "kg", 0.5, 0.01, 50, ours},
    {"drive", "Drive, door to door", "km/h", 45, 5, 130, ours},
    {"burst", "Burst a balloon and pick up what is left", "s", 1.5, 0.1, 60, practice},
    {"take-down-cluster", "Take a cluster down", "s", 4, 0.5, 240, ours},
    {"take-down-point", "Take a garland off a point", "s", 15, 1, 900, ours},
    {"release-line", "Take a line off and draw its anchor", "s", 40, 2, 1800, ours},
    {"lower-frame", "Lower a frame", "s", 90, 5, 7200, ours},
    {"part-rod", "Cut the tape and part a rod", "s", 15, 1, 900, ours},
    {"lift-base", "Take a base up", "s", 30, 2, 1800, ours},
    {"take-ballast", "Take ballast off its base", "s/kg", 2, 0.1, 120, ours},
    {"pack", "Pack up what a piece brought", "s", 120, 10, 7200, ours},
    {"sweep", "Sweep an area and take the rubbish", "s", 300, 10, 7200, practice},
    {"check-out", "Hand the place over", "s", 120, 10, 7200, ours},
}};

struct Bounds {
  double least, most;
  const char* unit;
};

/// Of a rate, a figure, or the rate of foreign work; nothing for a key that none has.
std::optional<Bounds> range_of(std::string_view key) {
  if (key.starts_with(foreign_work)) key = "other-work";
  if (const Rate* row = find_rate(key)) return Bounds{row->least, row->most, row->unit};
  if (const HouseFigure* row = find_figure(key)) return Bounds{row->least, row->most, row->unit};
  return std::nullopt;
}

Finding warning_of(const char* code, const std::string& key, std::string text, std::string remedy) {
  return {Weight::warning, code, {}, {}, key, std::move(text), std::move(remedy)};
}

}  // namespace

std::span<const Rate> all_rates() { return table; }

const Rate* find_rate(std::string_view key) {
  const auto* found = std::ranges::find_if(table, [&](const Rate& row) { return key == row.key; });
  return found == table.end() ? nullptr : found;
}

double rate_of(const House& house, std::string_view key) {
  const Rate* const row = find_rate(key);
  if (row == nullptr) throw std::invalid_argument("there is no rate " + std::string(key));
  const auto held = house.rates.find(key);
  if (held == house.rates.end() || !std::isfinite(held->second)) return row->standard;
  return std::clamp(held->second, row->least, row->most);
}

std::optional<double> rate_of_foreign_work(const House& house, std::string_view work_key) {
  const auto held = house.rates.find(foreign_work + std::string(work_key));
  if (held == house.rates.end() || !std::isfinite(held->second)) return std::nullopt;
  const Rate& row = *find_rate("other-work");
  return std::clamp(held->second, row.least, row.most);
}

Findings rate_findings(const House& house) {
  Findings findings;
  std::vector<std::string> keys;
  for (const Rate& row : table) keys.emplace_back(row.key);
  for (const HouseFigure& row : all_figures()) keys.emplace_back(row.key);
  for (const auto& [key, number] : house.rates) {
    const std::optional<Bounds> range = range_of(key);
    if (!range) {
      const auto near = near_word(key, keys);
      findings.push_back(warning_of("rate-unknown", key,
                                    "The house has a rate \"" + key + "\", and nothing goes by it.",
                                    near ? "Did you mean \"" + *near + "\"?"
                                         : "Work that a piece type of another maker asks for goes by \"" +
                                               std::string(foreign_work) + "\" and the work's key."));
    } else if (!(number >= range->least && number <= range->most)) {
      const std::string unit = range->unit[0] == '\0' ? "" : std::string(" ") + range->unit;
      findings.push_back(
          warning_of("rate-range", key,
                     "The rate \"" + key + "\" cannot be " +
                         (std::isfinite(number) ? print_number(number) + "; the nearest that can is taken."
                                                : "what stands there; the standard one is taken."),
                     "Give it " + print_number(range->least) + " to " + print_number(range->most) + unit + "."));
    }
  }
  return findings;
}

}  // namespace quadrille
