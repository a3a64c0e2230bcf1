#include "studio/standing/checklist.hpp"

#include <algorithm>
#include <string_view>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/securing.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

constexpr const char* practice = "common practice, no source";
constexpr double ladder_height_m = 2.1;  // what is higher is not reached from the floor

std::string in_all_units(double m_s) {
  return print_speed(m_s, SpeedStyle::miles_per_hour) + " (" + print_speed(m_s, SpeedStyle::kilometres_per_hour) +
         ", " + print_speed(m_s, SpeedStyle::metres_per_second) + ")";
}

class Checklist {
 public:
  Checklist(const Event& event, const BuiltEvent& built, const std::vector<PieceStanding>& answers)
      : event_(event), built_(built), answers_(answers) {}

  void cautions();
  void of_area(const Area& area);
  void of_piece(const Area& area, const PlacedPiece& placed, const Piece& piece);

  std::vector<ChecklistLine> take() { return std::move(lines_); }

 private:
  void add(std::string_view key, std::string text, std::string reason, std::string source) {
    ChecklistLine line;
    line.key = (piece_.empty() ? (area_.empty() ? "event" : area_) : piece_) + "/" + std::string(key);
    line.area = area_;
    line.piece = piece_;
    line.text = std::move(text);
    line.reason = std::move(reason);
    line.source = std::move(source);
    line.done = event_.ticked.contains(line.key);
    lines_.push_back(std::move(line));
  }
  void wind_levels(const PieceStanding& answer);
  std::string percent(std::string_view assumption) const {
    return print_fixed(100 * Assumptions(event_)[assumption], 0) + " %";
  }
  void lines_of(const Area& area, const PlacedPiece& placed, const Piece& piece);

  const Event& event_;
  const BuiltEvent& built_;
  const std::vector<PieceStanding>& answers_;
  std::string area_, piece_;
  std::vector<ChecklistLine> lines_;
};

void Checklist::cautions() {
  add("choking", "Pick up every burst and every uninflated balloon, and keep them from children under eight.",
      "Latex pieces choke small children.", "16 CFR 1500.19");
  add("allergy", "Ask the client about latex allergy; offer other material where there is one.",
      "Latex can cause rash, asthma and, rarely, shock.", "NIOSH Alert 97-135");
  const bool outdoors = std::ranges::any_of(
      event_.areas, [](const auto& area) { return area->site.surroundings == Surroundings::outdoors; });
  const bool indoors = std::ranges::any_of(
      event_.areas, [](const auto& area) { return area->site.surroundings == Surroundings::indoors; });
  if (outdoors) {
    add("power-lines", "Keep people, poles, ladders and balloons at least 3 m (10 ft) from overhead power lines.",
        "Rods, wet lines and foil conduct.", "OSHA 29 CFR 1926.1408, table A, up to 50 kV");
    add("ground-fault", "Plug every cord that runs outdoors into a ground-fault device, and test it.",
        "A damp cord or inflator can kill.", "OSHA 29 CFR 1926.404(b)(1), NEC 590.6(A)");
    add("lightning", "At the first thunder leave the site, and wait 30 minutes after the last.",
        "Poles and rods are the highest thing about.", "US National Weather Service");
    add("anemometer", "Bring an anemometer, and name the person who reads it while anything stands.",
        "A forecast is not the wind at the corner of a building.",
        "practice of wind management plans for temporary structures");
    add("no-release", "Release no balloon, at the event or when taking down.",
        "Animals eat what comes down; many places forbid it.", "state laws, e.g. Virginia, Florida HB 321 (2024)");
  }
  if (indoors)
    add("exits", "Keep every exit, its sign and the way to it clear, at its full width.",
        "Decorations may not obstruct the way out.", "IFC 806.2 and 807, IBC 1003.3");
  const bool high =
      std::ranges::any_of(built_, [](const auto& entry) { return entry.second->box.most.z() > ladder_height_m; });
  if (high)
    add("ladders", "Set ladders one out to four up, spreaders locked, and never stand on the top or the step below it.",
        "Falls from ladders hurt more decorators than anything else does.", "OSHA 29 CFR 1926.1053");
}

void Checklist::of_area(const Area& area) {
  area_ = area.id;
  piece_.clear();
  const Site& site = area.site;
  if (!area.walkways.empty())
    add("walkways", "Keep cords, ballast, stakes and lines off the walkways, cover what must cross, mark what is low.",
        "People trip over what they do not look for.", practice);
  if (site.surroundings == Surroundings::outdoors) {
    add("forecast",
        site.gust_m_s ? "Read the forecast again on the day: " + in_all_units(*site.gust_m_s) +
                            " of gust is what this was reckoned with."
                      : "Get the forecast of the gusts, and enter it.",
        "Everything here hangs on it.", practice);
    add("ballast-water", "Empty ballast water onto grass or into a sewer, never into a storm drain.",
        "Chlorinated water may not go there.", "40 CFR 122.26(b)(2)");
  }
  for (const Structure& structure : area.structures)
    add("allowed-" + structure.id,
        structure.allowed_by.empty()
            ? "Ask the site owner whether one may tie to \"" + structure.name + "\", and how much it bears."
            : "Show your helper what " + structure.allowed_by + " allowed: tying to \"" + structure.name + "\".",
        "What is not yours is not to be pulled at.", practice);
}

void Checklist::wind_levels(const PieceStanding& answer) {
  if (!answer.outdoors || answer.deflected.empty()) return;
  add("wind-watch", "Watch it from gusts of " + in_all_units(answer.watch_m_s) + ".",
      "Reckoned limit: " + in_all_units(answer.limit_gust_m_s) + (answer.limit_beyond ? " or more" : "") +
          "; watched from " + percent("watch-share") + " of it.",
      "practice of wind management plans; " + std::string(planning_aid));
  add("wind-down", "Take it down at gusts of " + in_all_units(answer.take_down_m_s) + ", before they come.",
      "At " + percent("take-down-share") + " of the reckoned limit, and never left up above Beaufort 5.",
      "practice of wind management plans; " + std::string(planning_aid));
}

void Checklist::lines_of(const Area& area, const PlacedPiece& placed, const Piece& piece) {
  const LengthStyle style = lengths_in(event_.units);
  for (std::size_t i = 0; i < placed.lines.size(); ++i) {
    const SecuringLine& line = placed.lines[i];
    const auto run = run_of(line, placed, piece, area);
    if (!run) continue;
    std::string to = "a stake";
    if (line.anchor == AnchorKind::dead_weight)
      to = "a dead weight of " + print_mass(line.mass_kg, MassStyle::kilograms) + " (" +
           print_mass(line.mass_kg, MassStyle::pounds) + ")";
    if (line.anchor == AnchorKind::structure) to = "\"" + line.structure + "\"";
    const double aside = run->to.x() - run->from.x(), behind = run->to.y() - run->from.y();
    std::string where;
    if (std::abs(behind) > 0.05)
      where += print_length(std::abs(behind), style) + (behind < 0 ? " in front" : " behind");
    if (std::abs(aside) > 0.05)
      where += (where.empty() ? "" : ", ") + print_length(std::abs(aside), style) +
               (aside < 0 ? " to the left" : " to the right");
    add("line-" + std::to_string(i + 1),
        "Line " + std::to_string(i + 1) + ": from the " + piece.tie_points[run->tie_point].label + " to " + to + " " +
            where + ", " + print_length(run->length_m(), style) + " long, hand-tight, marked at eye height.",
        "It holds what was reckoned with it.", practice);
  }
}

void Checklist::of_piece(const Area& area, const PlacedPiece& placed, const Piece& piece) {
  area_ = area.id;
  piece_ = placed.id;
  for (const AnchoringRule& rule : piece.anchoring)
    if (holds(rule.when, area)) add(rule.key, rule.text, rule.reason, rule.source);
  lines_of(area, placed, piece);
  const auto answer = std::ranges::find(answers_, placed.id, &PieceStanding::id);
  if (answer != answers_.end()) wind_levels(*answer);
}

}  // namespace

bool holds(When when, const Area& area) {
  const bool outdoors = area.site.surroundings == Surroundings::outdoors;
  switch (when) {
    case When::always:
      return true;
    case When::outdoors:
      return outdoors;
    case When::indoors:
      return !outdoors;
    case When::walkway:
      return !area.walkways.empty();
    case When::hard_ground:
      return outdoors && is_hard(area.site.ground);
    case When::soft_ground:
      return outdoors && !is_hard(area.site.ground);
  }
  return true;
}

std::vector<ChecklistLine> checklist(const Event& event, const BuiltEvent& built,
                                     const std::vector<PieceStanding>& answers) {
  Checklist list(event, built, answers);
  list.cautions();
  for (const auto& area : event.areas) {
    list.of_area(*area);
    for (const auto& placed : area->pieces) {
      const auto found = built.find(placed->id);
      if (found != built.end() && found->second->status == Status::ok)
        list.of_piece(*area, *placed, found->second->piece);
    }
  }
  return list.take();
}

}  // namespace quadrille
