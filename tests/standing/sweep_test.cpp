// Two thousand pieces, sites, lines and gusts drawn by lot, most of them absurd: every one ends with an answer or a
// plain refusal. With the sanitizers twenty of them are.
#include <doctest/doctest.h>

#include <atomic>
#include <cmath>
#include <string>
#include <vector>

#include "studio/standing/piece_standing.hpp"
#include "tests/sanitized.hpp"
#include "tests/standing/any_piece.hpp"

namespace quadrille {
namespace {

constexpr std::size_t trials = sanitized ? 20 : 2000, drawn_pieces = sanitized ? 9 : 90;

/// The first number in the answer that is none, by name; empty where all are.
std::string no_number(const PieceStanding& answer) {
  std::string found;
  const auto look = [&](const char* name, double number) {
    if (!std::isfinite(number) && found.empty()) found = name;
  };
  const auto look_all = [&](const char* name, const Vec3& vector) {
    for (const double number : vector) look(name, number);
  };
  look("limit", answer.limit_gust_m_s);
  look("watch", answer.watch_m_s);
  look("take down", answer.take_down_m_s);
  look("direction", answer.direction_deg);
  look("displacement", answer.top_displacement_m);
  look("push", answer.bears_push_n);
  if (answer.ballast_needed_kg) look("ballast", *answer.ballast_needed_kg);
  std::vector<StandingCheck> checks = answer.checks;
  checks.push_back(answer.governing);
  for (const StandingCheck& check : checks) {
    look("utilisation", check.utilisation);
    look("value", check.value);
    look("limit of a check", check.limit);
    look("direction of a check", check.direction_deg);
    if (check.utilisation < 0 && found.empty()) found = "a utilisation below 0";
  }
  for (const ForceOnSupport& force : answer.reactions) {
    look_all("reaction", force.force_n);
    look_all("moment", force.moment_nm);
  }
  for (const ForceInLine& line : answer.lines) look("tension", line.tension_n);
  for (const Vec3& node : answer.deflected) look_all("deflected", node);
  for (const WithoutLine& lost : answer.without) look("without a line", lost.limit_gust_m_s);
  return found;
}

/// What is wrong with the answer; empty where nothing is.
std::string wrong_with(const PieceStanding& answer) {
  if (const std::string name = no_number(answer); !name.empty()) return "no number: " + name;
  if (!answer.converged && answer.reason.empty()) return "it does not stand, and nobody says why";
  const double worst = answer.checks.empty() ? 0 : worst_of(answer.checks)->utilisation;
  if (answer.verdict == Verdict::fine) {
    if (!answer.converged) return "fine without rest";
    if (answer.checks.empty()) return "fine without a check";
    if (worst > 1) return "fine with a check that fails";
    if (answer.forecast_known && answer.limit_gust_m_s < answer.gust_m_s) return "fine above its limit";
  }
  if (answer.verdict == Verdict::watch && (!answer.converged || worst > 1)) return "to be watched where it fails";
  if (!answer.converged && worst <= 1) return "no rest, and no check fails";
  return {};
}

TEST_CASE("two thousand absurd pieces, sites and gusts each end with an answer or a plain refusal") {
  const std::vector<Piece> built = any_pieces(drawn_pieces, 7);
  std::vector<std::string> wrong(trials);
  std::atomic<int> fine = 0, watch = 0, no = 0, unknown = 0, refused = 0;
  share_out(trials, [&](std::size_t trial) {
    Random random(90'000 + trial);
    Piece piece = built[random.below(built.size())];
    const std::uint64_t kind = random.below(10);
    if (kind == 0) piece = drum(random.within(0.05, 1), random.within(0.5, 40), random.within(0, 1), 0);
    if (kind == 1) piece = drum(0.002, 6, 0.4, 10);
    if (kind > 3) make_absurd(piece, random);
    const Area area = any_area(random, piece);
    PlacedPiece placed;
    placed.id = "p1";
    for (std::uint64_t i = random.below(6); i > 0; --i) placed.lines.push_back(any_line(random, piece));
    Event event;
    if (random.below(4) == 0) event.assumptions["helium-share"] = 1;
    if (random.below(6) == 0) event.assumptions["line-slack"] = 0.05;
    if (random.below(6) == 0) event.assumptions["dressing-drag"] = 2.5;
    StandingOptions options;
    options.what_if = random.below(16) == 0;
    const double drawn =
        random.within(0, 4.5);  // squared: the light gusts, in which pieces may stand, come up more often
    if (random.below(8) != 0) options.gust_m_s = random.below(16) == 0 ? 1000 : drawn * drawn;
    const PieceStanding answer = stand(event, area, placed, piece, options);
    wrong[trial] = wrong_with(answer);
    fine += answer.verdict == Verdict::fine ? 1 : 0;
    watch += answer.verdict == Verdict::watch ? 1 : 0;
    no += answer.verdict == Verdict::no ? 1 : 0;
    unknown += answer.verdict == Verdict::unknown ? 1 : 0;
    refused += answer.converged ? 0 : 1;
  });
  for (std::size_t i = 0; i < trials; ++i)
    if (!wrong[i].empty()) FAIL_CHECK("trial ", i, ": ", wrong[i]);
  MESSAGE(fine.load(), " fine, ", watch.load(), " to be watched, ", no.load(), " not to stand (", refused.load(),
          " of them without rest), ", unknown.load(), " without a forecast");
  // The lot is of use only where all answers come up.
  CHECK(fine > 0);
  CHECK(no > 0);
  CHECK(refused > 0);
}

}  // namespace
}  // namespace quadrille
