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
  double tension_n = 0;
};

/// The gust that a piece bears with one of its lines gone.
struct WithoutLine {
  std::string line;
  double limit_gust_m_s = 0;
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
  double watch_m_s = 0, take_down_m_s = 0;  ///< action levels; never above Beaufort 5
  std::vector<StandingCheck> checks;        ///< at `gust_m_s`, each with its worst place and direction
  double direction_deg = 0;                 ///< of the wind that governs at `gust_m_s`
  std::vector<ForceOnSupport> reactions;    ///< from that direction
  std::vector<ForceInLine> lines;
  double top_displacement_m = 0;  ///< how far any point moves at `gust_m_s`, in any direction
  bool converged = false;         ///< rest was found in every direction
  std::string reason;             ///< where not: why
  std::optional<double>
      ballast_needed_kg;             ///< beside the plate's own mass, on each foot, to reach `gust_m_s`; empty where
                                     ///< there is no plate, or where ballast would not do
  std::vector<WithoutLine> without;  ///< one entry for each line
  double bears_push_n = 0;           ///< level push at hand height that it bears, in the worst direction
  double push_n = 0;                 ///< what it should bear there
  std::vector<Vec3> deflected;       ///< the frame's nodes in that wind, in the piece's frame [m]
  std::vector<std::string> faults;   ///< lines that could not be reckoned
};

struct StandingOptions {
  std::optional<double> gust_m_s;  ///< instead of the forecast
  bool what_if = true;             ///< also each line lost, and the push of people: several times the work
};

/// One built piece. `built` has been counted (status ok); with an empty frame the verdict is unknown, with the reason.
PieceStanding stand(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& built,
                    const StandingOptions& options = {});

/// Every built piece of the event (of one area, where its id is given), in the event's order; on both cores.
std::vector<PieceStanding> stand_all(const Event& event, const BuiltEvent& built, const StandingOptions& options = {},
                                     std::string_view area_id = {});

/// What the answers mean for the event: problems where a piece does not stand in its forecast, warnings to watch it, about
/// missing forecasts, structures nobody has allowed, stakes in hard ground, lines over walkways.
Findings standing_findings(const Event& event, const BuiltEvent& built, const std::vector<PieceStanding>& answers);

/// The action level [m/s] for a share of the limit, never above Beaufort 5.
double action_level_m_s(double limit_gust_m_s, double share);

}  // namespace quadrille
