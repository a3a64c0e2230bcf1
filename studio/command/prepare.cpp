// From a file to built pieces and findings.
#include "studio/command/prepare.hpp"

#include <algorithm>
#include <iterator>
#include <ostream>
#include <utility>

#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"

namespace quadrille {
namespace {

void append(Findings& all, Findings more) { std::ranges::move(more, std::back_inserter(all)); }

Findings findings_of_refused(const PieceTypes& types) {
  Findings findings;
  for (const RefusedFile& file : types.refused) {
    const bool crashed = file.reason == RefusalReason::crashed_before;
    findings.push_back({Weight::warning, "plugin-" + std::string(key_of(file.reason)), "", "", "",
                        file.file.string() + ": " + file.sentence,
                        crashed ? "'quadrille pieces --try-again' gives it another chance." : ""});
  }
  return findings;
}

std::string area_name(const Event& event, const std::string& id) {
  for (const auto& area : event.areas)
    if (area->id == id) return area->name.empty() ? id : area->name;
  return id;
}

std::string piece_name(const Event& event, const std::string& id) {
  const PlacedPiece* piece = find_piece(event, id);
  return piece && !piece->name.empty() ? piece->name : id;
}

}  // namespace

PieceTypes find_types(const Console& console, bool try_crashed_again) {
  SearchPlan plan = standard_search_plan(console.executable);
  plan.try_crashed_again = try_crashed_again;
  return find_piece_types(plan);
}

Result<PreparedEvent> prepare(const std::filesystem::path& event_file, const Console& console) {
  auto opened = open_event(event_file);
  if (!opened) return Result<PreparedEvent>::bad(opened.error);
  PreparedEvent prepared;
  prepared.opened = std::move(*opened.value);
  prepared.palettes = load_palettes(standard_palette_folders(console.executable, event_file));
  prepared.types = find_types(console);
  const Event& event = prepared.opened.event;
  prepared.built = EventBuilder(prepared.types).build(event);
  append(prepared.findings, prepared.opened.findings);
  append(prepared.findings, prepared.palettes.findings);
  append(prepared.findings, check_colours(event, prepared.palettes.palettes));
  append(prepared.findings, findings_of_refused(prepared.types));
  append(prepared.findings, findings_of(event, prepared.built, prepared.types));
  return Result<PreparedEvent>::good(std::move(prepared));
}

std::string sentence_of(const Finding& finding, const Event& event) {
  std::string sentence = finding.text;
  const std::string piece = finding.piece.empty() ? "" : piece_name(event, finding.piece);
  if (sentence.find(piece) == std::string::npos) sentence.insert(0, piece + ": ");
  if (!finding.area.empty()) sentence.insert(0, area_name(event, finding.area) + ": ");
  if (!finding.key.empty()) sentence += " (" + finding.key + ")";
  if (!finding.remedy.empty()) sentence += " " + finding.remedy;
  return sentence;
}

std::string_view name_of(Weight weight) {
  switch (weight) {
    case Weight::note:
      return "note";
    case Weight::warning:
      return "warning";
    case Weight::problem:
      return "problem";
  }
  return "problem";
}

Exit exit_of(const PreparedEvent& prepared) {
  Exit exit = Exit::done;
  for (const Finding& finding : prepared.findings) {
    if (finding.weight != Weight::problem) continue;
    if (finding.code == "no-such-colour" || finding.code == "no-such-palette") return Exit::bad_input;
    exit = Exit::problems;
  }
  return exit;
}

Exit report_problems(const PreparedEvent& prepared, std::ostream& err) {
  for (const Finding& finding : prepared.findings)
    if (finding.weight == Weight::problem) err << "problem: " << sentence_of(finding, prepared.opened.event) << '\n';
  return exit_of(prepared);
}

}  // namespace quadrille
