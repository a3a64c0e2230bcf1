// Will it stand? The answer for one piece and for a whole event, as values.
// A planning aid, not an engineering certificate: whoever shows a limit shows `planning_aid` beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/standing/checks.hpp"

namespace quadrille {

inline constexpr const char* planning_aid =
    "A planning aid, not an engineering certificate: local code, the venue's rules and licensed practice decide.";

/// `fine`: the forecast stays below the watch level; `watch`: below the take-down level; `no`: above it, or it does not
/// stand at all; `unknown`: no forecast is given, or nothing could be reckoned.
enum class Verdict { fine, watch, no, unknown };

struct ForceOnSupport {
  std::string support;
  Vec3 force_n = Vec3::Zero(), moment_nm = Vec3::Zero();  ///< what the ground or hook exerts on the piece
};

struct ForceInLine {
  std::string from, to;
  double tension_n = 0;          ///< in the wind that governs
  double greatest_n = 0;         ///< in the same gust, from whatever side it pulls most
  double greatest_from_deg = 0;  ///< that side, as StandingCheck::direction_deg
};

/// The gust that a piece bears with one of its lines gone.
struct WithoutLine {
  std::string line;
  double limit_gust_m_s = 0;
};

/// What ballast on each foot, beside its plate's own mass, does for a piece in its gust: in all, not on top of what is
/// there. Empty where there is no plate, where something else than a plate fails, or where the plate has no room for it.
struct BallastAdvice {
  std::optional<double> stays_up_kg;    ///< it stays up in the gust, watched
  std::optional<double> fine_kg;        ///< it is fine in the gust
  std::optional<double> bears_push_kg;  ///< it bears somebody who leans on it
  double has_kg = 0;                    ///< the least that is on a foot now
  double limit_kg = 0;                  ///< what the plate has room for; 0 where nobody says
  double beyond_kg = 0;  ///< what it would take where that is more than the plate has room for; 0 = nothing
};

struct PieceStanding {
  std::string area, id, name;
  bool outdoors = false;
  double gust_m_s = 0;  ///< the gust asked about: the forecast, or what was asked; 0 indoors without either
  bool forecast_known = false;
  double limit_gust_m_s = 0;
  bool limit_beyond = false;  ///< bears all up to the highest gust that is looked at
  StandingCheck governing;    ///< the check that fails first; empty code where limit_beyond
  Verdict verdict = Verdict::unknown;
  bool fails_at_rest = false;               ///< `governing` fails without any wind
  bool hangs = false;                       ///< it has no frame of its own: hooks or ties bear it
  double watch_m_s = 0, take_down_m_s = 0;  ///< action levels; taken down at the top of Beaufort 5 at the latest
  std::vector<StandingCheck> checks;        ///< at `gust_m_s`, each with its worst place and direction
  double direction_deg = 0;                 ///< of the wind that governs at `gust_m_s`
  std::vector<ForceOnSupport> reactions;    ///< from that direction
  std::vector<ForceInLine> lines;
  double top_displacement_m = 0;  ///< how far any point is from where it is drawn at `gust_m_s`, in any direction
  bool converged = false;         ///< rest was found in every direction
  std::string reason;             ///< where not: why
  BallastAdvice ballast;
  /// ballast.stays_up_kg: beside the plate's own mass, on each foot, so that it stays up in `gust_m_s`, watched; empty
  /// where there is no plate, or where ballast would not do.
  std::optional<double> ballast_needed_kg;
  std::vector<WithoutLine> without;      ///< one entry for each line that counts
  std::vector<std::string> not_counted;  ///< sentences about lines that give way before they are of use: see secured()
  double bears_push_n = 0;               ///< level push at hand height that it bears, in the worst direction
  double push_n = 0;                     ///< what it should bear there
  bool push_asked = false;               ///< `bears_push_n` was looked for
  std::vector<Vec3> deflected;           ///< the frame's nodes in that wind, in the piece's frame [m]
  std::vector<std::string> faults;       ///< lines that could not be reckoned
};

struct StandingOptions {
  std::optional<double> gust_m_s;  ///< instead of the forecast outdoors; indoors there is none
  bool what_if = true;             ///< also each line lost, and the push of people: several times the work
};

/// One built piece. `built` has been counted (status ok); with an empty frame the verdict is unknown, with the reason.
PieceStanding stand(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                    const StandingOptions& options = {});

/// Every built piece of the event (of one area, where its id is given), in the event's order; on
/// all hardware threads. Pieces that are alike in the same area are reckoned once.
std::vector<PieceStanding> stand_all(const Event& event, const BuiltEvent& built, const StandingOptions& options = {},
                                     std::string_view area_id = {});

/// What the answers mean for the event: problems where a piece does not stand in its forecast, where a forecast is missing
/// or nothing can hold in the ground; warnings to watch it, about lines that are not counted on, steep lines, walkways under
/// lines, structures that lines run through or that several pieces share; notes about who leans on it. Where a limit is
/// told, the last one is a note that it is a planning aid.
Findings standing_findings(const Event& event, const BuiltEvent& built, const std::vector<PieceStanding>& answers);

/// The action level [m/s] for a share of the limit. Nothing is left up above Beaufort 5: a limit counts up to the one whose
/// take-down level that is, so that a piece is always watched before it is taken down. Shares above 0.
double action_level_m_s(double limit_gust_m_s, double share, double take_down_share);

/// The least limit gust [m/s] of a piece that is not taken down in this gust, or that need not be watched: the gust by its
/// share. Nothing where no limit will do, as above Beaufort 5.
std::optional<double> limit_for_m_s(double gust_m_s, double share, double take_down_share);

}  // namespace quadrille
