#include "studio/standing/checks.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include "sdk/material.hpp"
#include "sdk/number.hpp"
#include "studio/model/hung_by.hpp"
#include "studio/standing/dead_load.hpp"

namespace quadrille {
namespace {

constexpr double level_m = 0.01;  // points within this of the highest are as high

double ratio(double asked, double borne) {
  if (!(asked > 0)) return 0;
  return borne > 0 ? std::min(asked / borne, most_utilisation) : most_utilisation;
}

class Checks {
 public:
  Checks(const CheckedPiece& checked, double direction_deg)
      : checked_(checked),
        direction_deg_(direction_deg),
        joint_pull_(std::ranges::any_of(checked.piece.supplies, is_joint_tape) ? "joint-pull" : "bare-joint-pull") {}

  /// Notes `asked` against `borne`, where it is worse than what stands there under the same code.
  void note(const char* code, const std::string& where, double asked, double borne, const char* unit,
            std::string source) {
    keep_worst(found_, {StandingCheck{code, where, ratio(asked, borne), direction_deg_, std::max(0.0, asked),
                                      std::max(0.0, borne), unit, std::move(source)}});
  }
  void plate(std::size_t number, const Reaction& reaction);
  void socket(std::size_t number, const Reaction& reaction);
  void hold(const char* code, std::size_t number, const Reaction& reaction, const char* assumption);
  void member(const FrameMember& member, const ElementForces& forces);
  void line(std::size_t rigged, const std::vector<CableForce>& cables);
  void lean(const FrameModel& model, const Equilibrium& state);

  std::vector<StandingCheck> take() { return std::move(found_); }

 private:
  double figure(const char* key) const { return checked_.assumptions[key]; }
  static std::string source_of(const char* key) { return find_assumption(key)->source; }
  std::string percent_of(const char* key) const { return print_fixed(100 * figure(key), 0) + " %: " + source_of(key); }
  std::string divided_by(const char* key) const { return "by " + print_number(figure(key)) + ": " + source_of(key); }

  const SecuringLine& asked_line(std::size_t rigged) const {
    return checked_.placed.lines[checked_.line_numbers[rigged]];
  }
  double pull_on_structure_n(std::size_t rigged, const std::vector<CableForce>& cables) const;
  static bool is_joint_tape(const Supply& supply) { return supply.key == "joint-tape" && supply.quantity > 0; }

  const CheckedPiece& checked_;
  double direction_deg_;
  const char* joint_pull_;  ///< the assumption: by whether the piece has tape for its joints
  std::vector<StandingCheck> found_;
};

void Checks::plate(std::size_t number, const Reaction& reaction) {
  const Support& foot = checked_.piece.supports[number];
  const std::string where = name_of_support(checked_.piece, number);
  const double own_n = (foot.own_mass_kg + foot.ballast_kg) * figure("ballast-share") * gravity_m_s2;
  const PlateDemand asked = plate_demand(foot, reaction);
  const double down_n = own_n + asked.down_n;
  const std::string weighed = "weight of plate and ballast as given, " + source_of("ballast-share");
  // The ground's push on the plate must stay inside its outline: about either edge, what turns it over by what holds it.
  const auto over_edge = [&](double moment_nm, double across_m) {
    note("tips", where, moment_nm + asked.up_n * across_m / 2, down_n * across_m / 2, "Nm", weighed);
  };
  over_edge(asked.over_y_nm, foot.width_m);
  over_edge(asked.over_x_nm, foot.depth_m);
  note("lifts", where, asked.up_n, own_n, "N", weighed);
  const Ground ground = checked_.area.site.ground;
  const double friction = checked_.assumptions.friction(ground);
  note("slides", where, asked.drag_n + friction * asked.up_n, friction * down_n, "N",
       "friction " + source_of(ground_key("friction", ground).c_str()));
}

void Checks::socket(std::size_t number, const Reaction& reaction) {
  const std::string where = name_of_support(checked_.piece, number);
  const bool hard = is_hard(checked_.area.site.ground);
  const auto bears = [&](const char* key) { return hard ? 0 : figure(key); };
  const auto source = [&](const char* key) { return hard ? "nothing is set into hard ground" : source_of(key); };
  const double pull = std::hypot(reaction.force_n.head<2>().norm(), std::max(0.0, -reaction.force_n.z()));
  note("socket", where, pull, bears("socket-hold"), "N", source("socket-hold"));
  note("socket", where, reaction.moment_nm.head<2>().norm(), bears("socket-moment"), "Nm", source("socket-moment"));
}

void Checks::hold(const char* code, std::size_t number, const Reaction& reaction, const char* assumption) {
  note(code, name_of_support(checked_.piece, number), reaction.force_n.norm(), figure(assumption), "N",
       source_of(assumption));
}

void Checks::member(const FrameMember& member, const ElementForces& forces) {
  const RoundSection section{member.outer_m, member.inner_m};
  const double bending_modulus = section.second_moment_m4() / (member.outer_m / 2);
  const double strength = member.strength_pa / figure("strength-factor");
  for (const SectionForce* end : {&forces.at_from, &forces.at_to}) {
    const double bending = end->moment_nm.tail<2>().norm() / bending_modulus;
    const double direct = std::abs(end->force_n.x()) / section.area_m2() + bending;
    const double torsion = std::abs(end->moment_nm.x()) / (2 * bending_modulus);
    note("rod", {}, std::sqrt(direct * direct + 3 * torsion * torsion), strength, "Pa",
         "strength as the piece type gives it, " + source_of("strength-factor"));
  }
  if (member.joint_from != Joint::sleeve) return;
  note("joint", {}, forces.at_from.moment_nm.tail<2>().norm(), strength * figure("joint-share") * bending_modulus, "Nm",
       source_of("joint-share"));
  note("joint", {}, forces.at_from.force_n.x(), figure(joint_pull_), "N", source_of(joint_pull_));
}

/// What the structure at the end of a line is pulled with [N]: by all lines of the piece that end there, and by no less than
/// this one.
double Checks::pull_on_structure_n(std::size_t rigged, const std::vector<CableForce>& cables) const {
  Vec3 together = Vec3::Zero();
  for (std::size_t i = 0; i < cables.size(); ++i)
    if (asked_line(i).anchor == AnchorKind::structure && asked_line(i).structure == asked_line(rigged).structure)
      together += cables[i].pull_on_from;
  return std::max(cables[rigged].tension_n, together.norm());
}

void Checks::line(std::size_t rigged, const std::vector<CableForce>& cables) {
  const CableForce& force = cables[rigged];
  const RiggedLine& line = checked_.lines[rigged];
  const SecuringLine& asked = asked_line(rigged);
  const std::string where = name_of_line(checked_.placed.lines, checked_.line_numbers[rigged]);
  const Site& site = checked_.area.site;
  const bool wet = site.surroundings == Surroundings::outdoors && std::string_view(line.cord.key).starts_with("nylon");
  note("line", where, force.tension_n,
       line.cord.strength_n * figure("knot-share") * (wet ? figure("wet-nylon-share") : 1) / figure("line-factor"), "N",
       std::string(line.cord.source) + "; " + percent_of("knot-share") +
           (wet ? "; " + percent_of("wet-nylon-share") : std::string()) + "; " + divided_by("line-factor"));
  if (asked.anchor == AnchorKind::stake) {
    const double hold =
        stake_hold_n(force.pull_on_from, checked_.assumptions.stake_hold_n(site.ground), figure("stake-steep-share"));
    note("anchor", where, force.tension_n, hold / figure("anchor-factor"), "N",
         source_of(ground_key("stake-hold", site.ground).c_str()) +
             (figure("ground-wetness") > 0 ? "; less in wet ground, " + source_of("wet-stake-share") : std::string()) +
             "; less by the pull's steepness, " + source_of("stake-steep-share") + "; " + divided_by("anchor-factor"));
  } else if (asked.anchor == AnchorKind::structure) {
    note("anchor", where, pull_on_structure_n(rigged, cables), figure("structure-hold") / figure("anchor-factor"), "N",
         source_of("structure-hold") + "; " + divided_by("anchor-factor"));
  } else {
    note("anchor", where, dead_weight_needed_n(force.pull_on_from, checked_.assumptions.friction(site.ground)),
         asked.mass_kg * figure("ballast-share") * gravity_m_s2, "N",
         "friction " + source_of(ground_key("friction", site.ground).c_str()) + "; " + percent_of("ballast-share"));
  }
}

void Checks::lean(const FrameModel& model, const Equilibrium& state) {
  double highest = 0, farthest = 0;
  for (const Vec3& node : model.nodes) highest = std::max(highest, node.z());
  for (std::size_t node = 0; node < model.nodes.size(); ++node)
    if (model.nodes[node].z() >= highest - level_m) farthest = std::max(farthest, state.state.shifts[node].norm());
  note("lean", {}, farthest, figure("lean-share") * highest, "m", source_of("lean-share"));
}

}  // namespace

std::vector<StandingCheck> checks_of(const CheckedPiece& checked, const FrameModel& model, const Equilibrium& state,
                                     double direction_deg) {
  Checks checks(checked, direction_deg);
  for (std::size_t i = 0; i < checked.piece.supports.size(); ++i) {
    switch (checked.piece.supports[i].kind) {
      case SupportKind::plate:
        checks.plate(i, state.supports[i]);
        break;
      case SupportKind::socket:
        checks.socket(i, state.supports[i]);
        break;
      case SupportKind::hook:
        checks.hold("hook", i, state.supports[i], hook_assumption(checked.piece));
        break;
      case SupportKind::surface:
        checks.hold("hook", i, state.supports[i], "surface-hold");
        break;
    }
  }
  for (std::size_t i = 0; i < checked.piece.frame.members.size(); ++i)
    checks.member(checked.piece.frame.members[i], state.elements[i]);
  for (std::size_t i = 0; i < state.cables.size(); ++i) checks.line(i, state.cables);
  if (!model.elements.empty()) checks.lean(model, state);
  return checks.take();
}

PlateDemand plate_demand(const Support& plate, const Reaction& reaction) {
  constexpr double mean_distance = 0.3826;
  PlateDemand demand;
  demand.down_n = std::max(0.0, reaction.force_n.z());
  demand.up_n = std::max(0.0, -reaction.force_n.z());
  demand.over_x_nm = std::abs(reaction.moment_nm.x());
  demand.over_y_nm = std::abs(reaction.moment_nm.y());
  demand.drag_n = reaction.force_n.head<2>().norm();
  const double side = std::min(plate.width_m, plate.depth_m);
  if (side > 0) demand.drag_n += std::abs(reaction.moment_nm.z()) / (mean_distance * side);
  return demand;
}

std::optional<double> needed_on_plate_kg(const Support& plate, const Reaction& reaction, double friction,
                                         double counted_share) {
  const PlateDemand asked = plate_demand(plate, reaction);
  double newtons = std::max({0.0, asked.up_n, asked.drag_n / friction + asked.up_n - asked.down_n});
  for (const auto& [moment_nm, across_m] :
       {std::pair{asked.over_y_nm, plate.width_m}, std::pair{asked.over_x_nm, plate.depth_m}}) {
    if (across_m > 0)
      newtons = std::max(newtons, moment_nm / (across_m / 2) + asked.up_n - asked.down_n);
    else if (moment_nm > 0)
      return std::nullopt;
  }
  return newtons / (gravity_m_s2 * counted_share);
}

double stake_hold_n(const Vec3& pull_n, double level_hold_n, double steep_share) {
  const double pull = pull_n.norm();
  if (!(pull > 0)) return level_hold_n;
  const double rise = pull_n.z() / pull;
  return level_hold_n * (1 - (1 - steep_share) * rise * rise);
}

bool holds_nothing(const SecuringLine& line, const Area& area) {
  if (line.anchor == AnchorKind::stake) return is_hard(area.site.ground);
  if (line.anchor != AnchorKind::structure) return false;
  const auto structure = std::ranges::find(area.structures, line.structure, &Structure::id);
  return structure != area.structures.end() && structure->allowed_by.empty();
}

bool is_steep(const LineRun& run, double level_share) {
  const Vec3 way = run.to - run.from;
  return way.head<2>().norm() < level_share * std::abs(way.z());
}

const char* hook_assumption(const Piece& piece) {
  const HungBy by = hung_by(piece);
  return by == HungBy::ties ? "tie-hold" : by == HungBy::hooks ? "hook-hold" : "hung-hold";
}

double dead_weight_needed_n(const Vec3& pull_on_piece_n, double friction) {
  return pull_on_piece_n.head<2>().norm() / friction + std::max(0.0, -pull_on_piece_n.z());
}

void keep_worst(std::vector<StandingCheck>& into, const std::vector<StandingCheck>& others) {
  for (const StandingCheck& other : others) {
    const auto held = std::ranges::find(into, other.code, &StandingCheck::code);
    if (held == into.end())
      into.push_back(other);
    else if (other.utilisation > held->utilisation)
      *held = other;
  }
}

const StandingCheck* worst_of(const std::vector<StandingCheck>& checks) {
  const auto worst = std::ranges::max_element(checks, {}, &StandingCheck::utilisation);
  return worst == checks.end() ? nullptr : &*worst;
}

std::string name_of_line(const std::vector<SecuringLine>& lines, std::size_t line) {
  const std::string name = "line " + lines[line].tie;
  if (std::ranges::count(lines, lines[line].tie, &SecuringLine::tie) < 2) return name;
  const auto here = lines.begin() + static_cast<std::ptrdiff_t>(line);
  return name + " (" +
         std::to_string(std::ranges::count(lines.begin(), here, lines[line].tie, &SecuringLine::tie) + 1) + ")";
}

std::string name_of_support(const Piece& piece, std::size_t support) {
  const SupportKind kind = piece.supports[support].kind;
  const bool is_foot = kind == SupportKind::plate || kind == SupportKind::socket;
  std::vector<std::size_t> alike;
  for (std::size_t i = 0; i < piece.supports.size(); ++i) {
    const SupportKind other = piece.supports[i].kind;
    if (is_foot == (other == SupportKind::plate || other == SupportKind::socket)) alike.push_back(i);
  }
  std::ranges::stable_sort(alike, {}, [&](std::size_t i) { return piece.frame.nodes[piece.supports[i].node].x(); });
  const auto place = static_cast<std::size_t>(std::ranges::find(alike, support) - alike.begin());
  const std::string word = is_foot ? "foot" : word_of(hung_by(piece));
  if (alike.size() == 1) return word;
  if (alike.size() == 2) return (place == 0 ? "left " : "right ") + word;
  return word + " " + std::to_string(place + 1) + " from the left";
}

}  // namespace quadrille
