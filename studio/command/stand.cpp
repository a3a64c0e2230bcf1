// quadrille stand: at which gust each piece fails, by what, and what would make it stand; as text or JSON.
#include <algorithm>
#include <ostream>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/command/json.hpp"
#include "studio/command/prepare.hpp"
#include "studio/command/table.hpp"
#include "studio/command/verbs.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/standing/advice.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/standing/piece_standing.hpp"
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

Json json_of(const LineAdvice& advice) {
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
  return {{"words", advice.words}, {"limit_gust_m_s", advice.limit_gust_m_s}, {"lines", lines}};
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
    json["lines"].push_back({{"from", line.from}, {"to", line.to}, {"tension_n", line.tension_n}});
  json["top_displacement_m"] = answer.top_displacement_m;
  json["converged"] = answer.converged;
  json["reason"] = answer.reason;
  json["ballast_needed_kg"] = answer.ballast_needed_kg ? Json(*answer.ballast_needed_kg) : Json(nullptr);
  json["without_line"] = Json::array();
  for (const WithoutLine& lost : answer.without)
    json["without_line"].push_back({{"line", lost.line}, {"limit_gust_m_s", lost.limit_gust_m_s}});
  json["bears_push_n"] = answer.bears_push_n;
  json["advice"] = Json::array();
  for (const LineAdvice& advice : advised.lines) json["advice"].push_back(json_of(advice));
  return json;
}

class Printer {
 public:
  Printer(Units units, std::ostream& out) : units_(units), out_(out) {}

  void piece(const Advised& advised, const std::string& area) {
    const PieceStanding& answer = advised.standing;
    out_ << answer.name << " (" << area << "): ";
    if (answer.deflected.empty()) {
      out_ << answer.reason << "\n\n";
      return;
    }
    out_ << "bears " << (answer.limit_beyond ? "more than " : "") << speed(answer.limit_gust_m_s);
    if (!answer.governing.code.empty())
      out_ << "; first to fail: " << answer.governing.code
           << (answer.governing.where.empty() ? "" : ", " + answer.governing.where) << ", in wind "
           << wind_words(answer.governing.direction_deg);
    out_ << ".\n";
    if (answer.outdoors)
      out_ << "  watch it from " << speed(answer.watch_m_s) << ", take it down at " << speed(answer.take_down_m_s)
           << ".\n";
    if (answer.forecast_known)
      out_ << "  in the gust of " << speed(answer.gust_m_s) << ": " << word_of(answer.verdict) << ".\n";
    for (const WithoutLine& lost : answer.without)
      out_ << "  without the line " << lost.line << " it bears " << speed(lost.limit_gust_m_s) << ".\n";
    if (answer.bears_push_n > 0)
      out_ << "  bears a push of " << print_fixed(answer.bears_push_n, 0) << " N at hand height.\n";
    checks(answer);
    if (answer.ballast_needed_kg && *answer.ballast_needed_kg > 0)
      out_ << "  for that gust each foot needs " << mass(*answer.ballast_needed_kg) << " of ballast.\n";
    for (const LineAdvice& advice : advised.lines)
      out_ << "  with " << advice.words << ": " << speed(advice.limit_gust_m_s) << ".\n";
    out_ << '\n';
  }

 private:
  void checks(const PieceStanding& answer) {
    std::vector<std::vector<std::string>> rows;
    for (const StandingCheck& check : answer.checks)
      rows.push_back({check.code, check.where, print_fixed(100 * check.utilisation, 0) + " %",
                      amount(check.value, check.unit), amount(check.limit, check.unit)});
    if (rows.empty()) return;
    out_ << print_table({"Check", "Where", "Used", "Asked", "Borne"}, rows,
                        {Align::left, Align::left, Align::right, Align::right, Align::right});
  }
  static std::string amount(double number, const std::string& unit) {
    if (unit == "Pa") return print_fixed(number / 1e6, 1) + " MPa";
    if (unit == "m") return print_both(number);
    return print_fixed(number, number < 10 ? 2 : 0) + " " + unit;
  }
  std::string speed(double m_s) const {
    return print_speed(m_s, units_ == Units::feet ? SpeedStyle::miles_per_hour : SpeedStyle::kilometres_per_hour) +
           " (Beaufort " + std::to_string(beaufort_of(m_s).number) + ")";
  }
  std::string mass(double kg) const {
    return print_mass(kg, units_ == Units::feet ? MassStyle::pounds : MassStyle::kilograms);
  }

  Units units_;
  std::ostream& out_;
};

/// Adds the lines that would do where the piece falls short of its gust.
Advised advised_of(PieceStanding answer, const Event& event, const BuiltEvent& built) {
  Advised advised{std::move(answer), {}};
  const PieceStanding& standing = advised.standing;
  if (!standing.outdoors || standing.verdict == Verdict::fine) return advised;
  const Area& area = **find_area(event, standing.area);
  advised.lines =
      best_lines(event, area, *find_piece(event, standing.id), built.at(standing.id)->piece, standing.gust_m_s);
  return advised;
}

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
  std::vector<Advised> all;
  for (PieceStanding& answer : stand_all(event, prepared->built, {request.gust_m_s, true}, area_id))
    all.push_back(advised_of(std::move(answer), event, prepared->built));
  std::vector<PieceStanding> answers;
  for (const Advised& advised : all) answers.push_back(advised.standing);
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
    for (const Advised& advised : all) {
      const Area& area = **find_area(event, advised.standing.area);
      printer.piece(advised, area.name.empty() ? area.id : area.name);
    }
    console.out << "Checklist\n";
    for (const ChecklistLine& line : lines)
      console.out << (line.done ? "  [x] " : "  [ ] ") << line.text << ' ' << line.reason << " (" << line.source
                  << ")\n";
    console.out << '\n' << planning_aid << '\n';
  }
  Exit exit = report(*prepared, console.err);
  for (const Finding& finding : findings) {
    if (finding.weight != Weight::note)
      console.err << name_of(finding.weight) << ": " << sentence_of(finding, event) << '\n';
    if (finding.weight == Weight::problem && exit == Exit::done) exit = Exit::problems;
  }
  return exit;
}

}  // namespace quadrille
