// What the answers mean for the event, as findings.
#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/securing.hpp"
#include "studio/standing/ballast.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/standing/sides_tied.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/standing/walkway_under.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

class PieceFindings {
 public:
  PieceFindings(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece,
                const PieceStanding& answer, Findings& findings)
      : event_(event), area_(area), placed_(placed), piece_(piece), answer_(answer), findings_(findings) {}

  void all() {
    for (const std::string& fault : answer_.faults) {
      if (answer_.hangs)
        add(Weight::note, "line-not-reckoned", "lines", fault, "They may stay: they can only take load off the hooks.");
      else
        add(Weight::problem, "line-fault", "lines", fault,
            "Mend or remove the line; it was left out of the reckoning.");
    }
    for (const std::string& sentence : answer_.not_counted)
      add(Weight::warning, "line-gives-way", "lines", sentence, "Give it a better anchor, or take it away.");
    verdict();
    securing();
    anchors();
  }

 private:
  void add(Weight weight, const char* code, const char* key, std::string text, std::string remedy) {
    findings_.push_back({weight, code, area_.id, placed_.id, key, std::move(text), std::move(remedy)});
  }
  /// What was added last is mended by ballast, where that is known.
  void with_ballast_change() { findings_.back().change = ballast_change(answer_, event_.units); }
  std::string remedy() const;
  std::string first_to_fail() const;
  std::string what_fails() const;
  SidesTied tied_to() const;
  bool tied_front_and_back() const {
    const SidesTied sides = tied_to();
    return sides.front && sides.back;
  }
  void verdict();
  void leaned_on();
  void securing();
  void anchors();
  const Event& event_;
  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& piece_;
  const PieceStanding& answer_;
  Findings& findings_;
};

/// What may be done about it beside ballast, by what fails first.
std::string PieceFindings::remedy() const {
  if (answer_.outdoors && answer_.gust_m_s > beaufort_5_top_m_s)
    return "Nothing is left up in such a gust: take it down before it comes, or put it where the wind does not reach.";
  const std::string ballast = ballast_in_words(answer_, event_.units);
  if (answer_.hangs)
    return "Hang it at more points or on stronger ones, let it sag more where it spans freely, or leave it out.";
  const std::string& code = answer_.governing.code;
  std::string lines =
      "Tie its top to the front and to the back; the page Standing, or 'quadrille stand', shows which lines hold it "
      "best.";
  if (tied_front_and_back()) lines = "The page Standing, or 'quadrille stand', shows which other lines hold it better.";
  if (code == "lean" || code == "topples" || code == "no-rest" || code == "rod")
    lines += " A thicker rod, a tube or a smaller piece leans less.";
  if (code == "joint") lines += " A thicker rod or longer pieces of it take the bending off the joints.";
  return ballast.empty() ? lines : ballast + " Or: " + lines;
}

std::string PieceFindings::first_to_fail() const {
  if (answer_.governing.code.empty()) return {};
  return std::string("; ") + failure_of(answer_.governing.code) + " first" +
         (answer_.governing.where.empty() ? "" : ", at the " + answer_.governing.where);
}

/// "a hook bears more than it holds, at the hook 3 from the left (429 %)": of what fails at the gust that is asked about.
std::string PieceFindings::what_fails() const {
  const StandingCheck* const worst = worst_of(answer_.checks);
  if (worst == nullptr || worst->utilisation <= 1) return {};
  return std::string(failure_of(worst->code)) + (worst->where.empty() ? "" : ", at the " + worst->where) +
         (worst->utilisation < 10 ? " (" + print_fixed(100 * worst->utilisation, 0) + " % of what it bears)" : "");
}

void PieceFindings::verdict() {
  if (answer_.outdoors && !answer_.forecast_known)
    add(Weight::problem, "no-forecast", "gust",
        "No gust is forecast for its area, so nobody can say whether it stands. It bears " +
            speed_words(answer_.limit_gust_m_s) + first_to_fail() + ".",
        "Give the area its forecast gust.");
  if (answer_.verdict == Verdict::no && (answer_.outdoors || answer_.forecast_known)) {
    const std::string fails = what_fails();
    const std::string share = print_fixed(100 * Assumptions(event_)["take-down-share"], 0) + " %";
    const bool capped = answer_.take_down_m_s >= beaufort_5_top_m_s;
    add(Weight::problem, "does-not-stand", "gust",
        "It is not to stand in the gust of " + speed_words(answer_.gust_m_s) + ": it bears " +
            speed_words(answer_.limit_gust_m_s) + first_to_fail() + ", and is taken down at " +
            speed_words(answer_.take_down_m_s) + (capped ? ", the top of Beaufort 5" : ", " + share + " of that") +
            "." + (fails.empty() ? "" : " In that gust " + fails + "."),
        remedy());
    with_ballast_change();
  } else if (answer_.verdict == Verdict::no) {
    const std::string fails = what_fails();
    add(Weight::problem, "does-not-stand", "",
        "It does not stand." + (fails.empty() ? "" : " Without any wind " + fails + ".") +
            (answer_.reason.empty() ? "" : " " + answer_.reason),
        answer_.hangs ? remedy() : "Change the piece, put more ballast on it, or tie it.");
    with_ballast_change();
  } else if (answer_.verdict == Verdict::watch && answer_.forecast_known) {
    const std::string ballast = ballast_in_words(answer_, event_.units);
    add(Weight::warning, "watch", "gust",
        "The gust of " + speed_words(answer_.gust_m_s) + " is above the level at which it is watched, " +
            speed_words(answer_.watch_m_s) + "; it is taken down at " + speed_words(answer_.take_down_m_s) +
            first_to_fail() + ".",
        "Name who watches, or secure it better." + (ballast.empty() ? "" : " " + ballast));
    with_ballast_change();
  }
  leaned_on();
}

/// Indoors that is what its verdict goes by; outdoors it is told beside what the wind does.
void PieceFindings::leaned_on() {
  if (!answer_.push_asked || answer_.bears_push_n >= answer_.push_n) return;
  if (answer_.verdict != Verdict::watch && answer_.verdict != Verdict::fine) return;
  const bool decides = !answer_.outdoors && !answer_.forecast_known;
  const std::string ballast = decides ? ballast_in_words(answer_, event_.units) : std::string();
  add(decides ? Weight::warning : Weight::note, "leaned-on", "",
      "It bears a push of " + print_force(answer_.bears_push_n, event_.units) + " at hand height, less than the " +
          print_force(answer_.push_n, event_.units) + " of somebody who leans on it.",
      ballast.empty() ? "Add ballast on a wider plate, tie it, or keep people from it."
                      : ballast + " Or tie it, or keep people from it.");
  if (decides) with_ballast_change();
}

SidesTied PieceFindings::tied_to() const {
  return sides_tied(placed_.lines, placed_, piece_, area_, Assumptions(event_)["line-level-share"]);
}

/// Outdoors a piece wants lines to the front and to the back; by the sides alone nothing is held upright. What hangs is
/// held by what carries it: the checklist asks for that.
void PieceFindings::securing() {
  if (!answer_.outdoors || answer_.hangs || !asks_front_and_back(piece_)) return;
  const auto [front, back, any] = tied_to();
  if (front && back) return;
  const std::string lacks = front ? "to the back" : back ? "to the front" : "to the front or to the back";
  add(Weight::warning, "not-tied", "lines",
      any && !front && !back ? "It is tied to the sides alone: no line goes to the front or to the back."
                             : "No line ties it " + lacks + ".",
      "Tie its top to anchors in front and behind, no nearer than " +
          print_fixed(100 * Assumptions(event_)["line-level-share"], 0) + " % of its height.");
}

void PieceFindings::anchors() {
  const double headroom = Assumptions(event_)["headroom"], least = Assumptions(event_)["line-level-share"];
  for (const Support& foot : piece_.supports)
    if (foot.kind == SupportKind::socket && is_hard(area_.site.ground)) {
      add(Weight::problem, "foot-in-hard-ground", "plate-width",
          "Its foot is set into the ground, and nothing can be set into this ground.",
          "Give it a base plate with ballast.");
      break;
    }
  for (const SecuringLine& line : placed_.lines) {
    const auto run = run_of(line, placed_, piece_, area_);
    if (!run) continue;
    if (is_steep(*run, least))
      add(Weight::warning, "steep-line", "lines",
          "The line " + line.tie + " to " + anchor_in_words(line, area_, piece_, event_.units) +
              " runs nearly straight down: it pulls the piece down and holds it to no side.",
          "Move its anchor at least " + print_both(least * std::abs(run->to.z() - run->from.z())) +
              " away from below its tie point.");
    if (const Walkway* const walkway = walkway_under(area_, placed_, run->from, run->to, headroom))
      add(Weight::warning, "line-over-walkway", "lines",
          "The line " + line.tie + " crosses the walkway \"" + (walkway->name.empty() ? walkway->id : walkway->name) +
              "\" lower than " + print_both(headroom) + ", or ends in it.",
          "Move the anchor, or fence the line off.");
    const std::string ends_at = line.anchor == AnchorKind::structure ? line.structure : std::string();
    if (const Structure* const hit = structure_in_way(area_, placed_, run->from, run->to, ends_at))
      add(Weight::warning, "line-through-structure", "lines",
          "The line " + line.tie + " runs through \"" + (hit->name.empty() ? hit->id : hit->name) + "\".",
          "Move the anchor to this side of it.");
    if (line.anchor == AnchorKind::stake && is_hard(area_.site.ground))
      add(Weight::problem, "stake-in-hard-ground", "lines",
          "The line " + line.tie + " ends at a stake, and no stake can be driven into this ground.",
          "Use a dead weight, or a structure the site owner allows.");
    if (line.anchor != AnchorKind::structure) continue;
    for (const Structure& structure : area_.structures)
      if (structure.id == line.structure && structure.allowed_by.empty())
        add(Weight::warning, "not-allowed", "lines",
            "The line " + line.tie + " ends at \"" + structure.name +
                "\", and nobody has allowed that yet: it is not counted on.",
            "Ask the site owner, and enter who allowed it.");
  }
}

/// What a structure holds is reckoned with for each piece by itself.
void add_shared_structures(const Area& area, const std::vector<PieceStanding>& answers, Findings& findings) {
  for (const Structure& structure : area.structures) {
    std::string names;
    int pieces = 0;
    for (const auto& placed : area.pieces) {
      const bool tied = std::ranges::any_of(placed->lines, [&](const SecuringLine& line) {
        return line.anchor == AnchorKind::structure && line.structure == structure.id;
      });
      const auto answer = std::ranges::find(answers, placed->id, &PieceStanding::id);
      if (!tied || answer == answers.end() || answer->hangs) continue;
      names += (pieces++ == 0 ? "" : ", ") + (placed->name.empty() ? placed->id : placed->name);
    }
    if (pieces < 2 || structure.allowed_by.empty()) continue;
    findings.push_back({Weight::warning,
                        "structure-shared",
                        area.id,
                        {},
                        {},
                        "Several pieces are tied to \"" + (structure.name.empty() ? structure.id : structure.name) +
                            "\" (" + names + "), and each was reckoned as if it alone pulled there.",
                        "Ask the site owner whether it bears all of them, or tie each to one of its own."});
  }
}

}  // namespace

Findings standing_findings(const Event& event, const BuiltEvent& built, const std::vector<PieceStanding>& answers) {
  Findings findings = assumption_findings(event);
  for (const auto& area : event.areas) {
    add_shared_structures(*area, answers, findings);
    for (const auto& placed : area->pieces) {
      const auto answer = std::ranges::find(answers, placed->id, &PieceStanding::id);
      const auto found = built.find(placed->id);
      if (answer == answers.end() || found == built.end()) continue;
      PieceFindings(event, *area, *placed, found->second->piece, *answer, findings).all();
    }
  }
  // Once for all of them: each of these tells what a piece bears.
  constexpr std::array<std::string_view, 4> with_limits{"no-forecast", "does-not-stand", "watch", "line-gives-way"};
  const bool tells_limits = std::ranges::any_of(findings, [&](const Finding& finding) {
    return std::ranges::find(with_limits, finding.code) != with_limits.end();
  });
  if (tells_limits) findings.push_back({Weight::note, "planning-aid", {}, {}, {}, planning_aid, {}});
  return findings;
}

}  // namespace quadrille
