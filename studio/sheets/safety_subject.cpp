#include "studio/sheets/safety_subject.hpp"

#include <algorithm>

#include "studio/build_sheet/build_picture.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/paper/piece_key.hpp"
#include "studio/sheets/alike_names.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {
namespace {

/// The answer has the lines that count alone, in the order of the piece's: those of one tie point are told apart by their
/// order where all of them count; where some do not, which of them is not known.
std::optional<std::size_t> force_of(const SafetyPiece& piece, const AnchoredLine& laid,
                                    const std::vector<AnchoredLine>& all) {
  const std::vector<ForceInLine>& forces = piece.answer->lines;
  const std::string& tie = piece.placed->lines[laid.line].tie;
  std::size_t lines = 0, place = 0;
  for (const AnchoredLine& other : all) {
    if (piece.placed->lines[other.line].tie != tie) continue;
    if (other.line == laid.line) place = lines;
    ++lines;
  }
  if (static_cast<std::size_t>(std::ranges::count(forces, tie, &ForceInLine::from)) != lines) return std::nullopt;
  for (std::size_t i = 0; i < forces.size(); ++i)
    if (forces[i].from == tie && place-- == 0) return i;
  return std::nullopt;
}

void add_lines(SafetyPiece& piece, const Area& area, bool numbered) {
  const std::vector<AnchoredLine> all = anchored_lines(*piece.placed, *piece.piece, area);
  for (std::size_t i = 0; i < all.size(); ++i) {
    SafetyLine line{all[i], (numbered ? std::to_string(piece.number) + "-" : "") + line_name(i), {}, {}};
    if (piece.answer != nullptr)
      if (const auto force = force_of(piece, all[i], all)) {
        line.pull_n = piece.answer->lines[*force].greatest_n;
        if (*force < piece.answer->without.size()) line.without_m_s = piece.answer->without[*force].limit_gust_m_s;
      }
    piece.lines.push_back(std::move(line));
  }
}

}  // namespace

bool SafetySubject::has_lines() const {
  return std::ranges::any_of(pieces, [](const SafetyPiece& piece) { return !piece.lines.empty(); });
}

std::string print_pull(double newtons, Units units) { return newtons < 0.05 ? "slack" : print_force(newtons, units); }

std::string numbered_names(const std::vector<const SafetyPiece*>& pieces, const SafetySubject& subject) {
  std::vector<std::string> names;
  std::vector<std::size_t> numbers;
  for (const SafetyPiece* piece : pieces) names.push_back(piece->name()), numbers.push_back(piece->number);
  return (subject.pieces.size() > 1 ? print_numbers(numbers) + "  " : "") + print_names(names);
}

std::vector<std::vector<const SafetyPiece*>> told_together(const SafetySubject& subject,
                                                           const std::function<std::string(const SafetyPiece&)>& said) {
  std::vector<std::vector<const SafetyPiece*>> groups;
  for (const SafetyPiece& piece : subject.pieces) {
    const bool together = !groups.empty() && said(*groups.back().back()) == said(piece) &&
                          differ_in_number(groups.back().back()->name(), piece.name());
    if (!together) groups.emplace_back();
    groups.back().push_back(&piece);
  }
  return groups;
}

SafetySubject safety_subject(const Area& area, const Setting& setting) {
  SafetySubject subject;
  subject.area = &area;
  const auto shown = std::ranges::count_if(area.pieces, [](const auto& piece) { return !piece->hidden; });
  std::size_t number = 0;
  for (const auto& placed : area.pieces) {
    if (placed->hidden) continue;
    ++number;
    SafetyPiece piece;
    piece.placed = &*placed, piece.number = number;
    const auto found = setting.input.built.find(placed->id);
    if (found == setting.input.built.end() || !found->second || found->second->status != Status::ok) {
      subject.left_out.push_back(piece.name() + ": it was not built, so nothing is known of how it stands.");
      continue;
    }
    piece.piece = &found->second->piece;
    if (setting.input.standing != nullptr) {
      const auto answer = std::ranges::find(*setting.input.standing, placed->id, &PieceStanding::id);
      if (answer != setting.input.standing->end()) piece.answer = &*answer;
    }
    piece.supports = named_supports(*piece.piece);
    add_lines(piece, area, shown > 1);
    subject.pieces.push_back(std::move(piece));
  }
  return subject;
}

}  // namespace quadrille
