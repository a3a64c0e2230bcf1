#include "studio/standing/checks.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "sdk/material.hpp"
#include "studio/standing/dead_load.hpp"

namespace quadrille {
namespace {

double ratio(double asked, double borne) {
  if (!(asked > 0)) return 0;
  return borne > 0 ? std::min(asked / borne, most_utilisation) : most_utilisation;
}

class Checks {
 public:
  Checks(const CheckedPiece& checked, double direction_deg) : checked_(checked), direction_deg_(direction_deg) {}

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
  void line(std::size_t rigged, const CableForce& force);
  void lean(const FrameModel& model, const Equilibrium& state, const Equilibrium& rest);

  std::vector<StandingCheck> take() { return std::move(found_); }

 private:
  double figure(const char* key) const { return checked_.assumptions[key]; }
  static std::string source_of(const char* key) { return find_assumption(key)->source; }

  const CheckedPiece& checked_;
  double direction_deg_;
  std::vector<StandingCheck> found_;
};

void Checks::plate(std::size_t number, const Reaction& reaction) {
  const Support& foot = checked_.piece.supports[number];
  const std::string where = name_of_support(checked_.piece, number);
  const double own_n = (foot.own_mass_kg + foot.ballast_kg) * figure("ballast-share") * gravity_m_s2;
  const double down_n = own_n + std::max(0.0, reaction.force_n.z()), up_n = std::max(0.0, -reaction.force_n.z());
  const std::string weighed = "weight of plate and ballast as given, " + source_of("ballast-share");
  // The ground's push on the plate must stay inside its outline: about either edge, what turns it over by what holds it.
  const auto over_edge = [&](double moment_nm, double across_m) {
    note("tips", where, std::abs(moment_nm) + up_n * across_m / 2, down_n * across_m / 2, "Nm", weighed);
  };
  over_edge(reaction.moment_nm.y(), foot.width_m);
  over_edge(reaction.moment_nm.x(), foot.depth_m);
  note("lifts", where, up_n, own_n, "N", weighed);
  const Ground ground = checked_.area.site.ground;
  const double friction = checked_.assumptions.friction(ground);
  note("slides", where, reaction.force_n.head<2>().norm() + friction * up_n, friction * down_n, "N",
       "friction " + source_of(ground_key("friction", ground).c_str()));
}

void Checks::socket(std::size_t number, const Reaction& reaction) {
  const std::string where = name_of_support(checked_.piece, number);
  const double pull = std::hypot(reaction.force_n.head<2>().norm(), std::max(0.0, -reaction.force_n.z()));
  note("socket", where, pull, figure("socket-hold"), "N", source_of("socket-hold"));
  note("socket", where, reaction.moment_nm.head<2>().norm(), figure("socket-moment"), "Nm", source_of("socket-moment"));
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
  note("joint", {}, forces.at_from.force_n.x(), figure("joint-pull"), "N", source_of("joint-pull"));
}

void Checks::line(std::size_t rigged, const CableForce& force) {
  const RiggedLine& line = checked_.lines[rigged];
  const SecuringLine& asked = checked_.placed.lines[checked_.line_numbers[rigged]];
  const std::string where = "line " + asked.tie;
  note("line", where, force.tension_n, line.cord.strength_n * figure("knot-share") / figure("line-factor"), "N",
       line.cord.source);
  const Site& site = checked_.area.site;
  if (asked.anchor == AnchorKind::stake) {
    note("anchor", where, force.tension_n, checked_.assumptions.stake_hold_n(site.ground) / figure("anchor-factor"),
         "N",
         is_hard(site.ground) ? "no stake holds in hard ground"
                              : source_of(ground_key("stake-hold", site.ground).c_str()));
  } else if (asked.anchor == AnchorKind::structure) {
    note("anchor", where, force.tension_n, figure("structure-hold") / figure("anchor-factor"), "N",
         source_of("structure-hold"));
  } else {
    note("anchor", where, dead_weight_needed_n(force.pull_on_from, checked_.assumptions.friction(site.ground)),
         asked.mass_kg * figure("ballast-share") * gravity_m_s2, "N",
         "friction " + source_of(ground_key("friction", site.ground).c_str()));
  }
}

void Checks::lean(const FrameModel& model, const Equilibrium& state, const Equilibrium& rest) {
  double highest = 0, farthest = 0;
  for (std::size_t node = 0; node < model.nodes.size(); ++node) {
    highest = std::max(highest, model.nodes[node].z());
    farthest = std::max(farthest, (state.state.shifts[node] - rest.state.shifts[node]).norm());
  }
  note("lean", {}, farthest, figure("lean-share") * highest, "m", source_of("lean-share"));
}

}  // namespace

std::vector<StandingCheck> checks_of(const CheckedPiece& checked, const FrameModel& model, const Equilibrium& state,
                                     const Equilibrium& rest, double direction_deg) {
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
        checks.hold("hook", i, state.supports[i], "hook-hold");
        break;
      case SupportKind::surface:
        checks.hold("hook", i, state.supports[i], "surface-hold");
        break;
    }
  }
  for (std::size_t i = 0; i < checked.piece.frame.members.size(); ++i)
    checks.member(checked.piece.frame.members[i], state.elements[i]);
  for (std::size_t i = 0; i < state.cables.size(); ++i) checks.line(i, state.cables[i]);
  checks.lean(model, state, rest);
  return checks.take();
}

double needed_on_plate_kg(const Support& plate, const Reaction& reaction, double friction, double counted_share) {
  const double down = std::max(0.0, reaction.force_n.z()), up = std::max(0.0, -reaction.force_n.z());
  const auto for_edge = [&](double moment_nm, double across_m) {
    return across_m > 0 ? std::abs(moment_nm) / (across_m / 2) + up - down : 0;
  };
  const double sliding = reaction.force_n.head<2>().norm() / friction + up - down;
  const double newtons = std::max({0.0, up, sliding, for_edge(reaction.moment_nm.y(), plate.width_m),
                                   for_edge(reaction.moment_nm.x(), plate.depth_m)});
  return newtons / (gravity_m_s2 * counted_share);
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
  const std::string word = is_foot ? "foot" : "hook";
  if (alike.size() == 1) return word;
  if (alike.size() == 2) return (place == 0 ? "left " : "right ") + word;
  return word + " " + std::to_string(place + 1) + " from the left";
}

}  // namespace quadrille
