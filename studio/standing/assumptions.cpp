#include "studio/standing/assumptions.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include "sdk/number.hpp"
#include "studio/model/near_word.hpp"

namespace quadrille {
namespace {

constexpr const char* our_choice = "our choice, no source";
constexpr const char* din = "DIN 4112 and EN 13814, from memory";

constexpr std::array<Assumption, 52> table{{
    {"air-density", "Density of the air, at least", "kg/m³", 1.25, 0.8, 1.5,
     "EN 1991-1-4, 4.5, recommended value, second-hand; the air of the site where that is denser"},
    {"swing-factor", "Factor on the wind's pressure for what swings in gusts", "", 1.0, 1, 3,
     "1 as EN 1991-1-4, 6.2, has it for what is lower than 15 m, from memory; nobody has measured limp arches: raise "
     "it for slender ones"},
    {"dressing-drag", "Drag of the solid envelope round the balloons", "", 1.2, 0.4, 2.5,
     "rough circular cylinder, upper value, EN 1991-1-4 figure 7.28, from memory; no measurement of balloon clusters "
     "was found, and loose ones may reach 1.6"},
    {"envelope-factor", "Solid envelope by the balloons' outline", "", 1.16, 1, 2,
     "a 6 ft column of fours: 0.906 m² between straight edges, 0.780 m² of scalloped outline"},
    {"shelter-depth", "Balloons farther apart than this along the wind do not shelter each other", "m", 0.6, 0.1, 100,
     "about the width of a column; our choice"},
    {"rod-drag", "Drag of bare rods and poles", "", 1.2, 0.4, 2.5,
     "EN 1991-1-4, 7.9.2, for small cylinders, second-hand"},
    {"rod-shear-share", "Shear modulus of springy rods by their Young's modulus", "", 0.075, 0.01, 0.5,
     "pultruded glass: 3.1 GPa by one property table"},
    {"pole-shear-share", "Shear modulus of poles and frames by their Young's modulus", "", 0.385, 0.01, 0.5,
     "isotropic, Poisson's ratio 0.3"},
    {"balloon-pressure", "Pressure in a balloon above the air's", "Pa", 3500, 0, 10'000, "amateur measurements"},
    {"helium-share", "Share of helium in the filling", "", 0, 0, 1, "dressings are filled with air"},
    {"friction-grass", "Friction of a plate on grass", "", 0.25, 0.05, 1,
     "as on clay; DIN 4112 and EN 13814, from memory"},
    {"friction-soil", "Friction of a plate on soil", "", 0.25, 0.05, 1,
     "as on clay; DIN 4112 and EN 13814, from memory"},
    {"friction-sand", "Friction of a plate on sand", "", 0.4, 0.05, 1,
     "our choice, below the 0.65 of DIN 4112, from memory"},
    {"friction-gravel", "Friction of a plate on gravel", "", 0.4, 0.05, 1,
     "our choice, below the 0.65 of DIN 4112, from memory"},
    {"friction-concrete", "Friction of a plate on concrete", "", 0.2, 0.05, 1, din},
    {"friction-asphalt", "Friction of a plate on asphalt", "", 0.2, 0.05, 1, "as on concrete; our choice"},
    {"friction-paving", "Friction of a plate on paving", "", 0.2, 0.05, 1, "as on concrete; our choice"},
    {"friction-wood-floor", "Friction of a plate on a wood floor", "", 0.4, 0.05, 1, din},
    {"friction-carpet", "Friction of a plate on carpet", "", 0.3, 0.05, 1, our_choice},
    {"ballast-share", "Share of plate and ballast that is counted on", "", 0.9, 0.5, 1,
     "Danish guidance on transportable structures, ballast anchors"},
    {"strength-factor", "Factor on the strength of rods and poles", "", 1.6, 1, 5,
     "our choice: leaves glass-fibre rod the strain of its least bend, 80 rod diameters"},
    {"joint-share", "Share of the rod's strength that a sleeve joint bears in bending", "", 0.6, 0.05, 1, our_choice},
    {"joint-pull", "What a taped sleeve joint bears in pull", "N", 100, 0, 5000, our_choice},
    {"bare-joint-pull", "What a sleeve joint without tape bears in pull", "N", 10, 0, 5000,
     "our choice, no source: it merely clings"},
    {"knot-share", "Share of a cord's strength that a knot leaves", "", 0.3, 0.1, 1,
     "braided cord kept 31 to 87 % in 30 knots of one independent test, second-hand"},
    {"wet-nylon-share", "Share of its strength that nylon cord keeps when wet", "", 0.85, 0.5, 1,
     "UFC 4-159-03 (2005), table 6-8"},
    {"line-factor", "Factor on the strength of lines", "", 3, 1, 10, our_choice},
    {"line-slack", "Slack of a line when rigged, by its length", "", 0.005, 0, 0.1,
     "hand-tight, 1 cm in 2 m; our choice"},
    {"stake-hold-grass", "What a stake holds in grass", "N", 800, 0, 10'000,
     "half of the 1600 N of EN 14960 for each anchor, from memory; wet ground holds about half"},
    {"stake-hold-soil", "What a stake holds in soil", "N", 800, 0, 10'000,
     "half of the 1600 N of EN 14960 for each anchor, from memory; wet ground holds about half"},
    {"stake-hold-sand", "What a stake holds in sand", "N", 200, 0, 10'000, our_choice},
    {"stake-hold-gravel", "What a stake holds in gravel", "N", 300, 0, 10'000, our_choice},
    {"ground-wetness", "How wet the ground is in which stakes stand: 0 as usual, 1 soaked", "", 0, 0, 1,
     "to be looked at on the day"},
    {"wet-stake-share", "Share of its hold that a stake keeps in soaked ground", "", 0.5, 0.05, 1,
     "a fabrics association's staking study, pocket guide of 2006, second-hand: about half; Danish guidance has half "
     "for topsoil in a thaw"},
    {"stake-steep-share", "Share of its hold that a stake has left in a pull straight up", "", 0.3, 0, 1, our_choice},
    {"line-level-share", "Least level run of a line by the height it is tied at", "", 0.4, 0.1, 2, our_choice},
    {"anchor-factor", "Factor on what stakes and structures hold", "", 1.5, 1, 5, our_choice},
    {"structure-hold", "What a structure holds that the site owner has allowed", "N", 500, 0, 20'000,
     "our choice; ask the owner"},
    {"socket-hold", "What a foot set in the ground bears sideways or in pull", "N", 300, 0, 10'000, our_choice},
    {"socket-moment", "What a foot set in the ground bears in bending", "N·m", 50, 0, 10'000, our_choice},
    {"hook-hold", "What a hook on the wall bears", "N", 22, 0, 5000, "an adhesive hook for 5 lb; our choice"},
    {"tie-hold", "What a cable tie round a frame bears", "N", 80, 0, 5000,
     "a tie for 18 lb, 2.5 mm wide, from memory; what it goes round must bear it too"},
    {"hung-hold", "What a point bears that a strip or line is hung at", "N", 50, 0, 5000,
     "a nail, a branch or a knot; our choice, ask whose it is"},
    {"hook-slack", "Slack of a garland between two hooks, by its length", "", 0.02, 0.001, 0.3, our_choice},
    {"surface-hold", "What a fixing on a table or ledge bears", "N", 20, 0, 5000, our_choice},
    {"lean-share", "Lean of the highest point that is still right, by its height", "", 0.15, 0.01, 0.5, our_choice},
    {"push-height", "Height at which people lean on a piece", "m", 1.2, 0.3, 2, "hand height; our choice"},
    {"push", "Push of somebody who leans on a piece", "N", 50, 0, 1000, our_choice},
    {"watch-share", "Share of the limit gust from which it is watched", "", 0.6, 0.1, 1,
     "a council's park event guide, 2020; practice of wind management plans"},
    {"take-down-share", "Share of the limit gust at which it is taken down", "", 0.8, 0.1, 1,
     "a council's park event guide, 2020; practice of wind management plans"},
    {"headroom", "Clear height that a line keeps over a walkway", "m", 2.032, 1.9, 4, "IBC 1003.3: 80 in"},
    {"stake-away", "Distance of an anchor from the foot of its line, by its height", "", 0.8, 0.3, 2,
     "steeper lines pull the frame down; common practice, no source"},
}};

double standard_of(std::string_view key) {
  const Assumption* const found = find_assumption(key);
  if (found == nullptr) throw std::logic_error("no assumption is called " + std::string(key));
  return found->standard;
}

}  // namespace

std::span<const Assumption> all_assumptions() { return table; }

const Assumption* find_assumption(std::string_view key) {
  const auto* found = std::ranges::find_if(table, [&](const Assumption& row) { return key == row.key; });
  return found == table.end() ? nullptr : found;
}

std::string ground_key(std::string_view stem, Ground ground) { return std::string(stem) + "-" + key_of(ground); }

double Assumptions::operator[](std::string_view key) const {
  const auto held = event_.assumptions.find(key);
  if (held == event_.assumptions.end() || !std::isfinite(held->second)) return standard_of(key);
  const Assumption& row = *find_assumption(key);
  return std::clamp(held->second, row.least, row.most);
}

double Assumptions::friction(Ground ground) const { return (*this)[ground_key("friction", ground)]; }

double Assumptions::stake_hold_n(Ground ground) const {
  if (is_hard(ground)) return 0;
  const double wet = (*this)["ground-wetness"];
  return (*this)[ground_key("stake-hold", ground)] * (1 - wet * (1 - (*this)["wet-stake-share"]));
}

Findings assumption_findings(const Event& event) {
  Findings findings;
  std::vector<std::string> keys;
  for (const Assumption& row : table) keys.emplace_back(row.key);
  for (const auto& [key, number] : event.assumptions) {
    const Assumption* const row = find_assumption(key);
    if (row == nullptr) {
      const auto near = near_word(key, keys);
      findings.push_back({Weight::warning,
                          "assumption-unknown",
                          {},
                          {},
                          key,
                          "The standing check has no assumption \"" + key + "\".",
                          near ? "Did you mean \"" + *near + "\"?" : ""});
    } else if (!(number >= row->least && number <= row->most)) {
      findings.push_back(
          {Weight::warning,
           "assumption-range",
           {},
           {},
           key,
           std::string(row->label) + " cannot be " + print_number(number) + "; the nearest that can is taken.",
           "Give it " + print_number(row->least) + " to " + print_number(row->most) +
               (row->unit[0] == '\0' ? "" : std::string(" ") + row->unit) + "."});
    }
  }
  return findings;
}

}  // namespace quadrille
