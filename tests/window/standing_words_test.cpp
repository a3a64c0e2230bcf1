// How a piece stands, in words.
#include "studio/window/panels/standing_words.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

PieceStanding reckoned(Verdict verdict, bool outdoors, bool forecast_known, double push_n = 50) {
  PieceStanding standing;
  standing.verdict = verdict;
  standing.outdoors = outdoors;
  standing.forecast_known = forecast_known;
  standing.push_n = push_n;
  standing.checks = {{"tips", "left foot", 0.5, 90, 10, 20, "Nm", ""}};
  return standing;
}

}  // namespace

TEST_CASE("a gust is said in the event's unit first, with its number on the Beaufort scale") {
  // By hand: 7 m/s are 25.2 km/h and 15.66 mph; WMO table 1100: Beaufort 4 from 5.5 to 7.9 m/s, a moderate breeze.
  CHECK(gust_in_full(7, Units::metric) == "25 km/h, 16 mph, Beaufort 4 (moderate breeze)");
  CHECK(gust_in_full(7, Units::feet) == "16 mph, 25 km/h, Beaufort 4 (moderate breeze)");
  CHECK(gust_words(7, Units::feet) == "16 mph, Beaufort 4");
}

TEST_CASE("what fails by a hair is not said to be just borne") {
  CHECK(used_words(1) == "100 %");
  CHECK(used_words(1.0001) == "101 %, fails");
  CHECK(used_words(0.994) == "99 %");
  CHECK(used_words(1000) == "over 999 %, fails");
}

TEST_CASE("no forecast, indoors, hanging and not reckoned have words of their own") {
  CHECK(verdict_words(reckoned(Verdict::fine, true, true)) == "fine");
  CHECK(verdict_words(reckoned(Verdict::watch, true, true)) == "watch it");
  PieceStanding fallen = reckoned(Verdict::no, true, true);
  fallen.gust_m_s = 9, fallen.limit_gust_m_s = 8;
  CHECK(verdict_words(fallen) == "not standing");
  // "Bears 24 km/h" once stood beside "not standing" in 20 km/h: it is taken down before its limit.
  fallen.limit_gust_m_s = 9.5;
  CHECK(verdict_words(fallen) == "take it down");
  CHECK(verdict_words(reckoned(Verdict::unknown, true, false)) == "no forecast");
  CHECK(verdict_words(reckoned(Verdict::fine, false, false)) == "fine indoors");
  CHECK(verdict_words(reckoned(Verdict::watch, false, false)) == "watch indoors");
  CHECK(verdict_words(reckoned(Verdict::fine, true, true, 0)) == "fine, hangs");
  PieceStanding torn = reckoned(Verdict::no, true, true, 0);
  torn.gust_m_s = 9, torn.limit_gust_m_s = 8;
  CHECK(verdict_words(torn) == "does not hold");
  CHECK(verdict_words(PieceStanding()) == "cannot be told");
}

TEST_CASE("a check that names its place by its own word does not say it twice; one that is not known is still shown") {
  StandingCheck check;
  check.code = "line", check.where = "line front-1";
  CHECK(check_words(check) == "Line front-1");
  check.code = "tips", check.where = "left foot";
  CHECK(check_words(check) == "Plate tips, left foot");
  CHECK(failure_words(check) == "a base plate tips, left foot");
  check.code = "something-new", check.where.clear();
  CHECK(check_words(check) == "something-new");
}

TEST_CASE("a shift is said by its parts, for one who faces the piece; less than half a centimetre is none") {
  CHECK(shift_words({0.05, -0.4, -0.1}, Units::metric) == "0.05 m to the right, 0.40 m towards you, 0.10 m down");
  CHECK(shift_words({-0.305, 0.004, 0}, Units::feet) == "1' to the left");
  CHECK(shift_words({0.004, 0.004, 0.004}, Units::metric).empty());
}

TEST_CASE("where a wind comes from stands without 'from' under a heading that has it") {
  CHECK(side_words(90) == "front");
  CHECK(side_words(270) == "behind");
  CHECK(side_words(45) == "front, left");
  CHECK(side_words(0) == "left");
}

TEST_CASE("lines that are alike are said once, and what would make it stand is said with what it then bears") {
  StandingReport report;
  report.standing = reckoned(Verdict::no, true, true);
  report.standing.converged = true;
  report.standing.gust_m_s = 9, report.standing.limit_gust_m_s = 5;
  report.standing.ballast_needed_kg = 30;
  report.standing.without = {{"side-1 to stake", 3}, {"side-1 to stake", 3}, {"front-1 to stake", 2}};
  CHECK(standing_text(report, Units::metric).find("being tried") != std::string::npos);
  report.advised = true;
  report.advice = {{{}, 8, "2 lines: one to the front, one to the back"},
                   {{}, 10, "3 lines: splayed"},
                   {{}, 12, "4 lines: splayed", 30.2, Reaching::watched}};
  const std::string text = standing_text(report, Units::metric);
  const auto says = [&](const char* words) { return text.find(words) != std::string::npos; };
  CHECK(says("each foot needs 30.0 kg of ballast"));
  CHECK(
      says("With 2 lines: one to the front, one to the back: it bears 29 km/h, Beaufort 5, which is not enough "
           "for that gust."));
  // What bears the forecast by a hair is taken down long before it.
  CHECK(says("With 3 lines: splayed: it bears 36 km/h, Beaufort 5, and is to be taken down before that gust."));
  CHECK(
      says("With 4 lines: splayed, and 31 kg of ballast on each foot: it bears 43 km/h, Beaufort 6, and stays up in "
           "that gust, watched."));
  CHECK(says("If the line side-1 to stake is lost, it bears 11 km/h, Beaufort 2. (2 lines alike.)"));
  CHECK(says("If the line front-1 to stake is lost, it bears 7 km/h, Beaufort 2."));
}

}  // namespace quadrille
