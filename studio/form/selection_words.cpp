#include "studio/form/selection_words.hpp"

#include <algorithm>
#include <vector>

#include "sdk/quantity.hpp"
#include "studio/model/finding_words.hpp"

namespace quadrille {
namespace {

std::vector<const PlacedPiece*> found(const Event& event, const PieceIds& pieces) {
  std::vector<const PlacedPiece*> there;
  for (const std::string& id : pieces)
    if (const PlacedPiece* piece = find_piece(event, id)) there.push_back(piece);
  return there;
}

}  // namespace

std::string plural_of(std::string_view name) {
  const std::string word = in_lower_case(name);
  const bool hisses =
      word.ends_with("ch") || word.ends_with("sh") || word.ends_with('s') || word.ends_with('x') || word.ends_with('z');
  return word + (hisses ? "es" : "s");
}

std::string selection_heading(const Event& event, const PieceIds& pieces, const TypeNames& types) {
  const auto there = found(event, pieces);
  if (there.empty()) return {};
  std::vector<std::string> kinds;
  for (const PlacedPiece* piece : there)
    if (std::ranges::find(kinds, piece->type) == kinds.end()) kinds.push_back(piece->type);
  const std::string count = std::to_string(there.size());
  if (kinds.size() > 1) return count + " pieces of " + std::to_string(kinds.size()) + " types";
  const auto name = types.find(kinds.front());
  if (name == types.end())
    return (there.size() > 1 ? count + " pieces: " : std::string()) + kinds.front() + " (not available)";
  return there.size() == 1 ? name->second : count + " " + plural_of(name->second);
}

std::string selection_names(const Event& event, const PieceIds& pieces) {
  std::vector<std::string> names;
  for (const PlacedPiece* piece : found(event, pieces))
    names.push_back(piece->name.empty() ? "piece '" + piece->id + "'" : piece->name);
  return print_names(names);
}

std::optional<bool> shared_flag(const Event& event, const PieceIds& pieces, bool PlacedPiece::*flag) {
  const auto there = found(event, pieces);
  if (there.empty()) return std::nullopt;
  const bool first = there.front()->*flag;
  const bool same = std::ranges::all_of(there, [&](const PlacedPiece* piece) { return piece->*flag == first; });
  return same ? std::optional(first) : std::nullopt;
}

}  // namespace quadrille
