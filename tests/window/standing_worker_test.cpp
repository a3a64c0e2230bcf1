// How pieces stand, reckoned in the background without a window.
#include "studio/window/job/standing_worker.hpp"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <mutex>
#include <thread>

#include "breezy_event.hpp"
#include "studio/host/discovery.hpp"
#include "tests/places.hpp"

namespace quadrille {
namespace {

/// What a worker reported, waited for with an upper bound.
class Reports {
 public:
  StandingWorkerAnswers take() {
    return {[this](auto report) { keep(pieces_, report); }, [this](auto report) { keep(gusts_, report); }};
  }
  template <class Condition>
  bool wait(Condition condition) {
    std::unique_lock lock(mutex_);
    return came_.wait_for(lock, std::chrono::seconds(60), [&] { return condition(pieces_, gusts_); });
  }

 private:
  template <class Kept, class Report>
  void keep(Kept& kept, Report report) {
    const std::lock_guard lock(mutex_);
    kept.push_back(std::move(report));
    came_.notify_all();
  }
  std::mutex mutex_;
  std::condition_variable came_;
  std::vector<std::shared_ptr<const StandingReport>> pieces_;
  std::vector<std::shared_ptr<const GustReport>> gusts_;
};

std::shared_ptr<const Study> study_of_event(const Event& event, std::uint64_t revision = 1) {
  static const auto types =
      std::make_shared<const PieceTypes>(find_piece_types({{build_place("pieces")}, std::nullopt, false}));
  static EventBuilder builder(*types);
  Question question;
  question.revision = revision;
  question.event = event;
  question.palettes = std::make_shared<const LoadedPalettes>();
  return std::make_shared<const Study>(quadrille::study_of(question, types, builder));
}

/// True where the last report of the piece has this revision and its advice.
bool is_done(const auto& reports, const std::string& piece, std::uint64_t revision) {
  const auto last = std::find_if(reports.rbegin(), reports.rend(), [&](const auto& r) { return r->piece == piece; });
  return last != reports.rend() && (*last)->revision == revision && (*last)->advised;
}

}  // namespace

TEST_CASE("every built piece of the area is reported, the first of the question first, as the standing check has it") {
  const auto study = study_of_event(breezy_event());
  Reports reports;
  StandingWorker worker(reports.take());
  worker.ask(StandingQuestion{study, "a1", "p2"});
  REQUIRE(reports.wait(
      [](const auto& pieces, const auto&) { return is_done(pieces, "p1", 1) && is_done(pieces, "p2", 1); }));
  reports.wait([&](const auto& pieces, const auto&) {
    CHECK(pieces.front()->piece == "p2");
    for (const auto& report : pieces) {
      CHECK(report->standing.area == "a1");  // nothing of the other area
      // Outside the worker: the same question asked of the standing check itself.
      const PlacedPiece& placed = *find_piece(study->event, report->piece);
      const PieceStanding stands =
          stand(study->event, *study->event.areas[0], placed, study->built.at(placed.id)->piece);
      CHECK(report->standing.limit_gust_m_s == stands.limit_gust_m_s);
      CHECK(report->standing.checks == stands.checks);
      CHECK(report->standing.verdict == stands.verdict);
      CHECK(report->standing.name == placed.name);
    }
    return true;
  });
}

TEST_CASE("what a wind does not ask about leaves the reckoning as it is; what it does ask about does not") {
  Event event = breezy_event();
  Reports reports;
  StandingWorker worker(reports.take());
  worker.ask(StandingQuestion{study_of_event(event, 1), "a1", ""});
  REQUIRE(reports.wait(
      [](const auto& pieces, const auto&) { return is_done(pieces, "p1", 1) && is_done(pieces, "p2", 1); }));
  // A name and a tick: at once, with all advice, in the order of the area.
  event.ticked.insert("p1/ballast");
  event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.name = "Other name"; }); });
  worker.ask(StandingQuestion{study_of_event(event, 2), "a1", ""});
  REQUIRE(reports.wait([](const auto& pieces, const auto&) { return is_done(pieces, "p2", 2); }));
  double limit_m_s = 0;
  reports.wait([&](const auto& pieces, const auto&) {
    const auto first = std::ranges::find(pieces, std::uint64_t{2}, &StandingReport::revision);
    CHECK((*first)->standing.name == "Other name");
    CHECK((*first)->advised);
    limit_m_s = (*first)->standing.limit_gust_m_s;
    return true;
  });
  // Lines gone: another answer.
  event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.lines.clear(); }); });
  worker.ask(StandingQuestion{study_of_event(event, 3), "a1", "p1"});
  REQUIRE(reports.wait([](const auto& pieces, const auto&) { return is_done(pieces, "p1", 3); }));
  reports.wait([&](const auto& pieces, const auto&) {
    CHECK(std::ranges::find(pieces, std::uint64_t{3}, &StandingReport::revision) != pieces.end());
    for (const auto& report : pieces)
      if (report->revision == 3 && report->piece == "p1") CHECK(report->standing.limit_gust_m_s < limit_m_s);
    return true;
  });
}

TEST_CASE("a gust is reported from one direction at once, then from all round; from one side it is that side's") {
  const auto study = study_of_event(breezy_event());
  Reports reports;
  StandingWorker worker(reports.take());
  worker.ask(GustQuestion{study, "a1", "p1", 4, std::nullopt, 270});
  REQUIRE(reports.wait([](const auto&, const auto& gusts) { return gusts.size() == 2; }));
  worker.ask(GustQuestion{study, "a1", "p1", 4, 0.0, 90});
  REQUIRE(reports.wait([](const auto&, const auto& gusts) { return gusts.size() == 3; }));
  reports.wait([](const auto&, const auto& gusts) {
    CHECK_FALSE(gusts[0]->state.all_round);
    CHECK(gusts[0]->state.direction_deg == 270);
    CHECK(gusts[1]->state.all_round);
    CHECK(gusts[1]->state.utilisation() >= gusts[0]->state.utilisation());
    CHECK(gusts[2]->state.direction_deg == 0);
    CHECK(gusts[2]->asked_deg == 0.0);
    for (const auto& gust : gusts) CHECK(gust->state.gust_m_s == 4);
    return true;
  });
}

TEST_CASE("what is not there, or was not built, is not reported, and the next question is answered") {
  const auto study = study_of_event(breezy_event());
  Reports reports;
  StandingWorker worker(reports.take());
  worker.ask(GustQuestion{study, "a1", "no-such-piece", 4, std::nullopt, 90});
  worker.ask(GustQuestion{study, "a2", "p3", 4, std::nullopt, 90});  // of a type that nobody has
  worker.ask(StandingQuestion{study, "no-such-area", ""});
  worker.ask(StandingQuestion{study, "a2", "p3"});
  worker.ask(GustQuestion{study, "a1", "p2", 2, 90.0, 90});
  REQUIRE(reports.wait([](const auto&, const auto& gusts) { return !gusts.empty(); }));
  reports.wait([](const auto& pieces, const auto& gusts) {
    CHECK(pieces.empty());
    CHECK(gusts.front()->piece == "p2");
    return true;
  });
}

TEST_CASE("the question at hand is stale as soon as a newer one waits, and of those that wait only the newest counts") {
  std::mutex mutex;
  std::condition_variable changed;
  std::vector<int> begun;
  bool first_was_stale = false;
  Newest<int> newest([&](const int& question, const Stale& stale) {
    {
      const std::lock_guard lock(mutex);
      begun.push_back(question);
      changed.notify_all();
    }
    while (question == 1 && !stale()) std::this_thread::yield();
    const std::lock_guard lock(mutex);
    if (question == 1) first_was_stale = true;
    changed.notify_all();
  });
  const auto until = [&](auto condition) {
    std::unique_lock lock(mutex);
    return changed.wait_for(lock, std::chrono::seconds(60), condition);
  };
  newest.ask(1);
  REQUIRE(until([&] { return !begun.empty(); }));
  newest.ask(4);
  REQUIRE(until([&] { return first_was_stale && begun.size() == 2; }));
  CHECK(begun == std::vector<int>{1, 4});
}

}  // namespace quadrille
