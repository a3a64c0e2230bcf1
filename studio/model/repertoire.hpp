// The repertoire: the decorator's own pieces, kept in the house to be used again.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "studio/model/house.hpp"

namespace quadrille {

/// What is kept of a placed piece: its type, values, colours and note, under this name and with this price in the house's
/// currency. It has no key yet.
RepertoirePiece kept_piece(const PlacedPiece& piece, std::string name, std::optional<Minor> price_minor);

/// The entry of this name or this key, or null.
const RepertoirePiece* find_by_name(const House& house, std::string_view name);
const RepertoirePiece* find_by_key(const House& house, std::string_view key);

/// The house with `piece` in the place of the entry of its name, whose key and place in the list it takes over; behind the
/// others under a key of its own where there is none.
House with_kept(House house, RepertoirePiece piece);
/// A key that is not there changes nothing; nor does a name that another entry bears, since one could not be told from the
/// other.
House with_name_of_kept(House house, std::string_view key, std::string name);
House without_kept_piece(House house, std::string_view key);

/// The entry as a piece for an event whose prices are in `currency`: the price comes along where the house's is the same.
/// Its id, place and area are for the caller to give.
PlacedPiece placed_from(const House& house, const RepertoirePiece& kept, std::string_view currency);

}  // namespace quadrille
