// Reads a plugin's table into owned values and says what is wrong with it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string>
#include <vector>

#include "sdk/abi.h"
#include "sdk/result.hpp"
#include "studio/host/piece_type.hpp"

namespace quadrille {

/// Bytes that the entries of a plugin's table must have at least: up to the end of the last field that version 1.0 of
/// the contract cannot do without, so that fields which a later minor version appends never shut out older plugins. Of
/// a parameter that is all up to its default; what follows (decimals, handle) counts as 0 where an entry is shorter.
inline constexpr std::uint32_t least_table_size = offsetof(quadrille_pieces, types) + sizeof(void*);
inline constexpr std::uint32_t least_type_size =
    offsetof(quadrille_piece_type, build) + sizeof(quadrille_piece_type::build);
inline constexpr std::uint32_t least_parameter_size = offsetof(quadrille_parameter, decimals);

/// True where `stride` can be the size of a record of the contract, in whatever version: then none of its pointers is cut in
/// two. Sizes of C structures are multiples of their alignment.
template <class Entry>
constexpr bool is_stride_of(std::size_t stride) {
  return stride % alignof(Entry) == 0;
}

/// Entry `index` of an array whose entries have `stride` bytes, which is_stride_of: what the entry lacks is zero.
template <class Entry>
Entry entry_at(const void* array, std::size_t index, std::size_t stride) {
  Entry entry{};
  std::memcpy(&entry, static_cast<const char*>(array) + index * stride, std::min(stride, sizeof(Entry)));
  return entry;
}

/// The piece type of `raw` with everything owned; file and plugin fields stay empty. Fails with a sentence where a
/// text is NULL, too long or not UTF-8, a key is no key, two keys or aliases are the same, a kind is unknown, a range
/// is not finite, upside down or wider than its kind may have (limits.hpp: count ±most_count, path ±farthest_m, other
/// numbers ±most_number), a default lies outside its range, is no choice or cannot be read, or `build` is NULL. Conditions
/// that cannot be read are left out, and the parameter's hint says so.
/// `parameter_size` must have passed least_parameter_size.
Result<PieceType> read_piece_type(const quadrille_piece_type& raw);

}  // namespace quadrille
