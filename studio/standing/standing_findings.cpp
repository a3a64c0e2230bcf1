// What the answers mean for the event, as findings.
#include <algorithm>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/securing.hpp"
#include "studio/standing/advice.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

std::string in_both(double m_s) {
  return print_speed(m_s, SpeedStyle::miles_per_hour) + " (" + print_speed(m_s, SpeedStyle::kilometres_per_hour) + ")";
}

const char* words_of(std::string_view code) {
  constexpr std::pair<const char*, const char*> words[] = {
      {"tips", "a base plate tips"},
      {"slides", "a base plate slides"},
      {"lifts", "a base plate lifts off"},
      {"socket", "a foot comes out of the ground"},
      {"rod", "a rod or pole is overstressed"},
      {"joint", "a joint parts"},
      {"line", "a line pulls more than its working load"},
      {"anchor", "an anchor gives way"},
      {"hook", "a hook bears more than it holds"},
      {"lean", "it leans too far"},
      {"topples", "it topples"},
  };
  for (const auto& [known, sentence] : words)
    if (code == known) return sentence;
  return "a check fails";
}

class PieceFindings {
 public:
  PieceFindings(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece,
                const PieceStanding& answer, Findings& findings)
      : event_(event), area_(area), placed_(placed), piece_(piece), answer_(answer), findings_(findings) {}

  void all() {
    for (const std::string& fault : answer_.faults)
      add(Weight::problem, "line-fault", "lines", fault, "Mend or remove the line; it was left out of the reckoning.");
    verdict();
    securing();
    anchors();
  }

 private:
  void add(Weight weight, const char* code, const char* key, std::string text, std::string remedy) {
    findings_.push_back({weight, code, area_.id, placed_.id, key, std::move(text), std::move(remedy)});
  }
  void verdict();
  void securing();
  void anchors();
  bool asks_front_and_back() const {
    return std::ranges::any_of(piece_.anchoring, [&](const AnchoringRule& rule) {
      return rule.requirement == Requirement::front_and_back && rule.when == When::outdoors;
    });
  }

  const Event& event_;
  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& piece_;
  const PieceStanding& answer_;
  Findings& findings_;
};

void PieceFindings::verdict() {
  const std::string ends = std::string(" ") + planning_aid;
  const std::string first = answer_.governing.code.empty()
                                ? std::string()
                                : std::string("; ") + words_of(answer_.governing.code) + " first" +
                                      (answer_.governing.where.empty() ? "" : ", at the " + answer_.governing.where);
  if (answer_.outdoors && !answer_.forecast_known)
    add(Weight::warning, "no-forecast", "gust",
        "No gust is forecast for its area, so nobody can say whether it stands.",
        "Give the area its forecast gust. It bears " + in_both(answer_.limit_gust_m_s) + first + ".");
  if (answer_.verdict == Verdict::no && (answer_.outdoors || answer_.forecast_known)) {
    std::string remedy =
        "Tie it to the front and to the back, or change the piece; 'quadrille stand' shows what would do.";
    if (answer_.ballast_needed_kg)
      remedy = "Put " + print_mass(*answer_.ballast_needed_kg, MassStyle::kilograms) + " (" +
               print_mass(*answer_.ballast_needed_kg, MassStyle::pounds) +
               ") of ballast on each foot for that gust, and tie it.";
    add(Weight::problem, "does-not-stand", "gust",
        "It is not to stand in the gust of " + in_both(answer_.gust_m_s) + ": it bears " +
            in_both(answer_.limit_gust_m_s) + first + "; it is taken down at " + in_both(answer_.take_down_m_s) + "." +
            ends,
        std::move(remedy));
  } else if (answer_.verdict == Verdict::no) {
    add(Weight::problem, "does-not-stand", "", "It does not stand: " + answer_.reason + "." + ends,
        "Change the piece, or tie it.");
  } else if (answer_.verdict == Verdict::watch && answer_.forecast_known) {
    add(Weight::warning, "watch", "gust",
        "The gust of " + in_both(answer_.gust_m_s) + " is above the level at which it is watched, " +
            in_both(answer_.watch_m_s) + "; it is taken down at " + in_both(answer_.take_down_m_s) + first + "." + ends,
        "Name who watches, or secure it better.");
  } else if (answer_.verdict == Verdict::watch) {
    add(Weight::warning, "leaned-on", "",
        "It bears a push of " + print_fixed(answer_.bears_push_n, 0) + " N at hand height, less than the " +
            print_fixed(answer_.push_n, 0) + " N of somebody who leans on it.",
        "Add ballast, tie it, or keep people from it.");
  }
}

/// Outdoors a piece wants lines to the front and to the back; by the sides alone nothing is held upright.
void PieceFindings::securing() {
  if (!answer_.outdoors || !asks_front_and_back()) return;
  bool front = false, back = false, any = false;
  for (const SecuringLine& line : placed_.lines) {
    const auto run = run_of(line, placed_, piece_, area_);
    if (!run) continue;
    any = true;
    const Vec3 way = run->to - run->from;
    const double level = way.head<2>().norm();
    front = front || way.y() < -0.5 * level;
    back = back || way.y() > 0.5 * level;
  }
  if (front && back) return;
  const std::string lacks = front ? "to the back" : back ? "to the front" : "to the front or to the back";
  add(Weight::warning, "not-tied", "lines",
      any && !front && !back
          ? "It is tied to the sides alone, which does not keep it upright: no line goes to the front or to the back."
          : "No line ties it " + lacks + ".",
      "Tie its top to anchors in front and behind.");
}

void PieceFindings::anchors() {
  const double headroom = Assumptions(event_)["headroom"];
  for (const SecuringLine& line : placed_.lines) {
    const auto run = run_of(line, placed_, piece_, area_);
    if (!run) continue;
    if (const Walkway* const walkway = walkway_under(area_, placed_, run->from, run->to, headroom))
      add(Weight::warning, "line-over-walkway", "lines",
          "The line " + line.tie + " crosses the walkway \"" + (walkway->name.empty() ? walkway->id : walkway->name) +
              "\" lower than " + print_both(headroom) + ", or ends in it.",
          "Move the anchor, or fence the line off.");
    if (line.anchor == AnchorKind::stake && is_hard(area_.site.ground))
      add(Weight::problem, "stake-in-hard-ground", "lines",
          "The line " + line.tie + " ends at a stake, and no stake can be driven into this ground.",
          "Use a dead weight, or a structure the site owner allows.");
    if (line.anchor != AnchorKind::structure) continue;
    for (const Structure& structure : area_.structures)
      if (structure.id == line.structure && structure.allowed_by.empty())
        add(Weight::warning, "not-allowed", "lines",
            "The line " + line.tie + " ends at \"" + structure.name + "\", and nobody has allowed that yet.",
            "Ask the site owner, and enter who allowed it.");
  }
}

}  // namespace

Findings standing_findings(const Event& event, const BuiltEvent& built, const std::vector<PieceStanding>& answers) {
  Findings findings = assumption_findings(event);
  for (const auto& area : event.areas)
    for (const auto& placed : area->pieces) {
      const auto answer = std::ranges::find(answers, placed->id, &PieceStanding::id);
      const auto found = built.find(placed->id);
      if (answer == answers.end() || found == built.end()) continue;
      PieceFindings(event, *area, *placed, found->second->piece, *answer, findings).all();
    }
  return findings;
}

}  // namespace quadrille
