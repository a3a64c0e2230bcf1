#include "studio/standing/checklist.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/one_unit.hpp"
#include "studio/model/securing.hpp"
#include "studio/model/stake.hpp"
#include "studio/standing/level_words.hpp"
#include "studio/standing/number_word.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {
namespace {

constexpr const char* practice = "common practice, no source";
constexpr double ladder_height_m = 2.1;  // what is higher is not reached from the floor

/// Whether a line is drawn from a tie point that is there for the front, and one from a tie point for the back.
bool has_lines_front_and_back(const PlacedPiece& placed, const Piece& piece) {
  const auto has = [&](TiePurpose purpose) {
    return std::ranges::any_of(placed.lines, [&](const SecuringLine& line) {
      const auto tie = find_tie_point(piece, line.tie);
      return tie && piece.tie_points[*tie].purpose == purpose;
    });
  };
  return has(TiePurpose::front) && has(TiePurpose::back);
}

/// Whoever shows one line alone shows this with it.
std::string with_planning_aid(const char* source) { return std::string(source) + "; " + planning_aid; }

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
  /// "two": as many as hold together in soaked ground what one holds in dry.
  std::string stakes_when_soaked() const {
    return number_word(static_cast<std::size_t>(std::ceil(1 / Assumptions(event_)["wet-stake-share"] - 1e-9)));
  }
  bool has_ballast(const Area& area) const;
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
    add("power-lines",
        in_one_unit("Keep people, poles, ladders and balloons at least 3 m (10 ft) from overhead power lines.",
                    event_.units),
        "Rods, wet lines and foil conduct.", "OSHA 29 CFR 1926.1408, table A, up to 50 kV");
    add("ground-fault", "Plug every cord that runs outdoors into a ground-fault device, and test it.",
        "A damp cord or inflator can kill.", "OSHA 29 CFR 1926.404(b)(1), NEC 590.6(A)");
    add("lightning", "At the first thunder leave the site, and wait 30 minutes after the last.",
        "Lightning strikes ahead of a storm and behind it, and poles draw it.", "US National Weather Service");
    add("anemometer", "Bring an anemometer, and name the person who reads it while anything stands.",
        "A forecast is not the wind at the corner of a building.",
        "practice of wind management plans for temporary structures");
    add("planning-aid",
        "Ask the venue what its rules and the local code allow, before you rely on the wind levels of this plan.",
        planning_aid, practice);
    add("no-release", "Release no balloon, at the event or when taking down.",
        "Animals eat what comes down; many places forbid it.", "state laws, e.g. Virginia, Florida HB 321 (2024)");
  }
  if (indoors)
    add("exits", "Keep every exit, its sign and the way to it clear, at its full width.",
        "Decorations may not obstruct the way out.", "IFC 806.2 and 807, IBC 1003.3");
  const bool high =
      std::ranges::any_of(built_, [](const auto& entry) { return entry.second->box.most.z() > ladder_height_m; });
  if (high)
    add("ladders",
        "Set a leaning ladder's foot out by a quarter of its height, open a stepladder until its spreaders lock, and "
        "never stand on the top or the step below it.",
        "A ladder that stands too steep tips back, one too flat slips away.", "OSHA 29 CFR 1926.1053");
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
        site.gust_m_s ? "Read the forecast again on the day: this was reckoned with gusts of " +
                            forecast_words(*site.gust_m_s, event_.units) + "."
                      : "Get the forecast of the gusts, and enter it.",
        "Every level here hangs on it.", practice);
  }
  if (has_ballast(area))
    add("ballast-water", "Empty ballast water onto grass or into a sewer, never into a storm drain.",
        "Chlorinated water may not go there.", "40 CFR 122.26(b)(2)");
  const auto is_tied_to = [&](const Structure& structure) {
    return std::ranges::any_of(area.pieces, [&](const auto& placed) {
      return !placed->hidden && std::ranges::any_of(placed->lines, [&](const SecuringLine& line) {
        return line.anchor == AnchorKind::structure && line.structure == structure.id;
      });
    });
  };
  for (const Structure& structure : area.structures) {
    if (!is_tied_to(structure)) continue;
    add("allowed-" + structure.id,
        structure.allowed_by.empty()
            ? "Ask the site owner whether one may tie to \"" + structure.name + "\", and how much it bears."
            : "Show your helper what " + structure.allowed_by + " allowed: tying to \"" + structure.name + "\".",
        "What is not yours is not to be pulled at.", practice);
  }
}

/// Whether anything there is weighed down with what the house fills its containers with.
bool Checklist::has_ballast(const Area& area) const {
  return std::ranges::any_of(area.pieces, [&](const auto& placed) {
    const auto found = built_.find(placed->id);
    if (placed->hidden || found == built_.end() || found->second->status != Status::ok) return false;
    return std::ranges::any_of(found->second->piece.supports, [](const Support& s) { return s.ballast_kg > 0; }) ||
           std::ranges::any_of(placed->lines, [](const SecuringLine& line) {
             return line.anchor == AnchorKind::dead_weight && line.mass_kg > 0;
           });
  });
}

void Checklist::wind_levels(const PieceStanding& answer) {
  if (!answer.outdoors || answer.deflected.empty()) return;
  if (answer.fails_at_rest) return;  // it does not stand at all: a finding says so
  add("wind-watch", "Watch it from gusts of " + short_level_words(answer.watch_m_s, event_.units) + ".",
      "Reckoned limit: " + short_level_words(answer.limit_gust_m_s, event_.units) +
          (answer.limit_beyond ? " or more" : "") + "; watched from " + percent("watch-share") + " of it.",
      with_planning_aid("practice of wind management plans"));
  add("wind-down",
      "Take it down at gusts of " + short_level_words(answer.take_down_m_s, event_.units) + ", before they come.",
      "At " + percent("take-down-share") + " of the reckoned limit, and never left up above Beaufort 5.",
      with_planning_aid("practice of wind management plans"));
}

void Checklist::lines_of(const Area& area, const PlacedPiece& placed, const Piece& piece) {
  bool stakes = false;
  for (std::size_t i = 0; i < placed.lines.size(); ++i) {
    const SecuringLine& line = placed.lines[i];
    const auto run = run_of(line, placed, piece, area);
    if (!run) continue;
    stakes = stakes || line.anchor == AnchorKind::stake;
    add("line-" + std::to_string(i + 1),
        "Line " + std::to_string(i + 1) + ": from the " + piece.tie_points[run->tie_point].label + " to " +
            anchor_in_words(line, area, piece, event_.units) + "; " +
            print_length(run->length_m(), lengths_in(event_.units)) + " long, hand-tight, marked at eye height.",
        "The piece was reckoned with every one of its lines.", practice);
  }
  const bool wet = Assumptions(event_)["ground-wetness"] > 0;
  if (stakes)
    add("stakes",
        "Drive stakes of at least " + print_stake(event_.units) +
            " to their heads, leaning away from the piece so that the line pulls square to them" +
            (wet ? "." : "; in soaked ground " + stakes_when_soaked() + " for each line, side by side."),
        "What they hold was reckoned for such stakes; short, upright or half-driven ones come out" +
            std::string(wet ? ", and wet ground was reckoned with." : ", and soaked ground holds less."),
        "EN 14960, 380 mm by 16 mm, from memory; the lean is common practice");
}

void Checklist::of_piece(const Area& area, const PlacedPiece& placed, const Piece& piece) {
  area_ = area.id;
  piece_ = placed.id;
  for (const AnchoringRule& rule : piece.anchoring) {
    if (!holds(rule.when, area)) continue;
    const std::string undrawn = lines_not_drawn(rule, placed, piece);
    add(rule.key, in_one_unit(rule.text, event_.units) + (undrawn.empty() ? "" : " " + undrawn), rule.reason,
        rule.source);
    lines_.back().open = !undrawn.empty();
  }
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

// What is to be tied and is drawn nowhere is in no count: whoever packs by the lists has no cord and no anchor for it.
std::string lines_not_drawn(const AnchoringRule& rule, const PlacedPiece& placed, const Piece& piece) {
  if (rule.requirement != Requirement::front_and_back || has_lines_front_and_back(placed, piece)) return "";
  return "No such lines are drawn, so neither cord nor anchors for them are on the lists.";
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
