// How the pieces of an area stand, reckoned away from the main thread: piece by piece, and one gust at a time for the
// slider. Knows no toolkit.
#pragma once

#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studio/standing/advice.hpp"
#include "studio/standing/gust_series.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/window/job/newest.hpp"
#include "studio/window/job/study.hpp"

namespace quadrille {

/// Which area is to be reckoned, and which of its pieces first.
struct StandingQuestion {
  std::shared_ptr<const Study> study;
  std::string area, first;  ///< ids; `first` may be empty
  bool everywhere = false;  ///< also the pieces of all other areas, after these; then without advice
};

/// What is known of one piece. Never changed once it is given out.
struct StandingReport {
  std::uint64_t revision = 0;  ///< of the study it holds for
  std::string piece;           ///< id
  PieceStanding standing;
  bool advised = false;            ///< `advice` has been worked out
  std::vector<LineAdvice> advice;  ///< empty where the piece reaches its forecast as it is
};

/// One gust for one piece; without a direction: from all round.
struct GustQuestion {
  std::shared_ptr<const Study> study;
  std::string area, piece;  ///< ids
  double gust_m_s = 0;
  std::optional<double> direction_deg;
  double first_deg = 90;  ///< from all round: the direction that is answered at once
};

struct GustReport {
  std::uint64_t revision = 0;
  std::string piece;
  std::optional<double> asked_deg;  ///< as in the question
  GustState state;
};

/// Where answers go. Both are called on threads of the worker's, with plain values.
struct StandingWorkerAnswers {
  std::function<void(std::shared_ptr<const StandingReport>)> piece;
  std::function<void(std::shared_ptr<const GustReport>)> gust;
};

/// All that a piece's standing hangs on. Pieces of one basis stand alike.
struct StandingBasis {
  std::shared_ptr<const BuiltPiece> built;
  PlacedPiece placed;  ///< without id, name, colours and whatever else no wind asks about
  Site site;
  std::vector<Structure> structures;
  std::vector<Walkway> walkways;
  std::map<std::string, double, std::less<>> assumptions;
  bool operator==(const StandingBasis&) const = default;
};

class StandingWorker {
 public:
  explicit StandingWorker(StandingWorkerAnswers answers);

  /// Reports every built piece of the area: what is known of it already at once, then one after the other, the first of
  /// the question first; then once more with advice, where a piece falls short. A newer question takes its place between
  /// two pieces.
  void ask(StandingQuestion question) { pieces_.ask(std::move(question)); }
  /// Reports the gust, first from one direction where all are asked about.
  void ask(GustQuestion question) { gusts_.ask(std::move(question)); }

 private:
  /// What was reckoned on one basis.
  struct Known {
    StandingBasis basis;
    PieceStanding standing;
    std::optional<std::vector<LineAdvice>> advice;
  };
  /// The piece that the slider was moved for last.
  struct Series {
    std::shared_ptr<const Study> study;  ///< holds what `gusts` is made from
    std::string piece;
    StandingBasis basis;
    std::unique_ptr<GustSeries> gusts;
  };
  void reckon(const StandingQuestion& question, const Stale& stale);
  void reckon(const GustQuestion& question, const Stale& stale);
  Known* known_on(const StandingBasis& basis);
  Known& keep(Known known);
  void tell(std::uint64_t revision, const PlacedPiece& placed, const Known& known);
  void tell(const GustQuestion& question, GustState state);

  StandingWorkerAnswers answers_;
  std::deque<Known> known_;          ///< oldest first; the pieces' thread's alone
  std::optional<Series> series_;     ///< the gusts' thread's alone
  Newest<StandingQuestion> pieces_;  ///< last, so that all they use is there before they start
  Newest<GustQuestion> gusts_;
};

}  // namespace quadrille
