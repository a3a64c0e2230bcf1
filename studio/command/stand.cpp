// quadrille stand: at which gust each piece fails, by what, and what would make it stand; as text or JSON.
#include <algorithm>
#include <ostream>
#include <set>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/command/json.hpp"
#include "studio/command/prepare.hpp"
#include "studio/command/table.hpp"
#include "studio/command/verbs.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/standing/advice.hpp"
#include "studio/standing/ballast.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

Json json_of(const Vec3& vector) { return {vector.x(), vector.y(), vector.z()}; }

Json json_of(const StandingCheck& check) {
  return {{"code", check.code},
          {"where", check.where},
          {"utilisation", check.utilisation},
          {"direction_deg", check.direction_deg},
          {"value", check.value},
          {"limit", check.limit},
          {"unit", check.unit},
          {"source", check.source}};
}

Json number_or_null(const std::optional<double>& number) { return number ? Json(*number) : Json(nullptr); }

Json json_of(const LineAdvice& advice, bool forecast_known) {
  Json lines = Json::array();
  for (const SecuringLine& line : advice.lines) {
    Json json{{"tie", line.tie}};
    if (line.anchor == AnchorKind::structure) {
      json["anchor"] = "structure";
      json["structure"] = line.structure;
      json["height_m"] = line.height_m;
    } else {
      json["anchor"] = line.anchor == AnchorKind::stake ? "stake" : "dead-weight";
      json["x_m"] = line.x_m;
      json["y_m"] = line.y_m;
      if (line.anchor == AnchorKind::dead_weight) json["mass_kg"] = line.mass_kg;
    }
    lines.push_back(json);
  }
  constexpr const char* reached[] = {"less", "watched", "fine"};
  return {{"words", advice.words},
          {"limit_gust_m_s", advice.limit_gust_m_s},
          {"reaches", forecast_known ? Json(reached[static_cast<std::size_t>(advice.reaches)]) : Json(nullptr)},
          {"ballast_kg", number_or_null(advice.ballast_kg)},
          {"lines", lines}};
}

const char* word_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::fine:
      return "fine";
    case Verdict::watch:
      return "watch";
    case Verdict::no:
      return "no";
    case Verdict::unknown:
      return "unknown";
  }
  return "unknown";
}

struct Advised {
  PieceStanding standing;
  std::vector<LineAdvice> lines;  ///< empty where the piece reaches its gust as it is
};

Json json_of(const Advised& advised) {
  const PieceStanding& answer = advised.standing;
  Json json{{"id", answer.id}, {"name", answer.name}, {"area", answer.area}};
  json["gust_m_s"] = answer.gust_m_s;
  json["forecast_known"] = answer.forecast_known;
  json["limit_gust_m_s"] = answer.limit_gust_m_s;
  json["limit_beyond"] = answer.limit_beyond;
  json["governing"] = answer.governing.code;
  json["governing_where"] = answer.governing.where;
  json["fails_at_rest"] = answer.fails_at_rest;
  json["verdict"] = word_of(answer.verdict);
  json["watch_m_s"] = answer.watch_m_s;
  json["take_down_m_s"] = answer.take_down_m_s;
  json["direction_deg"] = answer.direction_deg;
  json["checks"] = Json::array();
  for (const StandingCheck& check : answer.checks) json["checks"].push_back(json_of(check));
  json["reactions"] = Json::array();
  for (const ForceOnSupport& force : answer.reactions)
    json["reactions"].push_back(
        {{"support", force.support}, {"force_n", json_of(force.force_n)}, {"moment_nm", json_of(force.moment_nm)}});
  json["lines"] = Json::array();
  for (const ForceInLine& line : answer.lines)
    json["lines"].push_back({{"from", line.from},
                             {"to", line.to},
                             {"tension_n", line.tension_n},
                             {"greatest_n", line.greatest_n},
                             {"greatest_from_deg", line.greatest_from_deg}});
  // What swings from hooks is not followed.
  json["top_displacement_m"] = answer.hangs ? Json(nullptr) : Json(answer.top_displacement_m);
  json["converged"] = answer.converged;
  json["reason"] = answer.reason;
  json["ballast_needed_kg"] = number_or_null(answer.ballast_needed_kg);
  json["ballast"] = {{"has_kg", answer.ballast.has_kg},
                     {"room_kg", answer.ballast.limit_kg},
                     {"stays_up_kg", number_or_null(answer.ballast.stays_up_kg)},
                     {"fine_kg", number_or_null(answer.ballast.fine_kg)},
                     {"bears_push_kg", number_or_null(answer.ballast.bears_push_kg)}};
  json["without_line"] = Json::array();
  for (const WithoutLine& lost : answer.without)
    json["without_line"].push_back({{"line", lost.line}, {"limit_gust_m_s", lost.limit_gust_m_s}});
  json["bears_push_n"] = answer.bears_push_n;
  json["push_n"] = answer.push_n;
  json["advice"] = Json::array();
  for (const LineAdvice& advice : advised.lines) json["advice"].push_back(json_of(advice, answer.forecast_known));
  return json;
}

/// The text says it once, below everything.
std::string without_planning_aid(const std::string& source) {
  const std::size_t at = source.find(std::string("; ") + planning_aid);
  return source.substr(0, at);
}

class Printer {
 public:
  Printer(Units units, std::ostream& out) : units_(units), out_(out) {}

  void piece(const Advised& advised, const Area& area, const Piece& piece) {
    const PieceStanding& answer = advised.standing;
    out_ << answer.name << " (" << (area.name.empty() ? area.id : area.name) << "): ";
    if (answer.checks.empty()) {
      out_ << answer.reason << "\n\n";
      return;
    }
    if (answer.outdoors || answer.forecast_known)
      outdoors(answer);
    else
      indoors(answer);
    for (const WithoutLine& lost : answer.without)
      out_ << "  without the line " << lost.line << " it bears " << gust(lost.limit_gust_m_s) << ".\n";
    if (answer.push_asked)
      out_ << "  bears a push of " << print_force(answer.bears_push_n, units_)
           << " at hand height; somebody who leans on "
           << "it pushes with " << print_force(answer.push_n, units_) << ".\n";
    checks(answer);
    if (const std::string ballast = ballast_in_words(answer, units_); !ballast.empty()) out_ << "  " << ballast << '\n';
    if (const std::string none = no_advice_in_words(answer); advised.lines.empty() && !none.empty())
      out_ << "  " << none << '\n';
    for (const LineAdvice& advice : advised.lines)
      out_ << "  With " << advice_in_words(advice, area, piece, units_) << ": it bears " << gust(advice.limit_gust_m_s)
           << (answer.forecast_known ? ", " + reaching_in_words(advice, answer.gust_m_s) : std::string()) << ".\n";
    out_ << '\n';
  }

  void checklist(const Event& event, const std::vector<ChecklistLine>& lines) {
    out_ << "Checklist\n";
    std::set<std::string> said;  // what is to be done at several pieces of an area is said once, with their names
    for (const ChecklistLine& line : lines) {
      const auto alike = [&](const ChecklistLine& other) {
        return other.area == line.area && other.text == line.text && other.done == line.done;
      };
      std::string of;
      for (const ChecklistLine& other : lines)
        if (alike(other) && !other.piece.empty()) of += (of.empty() ? "" : "; ") + find_piece(event, other.piece)->name;
      if (!said.insert(line.area + '\n' + line.text + (line.done ? "x" : "")).second) continue;
      out_ << (line.done ? "  [x] " : "  [ ] ") << (of.empty() ? "" : of + ": ") << line.text << ' ' << line.reason
           << " (" << without_planning_aid(line.source) << ")\n";
    }
  }

 private:
  void outdoors(const PieceStanding& answer) {
    out_ << "bears " << (answer.limit_beyond ? "more than " : "gusts of ") << gust(answer.limit_gust_m_s);
    if (!answer.governing.code.empty())
      out_ << "; first to fail: " << failure_of(answer.governing.code)
           << (answer.governing.where.empty() ? "" : ", at the " + answer.governing.where)
           << (answer.fails_at_rest ? std::string(", without any wind")
                                    : ", in wind " + wind_words(answer.governing.direction_deg));
    out_ << ".\n";
    if (!answer.fails_at_rest && answer.outdoors)
      out_ << "  watch it from " << gust(answer.watch_m_s) << ", take it down at " << gust(answer.take_down_m_s)
           << ".\n";
    if (answer.forecast_known) out_ << "  in the gust of " << gust(answer.gust_m_s) << ": " << outcome(answer) << ".\n";
  }
  static void add_failure(const PieceStanding& answer, std::string& text) {
    const StandingCheck* const worst = worst_of(answer.checks);
    if (worst != nullptr && worst->utilisation > 1)
      text += std::string(", ") + failure_of(worst->code) + (worst->where.empty() ? "" : ", at the " + worst->where);
  }
  /// No wind blows indoors: what it bears there is its own weight, and people.
  void indoors(const PieceStanding& answer) {
    std::string text = answer.verdict == Verdict::no ? "does not stand" : answer.hangs ? "hangs" : "stands";
    if (answer.verdict == Verdict::no) add_failure(answer, text);
    if (answer.verdict == Verdict::watch) text += ", keep people from it";
    out_ << text << ".\n";
  }
  static std::string outcome(const PieceStanding& answer) {
    std::string text = word_of(answer.verdict);
    if (answer.verdict != Verdict::no) return text;
    add_failure(answer, text);
    if (worst_of(answer.checks)->utilisation <= 1) text += ", it is past the level at which it is taken down";
    return text;
  }
  void checks(const PieceStanding& answer) {
    std::vector<std::vector<std::string>> rows;
    for (const StandingCheck& check : answer.checks) {
      const bool toppled = check.unit == "of the load";
      rows.push_back({check.code, check.where, toppled ? "fails" : print_fixed(100 * check.utilisation, 0) + " %",
                      print_amount(check.value, check.unit, units_), print_amount(check.limit, check.unit, units_)});
    }
    out_ << print_table({"Check", "Where", "Used", "Asked", "Borne"}, rows,
                        {Align::left, Align::left, Align::right, Align::right, Align::right});
  }
  std::string gust(double m_s) const { return print_gust(m_s, units_); }

  Units units_;
  std::ostream& out_;
};

}  // namespace

Exit stand(const StandRequest& request, const Console& console) {
  const auto prepared = prepare(request.event, console);
  if (!prepared) {
    console.err << prepared.error << '\n';
    return Exit::bad_input;
  }
  const Event& event = prepared->opened.event;
  std::string area_id;
  if (request.area) {
    const auto area = find_area(event, *request.area);
    if (!area) {
      console.err << area.error << '\n';
      return Exit::usage;
    }
    area_id = (*area)->id;
  }
  if (request.gust_is_bare && request.gust_m_s)
    console.err << "note: --gust without a unit is in metres per second: " << speed_words(*request.gust_m_s) << ".\n";
  const std::vector<PieceStanding> answers = stand_all(event, prepared->built, {request.gust_m_s, true}, area_id);
  std::vector<std::vector<LineAdvice>> advice = advise_all(event, prepared->built, answers);
  std::vector<Advised> all;
  for (std::size_t i = 0; i < answers.size(); ++i) all.push_back({answers[i], std::move(advice[i])});
  const auto lines = checklist(event, prepared->built, answers);
  const Findings findings = standing_findings(event, prepared->built, answers);
  if (request.json) {
    Json json{{"pieces", Json::array()}, {"checklist", Json::array()}, {"caution", planning_aid}};
    for (const Advised& advised : all) json["pieces"].push_back(json_of(advised));
    for (const ChecklistLine& line : lines)
      json["checklist"].push_back({{"key", line.key},
                                   {"area", line.area},
                                   {"piece", line.piece},
                                   {"text", line.text},
                                   {"reason", line.reason},
                                   {"source", line.source},
                                   {"done", line.done}});
    console.out << printed(json);
  } else {
    Printer printer(event.units, console.out);
    for (const Advised& advised : all)
      printer.piece(advised, **find_area(event, advised.standing.area), prepared->built.at(advised.standing.id)->piece);
    printer.checklist(event, lines);
    console.out << '\n' << planning_aid << '\n';
  }
  Exit exit = report(*prepared, console.err);
  for (const ToldFinding& finding : told(findings, event)) {
    if (finding.weight != Weight::note) console.err << name_of(finding.weight) << ": " << finding.sentence << '\n';
    if (finding.weight == Weight::problem && exit == Exit::done) exit = Exit::problems;
  }
  return exit;
}

}  // namespace quadrille
