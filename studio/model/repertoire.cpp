#include "studio/model/repertoire.hpp"

#include <algorithm>
#include <utility>

namespace quadrille {
namespace {

std::string free_key(const House& house) {
  for (int number = 1;; ++number) {
    std::string key = "piece-" + std::to_string(number);
    if (find_by_key(house, key) == nullptr) return key;
  }
}

}  // namespace

RepertoirePiece kept_piece(const PlacedPiece& piece, std::string name, std::optional<Minor> price_minor) {
  RepertoirePiece kept;
  kept.name = std::move(name);
  kept.type = piece.type;
  kept.values = piece.values;
  kept.colours = piece.colours;
  kept.price_minor = price_minor;
  kept.note = piece.note;
  return kept;
}

const RepertoirePiece* find_by_name(const House& house, std::string_view name) {
  const auto found = std::ranges::find(house.repertoire, name, &RepertoirePiece::name);
  return found == house.repertoire.end() ? nullptr : &*found;
}

const RepertoirePiece* find_by_key(const House& house, std::string_view key) {
  const auto found = std::ranges::find(house.repertoire, key, &RepertoirePiece::key);
  return found == house.repertoire.end() ? nullptr : &*found;
}

House with_kept(House house, RepertoirePiece piece) {
  const auto there = std::ranges::find(house.repertoire, piece.name, &RepertoirePiece::name);
  if (there == house.repertoire.end()) {
    piece.key = free_key(house);
    house.repertoire.push_back(std::move(piece));
    return house;
  }
  piece.key = there->key;
  piece.preserved = there->preserved;
  *there = std::move(piece);
  return house;
}

House with_name_of_kept(House house, std::string_view key, std::string name) {
  const RepertoirePiece* const bearer = find_by_name(house, name);
  const auto there = std::ranges::find(house.repertoire, key, &RepertoirePiece::key);
  if (there == house.repertoire.end() || bearer != nullptr) return house;
  there->name = std::move(name);
  return house;
}

House without_kept_piece(House house, std::string_view key) {
  std::erase_if(house.repertoire, [key](const RepertoirePiece& piece) { return piece.key == key; });
  return house;
}

PlacedPiece placed_from(const House& house, const RepertoirePiece& kept, std::string_view currency) {
  PlacedPiece piece;
  piece.name = kept.name;
  piece.type = kept.type;
  piece.values = kept.values;
  piece.colours = kept.colours;
  if (house.currency == currency) piece.price_minor = kept.price_minor;
  piece.note = kept.note;
  return piece;
}

}  // namespace quadrille
